//! What this wall offers, as far as it is worked out: the places of one piece along a line, kept with the plan that
//! they belong to. Pulled place by place while there is time. Knows no window.

use crate::moves;
use crate::view_state::Sweeping;
use std::rc::Rc;
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::sweep::{Place, Sweep, Told, best};

/// The places of a piece along a line.
#[derive(Clone, Debug)]
pub struct Swept {
    plan: Rc<Plan>,
    piece: Id,
    asked: Sweeping,
    /// `None` where there is nothing to sweep.
    sweep: Option<Sweep>,
    /// Of each place what is known best.
    places: Vec<Option<Place>>,
    known: usize,
    is_all: bool,
}

impl Swept {
    /// Of a piece of a job's plan; nothing is worked out yet.
    #[must_use]
    pub fn begin(job: &Job, plan: &Rc<Plan>, piece: &Id, asked: Sweeping) -> Self {
        let sweep = match plan.option {
            Some(_) => Sweep::of(job, plan, piece, asked.axis, asked.reach),
            None => {
                // What was assumed is written down once the piece is moved: so it is swept.
                let written = moves::with_option(job, plan);
                let plan = solve(&written, &plan.wall, None);
                Sweep::of(&written, &plan, piece, asked.axis, asked.reach)
            }
        };
        let count = sweep.as_ref().map_or(0, |sweep| sweep.line().len());
        Self {
            plan: Rc::clone(plan),
            piece: piece.clone(),
            asked,
            is_all: sweep.is_none(),
            sweep,
            places: vec![None; count],
            known: 0,
        }
    }

    /// Whether it is of this plan and piece, and of what is asked for.
    #[must_use]
    pub fn is_of(&self, plan: &Rc<Plan>, piece: &Id, asked: Sweeping) -> bool {
        Rc::ptr_eq(&self.plan, plan) && self.piece == *piece && self.asked == asked
    }

    /// Takes one place more; whether there was one.
    pub fn pull(&mut self) -> bool {
        let Some(place) = self.sweep.as_mut().and_then(Sweep::next) else {
            self.is_all = true;
            return false;
        };
        self.known += usize::from(matches!(place.told, Told::Full(_)));
        self.is_all = self.known == self.places.len();
        if let Some(known) = self.places.get_mut(place.index) {
            *known = Some(place);
        }
        true
    }

    /// Whether every place is known in full.
    #[must_use]
    pub fn is_all(&self) -> bool {
        self.is_all
    }

    /// How many places are known in full.
    #[must_use]
    pub fn known(&self) -> usize {
        self.known
    }

    /// What is known of each place, from left to right or from below upward; empty where there is nothing to sweep.
    #[must_use]
    pub fn places(&self) -> &[Option<Place>] {
        &self.places
    }

    /// The middle of the piece at each place.
    #[must_use]
    pub fn line(&self) -> &[Point] {
        self.sweep.as_ref().map_or(&[], Sweep::line)
    }

    /// Which place was the present one.
    #[must_use]
    pub fn present(&self) -> Option<usize> {
        self.sweep.as_ref().map(Sweep::present)
    }

    /// What was asked for.
    #[must_use]
    pub fn asked(&self) -> Sweeping {
        self.asked
    }

    /// Along which axis.
    #[must_use]
    pub fn axis(&self) -> Axis {
        self.asked.axis
    }

    /// Its plan, and the piece in it.
    #[must_use]
    pub fn piece(&self) -> Option<(&Plan, &PiecePlan)> {
        let piece = self.plan.pieces.iter().find(|piece| piece.id == self.piece)?;
        Some((&self.plan, piece))
    }

    /// The best of the places known in full within reach of the wished one.
    #[must_use]
    pub fn best(&self) -> Option<&Place> {
        let (_, piece) = self.piece()?;
        best(self.places.iter().flatten(), piece.ruled_centre, self.asked.axis)
    }

    /// The place whose middle is nearest along the line.
    #[must_use]
    pub fn nearest(&self, to: Point) -> Option<usize> {
        let axis = self.asked.axis;
        let away = |place: &Point| (place.along(axis) - to.along(axis)).mm().abs();
        let nearest = self.line().iter().enumerate().min_by(|(_, a), (_, b)| away(a).total_cmp(&away(b)));
        nearest.map(|(index, _)| index)
    }
}

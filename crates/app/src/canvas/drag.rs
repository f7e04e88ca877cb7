//! One drag of a handle, from press to release: always worked from where it began, so that nothing adds up.

use super::grab::Grabbable;
use super::snap::{Reach, Snapped, snapped};
use crate::moves::{self, Handle, HandleKind, Moving};
use crate::session::Session;
use crate::view_state::Window;
use egui::Pos2;
use std::rc::Rc;
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Subject;

/// Nothing is written until the pointer has moved this far, in points: a tap is not a drag (as the toolkit's).
pub const SLACK: f32 = 6.0;

/// A held thing is drawn to lines within this many points (chosen: less than a finger is unsure by).
const DRAWN_WITHIN: f32 = 7.0;
/// What it is drawn to lets it go beyond this many points (chosen: a tremble more).
const LET_GO_BEYOND: f32 = 10.0;

/// A drag.
#[derive(Clone, Debug)]
pub struct Drag {
    /// What is held.
    pub handle: Handle,
    /// The handle's own subject: of a hole, the hole.
    pub subject: Subject,
    start_job: Job,
    start_plan: Rc<Plan>,
    start_place: Point,
    /// Of a piece: what its places have in common.
    moving: Option<Moving>,
    press: Pos2,
    press_in_wall: Point,
    has_moved: bool,
    /// What it is drawn to just now; `None` while it is free or has not moved.
    snapped: Option<Snapped>,
}

impl Drag {
    /// Takes hold of a handle; `None` where it is not in the plan.
    #[must_use]
    pub fn begin(session: &mut Session, held: &Grabbable, press: Pos2, window: &Window) -> Option<Self> {
        let handle = &held.handle;
        let start_plan = session.plan();
        let start_place = moves::place(&start_plan, handle, start_plan.survey.outline.centre().y)?;
        let is_piece = handle.kind == HandleKind::Piece;
        let moving = is_piece.then(|| Moving::of(&session.job, &start_plan, &handle.id)).flatten();
        Some(Self {
            moving,
            handle: handle.clone(),
            subject: held.subject.clone(),
            start_job: session.job.clone(),
            start_plan,
            start_place,
            press,
            press_in_wall: window.wall_from_pointer(press),
            has_moved: false,
            snapped: None,
        })
    }

    /// Moves what is held with the pointer. `is_free` lets go of the lines that it is drawn to.
    pub fn follow(&mut self, session: &mut Session, pointer: Pos2, window: &Window, is_free: bool) {
        self.has_moved |= pointer.distance(self.press) >= SLACK;
        if !self.has_moved {
            return;
        }
        let now = window.wall_from_pointer(pointer);
        let wished = Point::new(
            self.start_place.x + (now.x - self.press_in_wall.x),
            self.start_place.y + (now.y - self.press_in_wall.y),
        );
        let reach =
            Reach { enter: window.wall_length(DRAWN_WITHIN), leave: window.wall_length(LET_GO_BEYOND) };
        self.snapped =
            (!is_free).then(|| snapped(&self.start_plan, &self.handle, wished, reach, self.snapped.as_ref()));
        let to = self.snapped.as_ref().map_or(wished, |snapped| snapped.to);
        // Back where it was nothing is rounded and no assumed option is written down.
        let style = self.start_plan.style;
        let is_still = |axis: Axis| match self.handle.kind {
            HandleKind::Edge(side) if side.axis() != axis => true,
            _ => style.steps(to.along(axis) - self.start_place.along(axis)) == 0,
        };
        let is_back = is_still(Axis::Across) && is_still(Axis::Upright);
        match &mut self.moving {
            _ if is_back => session.job = self.start_job.clone(),
            Some(moving) => {
                let (job, plan) = moving.to(&self.start_plan, to);
                session.moved(job, plan);
            }
            None => session.job = moves::moved(&self.start_job, &self.start_plan, &self.handle, to),
        }
    }

    /// Whether anything was moved yet.
    #[must_use]
    pub fn has_moved(&self) -> bool {
        self.has_moved
    }

    /// What it is drawn to just now.
    #[must_use]
    pub fn snapped(&self) -> Option<&Snapped> {
        self.snapped.as_ref()
    }

    /// The axis along which the handle went farther; for an edge its own.
    #[must_use]
    pub fn leading_axis(&self, pointer: Pos2) -> Axis {
        if let HandleKind::Edge(side) = self.handle.kind {
            return side.axis();
        }
        let by = pointer - self.press;
        if by.y.abs() > by.x.abs() { Axis::Upright } else { Axis::Across }
    }

    /// Gives back what was there before.
    pub fn give_back(self, session: &mut Session) {
        session.job = self.start_job;
    }
}

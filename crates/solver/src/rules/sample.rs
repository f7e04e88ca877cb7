//! A room of which no rule has anything to tell, to be spoilt in one thing by each rule's test.

mod job;
mod plan;

use super::Rule;
use crate::finding::{Level, What};
use crate::geometry::{Frame, Rect, Span};
use crate::job::Job;
use crate::job::feature::{Feature, FeatureKind};
use crate::job::hidden::HiddenKind;
use crate::job::option::Hanging;
use crate::job::piece::{Piece, PieceKind};
use crate::job::place::{AcrossExtent, UprightExtent};
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::piece::{Gaps, Meets, MountedPlan, PiecePlan};
use crate::plan::survey::{PlacedFeature, PlacedHidden};
use crate::subject::Id;
use crate::units::{Angle, Length, Mass};

pub(super) fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

pub(super) fn rect(across: (f64, f64), upright: (f64, f64)) -> Rect {
    Rect::new(Span::new(mm(across.0), mm(across.1)), Span::new(mm(upright.0), mm(upright.1)))
}

/// A job and its plan: one display of 1200 x 700 mm about (2000, 1500) on a bare wall of 4000 x 2400 mm, on
/// studs 400 mm apart, mirror-symmetric about x = 2000.
pub(super) struct Sample {
    pub(super) job: Job,
    pub(super) plan: Plan,
}

impl Sample {
    pub(super) fn good() -> Self {
        Self { job: job::job(), plan: plan::plan() }
    }

    pub(super) fn wall(&self) -> &Wall {
        &self.job.walls[0]
    }

    pub(super) fn wall_mut(&mut self) -> &mut Wall {
        &mut self.job.walls[0]
    }

    pub(super) fn hanging(&mut self) -> &mut Hanging {
        &mut self.job.walls[0].options[0].hangings[0]
    }

    pub(super) fn mounted(&mut self) -> &mut MountedPlan {
        self.plan.pieces[0].mount.as_mut().unwrap()
    }

    /// What a rule tells: how grave, about what, and what.
    pub(super) fn told(&self, rule: Rule) -> Vec<(Level, String, What)> {
        let findings = rule(&self.job, self.wall(), &self.plan);
        findings
            .into_iter()
            .map(|finding| (finding.level, finding.subject.to_string(), finding.what))
            .collect()
    }

    /// Puts a feature on the wall.
    pub(super) fn feature(
        &mut self,
        id: &str,
        kind: FeatureKind,
        across: (f64, f64),
        upright: (f64, f64),
        proud: f64,
    ) -> &mut PlacedFeature {
        self.wall_mut().features.push(Feature {
            id: Id::new(id),
            kind,
            name: None,
            across: AcrossExtent::default(),
            upright: UprightExtent::default(),
            proud: Some(mm(proud)),
            framing: None,
            front: None,
            notes: None,
        });
        let rect = rect(across, upright);
        self.plan.survey.features.push(PlacedFeature {
            id: Id::new(id),
            kind,
            name: String::new(),
            rect,
            top_ends: (rect.top, rect.top),
            bottom_ends: (rect.bottom, rect.bottom),
            proud: mm(proud),
            on: None,
            assumed: false,
        });
        self.plan.survey.features.last_mut().unwrap()
    }

    /// Puts something into the wall behind the display's first hole.
    pub(super) fn hide_behind_first_hole(&mut self, id: &str, kind: HiddenKind) {
        self.plan.survey.hidden.push(PlacedHidden {
            id: Id::new(id),
            kind,
            name: String::new(),
            rect: rect((1780.0, 1820.0), (0.0, 2400.0)),
            assumed: false,
        });
        let hole = &mut self.mounted().holes[0];
        (hole.meets, hole.stud, hole.hidden) = (Meets::Hidden, None, Some(Id::new(id)));
    }

    /// Puts a seat in front of the display.
    pub(super) fn seat(&mut self) {
        self.plan.sight = vec![crate::plan::sight::sample()];
    }

    /// Hangs a second piece, without a mount of its own.
    pub(super) fn second_piece(
        &mut self,
        id: &str,
        kind: PieceKind,
        across: (f64, f64),
        upright: (f64, f64),
    ) {
        let outline = rect(across, upright);
        self.job.pieces.push(Piece {
            id: Id::new(id),
            kind,
            width: Some(outline.width()),
            height: Some(outline.height()),
            mass: Some(Mass::kilograms(3.0)),
            ports: Vec::new(),
            ..self.job.pieces[0].clone()
        });
        let hanging = Hanging {
            id: Id::new(&format!("{id}-hanging")),
            piece: Id::new(id),
            mount: None,
            ..self.hanging().clone()
        };
        self.plan.pieces.push(PiecePlan {
            id: Id::new(id),
            hanging: hanging.id.clone(),
            kind,
            name: String::new(),
            outline,
            ruled_centre: outline.centre(),
            frame: Frame { origin: outline.centre(), roll: Angle::default() },
            mount: None,
            ports: Vec::new(),
            cable: None,
            gaps: Gaps::default(),
            assumed: false,
        });
        self.wall_mut().options[0].hangings.push(hanging);
    }

    /// The hanging of the second piece.
    pub(super) fn second_hanging(&mut self) -> &mut Hanging {
        &mut self.job.walls[0].options[0].hangings[1]
    }
}

//! What one place gives.

use crate::capacity::group::Word;
use crate::finding::{Finding, Level};
use crate::geometry::Point;
use crate::job::option::Nudge;
use crate::plan::Plan;
use crate::plan::cable::CablePlan;
use crate::plan::piece::{Meets, MountedPlan};
use crate::solve::Coarse;
use crate::subject::Id;

/// One place of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Which of the sweep's places, from left to right or from below upward.
    pub index: usize,
    /// The middle of the piece that is asked for.
    pub wished: Point,
    /// What it gives.
    pub told: Told,
}

/// What a place gives, and how well that is known.
#[derive(Clone, Debug, PartialEq)]
pub enum Told {
    /// At a look.
    Coarse(Coarse),
    /// By a full solve.
    Full(Box<Full>),
}

/// What a full solve of a place gives.
#[derive(Clone, Debug, PartialEq)]
pub struct Full {
    /// The nudge that brings the piece there, in whole graduations of the reading that locates it.
    pub nudge: Nudge,
    /// Where its middle then is.
    pub centre: Point,
    /// Whether its plate holds as if every stud in use were met where it is expected; `None` of a piece without a
    /// mount.
    pub if_probed: Option<Word>,
    /// How much of what it may carry the fastener that is asked most uses; `None` where nothing could be worked out.
    pub used: Option<f64>,
    /// How many studs its plate's holes meet.
    pub studs: usize,
    /// How many of its plate's holes meet one.
    pub holes_in_studs: usize,
    /// Whether the wall is opened out of sight for its cables; `None` where no cable asks for that.
    pub entry_hidden: Option<bool>,
    /// What the plan tells of it.
    pub findings: Vec<Finding>,
}

impl Full {
    /// Of a piece of a plan that was made with a nudge; `None` where the plan does not have it.
    #[must_use]
    pub fn of(plan: &Plan, piece: &Id, nudge: Nudge) -> Option<Self> {
        let piece = plan.pieces.iter().find(|one| one.id == *piece)?;
        let mount = piece.mount.as_ref();
        let verdict = mount.map(|mount| &mount.fastening.verdict);
        let holes = mount.into_iter().flat_map(|mount| &mount.holes);
        Some(Self {
            nudge,
            centre: piece.outline.centre(),
            if_probed: verdict.map(|verdict| verdict.if_probed),
            used: verdict.and_then(|verdict| verdict.governing.as_ref()).map(|governing| governing.used),
            studs: mount.map_or(0, MountedPlan::studs_met),
            holes_in_studs: holes.filter(|hole| hole.meets == Meets::Stud).count(),
            entry_hidden: piece.cable.as_ref().and_then(CablePlan::entry_hidden),
            findings: plan.findings.clone(),
        })
    }

    /// The least reserve: what could be added to all loads, as a share of them; below nothing where that is too much
    /// already. `None` where nothing could be worked out, or nothing is asked of it.
    #[must_use]
    pub fn reserve(&self) -> Option<f64> {
        self.used.filter(|used| *used > 0.0).map(|used| 1.0 / used - 1.0)
    }

    /// How many findings there are of a level.
    #[must_use]
    pub fn count(&self, level: Level) -> usize {
        self.findings.iter().filter(|finding| finding.level == level).count()
    }
}

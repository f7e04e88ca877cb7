//! All that is told beside a plan of a whole wall, asked at once: for paper and programs, which have no hand to wait
//! for.

use crate::job::Job;
use crate::limits::{Limits, limits};
use crate::mend::{MendPlan, of_next};
use crate::plan::Plan;
use crate::probing::{NextProbe, next_probe};
use crate::subject::Id;

/// What is told beside a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Beside {
    /// The next probe.
    pub probe: Option<NextProbe>,
    /// How far the fasteners of each piece reach that has any to tell of.
    pub limits: Vec<(Id, Limits)>,
    /// What would clear each finding, in the order of the plan.
    pub mends: Vec<Vec<MendPlan>>,
}

impl Beside {
    /// Of a job's plan.
    #[must_use]
    pub fn of(job: &Job, plan: &Plan) -> Self {
        let pieces = plan.pieces.iter().map(|piece| &piece.id);
        let mut mends: Vec<Vec<MendPlan>> = Vec::new();
        for _ in &plan.findings {
            let earlier: Vec<&[MendPlan]> = mends.iter().map(Vec::as_slice).collect();
            let next = of_next(job, plan, &earlier);
            mends.extend(next);
        }
        Self {
            probe: next_probe(job, plan),
            limits: pieces.filter_map(|piece| Some((piece.clone(), limits(job, plan, piece)?))).collect(),
            mends,
        }
    }

    /// The limits of a piece's fasteners.
    #[must_use]
    pub fn limits_of(&self, piece: &Id) -> Option<&Limits> {
        self.limits.iter().find(|(one, _)| one == piece).map(|(_, limits)| limits)
    }
}

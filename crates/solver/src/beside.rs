//! All that is told beside a plan of a whole wall, asked at once: for paper and programs, which have no hand to wait for.

use crate::job::Job;
use crate::limits::{Limits, limits};
use crate::mend::{MendPlan, for_finding};
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
        let mend = |finding| for_finding(job, &plan.wall, plan.option.as_ref(), finding);
        Self {
            probe: next_probe(job, plan),
            limits: pieces.filter_map(|piece| Some((piece.clone(), limits(job, plan, piece)?))).collect(),
            mends: plan.findings.iter().map(mend).collect(),
        }
    }

    /// The limits of a piece's fasteners.
    #[must_use]
    pub fn limits_of(&self, piece: &Id) -> Option<&Limits> {
        self.limits.iter().find(|(one, _)| one == piece).map(|(_, limits)| limits)
    }
}

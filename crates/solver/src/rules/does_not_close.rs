//! Two readings of one place that do not agree: one of them is wrong, and which one a drawing cannot tell.
//! Marks struck from the wrong one are wrong by as much (common practice, no source).

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_job: &Job, _wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let told = plan.survey.misfits.iter().map(|misfit| Finding {
        level: Level::Caution,
        subject: misfit.subject.clone(),
        what: What::DoesNotClose { used: misfit.used, other: misfit.other },
        mend: Mend::Measure,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::plan::survey::Misfit;
    use crate::subject::Id;

    #[test]
    fn a_misfit_is_told_with_both_values() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let subject = Id::new("window-1").part("right");
        room.plan.survey.misfits.push(Misfit { subject, used: mm(774.7), other: mm(787.4) });
        let what = What::DoesNotClose { used: mm(774.7), other: mm(787.4) };
        assert_eq!(room.told(check), [(Level::Caution, "window-1.right".to_owned(), what)]);
    }
}

//! A fastener that reaches past a stud comes out where cables, pipes and the other side's board are (common practice,
//! no source): nothing behind a stud is known, so that any such reach stops the job. Told once a plate.

use super::hung;
use crate::capacity::why::Why;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::verdict::EmptyWhy;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let told = hung::mounted(job, wall, plan).filter_map(|(_, mounted, _)| {
        mounted.fastening.left_empty.iter().find_map(|empty| {
            let EmptyWhy::Refused(Why::PastStud { by, .. }) = empty.why else { return None };
            Some(Finding {
                level: Level::Stop,
                subject: empty.subject.clone(),
                what: What::PastStud { by },
                mend: Mend::Choose,
            })
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::plan::verdict::LeftEmpty;
    use crate::subject::Id;
    use crate::units::Length;

    #[test]
    fn a_reach_past_the_stud_stops_and_is_told_once() {
        let mut room = Sample::good();
        let by = Length::millimetres(6.0);
        let empty = |hole: &str, why: Why| LeftEmpty {
            hole: Id::new(hole),
            subject: Id::new("display-1").part(hole),
            why: EmptyWhy::Refused(why),
            wanted: false,
        };
        room.mounted().fastening.left_empty = vec![empty("hole-1", Why::DoesNotPass)];
        assert!(room.told(check).is_empty());
        let past = Why::PastStud { by, supposed: false };
        room.mounted().fastening.left_empty = vec![empty("hole-1", past), empty("hole-2", past)];
        let stop = [(Level::Stop, "display-1.hole-1".to_owned(), What::PastStud { by })];
        assert_eq!(room.told(check), stop);
    }
}

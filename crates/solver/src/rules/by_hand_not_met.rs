//! Who chooses a hole by hand counts on its fastener: where it takes none, that is told, and not only in the list of
//! empty holes.

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let empty = hung::mounted(job, wall, plan).flat_map(|(_, mounted, _)| &mounted.fastening.left_empty);
    let told = empty.filter(|empty| empty.wanted).map(|empty| Finding {
        level: Level::Caution,
        subject: empty.subject.clone(),
        what: What::ByHandNotMet,
        mend: Mend::Choose,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::plan::verdict::{EmptyWhy, LeftEmpty};
    use crate::subject::Id;

    #[test]
    fn only_a_hole_that_was_wanted_is_told() {
        let mut room = Sample::good();
        let hole = Id::new("hole-1");
        let subject = Id::new("display-1").part("hole-1");
        let empty = LeftEmpty { hole, subject, why: EmptyWhy::TooFew, wanted: false };
        room.mounted().fastening.left_empty.push(empty);
        assert!(room.told(check).is_empty());
        room.mounted().fastening.left_empty[0].wanted = true;
        let caution = [(Level::Caution, "display-1.hole-1".to_owned(), What::ByHandNotMet)];
        assert_eq!(room.told(check), caution);
    }
}

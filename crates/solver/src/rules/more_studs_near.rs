//! A small move may put a hole on one more stud, which shares the load and keeps the plate from turning
//! (common practice, no source). With one stud or none it is worth a caution, with more a note (chosen).

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for (hung, mounted, _) in hung::mounted(job, wall, plan) {
        let wish = &mounted.wish;
        if wish.most_studs <= wish.studs {
            continue;
        }
        let level = if wish.studs < 2 { Level::Caution } else { Level::Note };
        let what = What::MoreStudsNear {
            studs: wish.studs,
            most: wish.most_studs,
            left: wish.left,
            right: wish.right,
        };
        told.push(Finding { level, subject: hung.at.id.whole(), what, mend: Mend::Move });
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::plan::piece::Wish;

    #[test]
    fn more_studs_are_told_with_the_way_there() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        for (studs, most, level) in [(0, 2, Level::Caution), (1, 2, Level::Caution), (2, 3, Level::Note)] {
            let (left, right) = (Some(mm(38.0)), None);
            room.mounted().wish = Wish { studs, most_studs: most, left, right };
            let what = What::MoreStudsNear { studs, most, left, right };
            assert_eq!(room.told(check), [(level, "display-1".to_owned(), what)]);
        }
    }
}

//! The brackets are screwed to the display's threads, so they stand as far apart as these. Measured at another
//! distance they were measured on another display, and the play with them: a plate moved by a play that is not there
//! is drilled where the display cannot hang (common practice, no source).

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::BRACKETS_MEASURED_MM;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for (hung, _, mount) in hung::mounted(job, wall, plan) {
        let (Some(pattern), Some(brackets)) = (&hung.piece.pattern, &mount.brackets) else { continue };
        if (brackets.apart - pattern.across).mm().abs() > BRACKETS_MEASURED_MM {
            let what = What::BracketsOffThreads { apart: brackets.apart, across: pattern.across };
            let subject = hung.at.id.whole();
            told.push(Finding { level: Level::Caution, subject, what, mend: Mend::Measure });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::mount::Brackets;
    use crate::tape::Offset;

    #[test]
    fn brackets_stand_on_the_threads() {
        let mut room = Sample::good();
        for (apart, is_told) in [(400.0, false), (405.0, false), (394.0, true), (200.0, true)] {
            let brackets =
                Brackets { apart: mm(apart), width: mm(30.0), top: Offset::default(), length: mm(300.0) };
            room.job.mounts[0].brackets = Some(brackets);
            let what = What::BracketsOffThreads { apart: mm(apart), across: mm(400.0) };
            let caution = (Level::Caution, "display-1".to_owned(), what);
            assert_eq!(room.told(check), if is_told { vec![caution] } else { vec![] });
        }
        room.job.pieces[0].pattern = None;
        assert!(room.told(check).is_empty(), "nothing to compare with");
    }
}

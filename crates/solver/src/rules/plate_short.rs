//! What does not hold is not hung: a plate whose fasteners are asked for more than they may carry, or that lacks what
//! its maker requires, stops the job (derived from the verdict).

use super::hung;
use crate::capacity::group::Word;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::verdict::Required;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let short = hung::mounted(job, wall, plan).filter(|(_, at, _)| at.fastening.verdict.word == Word::Short);
    let told = short.map(|(hung, at, _)| {
        let verdict = &at.fastening.verdict;
        let used = verdict.governing.as_ref().map(|governing| governing.used);
        Finding {
            level: Level::Stop,
            subject: hung.at.id.whole(),
            what: What::PlateShort { used: used.filter(|_| verdict.required != Required::NotMet) },
            mend: Mend::Choose,
        }
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::capacity::case::{CaseName, Posture};
    use crate::capacity::used::Term;
    use crate::plan::verdict::Governing;
    use crate::subject::Id;

    #[test]
    fn a_plate_that_is_short_stops_the_job_and_one_that_holds_is_quiet() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.mounted().fastening.verdict.word = Word::NotKnown;
        assert!(room.told(check).is_empty(), "that is told by another rule");
        let verdict = &mut room.mounted().fastening.verdict;
        verdict.word = Word::Short;
        verdict.governing = Some(Governing {
            hole: Id::new("display-1").part("hole-1"),
            case: CaseName { posture: Posture::AsHung, pull: None },
            used: 1.23,
            term: Term::Shear,
        });
        let told = |used| [(Level::Stop, "display-1".to_owned(), What::PlateShort { used })];
        assert_eq!(room.told(check), told(Some(1.23)));
        room.mounted().fastening.verdict.required = Required::NotMet;
        assert_eq!(room.told(check), told(None), "what is required comes before what is used");
    }
}

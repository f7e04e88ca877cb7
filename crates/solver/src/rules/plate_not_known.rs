//! Whether a plate holds has to be known before it is fixed: a caution (chosen: nothing says that it does not hold),
//! and a note where the studs in use only have to be probed, which the marks ask for anyway.

use super::hung;
use crate::capacity::group::Word;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let unknown =
        hung::mounted(job, wall, plan).filter(|(_, at, _)| at.fastening.verdict.word == Word::NotKnown);
    let told = unknown.map(|(hung, at, _)| {
        let verdict = &at.fastening.verdict;
        let if_probed = verdict.if_probed == Word::Holds;
        Finding {
            level: if if_probed { Level::Note } else { Level::Caution },
            subject: hung.at.id.whole(),
            what: What::PlateNotKnown { if_probed },
            // Where nothing is left to be measured, no published value carries it.
            mend: if verdict.wanted.is_empty() { Mend::Choose } else { Mend::Measure },
        }
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::plan::verdict::Want;
    use crate::subject::Id;

    #[test]
    fn what_is_not_known_is_a_caution_and_what_is_only_to_be_probed_a_note() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let told = |room: &Sample| {
            let findings = check(&room.job, room.wall(), &room.plan);
            findings.into_iter().map(|one| (one.level, one.what, one.mend)).collect::<Vec<_>>()
        };
        let verdict = &mut room.mounted().fastening.verdict;
        (verdict.word, verdict.if_probed) = (Word::NotKnown, Word::NotKnown);
        let caution = |mend| [(Level::Caution, What::PlateNotKnown { if_probed: false }, mend)];
        assert_eq!(told(&room), caution(Mend::Choose));
        room.mounted().fastening.verdict.wanted = vec![Want::Mass(Id::new("display-1"))];
        assert_eq!(told(&room), caution(Mend::Measure));
        let verdict = &mut room.mounted().fastening.verdict;
        verdict.if_probed = Word::Holds;
        verdict.wanted = vec![Want::Probe(Id::new("display-1").part("hole-1"))];
        assert_eq!(told(&room), [(Level::Note, What::PlateNotKnown { if_probed: true }, Mend::Measure)]);
        room.mounted().fastening.verdict.word = Word::Short;
        assert!(told(&room).is_empty(), "that is told by another rule");
    }
}

//! What was struck, drilled or cut no longer moves, and a plan that moves away from it costs a second hole.
//! The plan is not yet held to what was done, so that is told wherever a wall has facts, of whichever option:
//! a hole drilled for one is there in all (chosen, on the safe side).

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_: &Job, wall: &Wall, _: &Plan) -> Vec<Finding> {
    let told = (!wall.facts.is_empty()).then(|| Finding {
        level: Level::Caution,
        subject: wall.id.whole(),
        what: What::FactsNotHeld { count: wall.facts.len() },
        mend: Mend::OnSite,
    });
    told.into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::fact::{Fact, FactState, MarkId, Spot};
    use crate::subject::Id;
    use crate::tape::Offset;

    #[test]
    fn what_was_done_is_never_passed_over() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.wall_mut().facts.push(Fact {
            id: Id::new("fact-1"),
            mark: MarkId::of(Id::new("display-1").part("hole-1")).unwrap(),
            option: Some(Id::new("option-9")),
            state: FactState::Drilled,
            planned: Spot { x: Offset(mm(1800.0)), y: Offset(mm(1630.0)) },
            went: None,
            across: None,
            upright: None,
            upright_at_right: None,
        });
        let caution = (Level::Caution, "wall-1".to_owned(), What::FactsNotHeld { count: 1 });
        assert_eq!(room.told(check), [caution]);
    }
}

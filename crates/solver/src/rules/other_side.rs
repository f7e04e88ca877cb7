//! What is drilled or cut into ends somewhere: outside there is a weather face, at a neighbour, shaft or
//! garage perhaps a fire-rated wall that must stay whole (common practice, no source). Not known counts as
//! the worse, and is told with neither word.

use super::breaking_in;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::{Beyond, Wall};
use crate::plan::Plan;
use crate::plan::mark::MarkWhat;

pub(super) fn check(_job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let (outside, neighbour) = match wall.beyond {
        Some(Beyond::Room) => return Vec::new(),
        Some(Beyond::Outside) => (true, false),
        Some(Beyond::Neighbour) => (false, true),
        Some(Beyond::NotKnown) | None => (false, false),
    };
    // A probe stays within the framing's face; a look makes way for the opening.
    let opened = breaking_in::marks(plan).any(|mark| {
        matches!(
            mark.what,
            MarkWhat::Hole { .. } | MarkWhat::Entry | MarkWhat::Exit | MarkWhat::Passage | MarkWhat::Look
        )
    });
    if !opened {
        return Vec::new();
    }
    vec![Finding {
        level: Level::Caution,
        subject: wall.id.whole(),
        what: What::OtherSide { outside, neighbour },
        mend: Mend::OnSite,
    }]
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn every_other_side_but_a_room_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        for (beyond, outside, neighbour) in [
            (Some(Beyond::Outside), true, false),
            (Some(Beyond::Neighbour), false, true),
            (Some(Beyond::NotKnown), false, false),
            (None, false, false),
        ] {
            room.wall_mut().beyond = beyond;
            let what = What::OtherSide { outside, neighbour };
            assert_eq!(room.told(check), [(Level::Caution, "wall-1".to_owned(), what)]);
        }
        room.plan.marks.retain(|mark| matches!(mark.what, MarkWhat::Probe { .. }));
        assert!(room.told(check).is_empty());
    }
}

//! Behind the face but not in a stud's way: a screw into a sliding door's pocket scores or jams the door, and
//! a box in the other side of the wall has cables on its back (common practice, no source).

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for (_, mounted, _) in hung::mounted(job, wall, plan) {
        for hole in &mounted.holes {
            let Some(id) = &hole.hidden else { continue };
            let Some(hidden) = plan.survey.hidden.iter().find(|hidden| hidden.id == *id) else { continue };
            let level = match hidden.kind {
                HiddenKind::PocketDoor => Level::Stop,
                HiddenKind::BoxBehind => Level::Caution,
                _ => continue,
            };
            let level = if hung::stays_empty(mounted, hole) { Level::Note } else { level };
            let what = What::BehindHole { hidden: id.clone(), kind: hidden.kind };
            told.push(Finding { level, subject: hole.subject.clone(), what, mend: Mend::Move });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::subject::Id;

    #[test]
    fn a_pocket_stops_and_a_box_warns() {
        assert!(Sample::good().told(check).is_empty());
        for (kind, level) in [(HiddenKind::PocketDoor, Level::Stop), (HiddenKind::BoxBehind, Level::Caution)]
        {
            let mut room = Sample::good();
            room.hide_behind_first_hole("hidden-1", kind);
            let what = What::BehindHole { hidden: Id::new("hidden-1"), kind };
            assert_eq!(room.told(check), [(level, "display-1.hole-1".to_owned(), what)]);
        }
        let mut room = Sample::good();
        room.hide_behind_first_hole("hidden-1", HiddenKind::Pipe);
        assert!(room.told(check).is_empty(), "a pipe is another rule's");
    }
}

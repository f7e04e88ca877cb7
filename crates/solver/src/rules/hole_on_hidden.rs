//! A hole over something hidden would be drilled into it: pipes leak, cables kill, flues and ducts are not to
//! be pierced (common practice, no source). Timber that is no stud (a block, a header, a brace) is not hurt,
//! but does not count as one either: a caution (chosen).

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
                // A rule of its own tells of these.
                HiddenKind::PocketDoor | HiddenKind::BoxBehind => continue,
                HiddenKind::FireBlock | HiddenKind::Header | HiddenKind::Brace => Level::Caution,
                HiddenKind::Pipe
                | HiddenKind::Drain
                | HiddenKind::Cable
                | HiddenKind::Duct
                | HiddenKind::Flue
                | HiddenKind::Other => Level::Stop,
            };
            let what = What::HoleOnHidden { hidden: id.clone(), kind: hidden.kind };
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
    fn a_hole_on_a_pipe_stops_and_on_a_block_warns() {
        assert!(Sample::good().told(check).is_empty());
        for (kind, level) in [(HiddenKind::Pipe, Level::Stop), (HiddenKind::FireBlock, Level::Caution)] {
            let mut room = Sample::good();
            room.hide_behind_first_hole("hidden-1", kind);
            let what = What::HoleOnHidden { hidden: Id::new("hidden-1"), kind };
            assert_eq!(room.told(check), [(level, "display-1.hole-1".to_owned(), what)]);
        }
    }

    #[test]
    fn what_lies_beside_the_holes_is_not_told() {
        let mut room = Sample::good();
        room.hide_behind_first_hole("hidden-1", HiddenKind::Cable);
        room.mounted().holes[0].hidden = None;
        assert!(room.told(check).is_empty());
    }
}

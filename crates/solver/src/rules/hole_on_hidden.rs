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
                HiddenKind::FireBlock | HiddenKind::Header | HiddenKind::Brace | HiddenKind::StudOpening => {
                    Level::Caution
                }
                HiddenKind::Pipe
                | HiddenKind::Drain
                | HiddenKind::Cable
                | HiddenKind::Duct
                | HiddenKind::Flue
                | HiddenKind::Other => Level::Stop,
            };
            // A hole that stays empty, and that nobody asked for, is not drilled.
            let level = if hung::stays_empty(mounted, hole) { Level::Note } else { level };
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
    use crate::job::kit::FastenerKind;
    use crate::plan::piece::Meets;
    use crate::plan::verdict::{BitFrom, EmptyWhy, FastenerPlan, LeftEmpty, Required};
    use crate::subject::Id;
    use crate::units::Length;

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
    fn a_hole_that_stays_empty_is_only_noted() {
        let mut room = Sample::good();
        room.hide_behind_first_hole("hidden-1", HiddenKind::Pipe);
        let mounted = room.mounted();
        let hole = mounted.holes[0].clone();
        mounted.fastening.fasteners = vec![FastenerPlan {
            hole: Id::new("hole-2"),
            subject: Id::new("display-1").part("hole-2"),
            stock: Id::new("lag-1"),
            kind: FastenerKind::Lag,
            diameter: Length::inches(0.3125),
            length: Length::inches(3.0),
            lead: None,
            bit: BitFrom::UsualSet,
            shank: None,
            depth: None,
            by_hand: false,
            asked: None,
        }];
        let why = EmptyWhy::Meets(Meets::Hidden);
        let empty = LeftEmpty { hole: hole.id, subject: hole.subject, why, wanted: false };
        mounted.fastening.left_empty = vec![empty];
        let level = |room: &Sample| room.told(check)[0].0;
        assert_eq!(level(&room), Level::Note);
        room.mounted().fastening.left_empty[0].wanted = true;
        assert_eq!(level(&room), Level::Stop, "somebody chose it");
        room.mounted().fastening.left_empty[0].wanted = false;
        room.mounted().fastening.verdict.required = Required::NotMet;
        assert_eq!(level(&room), Level::Stop, "its maker may ask for it");
    }

    #[test]
    fn what_lies_beside_the_holes_is_not_told() {
        let mut room = Sample::good();
        room.hide_behind_first_hole("hidden-1", HiddenKind::Cable);
        room.mounted().holes[0].hidden = None;
        assert!(room.told(check).is_empty());
    }
}

//! Swung out on its arm, a piece's far edge reaches past where it hangs: it meets a side wall, a door or
//! curtain, or trim that stands out farther than its back (common practice, no source).
//!
//! The arm is taken as one link from the plate's middle, the head turned so that the piece is parallel to the
//! wall: its edge then reaches sideways by the arm's share plus half the piece's width. Any depth from the
//! parked one outward may be met on the way, so depth clears nothing (chosen, on the safe side).

use super::hung::{self, Hung};
use super::plane::proud_of;
use super::side::gap;
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::{Direction, Span};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::mount::{Arm, Mount, MountKind};
use crate::job::wall::{End, Wall};
use crate::numeric::sine;
use crate::plan::Plan;
use crate::subject::Subject;
use crate::tolerance::SAME_PLACE_MM;
use crate::units::{Angle, Length};

/// How far an arm reaches where nobody measured it: 24 in, as the longer ones do (chosen).
const REACH_NOT_GIVEN_MM: f64 = 609.6;

/// How far an arm swings where nobody measured it: right against the wall (chosen: nothing is worse).
const HINGE_NOT_GIVEN_DEG: f64 = 90.0;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = hung::all(job, wall, plan);
    let mut told = Vec::new();
    for (hung, mounted, mount) in hung::mounted(job, wall, plan) {
        let Some(sideways) = reach_sideways(mount) else { continue };
        let half = hung.at.outline.width() / 2.0;
        let swept = Span::about(mounted.frame.origin.x, (sideways + half) * 2.0);
        for (other, side) in met(wall, plan, &all, &hung, swept) {
            let what = What::SwingMeets { other, side };
            told.push(Finding { level: Level::Caution, subject: hung.at.id.whole(), what, mend: Mend::Move });
        }
    }
    told
}

/// How far to either side of the plate's middle the arm carries the piece's middle; `None` without an arm.
fn reach_sideways(mount: &Mount) -> Option<Length> {
    let unknown = Arm::default();
    let arm = match (&mount.arm, mount.kind) {
        (Some(arm), _) => arm,
        (None, MountKind::Arm) => &unknown,
        (None, _) => return None,
    };
    let reach = arm.reach.unwrap_or(Length::millimetres(REACH_NOT_GIVEN_MM));
    let hinge = arm.hinge.unwrap_or(Angle::degrees(HINGE_NOT_GIVEN_DEG));
    // Past a right angle the way there led through it.
    Some(reach * sine(Angle::degrees(hinge.deg().clamp(0.0, 90.0))))
}

/// What lies in the stretch that a piece sweeps, beside where it hangs, and on which side.
fn met(
    wall: &Wall,
    plan: &Plan,
    all: &[Hung<'_>],
    piece: &Hung<'_>,
    swept: Span,
) -> Vec<(Subject, Direction)> {
    let survey = &plan.survey;
    let own = piece.bounds();
    let mut found = Vec::new();
    let ends = [
        (Direction::Left, survey.left_end, "left", survey.outline.left - swept.from),
        (Direction::Right, survey.right_end, "right", swept.to - survey.outline.right),
    ];
    for (side, end, part, past) in ends {
        if end == End::InsideCorner && past.mm() > SAME_PLACE_MM {
            found.push((wall.id.part(part), side));
        }
    }
    let centre = piece.at.outline.centre();
    let features = survey.features.iter().filter(|feature| {
        matches!(feature.kind, FeatureKind::Door | FeatureKind::Curtain)
            || proud_of(survey, centre, feature) > piece.stand_off()
    });
    let features = features.map(|feature| (feature.id.whole(), feature.rect));
    let others = all
        .iter()
        .filter(|other| other.at.id != piece.at.id && !other.hangs_on(piece) && !piece.hangs_on(other));
    let others = others.map(|other| (other.at.id.whole(), other.bounds()));
    for (subject, rect) in features.chain(others) {
        if !rect.upright().overlaps(own.upright()) || !rect.across().overlaps(swept) {
            continue;
        }
        for side in [Direction::Left, Direction::Right] {
            if gap(own, rect, side).mm() >= -SAME_PLACE_MM {
                found.push((subject.clone(), side));
            }
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;

    fn on_arm(reach: Option<f64>, hinge: Option<f64>) -> Sample {
        let mut room = Sample::good();
        room.job.mounts[0].arm =
            Some(Arm { reach: reach.map(mm), hinge: hinge.map(Angle::degrees), ..Arm::default() });
        room
    }

    fn caution(other: &str, side: Direction) -> (Level, String, What) {
        let what = What::SwingMeets { other: Subject::read(other).unwrap(), side };
        (Level::Caution, "display-1".to_owned(), what)
    }

    #[test]
    fn both_side_walls_are_met_alike() {
        // 600 mm of half width and 1400 mm of arm just touch both walls, 2000 mm from the plate's middle.
        assert!(on_arm(Some(1400.0), Some(90.0)).told(check).is_empty());
        let both = [caution("wall-1.left", Direction::Left), caution("wall-1.right", Direction::Right)];
        assert_eq!(on_arm(Some(1401.0), Some(90.0)).told(check), both);
        assert_eq!(on_arm(Some(1401.0), None).told(check), both, "a hinge not given swings as far as any");
        assert!(on_arm(Some(1401.0), Some(80.0)).told(check).is_empty());
        let mut open = on_arm(Some(1401.0), None);
        (open.plan.survey.left_end, open.plan.survey.right_end) = (End::OutsideCorner, End::Open);
        assert!(open.told(check).is_empty());
    }

    #[test]
    fn a_door_is_met_where_the_edge_reaches_it() {
        for (side, across) in [(Direction::Left, (500.0, 1199.0)), (Direction::Right, (2801.0, 3500.0))] {
            // Both are 801 mm from the plate's middle; with 30 degrees half of the reach goes sideways.
            let mut room = on_arm(Some(400.0), Some(30.0));
            room.feature("window-1", FeatureKind::Window, across, (900.0, 2000.0), 31.0);
            room.feature("door-1", FeatureKind::Door, across, (0.0, 2000.0), 19.0);
            assert!(room.told(check).is_empty());
            room.job.mounts[0].arm.as_mut().unwrap().reach = Some(mm(404.0));
            assert_eq!(room.told(check), [caution("window-1", side), caution("door-1", side)]);
            room.plan.survey.features[0].proud = mm(29.0);
            assert_eq!(room.told(check), [caution("door-1", side)], "the back passes lower trim");
        }
    }

    #[test]
    fn a_mount_without_an_arm_does_not_swing() {
        let mut room = Sample::good();
        room.feature("curtain-1", FeatureKind::Curtain, (1100.0, 1300.0), (0.0, 2200.0), 100.0);
        assert!(room.told(check).is_empty());
        room.job.mounts[0].kind = MountKind::Arm;
        assert_eq!(room.told(check), [caution("curtain-1", Direction::Left)]);
    }
}

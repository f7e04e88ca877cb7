//! A plate is meant to be out of sight: where it goes past the piece it hangs the customer sees it (common
//! practice, no source).

use super::hung;
use super::side::{SIDES, past};
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::{Frame, Point};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for (hung, mounted, _) in hung::mounted(job, wall, plan) {
        // A plate that was not measured has no edge to be seen.
        if mounted.solids.is_empty() {
            continue;
        }
        // Both are turned alike: turned back about the piece's middle, they are compared as they are.
        let (origin, plate) = (hung.at.frame.origin, mounted.frame.origin);
        let level = Frame { origin, roll: -hung.at.frame.roll };
        let back: Point = level.to_wall(plate.x - origin.x, plate.y - origin.y);
        let rect = mounted.plate.moved(back.x - plate.x, back.y - plate.y);
        for side in SIDES {
            let by = past(rect, hung.at.outline, side);
            if by.mm() > SAME_PLACE_MM {
                let what = What::PlateShows { side, by };
                let subject = hung.at.id.whole();
                told.push(Finding { level: Level::Caution, subject, what, mend: Mend::Choose });
            }
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::geometry::Direction;
    use crate::units::Angle;

    #[test]
    fn a_plate_past_any_edge_shows() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let plate = room.mounted().plate;
        for (side, right, up) in [
            (Direction::Left, -360.0, 0.0),
            (Direction::Right, 360.0, 0.0),
            (Direction::Up, 0.0, 210.0),
            (Direction::Down, 0.0, -310.0),
        ] {
            room.mounted().plate = plate.moved(mm(right), mm(up));
            let what = What::PlateShows { side, by: mm(10.0) };
            assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), what)]);
        }
    }

    #[test]
    fn a_plate_turned_with_its_piece_shows_no_more_than_before() {
        let mut room = Sample::good();
        let roll = Angle::degrees(3.0);
        // As wide as the piece, its top 0.1 mm below the piece's: on the wall its corners reach past it.
        let frame = Frame { roll, ..room.plan.pieces[0].frame };
        room.plan.pieces[0].frame = frame;
        let origin = frame.to_wall(mm(0.0), mm(349.9));
        let plate = super::super::sample::rect((-599.9, 599.9), (-200.0, 0.0)).moved(origin.x, origin.y);
        let mounted = room.mounted();
        (mounted.frame, mounted.plate) = (Frame { origin, roll }, plate);
        assert!(room.told(check).is_empty(), "{:?}", room.told(check));
        room.mounted().plate.top += mm(0.2);
        assert!(matches!(room.told(check)[..], [(_, _, What::PlateShows { side: Direction::Up, .. })]));
    }
}

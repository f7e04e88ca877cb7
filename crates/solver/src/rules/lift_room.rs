//! A piece is brought in above its plate, or beside it, and moved on: without that room it never gets on
//! (common practice, no source). How much it needs is in the mount's instructions.

use super::hung;
use super::room::room_beside;
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::Direction;
use crate::job::Job;
use crate::job::mount::LiftDirection;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = hung::all(job, wall, plan);
    let mut told = Vec::new();
    for (hung, _, mount) in hung::mounted(job, wall, plan) {
        let Some(lift) = &mount.lift else { continue };
        let side = match lift.direction {
            LiftDirection::Down => Direction::Up,
            LiftDirection::Right => Direction::Left,
            LiftDirection::Left => Direction::Right,
        };
        let Some(room) = room_beside(&plan.survey, &all, &hung, side) else { continue };
        if (lift.by - room).mm() > SAME_PLACE_MM {
            let what = What::NoLiftRoom { side, room, needs: lift.by };
            told.push(Finding { level: Level::Stop, subject: hung.at.id.whole(), what, mend: Mend::Move });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::feature::FeatureKind;
    use crate::job::mount::Lift;

    fn stop(side: Direction) -> (Level, String, What) {
        let what = What::NoLiftRoom { side, room: mm(40.0), needs: mm(41.0) };
        (Level::Stop, "display-1".to_owned(), what)
    }

    #[test]
    fn the_room_is_looked_for_where_the_piece_comes_from() {
        for (direction, side, across, upright) in [
            (LiftDirection::Down, Direction::Up, (1000.0, 3000.0), (1890.0, 2000.0)),
            (LiftDirection::Right, Direction::Left, (1200.0, 1360.0), (1000.0, 2000.0)),
            (LiftDirection::Left, Direction::Right, (2640.0, 2800.0), (1000.0, 2000.0)),
        ] {
            let mut room = Sample::good();
            room.feature("shelf-1", FeatureKind::Shelf, across, upright, 150.0);
            assert!(room.told(check).is_empty());
            room.job.mounts[0].lift = Some(Lift { direction, by: mm(40.0) });
            assert!(room.told(check).is_empty());
            room.job.mounts[0].lift = Some(Lift { direction, by: mm(41.0) });
            assert_eq!(room.told(check), [stop(side)]);
        }
    }
}

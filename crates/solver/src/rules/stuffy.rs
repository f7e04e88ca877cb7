//! A display gives off heat: with too little room above and beside it there is no air to take that (common practice, no
//! source; its maker's manual governs).

use super::hung;
use super::room::room_beside;
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::Direction;
use crate::job::Job;
use crate::job::piece::PieceKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::{AIR_MM, SAME_PLACE_MM};
use crate::units::Length;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = hung::all(job, wall, plan);
    let mut told = Vec::new();
    for hung in all.iter().filter(|hung| hung.piece.kind == PieceKind::Display) {
        for side in [Direction::Up, Direction::Left, Direction::Right] {
            let Some(room) = room_beside(&plan.survey, &all, hung, side) else { continue };
            if room.mm() < AIR_MM - SAME_PLACE_MM {
                let room = room.max(Length::default());
                told.push(Finding {
                    level: Level::Note,
                    subject: hung.at.id.whole(),
                    what: What::Stuffy { side, room },
                    mend: Mend::Move,
                });
            }
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::feature::FeatureKind;

    #[test]
    fn a_shelf_close_above_is_told() {
        let mut room = Sample::good();
        // The display's top is at 1850.
        room.feature("shelf-1", FeatureKind::Shelf, (1000.0, 3000.0), (1901.0, 1930.0), 300.0);
        assert!(room.told(check).is_empty());
        room.plan.survey.features.clear();
        room.feature("shelf-2", FeatureKind::Shelf, (1000.0, 3000.0), (1890.0, 1930.0), 300.0);
        let told = room.told(check).into_iter().map(|(_, _, what)| what).collect::<Vec<_>>();
        assert_eq!(told, [What::Stuffy { side: Direction::Up, room: mm(40.0) }]);
    }
}

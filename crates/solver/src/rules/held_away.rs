//! What is drilled or struck stays where it is, and what hangs there follows it. The customer agreed to a place: how
//! far the piece is from that is told, so that it is agreed anew or the wall is made good.

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let graduation = plan.style.length_of(1);
    let told = plan.pieces.iter().filter_map(|piece| {
        let held = piece.mount.as_ref()?.held.as_ref()?;
        let (right, up) = (piece.frame.origin.x - held.wished.x, piece.frame.origin.y - held.wished.y);
        // What a tape rounds is no move.
        let is_away = right.abs() > graduation || up.abs() > graduation;
        is_away.then(|| Finding {
            level: Level::Caution,
            subject: piece.id.whole(),
            what: What::HeldAway { by: held.by, right, up },
            mend: Mend::Move,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::geometry::Point;
    use crate::plan::piece::{Held, HeldBy};

    #[test]
    fn a_piece_held_off_its_wished_place_is_told_past_what_a_tape_rounds() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let at = room.plan.pieces[0].frame.origin;
        let mut held = |right: f64, up: f64| {
            let wished = Point::new(at.x - mm(right), at.y - mm(up));
            let by = HeldBy::Lines;
            room.mounted().held = Some(Held { by, across: true, upright: true, wished, misfits: Vec::new() });
            room.told(check)
        };
        assert!(held(1.5, -1.5).is_empty());
        for (right, up) in [(9.5, 0.0), (0.0, -6.5)] {
            let what = What::HeldAway { by: HeldBy::Lines, right: mm(right), up: mm(up) };
            assert_eq!(held(right, up), [(Level::Caution, "display-1".to_owned(), what)]);
        }
    }
}

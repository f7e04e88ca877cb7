//! Eyes that are no farther from the wall than the picture's face see nothing that could be told: a distance was
//! mistyped, or measured from elsewhere (derived).

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let near = plan.sight.iter().filter(|sight| sight.seen.is_none());
    let told = near.map(|sight| Finding {
        level: Level::Caution,
        subject: sight.seat.whole(),
        what: What::SeatTooNear { piece: sight.piece.clone() },
        mend: Mend::Measure,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::subject::Id;
    use crate::units::Length;

    #[test]
    fn a_seat_within_the_display_is_told() {
        let mut room = Sample::good();
        room.seat();
        assert!(room.told(check).is_empty());
        room.plan.sight[0].from_wall = Length::millimetres(30.0);
        room.plan.sight[0].seen = None;
        let what = What::SeatTooNear { piece: Id::new("display-1") };
        assert_eq!(room.told(check), [(Level::Caution, "seat-1".to_owned(), what)]);
    }
}

//! A level floor is a convention, not a measurement: heights read up from the floor are level only if the
//! floor is. A reading at each end of the level line settles it (common practice, no source).

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    if plan.pieces.is_empty() || plan.survey.floor.readings.len() >= 2 {
        return Vec::new();
    }
    vec![Finding {
        level: Level::Note,
        subject: wall.id.whole(),
        what: What::FloorNotRead,
        mend: Mend::Measure,
    }]
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn two_readings_are_asked_for() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        for _ in 0..2 {
            room.plan.survey.floor.readings.pop();
            assert_eq!(room.told(check), [(Level::Note, "wall-1".to_owned(), What::FloorNotRead)]);
        }
        room.plan.pieces.clear();
        assert!(room.told(check).is_empty());
    }
}

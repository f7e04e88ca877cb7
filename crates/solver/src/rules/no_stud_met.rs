//! A plate whose every hole misses the studs hangs on board alone, which counts for nothing here (chosen:
//! anchors in board have no part in a verdict). Walls built without studs are not asked for one.

use super::hung;
use super::plane::framing_at;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::framing::WallFraming;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    if !plan.framing.known {
        return Vec::new();
    }
    let missed = hung::mounted(job, wall, plan).filter(|(_, mounted, _)| {
        let studs = match framing_at(wall, &plan.survey, mounted.plate.centre()) {
            Some(WallFraming::Wood(_) | WallFraming::Steel(_) | WallFraming::NotKnown) | None => true,
            Some(
                WallFraming::Masonry(_)
                | WallFraming::Concrete(_)
                | WallFraming::Veneer
                | WallFraming::NoFraming,
            ) => false,
        };
        studs && !mounted.holes.is_empty() && mounted.studs_met() == 0
    });
    let told = missed.map(|(hung, ..)| Finding {
        level: Level::Caution,
        subject: hung.at.id.whole(),
        what: What::NoStudMet,
        mend: Mend::Move,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::framing::Masonry;
    use crate::plan::piece::Meets;

    #[test]
    fn one_stud_is_enough_and_none_is_told() {
        let mut room = Sample::good();
        room.mounted().holes[0].stud = None;
        assert!(room.told(check).is_empty());
        for hole in &mut room.mounted().holes {
            (hole.stud, hole.meets) = (None, Meets::Board);
        }
        let caution = [(Level::Caution, "display-1".to_owned(), What::NoStudMet)];
        assert_eq!(room.told(check), caution);
        room.wall_mut().framing = None;
        assert_eq!(room.told(check), caution, "not known counts as studs");
        room.wall_mut().framing = Some(WallFraming::Masonry(Masonry::default()));
        assert!(room.told(check).is_empty());
        room.wall_mut().framing = None;
        room.plan.framing.known = false;
        assert!(room.told(check).is_empty(), "that hits are missing is told by another rule");
    }
}

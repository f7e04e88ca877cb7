//! A wall at a bath, kitchen or laundry may hold supply and drain pipes anywhere (common practice, no
//! source): told where the face is to be broken.

use super::breaking_in;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    if wall.wet != Some(true) || breaking_in::marks(plan).next().is_none() {
        return Vec::new();
    }
    vec![Finding { level: Level::Caution, subject: wall.id.whole(), what: What::WetWall, mend: Mend::OnSite }]
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn a_wet_wall_is_told_where_it_is_opened() {
        let mut room = Sample::good();
        room.wall_mut().wet = Some(false);
        assert!(room.told(check).is_empty());
        room.wall_mut().wet = Some(true);
        assert_eq!(room.told(check), [(Level::Caution, "wall-1".to_owned(), What::WetWall)]);
        room.plan.marks.clear();
        assert!(room.told(check).is_empty());
    }
}

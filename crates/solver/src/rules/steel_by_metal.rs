//! On a wall framed in steel a probe that meets metal may have met a pipe, a duct or armoured cable as well as a stud
//! (common practice, no source): two heights and a magnet make a stud likely, not sure.

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::framing::WallFraming;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::framing::Known;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for (hung, mounted, _) in hung::mounted(job, wall, plan) {
        let studs = mounted.holes.iter().filter_map(|hole| plan.framing.studs.get(hole.stud?));
        let steel = |on| matches!(wall.framing_on(on), Some(WallFraming::Steel(_)));
        if studs.into_iter().any(|stud| stud.known == Known::Met && steel(stud.on.as_ref())) {
            let (subject, what) = (hung.at.id.whole(), What::SteelByMetal);
            told.push(Finding { level: Level::Caution, subject, what, mend: Mend::Measure });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::framing::SteelStuds;

    #[test]
    fn steel_met_by_metal_warns_of_pipes() {
        let mut room = Sample::good();
        room.plan.framing.studs.iter_mut().for_each(|stud| stud.known = Known::Met);
        assert!(room.told(check).is_empty(), "wood is met by wood");
        room.wall_mut().framing = Some(WallFraming::Steel(SteelStuds::default()));
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), What::SteelByMetal)]);
        room.plan.framing.studs.iter_mut().for_each(|stud| stud.known = Known::Inferred);
        assert!(room.told(check).is_empty(), "nothing is met");
    }
}

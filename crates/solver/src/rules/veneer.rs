//! Stone or brick veneer is a facing on ties or mortar: it carries its own weight and nothing else (common
//! practice, no source). What is behind it must be found and reached.

use super::hung;
use super::plane::framing_at;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::framing::WallFraming;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let on_veneer = hung::mounted(job, wall, plan).filter(|(_, mounted, _)| {
        let framing = framing_at(wall, &plan.survey, mounted.plate.centre());
        matches!(framing, Some(WallFraming::Veneer))
    });
    let told = on_veneer.map(|(hung, ..)| Finding {
        level: Level::Stop,
        subject: hung.at.id.whole(),
        what: What::Veneer,
        mend: Mend::OnSite,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::feature::FeatureKind;

    #[test]
    fn veneer_stops_on_the_wall_and_on_a_breast() {
        let stop = [(Level::Stop, "display-1".to_owned(), What::Veneer)];
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.wall_mut().framing = Some(WallFraming::Veneer);
        assert_eq!(room.told(check), stop);

        let mut room = Sample::good();
        room.feature("breast-1", FeatureKind::ChimneyBreast, (1200.0, 2800.0), (0.0, 2400.0), 300.0);
        assert!(room.told(check).is_empty(), "a breast is as the wall where nobody says otherwise");
        room.wall_mut().features[0].framing = Some(WallFraming::Veneer);
        assert_eq!(room.told(check), stop);
    }
}

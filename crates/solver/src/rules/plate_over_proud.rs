//! A plate lies flat on one plane: over trim, a box's cover or a breast's side it cannot be drawn tight
//! (common practice, no source).

use super::hung;
use super::plane::proud_of;
use super::turned::bounds;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for (hung, mounted, _) in hung::mounted(job, wall, plan) {
        let plate = bounds(mounted.frame, mounted.plate);
        for feature in plan.survey.features.iter().filter(|feature| feature.rect.overlaps(plate)) {
            let proud = proud_of(&plan.survey, plate.centre(), feature);
            if proud.mm() > SAME_PLACE_MM {
                let what = What::PlateOverProud { feature: feature.id.clone(), proud };
                let subject = hung.at.id.part("plate");
                told.push(Finding { level: Level::Stop, subject, what, mend: Mend::Move });
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
    use crate::subject::Id;

    #[test]
    fn trim_under_either_end_of_the_plate_stops() {
        for (beside, under) in [((1650.0, 1750.0), (1650.0, 1751.0)), ((2250.0, 2350.0), (2249.0, 2350.0))] {
            let mut room = Sample::good();
            room.feature("trim-0", FeatureKind::Trim, beside, (0.0, 2400.0), 12.0);
            room.feature("vent-1", FeatureKind::Vent, under, (1500.0, 1600.0), 0.0);
            assert!(room.told(check).is_empty());
            room.feature("trim-1", FeatureKind::Trim, under, (0.0, 2400.0), 12.0);
            let what = What::PlateOverProud { feature: Id::new("trim-1"), proud: mm(12.0) };
            assert_eq!(room.told(check), [(Level::Stop, "display-1.plate".to_owned(), what)]);
        }
    }

    #[test]
    fn a_breast_is_proud_only_from_beside_it() {
        let mut room = Sample::good();
        room.feature("breast-1", FeatureKind::ChimneyBreast, (1200.0, 2800.0), (0.0, 2400.0), 300.0);
        assert!(room.told(check).is_empty());
        room.plan.survey.features[0].rect.left = mm(2100.0);
        let what = What::PlateOverProud { feature: Id::new("breast-1"), proud: mm(300.0) };
        assert_eq!(room.told(check), [(Level::Stop, "display-1.plate".to_owned(), what)]);
    }
}

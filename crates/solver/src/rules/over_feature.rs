//! What a piece must not cover. A window or door is to be opened, an outlet or switch reached, a vent must
//! breathe and a thermostat feel the room's air (common practice, no source); what stands out farther than
//! the piece's back is simply in its way.

use super::hung;
use super::plane::proud_of;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for hung in hung::all(job, wall, plan) {
        let (outline, centre) = (hung.bounds(), hung.at.outline.centre());
        for feature in plan.survey.features.iter().filter(|feature| feature.rect.overlaps(outline)) {
            let in_the_way = proud_of(&plan.survey, centre, feature) - hung.stand_off();
            let level = match feature.kind {
                FeatureKind::Window | FeatureKind::Door => Level::Stop,
                _ if in_the_way.mm() > SAME_PLACE_MM => Level::Stop,
                FeatureKind::Outlet | FeatureKind::Switch | FeatureKind::Vent | FeatureKind::Thermostat => {
                    Level::Caution
                }
                _ => continue,
            };
            let what = What::OverFeature { feature: feature.id.clone(), kind: feature.kind };
            told.push(Finding { level, subject: hung.at.id.whole(), what, mend: Mend::Move });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::subject::Id;

    fn told_over(kind: FeatureKind, proud: f64) -> Option<Level> {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.feature("thing-1", kind, (1300.0, 1500.0), (1500.0, 1600.0), proud);
        let told = room.told(check);
        let what = What::OverFeature { feature: Id::new("thing-1"), kind };
        assert!(told.iter().all(|(_, subject, told)| subject == "display-1" && *told == what), "{told:?}");
        assert!(told.len() < 2);
        told.first().map(|(level, ..)| *level)
    }

    #[test]
    fn openings_stop_and_boxes_warn() {
        assert_eq!(told_over(FeatureKind::Window, 0.0), Some(Level::Stop));
        assert_eq!(told_over(FeatureKind::Door, 19.0), Some(Level::Stop));
        for kind in [FeatureKind::Outlet, FeatureKind::Switch, FeatureKind::Vent, FeatureKind::Thermostat] {
            assert_eq!(told_over(kind, 6.0), Some(Level::Caution));
        }
    }

    #[test]
    fn the_rest_is_in_the_way_from_the_stand_off_on() {
        assert_eq!(told_over(FeatureKind::Trim, 30.0), None);
        assert_eq!(told_over(FeatureKind::Trim, 31.0), Some(Level::Stop));
        assert_eq!(told_over(FeatureKind::Thermostat, 31.0), Some(Level::Stop));
    }

    #[test]
    fn a_piece_on_a_breast_is_not_over_it() {
        let mut room = Sample::good();
        room.feature("breast-1", FeatureKind::ChimneyBreast, (1300.0, 2700.0), (0.0, 2400.0), 300.0);
        assert!(room.told(check).is_empty());
        room.plan.survey.features[0].rect.right = crate::units::Length::millimetres(1500.0);
        assert_eq!(room.told(check)[0].0, Level::Stop, "beside the breast and over its side");
    }
}

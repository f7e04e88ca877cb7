//! On which plane something is, and how far other things stand out of that plane.
//!
//! A chimney breast and panelling are planes of their own: a plate on the breast is not in the breast's way.

use crate::geometry::Point;
use crate::job::feature::FeatureKind;
use crate::job::framing::WallFraming;
use crate::job::wall::Wall;
use crate::plan::survey::{PlacedFeature, Survey};
use crate::units::Length;

/// The chimney breast or panelling at a place, the one that stands out most; `None` on the wall itself.
pub(super) fn plane_at(survey: &Survey, place: Point) -> Option<&PlacedFeature> {
    let planes = survey.features.iter().filter(|feature| {
        matches!(feature.kind, FeatureKind::ChimneyBreast | FeatureKind::Panelling)
            && feature.rect.holds(place)
    });
    planes.max_by(|a, b| stands_out(survey, a).mm().total_cmp(&stands_out(survey, b).mm()))
}

/// How far a feature stands out of the wall itself: its breast's projection counts.
fn stands_out(survey: &Survey, feature: &PlacedFeature) -> Length {
    let breast = feature.on.as_ref().and_then(|id| survey.features.iter().find(|breast| breast.id == *id));
    feature.proud + breast.map(|breast| breast.proud).unwrap_or_default()
}

/// How far a feature stands out of the plane at a place; negative for what lies behind that plane.
pub(super) fn proud_of(survey: &Survey, place: Point, feature: &PlacedFeature) -> Length {
    let plane = plane_at(survey, place).map(|plane| stands_out(survey, plane)).unwrap_or_default();
    stands_out(survey, feature) - plane
}

/// What the wall, or the chimney breast at a place, is made of.
pub(super) fn framing_at<'a>(wall: &'a Wall, survey: &Survey, place: Point) -> Option<&'a WallFraming> {
    wall.framing_on(survey.breast_at(place.x, Some(place.y)).map(|breast| &breast.id))
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::subject::Id;

    #[test]
    fn what_is_on_a_breast_stands_out_with_it() {
        let mut room = Sample::good();
        room.feature("breast-1", FeatureKind::ChimneyBreast, (1200.0, 2800.0), (0.0, 2400.0), 300.0);
        room.feature("mantel-1", FeatureKind::Mantel, (1400.0, 2600.0), (1000.0, 1050.0), 150.0).on =
            Some(Id::new("breast-1"));
        room.feature("window-1", FeatureKind::Window, (100.0, 900.0), (900.0, 2000.0), 20.0);
        let survey = &room.plan.survey;
        let (on_breast, beside) = (Point::new(mm(2000.0), mm(1500.0)), Point::new(mm(600.0), mm(1500.0)));
        let proud =
            |place| survey.features.iter().map(|f| proud_of(survey, place, f).mm()).collect::<Vec<_>>();
        assert_eq!(proud(on_breast), [0.0, 150.0, -280.0]);
        assert_eq!(proud(beside), [300.0, 450.0, 20.0]);
    }
}

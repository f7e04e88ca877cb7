//! A door that opens against the wall swings over as much of it as it is wide: what stands out there is met (common
//! practice, no source). Which way it opens nobody says: both sides are told.

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::{Rect, Span};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::survey::PlacedFeature;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for hung in hung::all(job, wall, plan) {
        let bounds = hung.bounds();
        let doors = plan.survey.features.iter().filter(|feature| feature.kind == FeatureKind::Door);
        for door in doors.filter(|door| swept(door).into_iter().any(|swept| swept.overlaps(bounds))) {
            told.push(Finding {
                level: Level::Note,
                subject: hung.at.id.whole(),
                what: What::DoorMeets { door: door.id.clone() },
                mend: Mend::OnSite,
            });
        }
    }
    told
}

/// What it lies over when it is open, on either side.
fn swept(door: &PlacedFeature) -> [Rect; 2] {
    let (rect, width) = (door.rect, door.rect.width());
    [Span::new(rect.left - width, rect.left), Span::new(rect.right, rect.right + width)]
        .map(|across| Rect::new(across, rect.upright()))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn a_door_as_wide_as_it_is_far_away_is_told() {
        let mut room = Sample::good();
        // The display begins at 1400.
        room.feature("door-1", FeatureKind::Door, (100.0, 740.0), (0.0, 2030.0), 20.0);
        assert!(room.told(check).is_empty(), "it ends at 1380");
        room.plan.survey.features.clear();
        room.feature("door-2", FeatureKind::Door, (100.0, 760.0), (0.0, 2030.0), 20.0);
        assert_eq!(room.told(check).len(), 1, "it ends at 1420");
    }
}

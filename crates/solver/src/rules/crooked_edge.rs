//! A piece hung at a gap from an edge that is out of level shows two gaps, whether it hangs level or splits
//! the difference: the customer chooses with both before their eyes (common practice, no source).

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::place::UpDown;
use crate::job::rule::{Follow, UprightRule};
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::same;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for hung in hung::all(job, wall, plan) {
        let Some(UprightRule::Gap { side, of, follow, .. }) = hung.hanging.map(|hanging| &hanging.upright)
        else {
            continue;
        };
        let Some(feature) = plan.survey.features.iter().find(|feature| feature.id == *of) else { continue };
        let ends = match side {
            UpDown::Up => feature.top_ends,
            UpDown::Down => feature.bottom_ends,
        };
        if same(ends.0, ends.1) {
            continue;
        }
        let (half_width, half_height) = (hung.at.outline.width() / 2.0, hung.at.outline.height() / 2.0);
        let gap_at = |sign: f64| match side {
            UpDown::Up => {
                let corner = hung.at.frame.to_wall(half_width * sign, -half_height);
                corner.y - feature.top_at(corner.x)
            }
            UpDown::Down => {
                let corner = hung.at.frame.to_wall(half_width * sign, half_height);
                feature.bottom_at(corner.x) - corner.y
            }
        };
        let what = What::CrookedEdge {
            feature: of.clone(),
            left: gap_at(-1.0),
            right: gap_at(1.0),
            split: *follow == Follow::SplitTheDifference,
        };
        told.push(Finding { level: Level::Note, subject: hung.at.id.whole(), what, mend: Mend::OnSite });
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::feature::FeatureKind;
    use crate::numeric::slope_angle;
    use crate::subject::Id;

    fn beside_shelf(side: UpDown, follow: Follow) -> Sample {
        let mut room = Sample::good();
        let upright = match side {
            UpDown::Up => (1000.0, 1050.0),
            UpDown::Down => (1950.0, 2000.0),
        };
        room.feature("shelf-1", FeatureKind::Shelf, (1000.0, 3000.0), upright, 150.0);
        let by = mm(100.0);
        room.hanging().upright = UprightRule::Gap { side, of: Id::new("shelf-1"), by, follow };
        room
    }

    /// The gaps at both ends, to a thousandth of a millimetre.
    fn gaps(room: &Sample, split: bool) -> (f64, f64) {
        let told = room.told(check);
        let [(Level::Note, subject, What::CrookedEdge { feature, left, right, split: told_split })] =
            &told[..]
        else {
            panic!("{told:?}")
        };
        assert_eq!((subject.as_str(), feature.as_str(), *told_split), ("display-1", "shelf-1", split));
        let round = |length: crate::units::Length| (length.mm() * 1e3).round() / 1e3;
        (round(*left), round(*right))
    }

    #[test]
    fn both_gaps_over_and_under_a_crooked_shelf_are_told() {
        let mut over = beside_shelf(UpDown::Up, Follow::TrueLevel);
        assert!(over.told(check).is_empty());
        // 20 mm over 2000 mm: at 400 and 1600 mm along it 4 and 16 mm.
        over.plan.survey.features[0].top_ends = (mm(1040.0), mm(1060.0));
        assert_eq!(gaps(&over, false), (106.0, 94.0));
        over.plan.survey.features[0].top_ends = (mm(1060.0), mm(1040.0));
        assert_eq!(gaps(&over, false), (94.0, 106.0));
        let mut under = beside_shelf(UpDown::Down, Follow::TrueLevel);
        under.plan.survey.features[0].bottom_ends = (mm(1940.0), mm(1960.0));
        assert_eq!(gaps(&under, false), (94.0, 106.0));
    }

    #[test]
    fn split_the_gaps_differ_by_half_as_much() {
        let mut room = beside_shelf(UpDown::Up, Follow::SplitTheDifference);
        room.plan.survey.features[0].top_ends = (mm(1040.0), mm(1060.0));
        room.plan.pieces[0].frame.roll = slope_angle(20.0 / 2000.0) / 2.0;
        let (left, right) = gaps(&room, true);
        assert!((left - 103.0).abs() < 0.05 && (right - 97.0).abs() < 0.05, "{left} {right}");
    }
}

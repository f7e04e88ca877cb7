//! A plate drawn down over a hump bends, rocks or stands off at its ends, and its level line with it. The
//! threshold is 1/8 in (chosen: more than washers or the plate's own give take up).

use super::hung;
use super::turned::bounds;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::units::Length;

/// 1/8 in: see above.
const HUMP_MM: f64 = 3.175;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for (hung, mounted, _) in hung::mounted(job, wall, plan) {
        let plate = bounds(mounted.frame, mounted.plate);
        let under =
            plan.survey.humps.iter().filter(|hump| {
                plate.across().holds(hump.x) && hump.y.is_none_or(|y| plate.upright().holds(y))
            });
        let highest = under.map(|hump| hump.proud).reduce(Length::max);
        if let Some(proud) = highest.filter(|proud| proud.mm() > HUMP_MM) {
            let what = What::PlateOverHump { proud };
            let subject = hung.at.id.part("plate");
            told.push(Finding { level: Level::Caution, subject, what, mend: Mend::OnSite });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::plan::survey::PlacedHump;
    use crate::subject::Id;

    fn hump(x: f64, y: Option<f64>, proud: f64) -> PlacedHump {
        PlacedHump { id: Id::new("flat-1"), x: mm(x), y: y.map(mm), proud: mm(proud) }
    }

    #[test]
    fn the_highest_hump_under_the_plate_is_told() {
        let mut room = Sample::good();
        room.plan.survey.humps = vec![
            hump(1749.0, None, 9.0),
            hump(2251.0, None, 9.0),
            hump(2000.0, Some(1449.0), 9.0),
            hump(2000.0, Some(1651.0), 9.0),
            hump(2000.0, None, 3.175),
            hump(2000.0, None, -9.0),
        ];
        assert!(room.told(check).is_empty());
        room.plan.survey.humps.extend([hump(1750.0, None, 4.0), hump(2250.0, Some(1500.0), 5.0)]);
        let what = What::PlateOverHump { proud: mm(5.0) };
        assert_eq!(room.told(check), [(Level::Caution, "display-1.plate".to_owned(), what)]);
    }
}

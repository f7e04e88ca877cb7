//! A piece hung level over a floor that is not looks crooked beside it, and heights measured up from the
//! floor differ from end to end: better told before the customer asks (common practice, no source).

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let (floor, graduation) = (&plan.survey.floor, plan.style.length_of(1));
    let mut told = Vec::new();
    for hung in hung::all(job, wall, plan) {
        let outline = hung.at.outline;
        let rise = floor.y_at(outline.right) - floor.y_at(outline.left);
        if rise.abs() > graduation {
            let what = What::FloorOutOfLevel { rise };
            let subject = hung.at.id.whole();
            told.push(Finding { level: Level::Caution, subject, what, mend: Mend::OnSite });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;

    #[test]
    fn a_rise_over_the_pieces_width_is_told_with_its_sign() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        for rise in [19.0, -19.0] {
            room.plan.survey.floor.readings[1].y = mm(rise);
            let told = room.told(check);
            // 1200 of the 3800 mm between the readings.
            assert!(
                matches!(&told[..], [(Level::Caution, subject, What::FloorOutOfLevel { rise: told })]
                if subject == "display-1" && (told.mm() - rise * 1200.0 / 3800.0).abs() < 1e-9),
                "{told:?}"
            );
        }
        // 1/16 in is 1.5875 mm, reached at 5.027 over the whole.
        room.plan.survey.floor.readings[1].y = mm(5.0);
        assert!(room.told(check).is_empty());
    }
}

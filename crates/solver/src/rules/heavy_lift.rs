//! More than one person should lift is lifted by two (the revised NIOSH lifting equation). A flat piece cannot be held
//! nearer than 40 cm from the ankles to the hands, and is taken up from hands at 50 cm (chosen): its middle goes where
//! it hangs.

use super::hung;
use crate::clearances::lifting::{Lift, limit};
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::{LIFT_BEGUN_MM, LIFT_OUT_MM};
use crate::units::{Angle, Length, Mass};

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let told = hung::all(job, wall, plan).into_iter().filter_map(|hung| {
        let middle = hung.at.outline.centre();
        // What nobody weighed is told of as missing.
        let mass = hung.piece.mass?;
        let limit = one_person(middle.y - plan.survey.floor.y_at(middle.x));
        (mass.kg() > limit.kg()).then(|| Finding {
            level: Level::Caution,
            subject: hung.at.id.whole(),
            what: What::HeavyLift { mass, limit },
            mend: Mend::OnSite,
        })
    });
    told.collect()
}

/// What one person should lift to hands so high above the floor: the less of where it begins and where it ends.
fn one_person(hands: Length) -> Mass {
    let begun = Length::millimetres(LIFT_BEGUN_MM);
    let over = (hands - begun).abs();
    let at = |hands: Length| {
        limit(&Lift { out: Length::millimetres(LIFT_OUT_MM), hands, over, twist: Angle::default() })
    };
    let (first, last) = (at(begun), at(hands));
    if last.kg() < first.kg() { last } else { first }
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn what_one_should_not_lift_is_lifted_by_two() {
        // Hands at 140 cm: out 0.625; begun at 50 cm height 0.925, ended 1 - 0.003 x 65 = 0.805; over 90 cm 0.87.
        let by_hand = 23.0 * 0.625 * 0.805 * 0.87;
        let found = one_person(Length::millimetres(1400.0)).kg();
        assert!((found - by_hand).abs() < 1e-9, "{found}, by hand {by_hand}");
        assert_eq!(one_person(Length::millimetres(1790.0)).kg(), 0.0, "nothing is lifted over the head");
        let mut room = Sample::good();
        let mut told = |kg: f64| {
            room.job.pieces[0].mass = Some(Mass::kilograms(kg));
            room.told(check).len()
        };
        // The display's middle hangs at 1500 mm: 23 x 0.625 x 0.775 x (0.82 + 0.045) = 9.636.
        assert_eq!((told(9.6), told(9.7)), (0, 1));
    }
}

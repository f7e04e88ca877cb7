//! Nothing that was read recommends looking up at a picture. A review room keeps its viewers within 15 degrees of the
//! picture's perpendicular (SMPTE 196M-2003 clause 9, as quoted): a picture whose middle is higher than that is told
//! for the seat that has to. A place to stand is left alone: nobody stands there for long (chosen).

use crate::finding::{Finding, Level, Mend, What};
use crate::handbook::viewing::REVIEW_OFF;
use crate::job::Job;
use crate::job::seat::Posture;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let seated = plan.sight.iter().filter(|sight| sight.posture == Posture::Seated);
    let told = seated.filter_map(|sight| {
        let up = sight.seen.as_ref()?.up;
        (up.deg() > REVIEW_OFF.value).then(|| Finding {
            level: Level::Caution,
            subject: sight.seat.whole(),
            what: What::LooksUp { piece: sight.piece.clone(), up },
            mend: Mend::Move,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::subject::Id;
    use crate::units::Angle;

    #[test]
    fn a_seat_that_looks_up_by_more_than_is_published_is_told() {
        let mut room = Sample::good();
        room.seat();
        let mut at = |deg: f64, posture| {
            room.plan.sight[0].posture = posture;
            room.plan.sight[0].seen.as_mut().unwrap().up = Angle::degrees(deg);
            room.told(check)
        };
        assert!(at(15.0, Posture::Seated).is_empty());
        assert!(at(20.0, Posture::Standing).is_empty());
        let what = What::LooksUp { piece: Id::new("display-1"), up: Angle::degrees(15.1) };
        assert_eq!(at(15.1, Posture::Seated), [(Level::Caution, "seat-1".to_owned(), what)]);
    }
}

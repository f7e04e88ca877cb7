//! A mount takes only the patterns its maker says: outside them the brackets do not reach the threads, or
//! stand where the maker never tried them (common practice, no source).

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::SAME_PLACE_MM;
use crate::units::Length;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for (hung, _, mount) in hung::mounted(job, wall, plan) {
        let (Some(pattern), Some(rating)) = (&hung.piece.pattern, &mount.rating) else { continue };
        let outside = |value: Length, least: Option<Length>, most: Option<Length>| {
            least.is_some_and(|least| (least - value).mm() > SAME_PLACE_MM)
                || most.is_some_and(|most| (value - most).mm() > SAME_PLACE_MM)
        };
        if outside(pattern.across, rating.least_across, rating.most_across)
            || outside(pattern.upright, rating.least_upright, rating.most_upright)
        {
            let what = What::PatternOutside { across: pattern.across, upright: pattern.upright };
            let subject = hung.at.id.whole();
            told.push(Finding { level: Level::Stop, subject, what, mend: Mend::Choose });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;

    #[test]
    fn the_limits_are_allowed_and_past_them_is_not() {
        let mut room = Sample::good();
        for (across, upright, allowed) in [
            (200.0, 200.0, true),
            (600.0, 400.0, true),
            (199.0, 200.0, false),
            (601.0, 400.0, false),
            (600.0, 199.0, false),
            (600.0, 401.0, false),
        ] {
            let pattern = room.job.pieces[0].pattern.as_mut().unwrap();
            (pattern.across, pattern.upright) = (mm(across), mm(upright));
            let what = What::PatternOutside { across: mm(across), upright: mm(upright) };
            let stop = (Level::Stop, "display-1".to_owned(), what);
            assert_eq!(room.told(check), if allowed { vec![] } else { vec![stop] });
        }
    }
}

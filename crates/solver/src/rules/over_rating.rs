//! A maker's rating is not to be passed, whatever the wall could carry (common practice, no source). What
//! hangs on the piece hangs on its mount too.

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::units::Mass;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = hung::all(job, wall, plan);
    let mut told = Vec::new();
    for (hung, _, mount) in hung::mounted(job, wall, plan) {
        let Some(rated) = mount.rating.as_ref().and_then(|rating| rating.mass) else { continue };
        // What was not weighed adds nothing here: that it is missing is told by another rule.
        let with_it = all.iter().filter(|other| other.hangs_on(&hung)).filter_map(|other| other.piece.mass);
        let mass: Mass = hung.piece.mass.into_iter().chain(with_it).sum();
        if mass > rated {
            let what = What::OverRating { mass, rated };
            let subject = hung.at.id.whole();
            told.push(Finding { level: Level::Stop, subject, what, mend: Mend::Choose });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::piece::PieceKind;
    use crate::subject::Id;

    fn over(kilograms: f64) -> (Level, String, What) {
        let what = What::OverRating { mass: Mass::kilograms(kilograms), rated: Mass::kilograms(25.0) };
        (Level::Stop, "display-1".to_owned(), what)
    }

    #[test]
    fn the_rated_mass_is_allowed_and_more_is_not() {
        let mut room = Sample::good();
        room.job.pieces[0].mass = Some(Mass::kilograms(25.0));
        assert!(room.told(check).is_empty());
        room.job.pieces[0].mass = Some(Mass::kilograms(25.1));
        assert_eq!(room.told(check), [over(25.1)]);
    }

    #[test]
    fn what_hangs_on_the_piece_counts() {
        let mut room = Sample::good();
        room.job.pieces[0].mass = Some(Mass::kilograms(24.0));
        room.second_piece("bar-1", PieceKind::SoundBar, (1600.0, 2400.0), (1000.0, 1070.0));
        assert!(room.told(check).is_empty());
        room.second_hanging().hung_on = Some(Id::new("display-1"));
        assert_eq!(room.told(check), [over(27.0)]);
    }
}

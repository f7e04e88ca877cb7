//! The opening has to be hidden by the piece as it hangs, tilted as far as it tilts; while it is swung out on its arm
//! it is good to know that it shows (chosen: seen from 45 degrees off the perpendicular).

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::cable::hides;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().filter_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Option<Finding> {
    let entry = of.in_wall()?.entry?;
    if !hides(of.cable.hidden, entry) {
        return Some(told(of, Level::Caution, Mend::Move, CableWhat::EntryShows { swung: false }));
    }
    let swung = of.cable.hidden_swung?;
    (!hides(swung, entry)).then(|| told(of, Level::Note, Mend::OnSite, CableWhat::EntryShows { swung: true }))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::sample::rect;
    use super::*;
    use crate::finding::What;
    #[test]
    fn an_opening_shows_past_what_hides_it() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        cable.hidden_swung = Some(rect((1990.0, 2010.0), (1400.0, 1600.0)));
        assert_eq!(
            room.told(check),
            [(Level::Note, "display-1".to_owned(), What::Cable(CableWhat::EntryShows { swung: true }))]
        );
        room.plan.pieces[0].cable.as_mut().unwrap().hidden.left = super::super::sample::mm(1951.0);
        assert_eq!(
            room.told(check),
            [(Level::Caution, "display-1".to_owned(), What::Cable(CableWhat::EntryShows { swung: false }))]
        );
    }
}

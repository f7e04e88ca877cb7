//! The cables come out of the wall away from where they should: something keeps them from coming down, and what lies
//! between shows.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().filter_map(|one| of(one, plan)).collect()
}

fn of(of: &Cabled<'_>, plan: &Plan) -> Option<Finding> {
    let way = of.in_wall()?;
    let shows = crate::route::length(way.cost.visible_nm);
    // In another bay than what they should end beside is another rule's.
    (way.in_bay && plan.style.steps(shows) > 0)
        .then(|| told(of, Level::Caution, Mend::Choose, CableWhat::WayShows { shows }))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::units::Length;

    #[test]
    fn an_exit_that_is_not_where_it_should_be_shows_what_lies_between() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        cable.way.as_mut().unwrap().cost.visible_nm = 228_600_000;
        let what = What::Cable(CableWhat::WayShows { shows: Length::inches(9.0) });
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), what)]);
        room.plan.pieces[0].cable.as_mut().unwrap().way.as_mut().unwrap().in_bay = false;
        assert!(room.told(check).is_empty());
    }
}

//! A cable hidden in a dwelling's wall is listed for it: CL2, CL3 or what may stand in (NEC, read second-hand). What
//! nobody read off its jacket is not known.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().filter_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Option<Finding> {
    of.in_wall()?;
    let leads = &of.cable.leads;
    if leads.iter().any(|lead| lead.in_wall == Some(false)) {
        return Some(told(of, Level::Stop, Mend::Choose, CableWhat::NotListed { unknown: false }));
    }
    let unknown = leads.iter().any(|lead| lead.in_wall.is_none());
    unknown.then(|| told(of, Level::Caution, Mend::Measure, CableWhat::NotListed { unknown: true }))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;

    #[test]
    fn a_cable_in_the_wall_is_listed_for_it() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().leads[0].in_wall = None;
        assert_eq!(
            room.told(check),
            [(Level::Caution, "display-1".to_owned(), What::Cable(CableWhat::NotListed { unknown: true }))]
        );
        room.plan.pieces[0].cable.as_mut().unwrap().leads[0].in_wall = Some(false);
        assert_eq!(
            room.told(check),
            [(Level::Stop, "display-1".to_owned(), What::Cable(CableWhat::NotListed { unknown: false }))]
        );
        room.plan.pieces[0].cable.as_mut().unwrap().way = None;
        assert!(room.told(check).is_empty(), "nothing runs in the wall");
    }
}

//! The cables come out in another bay than the outlet or box that they should end beside: what lies between shows.

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
    let (beside, way) = (of.cable.beside.clone()?, of.in_wall()?);
    (!way.in_bay).then(|| {
        let shows = crate::route::length(way.cost.visible_nm);
        told(of, Level::Caution, Mend::OnSite, CableWhat::ExitBay { beside, shows })
    })
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::sample::mm;
    use super::*;
    use crate::finding::What;
    use crate::subject::Id;
    #[test]
    fn an_exit_in_another_bay_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        cable.beside = Some(Id::new("outlet-1"));
        let way = cable.way.as_mut().unwrap();
        way.in_bay = false;
        way.cost.visible_nm = 300_000_000;
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::ExitBay { beside: Id::new("outlet-1"), shows: mm(300.0) })
            )]
        );
    }
}

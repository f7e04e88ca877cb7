//! A flexible cord is never hidden in a wall, led through a hole in one or fixed to its face (NEC 400.12, read as
//! quoted). What is allowed is work for a licensed electrician.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::cable::Lead;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = all(job, wall, plan);
    let with = all
        .iter()
        .filter(|of: &&Cabled<'_>| !of.cable.power.is_empty() || of.cable.leads.iter().any(Lead::is_cord));
    with.map(|of| told(of, Level::Note, Mend::OnSite, CableWhat::PowerCord)).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::subject::Id;
    #[test]
    fn a_cord_is_left_to_the_electrician() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().power.push(Id::new("port-2"));
        assert_eq!(
            room.told(check),
            [(Level::Note, "display-1".to_owned(), What::Cable(CableWhat::PowerCord))]
        );
    }
}

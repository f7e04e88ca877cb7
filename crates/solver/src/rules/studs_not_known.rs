//! Cables run in a bay whose studs nobody found: what is taken for one clear space may have a stud in it, and an
//! opening may be cut on one (design: unknown counts as the worse).

use super::cabled::{all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = all(job, wall, plan);
    let unknown = all.iter().filter(|of| of.in_wall().is_some() && !of.cable.framing_known);
    unknown.map(|of| told(of, Level::Caution, Mend::Measure, CableWhat::StudsNotKnown)).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;

    #[test]
    fn a_bay_without_studs_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().framing_known = false;
        let what = What::Cable(CableWhat::StudsNotKnown);
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), what)]);
    }
}

//! Nothing hidden and allowed was found for the cables: the least bad way is told with what speaks against it (design:
//! a plan never hides that it breaks a rule).

use super::cabled::{all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut found = Vec::new();
    for of in all(job, wall, plan).iter().filter(|of| !of.cable.leads.is_empty()) {
        let against = of.cable.way.as_ref().map(|way| way.against.clone()).unwrap_or_default();
        let is_there = of.cable.way.is_some();
        if !is_there || !against.is_empty() {
            let level = if is_there { Level::Caution } else { Level::Stop };
            found.push(told(of, level, Mend::Move, CableWhat::NoWay { against, is_there }));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::plan::cable::Against;
    #[test]
    fn what_speaks_against_the_way_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        cable.way.as_mut().unwrap().against.push(Against::Bore);
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::NoWay { against: vec![Against::Bore], is_there: true })
            )]
        );
        room.plan.pieces[0].cable.as_mut().unwrap().way = None;
        assert_eq!(
            room.told(check),
            [(
                Level::Stop,
                "display-1".to_owned(),
                What::Cable(CableWhat::NoWay { against: Vec::new(), is_there: false })
            )]
        );
        room.plan.pieces[0].cable.as_mut().unwrap().leads.clear();
        assert!(room.told(check).is_empty(), "power alone has no way to find");
    }
}

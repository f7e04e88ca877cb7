//! A fire block that a cable passes is sealed again with an approved material (IRC R302.11, and inspectors' practice at
//! plates, read second-hand).

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::cable::Crosses;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().flat_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Vec<Finding> {
    let crosses = of.in_wall().map(|way| way.crosses.as_slice()).unwrap_or_default();
    let blocks = crosses.iter().filter_map(|crosses| match crosses {
        Crosses::Hidden(id, HiddenKind::FireBlock, _) => Some(id.clone()),
        _ => None,
    });
    blocks.map(|block| told(of, Level::Caution, Mend::OnSite, CableWhat::SealBlock { block })).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::geometry::Point;
    use crate::subject::Id;
    #[test]
    fn a_block_that_is_passed_is_sealed() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        let block = Id::new("block-1");
        cable.way.as_mut().unwrap().crosses.push(Crosses::Hidden(
            block.clone(),
            HiddenKind::FireBlock,
            Point::default(),
        ));
        assert_eq!(
            room.told(check),
            [(Level::Caution, "display-1".to_owned(), What::Cable(CableWhat::SealBlock { block }))]
        );
    }
}

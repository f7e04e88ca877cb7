//! The kit has cables that it could be, and none is long enough for the way with what is left over at both ends.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().flat_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Vec<Finding> {
    let short = of.cable.leads.iter().filter(|lead| lead.stock_short).filter_map(|lead| lead.cut_length);
    short.map(|needs| told(of, Level::Caution, Mend::Choose, CableWhat::StockShort { needs })).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::sample::mm;
    use super::*;
    use crate::finding::What;
    #[test]
    fn a_kit_without_a_long_cable_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().leads[0].stock_short = true;
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::StockShort { needs: mm(2000.0) })
            )]
        );
    }
}

//! A drywall screw is hardened for the driver, not for load: bent or sheared it snaps at once (common knowledge of the
//! trade; no published value to hang from it). That the kit has some is told, since the plan passes them over.

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::kit::FastenerKind;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, _wall: &Wall, plan: &Plan) -> Vec<Finding> {
    if plan.pieces.iter().all(|piece| piece.mount.is_none()) {
        return Vec::new();
    }
    let brittle = job.kit.fasteners.iter().filter(|stock| stock.kind == FastenerKind::DrywallScrew);
    let told = brittle.map(|stock| Finding {
        level: Level::Caution,
        subject: stock.id.whole(),
        what: What::Brittle,
        mend: Mend::Choose,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::kit::FastenerStock;
    use crate::subject::Id;

    #[test]
    fn only_a_drywall_screw_is_told() {
        let mut room = Sample::good();
        let stock = |kind: FastenerKind| FastenerStock {
            id: Id::new("fastener-1"),
            kind,
            diameter: None,
            length: None,
            head: None,
            washer: None,
            count: None,
            to_standard: None,
            report: None,
        };
        room.job.kit.fasteners = vec![stock(FastenerKind::WoodScrew)];
        assert!(room.told(check).is_empty());
        room.job.kit.fasteners = vec![stock(FastenerKind::DrywallScrew)];
        assert_eq!(room.told(check), [(Level::Caution, "fastener-1".to_owned(), What::Brittle)]);
    }
}

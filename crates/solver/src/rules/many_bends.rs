//! All bends between two pull points come to 360 degrees at most (NEC 358.26 and like, read second-hand; written for
//! tubes).

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
    // A turn into the wall at the entry and one out of it at the exit come to those of the run.
    let turns = usize::try_from(of.in_wall()?.cost.tight_bends).unwrap_or(usize::MAX).saturating_add(2);
    (!crate::wiring::bends::may_be_pulled(turns))
        .then(|| told(of, Level::Caution, Mend::OnSite, CableWhat::ManyBends))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;

    #[test]
    fn five_right_angles_are_too_many() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().way.as_mut().unwrap().cost.tight_bends = 2;
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().way.as_mut().unwrap().cost.tight_bends = 3;
        assert_eq!(
            room.told(check),
            [(Level::Caution, "display-1".to_owned(), What::Cable(CableWhat::ManyBends))]
        );
    }
}

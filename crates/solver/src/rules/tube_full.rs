//! A tube takes so much of its bore in cables: 53 % for one, 31 % for two, 40 % for more (NEC Chapter 9 Table 1, read
//! second-hand).

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::ledger::{Blank, Given};
use crate::plan::Plan;
use crate::wiring::tube::{fill, most};

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().filter_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Option<Finding> {
    let bore = of.hung.hanging?.way.tube?;
    let outside: Vec<_> = of.cable.leads.iter().map(|lead| lead.outside).collect();
    if outside.is_empty() {
        return None;
    }
    let share = fill(&mut Blank, &outside, Given::measured(bore)).value;
    let limit = most(outside.len());
    (share > limit).then(|| {
        let what = CableWhat::TubeFull { percent: percent(share), most: percent(limit) };
        told(of, Level::Caution, Mend::Choose, what)
    })
}

/// A share in hundredths, rounded up: what is just over its limit is not told as at it.
#[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "not negative, held to 999")]
fn percent(share: f64) -> u32 {
    (share * 100.0 - 1e-9).ceil().min(999.0) as u32
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::sample::mm;
    use super::*;
    use crate::finding::What;
    #[test]
    fn a_tube_takes_so_many_cables() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.hanging().way.tube = Some(mm(20.0));
        let lead = room.plan.pieces[0].cable.as_ref().unwrap().leads[0].clone();
        room.plan.pieces[0].cable.as_mut().unwrap().leads = vec![lead.clone(); 3];
        assert!(room.told(check).is_empty(), "three of 6 mm fill 27 %");
        room.plan.pieces[0].cable.as_mut().unwrap().leads = vec![lead; 2];
        room.hanging().way.tube = Some(mm(15.0));
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::TubeFull { percent: 32, most: 31 })
            )]
        );
    }
}

//! A passive cable carries only so far: its maker's longest, else 5 m for a passive picture lead (its licensing body's
//! guidance, read second-hand; the specification sets no length). What nobody said it carries may be such a lead.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::ledger::Label;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().flat_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Vec<Finding> {
    let long = of.cable.leads.iter().filter_map(|lead| {
        let (length, longest) = (lead.cut_length?, lead.longest?);
        let unknown = lead.signal.is_none() && longest.label != Label::Stated;
        let stocked = lead.needs.is_some_and(|needs| needs <= longest.value);
        (length > longest.value).then_some(CableWhat::TooLong {
            length,
            longest: longest.value,
            unknown,
            stocked,
        })
    });
    long.map(|what| told(of, Level::Caution, Mend::Choose, what)).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::sample::mm;
    use super::*;
    use crate::finding::What;
    use crate::ledger::Given;
    fn too_long(stocked: bool) -> CableWhat {
        CableWhat::TooLong { length: mm(5400.0), longest: mm(5000.0), unknown: true, stocked }
    }

    #[test]
    fn a_cable_longer_than_it_carries_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        // A passive picture lead of 5.4 m carries over 5 m.
        let lead = &mut room.plan.pieces[0].cable.as_mut().unwrap().leads[0];
        lead.longest = Some(Given::measured(mm(5000.0)));
        (lead.cut_length, lead.needs) = (Some(mm(5000.0)), Some(mm(5400.0)));
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().leads[0].cut_length = Some(mm(5400.0));
        assert_eq!(
            room.told(check),
            [(Level::Caution, "display-1".to_owned(), What::Cable(too_long(false)))]
        );
        // What is needed is no more than it carries: the stocked one is too long.
        room.plan.pieces[0].cable.as_mut().unwrap().leads[0].needs = Some(mm(2000.0));
        let told: Vec<What> = room.told(check).into_iter().map(|(_, _, what)| what).collect();
        assert_eq!(told, [What::Cable(too_long(true))]);
    }
}

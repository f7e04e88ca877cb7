//! A plug to the wall, or a cable that is bent as soon as it leaves its plug, needs room behind the piece (the cable's
//! least radius: TIA-568.0-D for four-pair cable, its maker's figure, else 10 diameters, chosen).

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::ledger::Label;
use crate::plan::Plan;
use crate::units::Length;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().flat_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Vec<Finding> {
    let Some(room) = of.cable.stand_off else { return Vec::new() };
    let needs = of.cable.leads.iter().map(|lead| lead.depth_needed);
    // What was assumed of plug and cable is asked for, not held against them.
    let tight = needs.filter(|needs| needs.label != Label::Assumed && needs.value > room);
    // Told once, by the one that needs most.
    let most = tight.map(|needs| needs.value).reduce(Length::max);
    most.map(|needs| told(of, Level::Caution, Mend::Choose, CableWhat::BendTight { needs, room }))
        .into_iter()
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::super::sample::mm;
    use super::*;
    use crate::finding::What;
    use crate::ledger::Given;

    #[test]
    fn a_bend_needs_its_room() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let needs = |room: &mut Sample, needs| {
            room.plan.pieces[0].cable.as_mut().unwrap().leads[0].depth_needed = needs;
        };
        needs(&mut room, Given::measured(mm(30.0)));
        assert!(room.told(check).is_empty());
        needs(&mut room, Given::new(mm(31.0), Label::Assumed));
        assert!(room.told(check).is_empty(), "asked for by another rule");
        needs(&mut room, Given::measured(mm(31.0)));
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::BendTight { needs: mm(31.0), room: mm(30.0) })
            )]
        );
    }
}

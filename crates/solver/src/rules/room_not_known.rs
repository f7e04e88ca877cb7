//! Whether plugs and bends find room behind the piece is not known while nobody measured how far it stands off, or
//! while what was assumed of plug and cable, on the safe side, does not find it there.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::ledger::Label;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().filter_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Option<Finding> {
    let room = of.cable.stand_off;
    let leads = &of.cable.leads;
    let is_open = |needs| room.is_none_or(|room| needs > room);
    let open = leads
        .iter()
        .filter(|lead| lead.depth_needed.label == Label::Assumed && is_open(lead.depth_needed.value));
    let (mut plug, mut cable) = (false, false);
    for lead in open {
        plug |= lead.plug_unknown;
        cable |= lead.bend.label == Label::Assumed;
    }
    let stand_off = room.is_none() && !leads.is_empty();
    (stand_off || plug || cable)
        .then(|| told(of, Level::Caution, Mend::Measure, CableWhat::RoomNotKnown { stand_off, plug, cable }))
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::finding::What;
    use crate::ledger::Given;

    #[test]
    fn what_nobody_measured_behind_the_piece_is_asked_for() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let what = |stand_off, plug, cable| {
            let what = What::Cable(CableWhat::RoomNotKnown { stand_off, plug, cable });
            vec![(Level::Caution, "display-1".to_owned(), what)]
        };
        let cable = |room: &mut Sample| room.plan.pieces[0].cable.as_mut().unwrap().clone();
        let mut known = cable(&mut room);
        (known.leads[0].depth_needed, known.leads[0].plug_unknown) =
            (Given::new(mm(90.0), Label::Assumed), true);
        room.plan.pieces[0].cable = Some(known.clone());
        assert_eq!(room.told(check), what(false, true, false));
        // There is room for more than was assumed.
        known.stand_off = Some(mm(91.0));
        room.plan.pieces[0].cable = Some(known.clone());
        assert!(room.told(check).is_empty());
        known.stand_off = None;
        known.leads[0].bend.label = Label::Assumed;
        room.plan.pieces[0].cable = Some(known);
        assert_eq!(room.told(check), what(true, true, true));
    }
}

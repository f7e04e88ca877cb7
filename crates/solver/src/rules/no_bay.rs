//! A port is used, and the wall behind the piece has no bays: concrete, brick and block are not opened for a
//! cable, least of all at a flue, and glass or a facing hides nothing (chosen: the safer). The cable runs on the
//! surface.

use super::hung;
use super::plane::framing_at;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let solid = hung::mounted(job, wall, plan).filter(|(hung, ..)| {
        let framing = framing_at(wall, &plan.survey, hung.at.outline.centre());
        hung.at.cable.as_ref().is_some_and(|cable| !cable.leads.is_empty())
            && framing.is_some_and(|framing| !framing.has_bays())
    });
    let told = solid.map(|(hung, ..)| Finding {
        level: Level::Caution,
        subject: hung.at.id.whole(),
        what: What::NoBay,
        mend: Mend::OnSite,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::framing::{Concrete, WallFraming};

    #[test]
    fn a_cable_behind_a_solid_wall_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.wall_mut().framing = Some(WallFraming::Concrete(Concrete::default()));
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), What::NoBay)]);
        room.plan.pieces[0].cable = None;
        assert!(room.told(check).is_empty(), "no cable, nothing to tell");
    }
}

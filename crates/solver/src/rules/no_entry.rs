//! A port is used, and behind the piece there is no place for an opening clear of plate, studs and hidden
//! things: its cable will show, or the plate must move (common practice, no source).

use super::hung;
use super::plane::framing_at;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::framing::WallFraming;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::cable::WayBy;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let without = hung::mounted(job, wall, plan).filter(|(hung, mounted, _)| {
        let framing = framing_at(wall, &plan.survey, hung.at.outline.centre());
        let is_asked = hung.at.cable.as_ref().is_some_and(|cable| {
            let inside = cable.way.iter().chain(&cable.alternatives).any(|way| way.by == WayBy::InWall);
            !cable.leads.is_empty() && !inside
        });
        let on_face = hung.hanging.is_some_and(|hanging| hanging.way.is_on_face());
        mounted.entry.is_none() && is_asked && !on_face && framing.is_none_or(WallFraming::has_bays)
    });
    let told = without.map(|(hung, ..)| Finding {
        level: Level::Caution,
        subject: hung.at.id.whole(),
        what: What::NoEntry,
        mend: Mend::Move,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::option::Surface;

    #[test]
    fn a_used_port_asks_for_an_opening() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.mounted().entry = None;
        assert!(room.told(check).is_empty(), "there is a way inside the wall");
        room.plan.pieces[0].cable.as_mut().unwrap().way = None;
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), What::NoEntry)]);
        room.hanging().way.surface = Some(Surface::Only);
        assert!(room.told(check).is_empty(), "nobody asked for one");
        room.hanging().way.surface = None;
        let cable = room.plan.pieces[0].cable.take();
        assert!(room.told(check).is_empty(), "no cable asks for one");
        room.plan.pieces[0].cable = cable;
        room.wall_mut().framing = Some(WallFraming::Concrete(crate::job::framing::Concrete::default()));
        assert!(room.told(check).is_empty(), "a wall without bays is told by another rule");
    }
}

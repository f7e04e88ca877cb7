//! The plan of the cables, put together.

use super::Cabling;
use super::ways::Ways;
use crate::plan::cable::{CablePlan, Lead, WayBy};
use crate::subject::Id;

impl Cabling<'_> {
    /// What was found, as the plan has it.
    pub(super) fn told(&self, found: Ways, leads: Vec<Lead>, power: Vec<Id>) -> CablePlan {
        let Ways { mut ways, hidden, in_the_way, sizes, framing_known, zones } = found;
        let way = if ways.is_empty() { None } else { Some(ways.remove(0)) };
        let in_wall = way.as_ref().is_some_and(|way| way.by == WayBy::InWall);
        let unknown = in_wall && (!framing_known || leads.iter().any(|lead| lead.in_wall.is_none()));
        let allowed = match &way {
            None if leads.is_empty() => None,
            None => Some(false),
            Some(way) if way.cost.not_allowed > 0 => Some(false),
            Some(_) => (!unknown).then_some(true),
        };
        CablePlan {
            allowed,
            in_the_way,
            hidden,
            hidden_swung: self.hidden_swung(),
            entry_zone: zones.0,
            exit_zone: zones.1,
            beside: self.beside_any(&leads).map(|feature| feature.id.clone()),
            framing_known,
            openings: sizes,
            bore: self.bore(&leads),
            stud: self.stud_limits(),
            stand_off: self.stand_off(),
            way,
            alternatives: ways,
            leads,
            power,
        }
    }
}

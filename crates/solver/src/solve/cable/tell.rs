//! The plan of the cables, put together.

use super::Cabling;
use super::ways::Ways;
use crate::job::framing::WallFraming;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Beyond;
use crate::plan::cable::{CablePlan, Crosses, Lead, Unknown, Way, WayBy};
use crate::plan::survey::PlacedHidden;
use crate::subject::Id;

impl Cabling<'_> {
    /// What was found, as the plan has it.
    pub(super) fn told(&self, found: Ways, leads: Vec<Lead>, power: Vec<Id>) -> CablePlan {
        let Ways { mut ways, hidden, in_the_way, sizes, framing_known, zones } = found;
        let way = if ways.is_empty() { None } else { Some(ways.remove(0)) };
        let in_wall = way.as_ref().is_some_and(|way| way.by == WayBy::InWall);
        let unknown =
            way.as_ref().filter(|_| in_wall).map(|way| self.unknown(way, &leads)).unwrap_or_default();
        let not_listed = || leads.iter().any(|lead| lead.in_wall.is_none());
        let is_unknown = in_wall && (!framing_known || !unknown.is_empty() || not_listed());
        let allowed = match &way {
            None if leads.is_empty() => None,
            None => Some(false),
            Some(way) if way.cost.not_allowed > 0 => Some(false),
            Some(_) => (!is_unknown).then_some(true),
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
            unknown,
            may_bore: self.may_bore(&leads),
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

    /// What nobody knows that a way inside the wall hangs on, the studs beside it apart.
    fn unknown(&self, way: &Way, leads: &[Lead]) -> Vec<Unknown> {
        let mut unknown = Vec::new();
        let breast = self.breast();
        let on = breast.map_or(&self.ground.wall.id, |breast| &breast.id);
        match self.framing() {
            None | Some(WallFraming::NotKnown) => unknown.push(Unknown::Framing(on.clone())),
            Some(WallFraming::Steel(studs)) if studs.face.is_none() => unknown.push(Unknown::Flange),
            Some(_) => {}
        }
        if self.ground.wall.beyond == Some(Beyond::Neighbour) {
            unknown.push(Unknown::FireRating);
        }
        let hidden = &self.ground.survey.hidden;
        if let Some(breast) = breast {
            let is_flue = |one: &PlacedHidden| one.kind == HiddenKind::Flue && one.rect.overlaps(breast.rect);
            if !hidden.iter().any(is_flue) {
                unknown.push(Unknown::Flue(breast.id.clone()));
            }
        }
        for crosses in &way.crosses {
            let more = match crosses {
                Crosses::Stud(_) => (!self.bore(leads).label.bears(true)).then_some(Unknown::Bore),
                Crosses::Hidden(id, HiddenKind::StudOpening, _) => {
                    let is_supposed = hidden.iter().any(|one| one.id == *id && one.assumed);
                    is_supposed.then(|| Unknown::Supposed(id.clone()))
                }
                Crosses::Hidden(..) | Crosses::Insulation => None,
            };
            unknown.extend(more.filter(|more| !unknown.contains(more)));
        }
        unknown
    }
}

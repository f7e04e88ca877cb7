//! How high a piece goes: what kind of rule, by which edge, how far.

use super::Rules;
use crate::moves::{self, UprightKind};
use crate::panels::{measured::field_id, upright_datum};
use crate::widgets::quantity_field::length_field;
use strikeline_solver::job::option::Hanging;
use strikeline_solver::job::place::{UpDown, UprightDatum};
use strikeline_solver::job::rule::{PieceHeight, UprightRule};
use strikeline_solver::tape::Offset;
use strikeline_solver::words;

fn kind(kind: UprightKind) -> &'static str {
    match kind {
        UprightKind::Height => "a height from something",
        UprightKind::Above => "a gap above a thing",
        UprightKind::Below => "a gap below a thing",
        UprightKind::Level => "level with an edge",
    }
}

/// A piece's own heights, in the order in which they are offered.
const OWN: [PieceHeight; 3] = [PieceHeight::Top, PieceHeight::Centre, PieceHeight::Bottom];

fn own(height: PieceHeight) -> &'static str {
    match height {
        PieceHeight::Top => "its top edge",
        PieceHeight::Centre => "its middle",
        PieceHeight::Bottom => "its lower edge",
    }
}

impl Rules<'_> {
    /// Shows the rule, and puts the one that is chosen in its place: without a nudge, since its value says where the
    /// piece is.
    pub(super) fn upright(&mut self, hanging: &mut Hanging) {
        let held = UprightKind::of(&hanging.upright);
        let has_things = !self.things.is_empty();
        let kinds: Vec<UprightKind> =
            UprightKind::ALL.into_iter().filter(|kind| *kind == UprightKind::Height || has_things).collect();
        let chosen = self.choose("upright", "Height", &held, &kinds, |one| kind(*one).to_owned());
        let rule = match chosen {
            Some(kind) => moves::upright_rule(self.plan, &self.piece, kind, &self.things),
            None => self.upright_by(&mut hanging.upright),
        };
        if let Some(rule) = rule {
            hanging.upright = rule;
            hanging.nudge.up = Offset::default();
        }
    }

    /// What the rule goes by; gives another rule where something else is chosen.
    fn upright_by(&mut self, rule: &mut UprightRule) -> Option<UprightRule> {
        let plan = self.plan;
        match rule {
            UprightRule::Height { of, from, toward, by } => {
                let chosen_of = self.choose_own(*of);
                let all = moves::upright_datums(plan, &self.things);
                let chosen_from =
                    self.choose("upright_from", "From", from, &all, |datum| upright_datum(plan, datum));
                if chosen_of.is_some() || chosen_from.is_some() {
                    let (of, from) = (chosen_of.unwrap_or(*of), chosen_from.unwrap_or_else(|| from.clone()));
                    return Some(moves::height_rule(plan, &self.piece, of, from));
                }
                let is_lower = matches!(&*from, UprightDatum::Edge(edge) if edge.part_str() == "bottom");
                let way = toward.unwrap_or(if is_lower { UpDown::Down } else { UpDown::Up });
                let label = match way {
                    UpDown::Up => "Up from it",
                    UpDown::Down => "Down from it",
                };
                length_field(self.ui, field_id(&self.piece, "upright_by"), label, by, self.allowed);
                None
            }
            UprightRule::Gap { side, of, by, follow } => {
                let label = match side {
                    UpDown::Up => "Above",
                    UpDown::Down => "Below",
                };
                if let Some(of) = self.choose_thing("upright_of", label, of) {
                    return Some(moves::gap_rule(plan, &self.piece, *side, &of, *follow));
                }
                length_field(self.ui, field_id(&self.piece, "upright_by"), "Gap", by, self.allowed);
                None
            }
            UprightRule::Aligned { of, with } => {
                let chosen_of = self.choose_own(*of);
                let all = moves::level_edges(&self.things);
                let chosen_with =
                    self.choose("upright_with", "With", with, &all, |edge| words::thing(plan, edge));
                let is_other = chosen_of.is_some() || chosen_with.is_some();
                is_other.then(|| UprightRule::Aligned {
                    of: chosen_of.unwrap_or(*of),
                    with: chosen_with.unwrap_or_else(|| with.clone()),
                })
            }
        }
    }

    fn choose_own(&mut self, held: PieceHeight) -> Option<PieceHeight> {
        self.choose("upright_own", "Of", &held, &OWN, |height| own(*height).to_owned())
    }
}

//! Where a piece goes sideways: what kind of rule, by which edges, how far.

use super::Rules;
use crate::moves::{self, AcrossKind};
use crate::panels::{across_datum, measured::field_id};
use crate::widgets::quantity_field::length_field;
use strikeline_solver::job::option::Hanging;
use strikeline_solver::job::place::{AcrossDatum, Sideways};
use strikeline_solver::job::rule::AcrossRule;
use strikeline_solver::tape::Offset;

fn kind(kind: AcrossKind) -> &'static str {
    match kind {
        AcrossKind::OnWall => "centred on the wall",
        AcrossKind::On => "centred on a thing",
        AcrossKind::Between => "centred between two edges",
        AcrossKind::Beside => "beside an edge",
    }
}

fn side(side: Sideways) -> &'static str {
    match side {
        Sideways::Left => "left of it",
        Sideways::Right => "right of it",
    }
}

impl Rules<'_> {
    /// Shows the rule, and puts the one that is chosen in its place: without a nudge, since its value says where the
    /// piece is.
    pub(super) fn across(&mut self, hanging: &mut Hanging) {
        let held = AcrossKind::of(&hanging.across);
        let kinds: Vec<AcrossKind> = AcrossKind::ALL
            .into_iter()
            .filter(|kind| *kind != AcrossKind::On || !self.things.is_empty())
            .collect();
        let chosen = self.choose("across", "Sideways", &held, &kinds, |one| kind(*one).to_owned());
        let rule = match chosen {
            Some(kind) => moves::across_rule(self.plan, &self.piece, kind, &self.things),
            None => self.across_by(&mut hanging.across),
        };
        if let Some(rule) = rule {
            hanging.across = rule;
            hanging.nudge.right = Offset::default();
        }
    }

    /// What the rule goes by; gives another rule where other edges are chosen.
    fn across_by(&mut self, rule: &mut AcrossRule) -> Option<AcrossRule> {
        match rule {
            AcrossRule::OnWall => None,
            AcrossRule::On(thing) => self.choose_thing("across_on", "On", thing).map(AcrossRule::On),
            AcrossRule::Between(a, b) => {
                let first = self.choose_edge("across_a", "Between", a);
                let second = self.choose_edge("across_b", "And", b);
                let is_other = first.is_some() || second.is_some();
                is_other.then(|| {
                    AcrossRule::Between(
                        first.unwrap_or_else(|| a.clone()),
                        second.unwrap_or_else(|| b.clone()),
                    )
                })
            }
            AcrossRule::Beside { from, toward, by } => {
                if let Some(from) = self.choose_edge("across_from", "Edge", from) {
                    return Some(moves::beside_rule(self.plan, &self.piece, from, None));
                }
                // An end of the wall has one side only.
                if matches!(from, AcrossDatum::Edge(_)) {
                    let held = toward.unwrap_or_else(|| from.away());
                    let both = [Sideways::Left, Sideways::Right];
                    let chosen =
                        self.choose("across_side", "Side", &held, &both, |one| side(*one).to_owned());
                    if let Some(chosen) = chosen {
                        return Some(moves::beside_rule(self.plan, &self.piece, from.clone(), Some(chosen)));
                    }
                }
                let id = field_id(&self.piece, "across_by");
                length_field(self.ui, id, "Distance from it", by, self.allowed);
                None
            }
        }
    }

    fn choose_edge(&mut self, what: &'static str, label: &str, held: &AcrossDatum) -> Option<AcrossDatum> {
        let (plan, all) = (self.plan, moves::across_datums(&self.things));
        self.choose(what, label, held, &all, |datum| across_datum(plan, datum))
    }
}

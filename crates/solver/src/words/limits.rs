//! How far the fasteners of a plate reach.

use super::phrase::mass;
use crate::capacity::group::Word;
use crate::limits::{Limit, Limits};
use crate::plan::Plan;
use crate::plan::piece::PiecePlan;
use crate::units::{Length, Mass, MassUnit};

/// The limits of a piece's fasteners in a sentence, each rounded down; `None` where none was found.
#[must_use]
pub fn limits(plan: &Plan, piece: &PiecePlan, limits: &Limits) -> Option<String> {
    let mount = piece.mount.as_ref()?;
    let is_probed = mount.fastening.verdict.word == Word::Holds;
    let mut each = Vec::new();
    each.extend(limits.mass.map(|limit| told(limit, "a mass of", mass(mass_down(limit.most)))));
    each.extend(limits.pull.map(|limit| told(limit, "a pull of", format!("{:.0} N", down(limit.most.n())))));
    each.extend(limits.reach.map(|limit| {
        let at_hand = plan.style.print_steps(steps_down(plan, limit.most));
        told(limit, "a reach of", at_hand)
    }));
    let last = each.pop()?;
    let all = if each.is_empty() { last } else { format!("{} or {last}, one at a time", each.join(", ")) };
    let lead = if is_probed { "These fasteners hold" } else { "If probed these fasteners hold" };
    Some(format!("{lead} up to {all}."))
}

/// A limit; where nothing larger was tried it says so.
fn told<Q>(limit: Limit<Q>, of: &str, value: String) -> String {
    let end = if limit.is_end { " and more" } else { "" };
    format!("{of} {value}{end}")
}

fn down(value: f64) -> f64 {
    (value + 1e-6).floor()
}

/// Down to a tenth of the unit it is told in.
fn mass_down(most: Mass) -> Mass {
    match most.unit() {
        MassUnit::Kilogram => Mass::kilograms(down(most.kg() * 10.0) / 10.0),
        MassUnit::Pound => Mass::pounds(down(most.lb() * 10.0) / 10.0),
    }
}

/// Down to a graduation.
fn steps_down(plan: &Plan, length: Length) -> i64 {
    let nearest = plan.style.steps(length);
    let is_past = plan.style.length_of(nearest) - length > Length::millimetres(1e-6);
    if is_past { nearest - 1 } else { nearest }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::units::Force;

    fn limit<Q>(most: Q, is_end: bool) -> Limit<Q> {
        Limit { most, is_end }
    }

    fn said(found: &Limits, word: Word) -> Option<String> {
        let mut plan = sample::plan();
        if let Some(mount) = &mut plan.pieces[0].mount {
            mount.fastening.verdict.word = word;
        }
        limits(&plan, &plan.pieces[0], found)
    }

    #[test]
    fn limits_are_rounded_down_in_the_units_of_the_job() {
        let found = Limits {
            mass: Some(limit(Mass::kilograms(62.0).with_unit(MassUnit::Pound), false)),
            pull: Some(limit(Force::newtons(250.0), false)),
            reach: Some(limit(inches("12 1/4") - Length::millimetres(0.1), false)),
        };
        let text = said(&found, Word::Holds).unwrap();
        well_told(&text);
        let all = "a mass of 136.6 lb, a pull of 250 N or a reach of 12 3/16\", one at a time";
        assert_eq!(text, format!("These fasteners hold up to {all}."));
        assert_eq!(
            said(&found, Word::NotKnown).unwrap(),
            format!("If probed these fasteners hold up to {all}.")
        );
    }

    #[test]
    fn what_was_tried_no_farther_is_said_and_what_was_not_found_is_not() {
        let none = Limits { mass: None, pull: None, reach: None };
        assert_eq!(said(&none, Word::Holds), None);
        let found = Limits { mass: Some(limit(Mass::kilograms(200.0), true)), ..none };
        let text = said(&found, Word::Holds).unwrap();
        assert_eq!(text, "These fasteners hold up to a mass of 200 kg and more.");
    }
}

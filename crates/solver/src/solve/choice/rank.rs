//! The order of the choice: which of two sets of fasteners is the better.

use crate::capacity::group::{Outcome, Word};
use crate::capacity::hold::Hold;
use crate::ledger::Blank;
use crate::units::Length;
use std::cmp::Ordering;

/// Reserves closer than a hundredth are one: less is not worth another hole (chosen).
const RESERVE_STEP: f64 = 100.0;
/// Chances closer than a twentieth are one: less is not worth the plate off its middle (chosen).
const CHANCE_STEP: f64 = 20.0;

/// How good a set of fasteners is. What comes first counts first; larger is better.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in super::super) struct Rank {
    /// How many of the holes that were chosen by hand are in use.
    pub(super) by_hand: usize,
    /// What the maker requires is met.
    pub(super) required: bool,
    /// 2 where it holds if probed, 1 where only makers' values make it hold, else 0.
    ///
    /// What is short goes before what nobody knows: else fasteners would be left out until no published value is left
    /// to say that it is short.
    pub(super) holds: u8,
    /// No case is beyond published values.
    pub(super) known: bool,
    /// How many holes that are drilled already it uses.
    pub(super) drilled: u32,
    /// The least reserve, counted up to the most that is worth a hole, in hundredths.
    pub(super) reserve: f64,
    /// The least chance of a hole in use, in twentieths.
    pub(super) chance: f64,
    /// Each fastener has its mirror image about the load.
    pub(super) symmetric: bool,
    /// How many fasteners.
    pub(super) count: usize,
    /// How long they are.
    pub(super) length: Length,
}

impl Rank {
    /// With what its cases ask of it, reserve counted up to `most`.
    pub(super) fn with(self, outcome: &Outcome, hold: &Hold, most: f64) -> Self {
        let used = outcome.governing.map(|(_, used)| used.reserve(&mut Blank, most, hold.label()));
        let holds = match outcome.word() {
            Word::Holds if hold.label().bears(false) => 2,
            Word::Holds if hold.label().bears(true) => 1,
            _ => 0,
        };
        Self {
            holds,
            known: outcome.governing.is_some() && outcome.not_known.is_none(),
            reserve: in_steps(used.unwrap_or(-1.0), RESERVE_STEP),
            ..self
        }
    }

    /// With nothing asked of it: no set does better.
    pub(super) fn unloaded(self, hold: &Hold, most: f64) -> Self {
        let holds = if hold.label().bears(false) { 2 } else { u8::from(hold.label().bears(true)) };
        Self { holds, known: true, reserve: in_steps(most, RESERVE_STEP), ..self }
    }

    /// Whether no case of it is known: nothing then tells that one fastener does as well as more.
    fn is_dark(&self) -> bool {
        !self.known && self.reserve <= -RESERVE_STEP
    }

    /// Whether it leads as far as the keys before the reserve tell.
    pub(super) fn leads_with(&self, lead: &Self) -> bool {
        (self.by_hand, self.required, self.holds, self.known)
            == (lead.by_hand, lead.required, lead.holds, lead.known)
    }

    /// Which is the better: `Greater` where this one is.
    pub(super) fn against(&self, other: &Self) -> Ordering {
        self.by_hand
            .cmp(&other.by_hand)
            .then(self.required.cmp(&other.required))
            .then(self.holds.cmp(&other.holds))
            .then(self.known.cmp(&other.known))
            .then(self.drilled.cmp(&other.drilled))
            .then(self.reserve.total_cmp(&other.reserve))
            .then_with(|| match (self.is_dark(), other.is_dark()) {
                (true, true) => self.count.cmp(&other.count),
                _ => Ordering::Equal,
            })
            .then(self.chance.total_cmp(&other.chance))
            .then(self.symmetric.cmp(&other.symmetric))
            .then(other.count.cmp(&self.count))
            .then(other.length.mm().total_cmp(&self.length.mm()))
    }
}

/// A chance in its steps.
pub(super) fn chance_steps(chance: f64) -> f64 {
    in_steps(chance, CHANCE_STEP)
}

/// To the nearest step; never minus nothing.
fn in_steps(value: f64, steps: f64) -> f64 {
    (value * steps).round() + 0.0
}

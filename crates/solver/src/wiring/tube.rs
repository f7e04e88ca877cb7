//! How full a tube is (NEC Chapter 9 Table 1).

use crate::handbook::power_wiring::TUBE_FILL;
use crate::ledger::{Amount, Given, Label, Ledger, Put, Step};
use crate::units::Length;

/// Which share of a tube's bore cables fill. A tube of no size is more than full.
#[must_use]
pub fn fill<L: Ledger>(ledger: &mut L, cables: &[Given<Length>], bore: Given<Length>) -> Given<f64> {
    let square = |length: Length| length.mm() * length.mm();
    let all: f64 = cables.iter().map(|cable| square(cable.value)).sum();
    let share = if bore.value.mm() > 0.0 { all / square(bore.value) } else { f64::INFINITY };
    let own = cables.iter().map(|cable| cable.label).max().unwrap_or(Label::Measured);
    let label = own.weaker(bore.label).worked_out();
    ledger.write(|| Step {
        name: "how full the tube is",
        formula: "f = sum D^2 / B^2",
        put: cables.iter().map(|cable| Put::given("D", *cable)).chain([Put::given("B", bore)]).collect(),
        result: Amount::bare(share),
        source: TUBE_FILL.source,
        label,
    });
    Given::new(share, label)
}

/// How full a tube with so many cables may be.
#[must_use]
pub fn most(cables: usize) -> f64 {
    let (one, two, more) = TUBE_FILL.value;
    match cables {
        0 | 1 => one,
        2 => two,
        _ => more,
    }
}

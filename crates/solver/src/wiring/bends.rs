//! How tightly a cable may be bent.

use crate::handbook::{Row, low_voltage, power_wiring};
use crate::job::kit::Signal;
use crate::ledger::{Amount, Given, Ledger, Put, Step};
use crate::units::Length;

/// The least radius of a bend of a cable so thick.
#[must_use]
pub fn least_radius<L: Ledger>(
    ledger: &mut L,
    diameter: Given<Length>,
    signal: Option<Signal>,
) -> Given<Length> {
    let row: Row<f64> = match signal {
        Some(Signal::Network) => low_voltage::BEND_NETWORK,
        Some(Signal::Fibre) => low_voltage::BEND_FIBRE,
        _ => low_voltage::BEND_OTHER,
    };
    let radius = diameter.value * row.value;
    let label = diameter.label.weaker(row.label).worked_out();
    ledger.write(|| Step {
        name: "least radius of a bend",
        formula: "r = times D",
        put: vec![Put::new("times", Amount::bare(row.value), row.label), Put::given("D", diameter)],
        result: radius.into(),
        source: row.source,
        label,
    });
    Given::new(radius, label)
}

/// Whether so many right-angle bends may lie between two pull points.
#[must_use]
pub fn may_be_pulled(right_angles: usize) -> bool {
    // A handful of bends: the count is exact as f64.
    #[expect(clippy::cast_precision_loss, reason = "far below 2^52 bends")]
    let degrees = right_angles as f64 * 90.0;
    degrees <= power_wiring::BENDS_DEG.value
}

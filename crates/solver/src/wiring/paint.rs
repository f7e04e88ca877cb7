//! How much old paint is disturbed (40 CFR 745.83).

use crate::handbook::old_paint::MINOR_FT2;
use crate::ledger::{Amount, Given, Label, Ledger, Put, Shown, Step};
use crate::units::Length;

/// What openings and patches disturb, each by its width and height, in square millimetres.
#[must_use]
pub fn disturbed_mm2<L: Ledger>(ledger: &mut L, cuts: &[(Length, Length)]) -> Given<f64> {
    let all: f64 = cuts.iter().map(|(width, height)| width.mm() * height.mm()).sum();
    ledger.write(|| Step {
        name: "painted face disturbed",
        formula: "A = sum w h",
        put: cuts
            .iter()
            .flat_map(|(width, height)| {
                [Put::new("w", *width, Label::Measured), Put::new("h", *height, Label::Measured)]
            })
            .collect(),
        result: Amount::new(all, Shown::SquareMillimetre),
        source: MINOR_FT2.source,
        label: Label::Derived,
    });
    Given::new(all, Label::Derived)
}

/// 6 square feet, in square millimetres.
#[must_use]
pub fn minor_mm2() -> f64 {
    MINOR_FT2.value * 304.8 * 304.8
}

/// Whether so much is minor: up to and with 6 square feet by the rule. The plan warns from there on, so that what is at
/// the limit is not told as well within it.
#[must_use]
pub fn is_minor(disturbed_mm2: f64) -> bool {
    disturbed_mm2 <= minor_mm2() + 1e-6
}

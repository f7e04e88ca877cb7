//! How much old paint is disturbed (40 CFR 745.83).

use crate::handbook::old_paint::MINOR_FT2;
use crate::ledger::{Amount, Given, Label, Ledger, Put, Shown, Step};
use crate::units::Length;

/// What openings and patches disturb, each by its width and height, in square millimetres.
#[must_use]
pub fn disturbed_mm2<L: Ledger>(ledger: &mut L, cuts: &[(Given<Length>, Given<Length>)]) -> Given<f64> {
    let all: f64 = cuts.iter().map(|(width, height)| width.value.mm() * height.value.mm()).sum();
    let labels = cuts.iter().map(|(width, height)| width.label.weaker(height.label));
    let label = labels.fold(Label::Derived, Label::weaker);
    ledger.write(|| Step {
        name: "painted face disturbed",
        formula: "A = sum w h",
        put: cuts
            .iter()
            .flat_map(|(width, height)| [Put::given("w", *width), Put::given("h", *height)])
            .collect(),
        result: Amount::new(all, Shown::SquareMillimetre),
        source: MINOR_FT2.source,
        label,
    });
    Given::new(all, label)
}

/// 6 square feet, in square millimetres.
#[must_use]
pub fn minor_mm2() -> f64 {
    MINOR_FT2.value * 304.8 * 304.8
}

/// Whether so much is well within the rule: less than 6 square feet. At the limit, which the rule still calls minor,
/// the plan warns.
#[must_use]
pub fn is_surely_minor(disturbed_mm2: f64) -> bool {
    disturbed_mm2 < minor_mm2() - 1e-6
}

//! How far away the lines of a picture can be told apart.

use crate::handbook::viewing::TOLD_APART;
use crate::ledger::{Amount, Given, Label, Ledger, Put, Step};
use crate::numeric::tangent;
use crate::units::{Angle, Length};

/// How many of its own heights a picture is away.
#[must_use]
pub fn in_heights(distance: Length, height: Length) -> f64 {
    distance.mm() / height.mm()
}

/// The distance beyond which two neighbouring lines of a picture are one to a normal eye; `None` for a picture without
/// lines.
#[must_use]
pub fn lines_merge<L: Ledger>(ledger: &mut L, height: Given<Length>, lines: u32) -> Option<Length> {
    if lines == 0 {
        return None;
    }
    let lines = f64::from(lines);
    let distance = height.value / (lines * tangent(Angle::degrees(TOLD_APART.value / 60.0)));
    ledger.write(|| {
        let apart = TOLD_APART.given();
        Step {
            name: "distance at which lines merge",
            formula: "D = H / (N tan(m / 60))",
            put: vec![
                Put::given("H", height).being("the picture's height"),
                Put::new("N", Amount::bare(lines), Label::Measured).because("its lines"),
                Put::new("m", Amount::bare(apart.value), apart.label).because(apart.reason),
            ],
            result: distance.into(),
            source: TOLD_APART.source,
            label: apart.label.weaker(height.label).worked_out(),
        }
    });
    Some(distance)
}

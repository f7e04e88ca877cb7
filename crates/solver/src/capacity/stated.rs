//! What a maker says: a structural screw's report, and a fixing's recommended load for its base.

use super::hold::Linear;
use super::why::{Input, Known, Why};
use crate::ledger::{Label, Ledger, Part, Put, Step};
use crate::units::{Force, ForcePerLength, Length, Ratio, Stress};

/// What the report of a structural screw says. All of it is *stated*.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Report {
    /// Outer diameter of the thread.
    pub outer_diameter: Length,
    /// Root diameter of the thread.
    pub root_diameter: Length,
    /// Bending yield strength.
    pub bending: Stress,
    /// Length of the thread, tip included.
    pub thread: Length,
    /// What each length of thread holds in side grain, pulled straight out, before any load duration.
    pub withdrawal: ForcePerLength,
    /// The specific gravity that the withdrawal is stated for.
    pub gravity: Ratio,
    /// The least depth in wood.
    pub least_depth: Length,
    /// The least distance to an edge.
    pub least_edge: Length,
}

/// A fixing's own recommended load for its base, or a pull test on site: *stated*, linear, no load duration.
///
/// # Errors
/// Where a load is not above zero.
pub fn fixing<L: Ledger>(ledger: &mut L, shear: Force, pull: Force) -> Known<Linear> {
    let good = |force: Force| force.n() > 0.0 && force.n() <= super::why::MOST_N;
    if good(shear) && good(pull) {
        ledger.begin(Part::Printed);
        for (name, formula, symbol, force) in [
            ("shear that a fixing may carry", "V_a = V", "V", shear),
            ("pull that a fixing may carry", "T_a = T", "T", pull),
        ] {
            ledger.write(|| Step {
                name,
                formula,
                put: vec![Put::new(symbol, force, Label::Stated)],
                result: force.into(),
                source: "its maker's recommended load for this base, or a pull test on site",
                label: Label::Stated,
            });
        }
        Ok(Linear { shear_n: shear.n(), pull_n: pull.n(), label: Label::Stated })
    } else {
        Err(Why::NoValue(Input::Load))
    }
}

//! What a maker says: a structural screw's report, and a fixing's recommended load for its base.

use super::hold::Linear;
use super::why::{Input, Known, Why};
use crate::ledger::{Amount, Label, Ledger, Part, Put, Step};
use crate::tolerance::TESTED_SHARE;
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

/// A fixing's own recommended load for its base: *stated*, linear, no load duration. Where its pull is what one hole
/// withstood in a test on this wall, a share of that counts.
///
/// # Errors
/// Where a load is not above zero.
pub fn fixing<L: Ledger>(ledger: &mut L, shear: Force, pull: Force, is_tested: bool) -> Known<Linear> {
    let good = |force: Force| force.n() > 0.0 && force.n() <= super::why::MOST_N;
    if !(good(shear) && good(pull)) {
        return Err(Why::NoValue(Input::Load));
    }
    ledger.begin(Part::Printed);
    let step = |name, formula, put, result: Force, source| Step {
        name,
        formula,
        put,
        result: result.into(),
        source,
        label: Label::Stated,
    };
    let recommended = "its maker's recommended load for this base";
    let stated = |symbol, force: Force| Put::new(symbol, force, Label::Stated);
    ledger.write(|| {
        step("shear that a fixing may carry", "V_a = V", vec![stated("V", shear)], shear, recommended)
    });
    let name = "pull that a fixing may carry";
    let allowed = if is_tested { Force::newtons(pull.n() * TESTED_SHARE) } else { pull };
    ledger.write(|| {
        if is_tested {
            let share = Put::new("k", Amount::bare(TESTED_SHARE), Label::Chosen)
                .because("a test proves one hole under a short pull, not the group for years");
            let put = vec![share, stated("T", pull).because("what one hole withstood")];
            step(name, "T_a = k T", put, allowed, "a pull test on this wall, at a share that is chosen")
        } else {
            step(name, "T_a = T", vec![stated("T", pull)], allowed, recommended)
        }
    });
    Ok(Linear { shear_n: shear.n(), pull_n: allowed.n(), label: Label::Stated })
}

//! What one fastener carries sideways through a plate with a gap before the stud: the least of the yield modes.
//!
//! The real length in the stud goes into the equations, so no further p/8D or p/10D. The root diameter yields,
//! the nominal one sets the dowel bearing strength (NDS 2018 section 12.3.7).

use super::bite::{Bite, Stack};
use super::dowel_bearing::{Grain, dowel_bearing};
use super::reduction::reduction;
use super::screw::Screw;
use super::why::{Input, Known, Why, above_zero, zero_or_more};
use super::yield_modes::{Joint, Mode, Parts, least, loads};
use super::yield_steps;
use crate::ledger::{Amount, Given, Ledger, Put, Step};
use crate::units::{Force, Ratio};

/// What one fastener carries sideways.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lateral {
    /// The load, with its duration.
    pub holds: Given<Force>,
    /// The mode that governs.
    pub mode: Mode,
}

/// What one fastener carries sideways, under a load duration factor.
///
/// # Errors
/// Not known where a value is outside of its table or makes no sense.
pub fn lateral<L: Ledger>(
    ledger: &mut L,
    screw: &Screw,
    wood: Given<Ratio>,
    stack: &Stack,
    bite: &Bite,
    grain: Grain,
    duration: Given<f64>,
) -> Known<Lateral> {
    let bearing = above_zero(bite.bearing.value, Input::Length)?;
    let plate = above_zero(stack.plate.value, Input::Plate)?;
    let gap = zero_or_more(stack.gap.value, Input::Gap)?;
    let side_psi = stack.plate_bearing.value.in_psi();
    if !(side_psi > 0.0 && side_psi <= 1e6) {
        return Err(Why::NoValue(Input::PlateBearing));
    }
    let main = dowel_bearing(ledger, screw, wood, grain)?;
    let terms = reduction(ledger, screw.diameter.value, screw.root, grain)?;
    let joint = Joint {
        diameter_in: screw.root.value.in_inches(),
        bending_psi: screw.bending.value.in_psi(),
        main_psi: main.value.in_psi(),
        main_in: bearing.in_inches(),
        side_psi,
        side_in: plate.in_inches(),
        gap_in: gap.in_inches(),
    };
    let parts = Parts::of(&joint);
    let loads = loads(&parts, &joint, &terms);
    let (mode, load_lbf) = least(&loads);
    let holds = Force::pounds_force(load_lbf * duration.value);
    let label = [
        main.label,
        bite.bearing.label,
        stack.plate.label,
        stack.plate_bearing.label,
        stack.gap.label,
        screw.root.label,
        screw.bending.label,
    ]
    .into_iter()
    .fold(duration.label.worked_out(), crate::ledger::Label::weaker);
    let given = || {
        vec![
            Put::result("F_em", main.value, main.label),
            Put::given("F_es", stack.plate_bearing),
            Put::given("F_yb", screw.bending),
            Put::given("D_r", screw.root),
            Put::result("l_m", bite.bearing.value, bite.bearing.label),
            Put::given("l_s", stack.plate).being("the thickness of the plate's sheet"),
            Put::given("g", stack.gap).being("what stands between plate and stud"),
        ]
    };
    yield_steps::write(ledger, given, (&parts, &terms), &loads, label);
    ledger.write(|| {
        let c_d = Put::new("C_D", Amount::bare(duration.value), duration.label).because(duration.reason);
        let (name, formula) = match grain {
            Grain::Along => ("shear along the stud", "Z_y = C_D min(Z_Im, Z_Is, Z_II, Z_IIIm, Z_IIIs, Z_IV)"),
            Grain::Across => {
                ("shear across the stud", "Z_x = C_D min(Z_Im, Z_Is, Z_II, Z_IIIm, Z_IIIs, Z_IV)")
            }
        };
        let put = std::iter::once(c_d).chain(yield_steps::put(&loads, label)).collect();
        Step { name, formula, put, result: holds.into(), source: yield_steps::SOURCE, label }
    });
    Ok(Lateral { holds: Given::new(holds, label), mode })
}

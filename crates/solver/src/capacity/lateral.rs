//! What one fastener carries sideways through a plate with a gap before the stud: the least of the yield modes.
//!
//! The real length in the stud goes into the equations, so no further p/8D or p/10D. The root diameter yields,
//! the nominal one sets the dowel bearing strength (NDS 2018 section 12.3.7).

use super::bite::{Bite, Stack};
use super::dowel_bearing::{Grain, dowel_bearing};
use super::reduction::reduction;
use super::screw::Screw;
use super::why::{Input, Known, Why, above_zero, zero_or_more};
use super::yield_modes::{Joint, Mode, least, yield_loads};
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
    let loads = yield_loads(&joint, &terms);
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
    ledger.write(|| Step {
        name: match grain {
            Grain::Along => "shear along the stud",
            Grain::Across => "shear across the stud",
        },
        formula: formula(mode),
        put: vec![
            Put::new("C_D", Amount::bare(duration.value), duration.label),
            Put::result("F_em", main.value, main.label),
            Put::given("F_es", stack.plate_bearing),
            Put::given("F_yb", screw.bending),
            Put::given("D_r", screw.root),
            Put::result("l_m", bite.bearing.value, bite.bearing.label),
            Put::given("l_s", stack.plate),
            Put::given("g", stack.gap),
            Put::result("R_d", Amount::bare(terms.three_and_four), screw.root.label.worked_out()),
        ],
        result: holds.into(),
        source: "TR12 Table 1-1 (the dowel equations with a gap), NDS 2018 Table 12.3.1",
        label,
    });
    Ok(Lateral { holds: Given::new(holds, label), mode })
}

/// The equation of a mode; q_m = F_em D_r, q_s = F_es D_r, M = F_yb D_r^3 / 6.
fn formula(mode: Mode) -> &'static str {
    match mode {
        Mode::OneMain => "I_m: Z' = C_D q_m l_m / R_d",
        Mode::OneSide => "I_s: Z' = C_D q_s l_s / R_d",
        Mode::Two => {
            "II: Z' = C_D P / R_d, P^2 (1/(4 q_s) + 1/(4 q_m)) + P (l_s/2 + g + l_m/2) = q_s l_s^2/4 + q_m l_m^2/4"
        }
        Mode::ThreeMain => {
            "III_m: Z' = C_D P / R_d, P^2 (1/(2 q_s) + 1/(4 q_m)) + P (g + l_m/2) = M + q_m l_m^2/4"
        }
        Mode::ThreeSide => {
            "III_s: Z' = C_D P / R_d, P^2 (1/(4 q_s) + 1/(2 q_m)) + P (l_s/2 + g) = q_s l_s^2/4 + M"
        }
        Mode::Four => "IV: Z' = C_D P / R_d, P^2 (1/(2 q_s) + 1/(2 q_m)) + P g = 2 M",
    }
}

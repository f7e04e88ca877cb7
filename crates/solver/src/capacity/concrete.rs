//! Concrete screws in bare normal-weight concrete, by the table.

use super::hold::Linear;
use super::why::{Input, Known, Why, above_zero, zero_or_more};
use crate::handbook::concrete_screw::{CELLS, DEPTH_IN, MOST_GAP_IN, UNMEASURED_PSI};
use crate::handbook::placing::CONCRETE_EDGE;
use crate::ledger::{Amount, Given, Label, Ledger, Part, Put, Step};
use crate::tolerance::{SAME_PLACE_MM, SAME_SIZE_IN};
use crate::units::{Length, Stress};

/// A concrete screw at its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ConcreteScrew {
    /// Its nominal diameter.
    pub diameter: Given<Length>,
    /// How deep it is in the concrete.
    pub depth: Given<Length>,
    /// What stands between the plate and the concrete.
    pub gap: Given<Length>,
    /// From its middle to the nearest edge of the concrete.
    pub edge: Given<Length>,
    /// The strength of the concrete, where measured.
    pub strength: Option<Given<Stress>>,
    /// Whether somebody said that the concrete is of normal weight.
    pub normal_weight: bool,
}

/// What one concrete screw may carry.
///
/// # Errors
/// Not known behind anything thicker than a skim, in concrete not said to be of normal weight or weaker than the
/// table's; refused where it is too shallow or too near an edge.
pub fn in_concrete<L: Ledger>(ledger: &mut L, screw: &ConcreteScrew) -> Known<Linear> {
    if !screw.normal_weight {
        return Err(Why::NotNormalWeight);
    }
    let diameter = above_zero(screw.diameter.value, Input::Diameter)?;
    let gap = zero_or_more(screw.gap.value, Input::Gap)?;
    if gap.mm() > Length::inches(MOST_GAP_IN.value).mm() + SAME_PLACE_MM {
        return Err(Why::OffTheConcrete { gap, assumed: screw.gap.label == Label::Assumed });
    }
    let needs = Length::inches(DEPTH_IN.value);
    let has = zero_or_more(screw.depth.value, Input::Length)?;
    if has.mm() < needs.mm() - SAME_PLACE_MM {
        return Err(Why::Shallow { has, needs });
    }
    let needs = diameter * CONCRETE_EDGE.value;
    let has = zero_or_more(screw.edge.value, Input::Place)?;
    if has.mm() < needs.mm() - SAME_PLACE_MM {
        return Err(Why::Edge { has, needs });
    }
    let strength = screw.strength.unwrap_or(
        Given::new(Stress::psi(UNMEASURED_PSI.value), UNMEASURED_PSI.label).because(UNMEASURED_PSI.source),
    );
    let psi = strength.value.in_psi();
    let sized =
        CELLS.iter().filter(|row| (row.value.diameter_in - diameter.in_inches()).abs() <= SAME_SIZE_IN);
    // The strongest printed concrete that is no stronger than this one; 1e-6 psi is what a conversion loses.
    let mut row = None;
    let mut any = false;
    for candidate in sized {
        any = true;
        if candidate.value.strength_psi <= psi + 1e-6 {
            row = Some(candidate);
        }
    }
    let row = row.ok_or(Why::OutsideTable(if any { Input::Concrete } else { Input::Diameter }))?;
    let labels = [screw.diameter.label, screw.depth.label, screw.gap.label, screw.edge.label, strength.label];
    let label = labels.into_iter().fold(row.label.weaker(CONCRETE_EDGE.label), Label::weaker);
    let newtons = |lbf: f64| crate::units::Force::pounds_force(lbf);
    let (shear, pull) = (newtons(row.value.shear_lbf), newtons(row.value.pull_lbf));
    ledger.begin(Part::Printed);
    for (name, formula, symbol, result) in [
        ("shear in concrete", "V_a = V_printed", "V_printed", shear),
        ("pull in concrete", "T_a = T_printed", "T_printed", pull),
    ] {
        ledger.write(|| Step {
            name,
            formula,
            put: vec![
                Put::new(symbol, result, row.label),
                Put::given("d", screw.diameter),
                Put::given("depth", screw.depth),
                Put::given("gap", screw.gap),
                Put::new("least edge in diameters", Amount::bare(CONCRETE_EDGE.value), CONCRETE_EDGE.label)
                    .because(CONCRETE_EDGE.source),
                Put::given("f'c", strength),
                Put::new("most gap", Length::inches(MOST_GAP_IN.value), MOST_GAP_IN.label)
                    .because(MOST_GAP_IN.source),
            ],
            result: result.into(),
            source: row.source,
            label,
        });
    }
    Ok(Linear { shear_n: shear.n(), pull_n: pull.n(), label })
}

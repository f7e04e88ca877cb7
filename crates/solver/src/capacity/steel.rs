//! Screws in steel studs, by the printed cells: 18 and 27 mil only.

use super::hold::Linear;
use super::seat::{SAME_ROW_MM, Seat};
use super::why::{Input, Known, Why, zero_or_more};
use crate::handbook::steel_stud::{CELLS, SHEAR_THROUGH_BOARD};
use crate::ledger::{Amount, Given, Label, Ledger, Part, Put, Step};
use crate::tolerance::SAME_SIZE_IN;
use crate::units::{Force, Length};

/// How far a thickness may be from its name, in mil (chosen: below the next thickness made).
const SAME_MIL: f64 = 0.5;

/// What one screw may carry in a steel stud; with anything between plate and stud at half the shear. The pull is
/// the lesser of pull-out and pull-over of the stud's own thickness, which is below that of any plate.
///
/// # Errors
/// Not known for any other thickness or diameter.
pub fn in_steel<L: Ledger>(
    ledger: &mut L,
    diameter: Given<Length>,
    thickness: Given<Length>,
    gap: Given<Length>,
) -> Known<Linear> {
    let between = zero_or_more(gap.value, Input::Gap)?.mm() > 0.0;
    let (d_in, mil) = (diameter.value.in_inches(), thickness.value.in_mils());
    let of_thickness = || CELLS.iter().filter(|cell| (cell.mil - mil).abs() <= SAME_MIL);
    if of_thickness().next().is_none() {
        return Err(Why::OutsideTable(Input::Steel));
    }
    let cell = of_thickness().find(|cell| (cell.diameter_in - d_in).abs() <= SAME_SIZE_IN);
    let cell = cell.ok_or(Why::OutsideTable(Input::Diameter))?;
    let share = if between { SHEAR_THROUGH_BOARD.value } else { 1.0 };
    let shear = Force::pounds_force(cell.shear_lbf.value * share);
    let pull = Force::pounds_force(cell.pull_out_lbf.value.min(cell.pull_over_lbf.value));
    let mut label = [diameter.label, thickness.label, gap.label, cell.pull_out_lbf.label]
        .into_iter()
        .fold(cell.shear_lbf.label.weaker(cell.pull_over_lbf.label), Label::weaker);
    if between {
        label = label.weaker(SHEAR_THROUGH_BOARD.label);
    }
    ledger.begin(Part::Printed);
    ledger.write(|| Step {
        name: "shear in steel",
        formula: "V_a = share V_printed",
        put: vec![
            Put::new(
                "share",
                Amount::bare(share),
                if between { SHEAR_THROUGH_BOARD.label } else { Label::Read },
            )
            .because(if between { SHEAR_THROUGH_BOARD.source } else { "" }),
            Put::new("V_printed", Force::pounds_force(cell.shear_lbf.value), cell.shear_lbf.label),
            Put::given("d", diameter),
            Put::given("t", thickness),
            Put::given("gap", gap),
        ],
        result: shear.into(),
        source: cell.shear_lbf.source,
        label,
    });
    ledger.write(|| Step {
        name: "pull in steel",
        formula: "T_a = min(T_out, T_over)",
        put: vec![
            Put::new("T_out", Force::pounds_force(cell.pull_out_lbf.value), cell.pull_out_lbf.label),
            Put::new("T_over", Force::pounds_force(cell.pull_over_lbf.value), cell.pull_over_lbf.label),
        ],
        result: pull.into(),
        source: cell.pull_out_lbf.source,
        label,
    });
    Ok(Linear { shear_n: shear.n(), pull_n: pull.n(), label })
}

/// Whether a group on steel studs may be counted: no arm and no pull-down, and every used row in two studs.
///
/// # Errors
/// Not known otherwise.
pub fn group_on_steel(seats: &[Seat], swings_out: bool) -> Known<()> {
    if swings_out {
        return Err(Why::ArmOnSteel);
    }
    let braced = |row: &Seat| {
        seats.iter().any(|other| (other.y_mm - row.y_mm).abs() <= SAME_ROW_MM && other.stud != row.stud)
    };
    if seats.iter().all(braced) { Ok(()) } else { Err(Why::RowOnOneStud) }
}

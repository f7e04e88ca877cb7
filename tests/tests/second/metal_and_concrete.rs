//! Screws in thin steel studs and in bare concrete: printed cells only, pull and shear added in line.

/// Which printed sheet.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Sheet {
    Mil18,
    Mil27,
}

/// Allowable shear, pull-out, pull-over. Screws: #6, #8, #10, #12, 1/4 in (a steel stud association's screw
/// capacity table; two cells are illegible there and worked from the sheet's own formula).
pub(crate) fn sheet_cell_lbf(sheet: Sheet, screw: usize) -> [f64; 3] {
    let mil18 = [
        [44.0, 24.0, 84.0],
        [48.0, 29.0, 84.0],
        [52.0, 33.0, 105.0],
        [55.0, 38.0, 105.0],
        [60.0, 44.0, 127.0],
    ];
    let mil27 = [
        [82.0, 37.0, 127.0],
        [89.0, 43.0, 127.0],
        [96.0, 50.0, 159.0],
        [102.0, 57.0, 159.0],
        [110.0, 66.0, 191.0],
    ];
    match sheet {
        Sheet::Mil18 => mil18[screw],
        Sheet::Mil27 => mil27[screw],
    }
}

/// Use in a steel stud. Board between head and steel halves the shear (a judgement: the printed values stand
/// for metal on metal).
pub(crate) fn use_in_sheet(shear_lbf: f64, pull_lbf: f64, cell_lbf: [f64; 3], board: bool) -> f64 {
    let [shear, out, over] = cell_lbf;
    let shear = if board { shear / 2.0 } else { shear };
    (shear_lbf / shear + pull_lbf / out).max(pull_lbf / over)
}

/// Allowable pull and shear of a concrete screw 1-3/4 in deep, by the printed row at or below the strength
/// measured; the lowest where none was, nothing below it.
pub(crate) fn concrete_cell_lbf(quarter: bool, strength_psi: Option<f64>) -> Option<[f64; 2]> {
    let rows = if quarter {
        [(2500.0, 398.0, 348.0), (3000.0, 435.0, 348.0), (4000.0, 503.0, 348.0)]
    } else {
        [(2500.0, 235.0, 159.0), (3000.0, 247.0, 159.0), (4000.0, 269.0, 159.0)]
    };
    let psi = strength_psi.unwrap_or(2500.0);
    rows.iter().rev().find(|(from, _, _)| psi >= *from).map(|(_, pull, shear)| [*pull, *shear])
}

pub(crate) fn use_in_concrete(shear_lbf: f64, pull_lbf: f64, cell_lbf: [f64; 2]) -> f64 {
    let [pull, shear] = cell_lbf;
    shear_lbf / shear + pull_lbf / pull
}

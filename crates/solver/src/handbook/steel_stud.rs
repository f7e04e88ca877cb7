//! Screws in cold-formed steel studs: allowable pounds-force, both sheets alike, safety factor 3.0 inside.
//! Only 18 and 27 mil were read.

use super::Row;

/// What one screw in one thickness of stud may carry, pounds-force.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct SteelCell {
    /// Thickness of the stud, mil.
    pub mil: f64,
    /// Nominal diameter of the screw, inches.
    pub diameter_in: f64,
    /// Shear, metal on metal.
    pub shear_lbf: Row<f64>,
    /// Pulled out of the stud.
    pub pull_out_lbf: Row<f64>,
    /// The sheet pulled over the head.
    pub pull_over_lbf: Row<f64>,
}

const TABLE: &str = "SSMA screw capacity table, Fy 33 ksi (AISI S100 section E4)";

const fn cell(mil: f64, diameter_in: f64, values: [f64; 3]) -> SteelCell {
    let [shear, out, over] = values;
    SteelCell {
        mil,
        diameter_in,
        shear_lbf: Row::read(shear, TABLE),
        pull_out_lbf: Row::read(out, TABLE),
        pull_over_lbf: Row::read(over, TABLE),
    }
}

const ILLEGIBLE: &str = "AISI S100 section E4 by its formula; the printed digits cannot be read";

/// The printed cells.
pub const CELLS: [SteelCell; 10] = [
    cell(18.0, 0.138, [44.0, 24.0, 84.0]),
    // Its coefficients are remembered, so that no verdict stands on it.
    SteelCell { shear_lbf: Row::memory(48.0, ILLEGIBLE), ..cell(18.0, 0.164, [48.0, 29.0, 84.0]) },
    cell(18.0, 0.190, [52.0, 33.0, 105.0]),
    cell(18.0, 0.216, [55.0, 38.0, 105.0]),
    cell(18.0, 0.250, [60.0, 44.0, 127.0]),
    cell(27.0, 0.138, [82.0, 37.0, 127.0]),
    cell(27.0, 0.164, [89.0, 43.0, 127.0]),
    // 159 is read in the column of the #12 screw, whose head is the same; here its own digits are broken.
    SteelCell { pull_over_lbf: Row::derived(159.0, ILLEGIBLE), ..cell(27.0, 0.190, [96.0, 50.0, 159.0]) },
    cell(27.0, 0.216, [102.0, 57.0, 159.0]),
    cell(27.0, 0.250, [110.0, 66.0, 191.0]),
];

/// The share of the shear that counts with board between head and steel, or with anything else that holds them
/// apart: tests found less, much less where the load pries, and their numbers were not read.
pub const SHEAR_THROUGH_BOARD: Row<f64> =
    Row::chosen(0.5, "a hospital office's paper of 2010 on screws through board found less; half is taken");

/// How far a screw has to come out behind a steel flange, inches.
pub const THROUGH_STEEL_IN: Row<f64> = Row::chosen(
    0.25,
    "three whole threads of twelve to the inch behind the sheet, the coarsest that is usual; a screw that ends in the \
     sheet holds by its tip",
);

//! Concrete screws in normal-weight concrete, 1 3/4 in deep: allowable pounds-force, a quarter of the ultimate.

use super::Row;

/// What one concrete screw may carry.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ConcreteCell {
    /// Nominal diameter, inches.
    pub diameter_in: f64,
    /// Least strength of the concrete, psi.
    pub strength_psi: f64,
    /// Pulled straight out, pounds-force.
    pub pull_lbf: f64,
    /// Shear, pounds-force.
    pub shear_lbf: f64,
}

const TABLE: &str = "a published table of concrete screws, embedment 1 3/4 in, ultimate divided by 4";

const fn cell(diameter_in: f64, strength_psi: f64, pull_lbf: f64, shear_lbf: f64) -> Row<ConcreteCell> {
    Row::read(ConcreteCell { diameter_in, strength_psi, pull_lbf, shear_lbf }, TABLE)
}

/// The table, the weakest concrete first.
pub const CELLS: [Row<ConcreteCell>; 6] = [
    cell(0.1875, 2500.0, 235.0, 159.0),
    cell(0.1875, 3000.0, 247.0, 159.0),
    cell(0.1875, 4000.0, 269.0, 159.0),
    cell(0.25, 2500.0, 398.0, 348.0),
    cell(0.25, 3000.0, 435.0, 348.0),
    cell(0.25, 4000.0, 503.0, 348.0),
];

/// How deep the screw of the table is in concrete, inches.
pub const DEPTH_IN: Row<f64> = Row::read(1.75, TABLE);

/// How far the plate may stand off the concrete, inches.
pub const MOST_GAP_IN: Row<f64> = Row::chosen(
    1.0 / 16.0,
    "a 1/4 in screw 1/2 in free of the concrete bends at about a sixth of its table value; 1/16 in is a skim",
);

/// The strength of concrete that nobody measured, psi: the lowest of the table.
pub const UNMEASURED_PSI: Row<f64> = Row::chosen(2500.0, "the lowest strength of the table");

/// How much deeper than the screw its hole is drilled, inches.
pub const DUST_IN: Row<f64> = Row::chosen(
    0.25,
    "room for the dust at the hole's end; the fastener's own instructions go before it where they ask for more",
);

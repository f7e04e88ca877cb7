//! The bending yield strength of common screws by their nominal diameter.

use super::Row;

const SOURCE: &str = "NDS 2018 Table I1, p. 175";

/// The largest nominal diameter of a class, in inches, and its bending yield strength in psi.
pub const STRENGTH: [Row<(f64, f64)>; 6] = [
    Row::read((0.142, 100_000.0), SOURCE),
    Row::read((0.177, 90_000.0), SOURCE),
    Row::read((0.236, 80_000.0), SOURCE),
    Row::read((0.273, 70_000.0), SOURCE),
    Row::read((0.344, 60_000.0), SOURCE),
    Row::read((1.25, 45_000.0), SOURCE),
];

/// The least nominal diameter of the table, in inches.
pub const LEAST_DIAMETER_IN: f64 = 0.099;

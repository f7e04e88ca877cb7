//! What wood and steel bear under a dowel's side.

use super::Row;

/// D under 1/4 in, any direction: F_e = 16,600 G^1.84 psi.
pub const SMALL: Row<(f64, f64)> = Row::read((16_600.0, 1.84), "NDS 2018 Table 12.3.3");

/// D of 1/4 in and more, along the grain: F_e = 11,200 G psi.
pub const ALONG: Row<f64> = Row::read(11_200.0, "NDS 2018 Table 12.3.3");

/// D of 1/4 in and more, across the grain: F_e = 6,100 G^1.45 / sqrt D psi.
pub const ACROSS: Row<(f64, f64)> = Row::read((6_100.0, 1.45), "NDS 2018 Table 12.3.3");

/// The table prints its values to the nearest 50 psi.
pub const ROUNDED_TO_PSI: Row<f64> = Row::read(50.0, "NDS 2018 Table 12.3.3");

/// From this nominal diameter on, in inches, the grain's direction counts.
pub const LARGE_FROM_IN: Row<f64> = Row::read(0.25, "NDS 2018 Table 12.3.3");

/// Of sheet steel under 1/4 in thick, psi (A653 SS Grade 33).
pub const SHEET_STEEL_PSI: Row<f64> = Row::read(61_850.0, "NDS 2018 Table 12M, its notes");

//! What a thread holds when it is pulled straight out of side grain: the coefficients of the two equations.

use super::Row;

/// Of a wood screw: W = 2850 G^2 D, pounds-force per inch of thread.
pub const WOOD_SCREW: Row<f64> = Row::read(2850.0, "NDS 2018 Eq. 12.2-2");

/// Of a lag screw: W = 1800 G^(3/2) D^(3/4), pounds-force per inch of thread.
pub const LAG: Row<f64> = Row::read(1800.0, "NDS 2018 Eq. 12.2-1");

/// The share of the bending yield strength that the root of a screw may be pulled with.
///
/// The standard asks that the screw's own steel holds, and no tension strength was read. A third is below the
/// 0.375 of the ultimate strength that steel is usually allowed.
pub const STEEL_SHARE: Row<f64> = Row::chosen(
    1.0 / 3.0,
    "NDS 2018 section 12.2 asks for the check; a third of the bending yield strength, no tension strength was read",
);

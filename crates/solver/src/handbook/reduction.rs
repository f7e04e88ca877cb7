//! What the yield loads are divided by.

use super::Row;

const SOURCE: &str = "NDS 2018 Table 12.3.1B and its first note";

/// Root diameter of 1/4 in or more: of modes I, II, and III with IV, times K_theta.
pub const LARGE: Row<[f64; 3]> = Row::read([4.0, 3.6, 3.2], SOURCE);

/// From this root diameter on, in inches, the large terms hold.
pub const LARGE_FROM_IN: f64 = 0.25;

/// K_D of a root diameter up to 0.17 in.
pub const SMALL: Row<f64> = Row::read(2.2, SOURCE);

/// Up to this root diameter, in inches.
pub const SMALL_TO_IN: f64 = 0.17;

/// K_D = 10 D + 0.5 between the two. Not 10 D - 0.5, which goes round: that form jumps at 0.17 in and makes
/// 216 lbf of a cell printed as 120.
pub const BETWEEN: Row<(f64, f64)> = Row::read((10.0, 0.5), SOURCE);

/// K_theta = 1 + 0.25 at 90 degrees to the grain.
pub const ACROSS_GRAIN: Row<f64> = Row::read(1.25, SOURCE);

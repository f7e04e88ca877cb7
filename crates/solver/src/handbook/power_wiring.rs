//! Power in the wall: where its cables may be expected, and what a display's own cord may not do.

use super::Row;

/// No point along a wall is farther than this from a receptacle, in feet: so twice that from one to the next.
pub const RECEPTACLE_FT: Row<f64> = Row::second_hand(6.0, "NEC 210.52(A)(1), second-hand");
/// A wall space from this width on wants one, in feet.
pub const WALL_SPACE_FT: Row<f64> = Row::second_hand(2.0, "NEC 210.52(A)(2), second-hand");
/// A receptacle higher than this above the floor does not count, in feet.
pub const COUNTS_UP_TO_FT: Row<f64> = Row::second_hand(5.5, "NEC 210.52, second-hand");
/// A cable is fixed within this of its box, in inches: so one is expected above or below each box.
pub const BESIDE_BOX_IN: Row<f64> = Row::read(12.0, "NEC 334.30, as quoted");
/// The width of the band along the top of a wall in which hidden cables may run, in millimetres.
pub const ZONE_AT_TOP_MM: Row<f64> = Row::second_hand(150.0, "BS 7671 522.6.202, second-hand");
/// The same beside an inside corner.
pub const ZONE_AT_CORNER_MM: Row<f64> = Row::memory(150.0, "BS 7671 522.6.202");
/// How full a tube may be, as a share of its bore: with one cable, two, more.
pub const TUBE_FILL: Row<(f64, f64, f64)> =
    Row::second_hand((0.53, 0.31, 0.40), "NEC Chapter 9 Table 1, second-hand");
/// All bends between two pull points together, in degrees, at most.
pub const BENDS_DEG: Row<f64> = Row::second_hand(360.0, "NEC 358.26 and like, second-hand");

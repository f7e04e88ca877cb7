//! Openings for boxes and brackets, width by height.

use super::Row;

/// The opening of a single-gang device box, in inches.
pub const ONE_GANG_IN: Row<(f64, f64)> = Row::second_hand((2.0, 3.0), "device box practice, second-hand");
/// The opening of a two-gang one, in inches.
pub const TWO_GANG_IN: Row<(f64, f64)> =
    Row::memory((4.0, 3.75), "old-work cut-out: trace the actual box before cutting");

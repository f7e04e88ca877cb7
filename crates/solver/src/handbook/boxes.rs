//! Openings for boxes and brackets, width by height, and how deep boxes go.

use super::Row;

/// The opening of a single-gang device box, in inches.
pub const ONE_GANG_IN: Row<(f64, f64)> = Row::read((2.0, 3.0), "device box practice, second-hand");
/// The opening of a two-gang one, in inches.
pub const TWO_GANG_IN: Row<(f64, f64)> =
    Row::memory((4.0, 3.75), "old-work cut-out: trace the actual box before cutting");
/// The cover of one and of two gangs, in inches.
pub const COVER_IN: Row<((f64, f64), (f64, f64))> =
    Row::read(((2.75, 4.5), (4.56, 4.5)), "cover plate sizes, second-hand");
/// A deep old-work box, in inches.
pub const DEEP_BOX_IN: Row<f64> = Row::read(3.625, "one product's print, second-hand");

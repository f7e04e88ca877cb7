//! Paint that may hold lead.

use super::Row;

/// The first year whose paint is taken to be without lead.
pub const FROM_YEAR: Row<u16> = Row::read(1978, "40 CFR 745.83, target housing");
/// Disturbed inside a room, at most, in square feet: up to this it is minor. All work in the room within 30 days counts
/// together, and a piece taken out counts whole.
pub const MINOR_FT2: Row<f64> = Row::read(6.0, "40 CFR 745.83");
/// For how many days work in one room is counted together.
pub const TOGETHER_DAYS: Row<u32> = Row::read(30, "40 CFR 745.83");

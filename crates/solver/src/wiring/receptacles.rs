//! Where a dwelling has receptacles (NEC 210.52(A)): what may be expected along a wall, not a design of one.

use crate::handbook::power_wiring::{COUNTS_UP_TO_FT, RECEPTACLE_FT, WALL_SPACE_FT};
use crate::units::Length;

/// How many receptacles an unbroken wall space so wide wants; none under 2 ft.
#[must_use]
pub fn wanted(width: Length) -> usize {
    let feet = width.in_inches() / 12.0;
    if feet < WALL_SPACE_FT.value - 1e-9 {
        return 0;
    }
    // A wall has no end of feet that a usize could not count.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "not negative, and small")]
    let count = (feet / (2.0 * RECEPTACLE_FT.value) - 1e-9).ceil() as usize;
    count.max(1)
}

/// How many of them are surely on a stretch of wall so wide that goes on round so many inside corners: one round each
/// corner may serve the wall up to 6 ft from it.
#[must_use]
pub fn surely_wanted(width: Length, corners: usize) -> usize {
    let left = width - Length::inches(RECEPTACLE_FT.value * 12.0) * corners as f64;
    match corners {
        0 => wanted(width),
        _ if left.mm() <= 1e-6 => 0,
        // What is left beside served wall is wall space of its own, however narrow.
        _ => wanted(left).max(1),
    }
}

/// Whether a receptacle so high above the floor counts for the spacing.
#[must_use]
pub fn counts(height: Length) -> bool {
    height.in_inches() <= COUNTS_UP_TO_FT.value * 12.0 + 1e-9
}

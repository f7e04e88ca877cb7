//! How many fire blocks a bay has between its plates (IRC R302.11, item 1).

use crate::handbook::boring::FIRE_BLOCK_FT;
use crate::units::Length;

/// How many may be expected in a bay so high: none up to 10 ft.
#[must_use]
pub fn expected(height: Length) -> usize {
    // A wall has no end of feet that a usize could not count.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "not negative, and small")]
    let pieces = (height.in_inches() / (12.0 * FIRE_BLOCK_FT.value) - 1e-9).ceil().max(1.0) as usize;
    pieces - 1
}

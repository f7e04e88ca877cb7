//! What everyone reaches.

use crate::handbook::clearances::REACHED_IN;
use crate::units::Length;

/// Whether what is so high above the floor is reached, both ends included.
#[must_use]
pub fn is_reached(above_floor: Length) -> bool {
    let (lowest, highest) = REACHED_IN.value;
    (lowest..=highest).contains(&above_floor.in_inches())
}

//! Combustible trim near the opening of a masonry fireplace.

use crate::handbook::clearances::{TRIM_FREE_IN, TRIM_NONE_IN, TRIM_PER_IN};
use crate::units::Length;

/// How far trim may stand out at a distance from the opening; `None` where nothing limits it.
#[must_use]
pub fn trim_may_stand_out(from_opening: Length) -> Option<Length> {
    if from_opening < Length::inches(TRIM_NONE_IN.value) {
        return Some(Length::default());
    }
    (from_opening <= Length::inches(TRIM_FREE_IN.value)).then(|| from_opening * TRIM_PER_IN.value)
}

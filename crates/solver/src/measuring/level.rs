//! How far off levels are.

use crate::numeric::slope_angle;
use crate::units::{Angle, Length};

/// How far out of level what is set by a level may be that is off by so much in a metre.
#[must_use]
pub fn out_of_level(mm_per_m: f64) -> Angle {
    slope_angle(mm_per_m / 1000.0)
}

/// How far a level line is off at a distance.
#[must_use]
pub fn off_at(mm_per_m: f64, distance: Length) -> Length {
    distance.abs() * (mm_per_m / 1000.0)
}

/// The most that a laser's line may be off from itself, struck on two walls so far apart, once from beside each: twice
/// what it is off over the distance.
#[must_use]
pub fn between_walls(mm_per_m: f64, apart: Length) -> Length {
    off_at(mm_per_m, apart) * 2.0
}

//! Transcendental functions through one portable crate, so that every machine gets the same last digit.

use crate::units::Angle;

/// The angle whose rise over run is `slope`.
#[must_use]
pub fn slope_angle(slope: f64) -> Angle {
    Angle::degrees(libm::atan(slope) * 180.0 / std::f64::consts::PI)
}

/// The sine of an angle.
#[must_use]
pub fn sine(angle: Angle) -> f64 {
    libm::sin(angle.deg() * std::f64::consts::PI / 180.0)
}

/// The cosine of an angle.
#[must_use]
pub fn cosine(angle: Angle) -> f64 {
    libm::cos(angle.deg() * std::f64::consts::PI / 180.0)
}

/// A base of zero or more to a power.
#[must_use]
pub fn power(base: f64, exponent: f64) -> f64 {
    libm::pow(base, exponent)
}

/// The square root: rounded correctly by the standard of floating point, so alike everywhere.
#[must_use]
pub fn root(square: f64) -> f64 {
    libm::sqrt(square)
}

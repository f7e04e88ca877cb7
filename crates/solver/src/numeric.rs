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

/// The tangent of an angle.
#[must_use]
pub fn tangent(angle: Angle) -> f64 {
    libm::tan(angle.deg() * std::f64::consts::PI / 180.0)
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

/// e to a power.
#[must_use]
pub fn exp(power: f64) -> f64 {
    libm::exp(power)
}

/// The natural logarithm; minus infinity at 0.
#[must_use]
pub fn ln(value: f64) -> f64 {
    libm::log(value)
}

/// The height of the bell curve of a standard deviation above 0 at a distance from its middle.
#[must_use]
pub fn normal(off: f64, deviation: f64) -> f64 {
    let z = off / deviation;
    // 1 / sqrt(2 pi)
    0.398_942_280_401_432_7 / deviation * exp(-0.5 * z * z)
}

/// Places, in standard deviations, and weights that stand for a bell curve: exact for polynomials up to the ninth
/// degree (Gauss and Hermite; Abramowitz and Stegun, table 25.10, scaled by the square root of 2).
#[must_use]
pub fn normal_quadrature() -> [(f64, f64); 5] {
    [
        (-2.856_970_013_872_806, 0.011_257_411_327_720_69),
        (-1.355_626_179_974_266, 0.222_075_922_005_612_6),
        (0.0, 0.533_333_333_333_333_3),
        (1.355_626_179_974_266, 0.222_075_922_005_612_6),
        (2.856_970_013_872_806, 0.011_257_411_327_720_69),
    ]
}

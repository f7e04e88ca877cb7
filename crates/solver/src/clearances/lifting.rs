//! What one person should lift, by the revised lifting equation, once, with a good grip.

use crate::handbook::lifting::{
    BEST_HEIGHT_CM, CONSTANT_KG, FAR_CM, HIGHEST_CM, NEAR_CM, OVER_CM, PER_HEIGHT_CM, PER_TWIST_DEG,
};
use crate::units::{Angle, Length, Mass};

/// A lift with both hands.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Lift {
    /// From between the ankles out to the hands.
    pub out: Length,
    /// The hands above the floor: where it begins or ends, whichever is farther from the best height.
    pub hands: Length,
    /// How far up or down.
    pub over: Length,
    /// How far the body is twisted.
    pub twist: Angle,
}

/// The equation's five factors that a place makes: out, height, distance, twist. Each from 0 to 1.
#[must_use]
pub fn factors(lift: &Lift) -> [f64; 4] {
    let cm = |length: Length| length.mm() / 10.0;
    let out = cm(lift.out).max(NEAR_CM.value);
    let out = if out > FAR_CM.value { 0.0 } else { NEAR_CM.value / out };
    let hands = cm(lift.hands);
    let height = if hands > HIGHEST_CM.value {
        0.0
    } else {
        (1.0 - PER_HEIGHT_CM.value * (hands - BEST_HEIGHT_CM.value).abs()).max(0.0)
    };
    let (least, by) = OVER_CM.value;
    let over = cm(lift.over.abs());
    let distance = if over <= NEAR_CM.value { 1.0 } else { (least + by / over).min(1.0) };
    let twist = (1.0 - PER_TWIST_DEG.value * lift.twist.deg().abs()).max(0.0);
    [out, height, distance, twist]
}

/// What the equation makes of its factors, in their order, times what may be lifted under the best conditions.
#[must_use]
pub fn limit_by(factors: &[f64]) -> Mass {
    Mass::kilograms(CONSTANT_KG.value * factors.iter().product::<f64>())
}

/// What one person should lift so, once, with a good grip.
#[must_use]
pub fn limit(lift: &Lift) -> Mass {
    limit_by(&factors(lift))
}

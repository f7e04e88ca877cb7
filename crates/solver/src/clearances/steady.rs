//! The push that a standing display has to withstand.

use crate::capacity::posture::GRAVITY;
use crate::handbook::clearances::STEADY;
use crate::units::{Force, Mass};

/// The push on a display of a mass.
#[must_use]
pub fn push(mass: Mass) -> Force {
    let (share, most) = STEADY.value;
    Force::newtons((mass.kg() * GRAVITY * share).min(most))
}

/// The mass from which on that push is no larger.
#[must_use]
pub fn heaviest() -> Mass {
    let (share, most) = STEADY.value;
    Mass::kilograms(most / share / GRAVITY)
}

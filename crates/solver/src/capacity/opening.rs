//! Whether a hole or slot of a plate takes a fastener, and which way it can then bear on it.

use super::why::{Input, Known, Why, above_zero};
use crate::tolerance::SAME_PLACE_MM;
use crate::units::Length;

/// A hole or slot of a plate.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Opening {
    /// The diameter of a round hole, the width of a slot.
    pub width: Length,
    /// Which way it is long.
    pub runs: Runs,
}

/// Which way an opening is long.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Runs {
    /// Round: it bears any way.
    Nowhere,
    /// A slot up and down: no shear along the stud.
    Upright,
    /// A slot sideways: no shear across.
    Sideways,
}

impl Runs {
    /// Whether a fastener in it bears up-and-down load, and whether it bears sideways load.
    #[must_use]
    pub fn bears(self) -> (bool, bool) {
        (self != Self::Upright, self != Self::Sideways)
    }
}

/// Whether an opening takes a fastener: it passes through, and its head or washer covers the opening.
///
/// # Errors
/// Refused where it does not; not known where a size makes no sense.
pub fn takes(opening: &Opening, diameter: Length, head: Length) -> Known<()> {
    let width = above_zero(opening.width, Input::Hole)?;
    let diameter = above_zero(diameter, Input::Diameter)?;
    let head = above_zero(head, Input::Head)?;
    if width.mm() < diameter.mm() - SAME_PLACE_MM {
        Err(Why::DoesNotPass)
    } else if head.mm() <= width.mm() + SAME_PLACE_MM {
        Err(Why::DoesNotCover)
    } else {
        Ok(())
    }
}

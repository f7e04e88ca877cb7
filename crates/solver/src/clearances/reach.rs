//! What everyone reaches.

use crate::handbook::clearances::{NEW_DWELLING_MM, REACHED_IN};
use crate::units::Length;

/// Whose heights are asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reach {
    /// Of what is open to all, or a place of work.
    Public,
    /// Of a new dwelling in the United Kingdom.
    NewDwelling,
}

/// The lowest and the highest place, and where they are published.
#[must_use]
pub fn reached(reach: Reach) -> (Length, Length, &'static str) {
    match reach {
        Reach::Public => {
            let (lowest, highest) = REACHED_IN.value;
            (Length::inches(lowest), Length::inches(highest), REACHED_IN.source)
        }
        Reach::NewDwelling => {
            let (lowest, highest) = NEW_DWELLING_MM.value;
            (Length::millimetres(lowest), Length::millimetres(highest), NEW_DWELLING_MM.source)
        }
    }
}

/// Whether what is so high above the floor is reached, both ends included.
#[must_use]
pub fn is_reached(reach: Reach, above_floor: Length) -> bool {
    let (lowest, highest, _) = reached(reach);
    lowest <= above_floor && above_floor <= highest
}

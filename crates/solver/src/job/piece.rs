//! Something to hang.

use super::port::Port;
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::{Length, Mass};
use serde::{Deserialize, Serialize};

/// Something to hang: its outline, seen from the front.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Piece {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is.
    pub kind: PieceKind,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// The diagonal that a display is sold by: a usual case round a 16:9 picture of it stands in, assumed, for
    /// a width or height that is absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub diagonal: Option<Length>,
    /// How many lines its picture has, such as 1080 or 2160.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lines: Option<u32>,
    /// Its width.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Length>,
    /// Its height.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Length>,
    /// From its back to its front.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<Length>,
    /// Its mass.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass: Option<Mass>,
    /// Where its mass is centred, where known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub centre_of_mass: Option<CentreOfMass>,
    /// The pattern of its mounting threads.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pattern: Option<Pattern>,
    /// Where its cables plug in.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub ports: Vec<Port>,
}

/// A kind of piece.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PieceKind {
    /// A display.
    #[default]
    Display,
    /// A sound bar.
    SoundBar,
    /// A shelf.
    Shelf,
    /// A box.
    Box,
}

/// Where a piece's mass is centred, from the middle of its outline and its back.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CentreOfMass {
    /// To the right, seen from the front.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub right: Option<Offset>,
    /// Upward.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub up: Option<Offset>,
    /// In front of its back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub forward: Option<Length>,
}

/// The threads in a piece's back.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Pattern {
    /// Between threads, sideways.
    pub across: Length,
    /// Between threads, upright.
    pub upright: Length,
    /// From the piece's top to the upper threads.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub down: Option<Length>,
    /// How far the pattern's middle is to the right of the piece's, seen from the front.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub right: Option<Offset>,
    /// The thread's diameter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thread: Option<Length>,
    /// How deep the inserts are, from the back they open in.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub insert_depth: Option<Length>,
    /// How far its maker has screws turned into them.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub turn_in: Option<Length>,
    /// How long the spacers are that hold a bracket off the back; 0 where it lies flat on it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub spacer: Option<Length>,
    /// How many of its threads take a screw, where those are not all four corners.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub screws: Option<u32>,
}

impl Pattern {
    /// A pattern of which no more than this is known.
    #[must_use]
    pub fn new(across: Length, upright: Length) -> Self {
        Self {
            across,
            upright,
            down: None,
            right: None,
            thread: None,
            insert_depth: None,
            turn_in: None,
            spacer: None,
            screws: None,
        }
    }

    /// How many screws hold the piece: as told, else one in each corner; a side of nothing is two corners in one.
    #[must_use]
    pub fn screw_count(&self) -> usize {
        let corners = |side: Length| if side.mm() > 0.0 { 2 } else { 1 };
        let told = self.screws.map(|screws| usize::try_from(screws).unwrap_or(usize::MAX));
        told.unwrap_or(corners(self.across) * corners(self.upright))
    }
}

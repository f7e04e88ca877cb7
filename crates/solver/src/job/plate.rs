//! The part of a mount that is fixed to the wall, measured from its middle (right, as seen from the front)
//! and down from its top edge.

use crate::geometry::Rect;
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::{Length, Stress};
use serde::{Deserialize, Serialize};

/// The part of a mount that is fixed to the wall.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Plate {
    /// Its solid parts: two rails, or the sides of a frame round an opening.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub solids: Vec<Solid>,
    /// How thick its sheet is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Length>,
    /// The dowel bearing strength of its sheet, where its maker tells it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bearing: Option<Stress>,
    /// Round holes.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub holes: Vec<PlateHole>,
    /// Slots.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub slots: Vec<PlateSlot>,
}

/// A solid rectangle of a plate.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Solid {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// Its left edge, right of the plate's middle.
    pub left: Offset,
    /// Its right edge, right of the plate's middle.
    pub right: Offset,
    /// Its upper edge, down from the plate's top.
    pub down: Length,
    /// Its height.
    pub height: Length,
}

/// A round hole.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlateHole {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// Right of the plate's middle.
    pub right: Offset,
    /// Down from the plate's top.
    pub down: Length,
    /// Its diameter.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub diameter: Option<Length>,
}

/// A slot with round ends: a fastener can stand anywhere along it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PlateSlot {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// Its middle, right of the plate's.
    pub right: Offset,
    /// Its middle, down from the plate's top.
    pub down: Length,
    /// How far a fastener can move along it, from end to end.
    pub travel: Length,
    /// Whether it runs up and down; else it runs sideways.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub upright: bool,
    /// Its width.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Length>,
}

impl Solid {
    /// Its place from the plate's middle and top: y is up, so all of it is at or below 0.
    #[must_use]
    pub fn in_plate(&self) -> Rect {
        let top = -self.down;
        Rect {
            left: self.left.length().min(self.right.length()),
            right: self.left.length().max(self.right.length()),
            bottom: top - self.height,
            top,
        }
    }
}

impl Plate {
    /// The outline round all its solid parts, from its middle and top; `None` where none was measured.
    #[must_use]
    pub fn outline_in_plate(&self) -> Option<Rect> {
        self.solids.iter().map(Solid::in_plate).reduce(|a, b| Rect {
            left: a.left.min(b.left),
            right: a.right.max(b.right),
            bottom: a.bottom.min(b.bottom),
            top: a.top.max(b.top),
        })
    }
}

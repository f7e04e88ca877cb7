//! What is in a wall besides its framing.

use super::place::{AcrossExtent, UprightExtent};
use crate::subject::Id;
use serde::{Deserialize, Serialize};

/// Something in the wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hidden {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is.
    pub kind: HiddenKind,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Its sideways extent.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub across: AcrossExtent,
    /// Its upright extent; from floor to ceiling where not given.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub upright: UprightExtent,
    /// How it is known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub known_by: Option<KnownBy>,
    /// Anything worth remembering.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
}

/// A kind of hidden thing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HiddenKind {
    /// A fire block or noggin between two studs.
    FireBlock,
    /// A water or gas pipe.
    Pipe,
    /// A drain or vent pipe.
    Drain,
    /// A cable.
    Cable,
    /// An air duct.
    Duct,
    /// A flue.
    Flue,
    /// A header over an opening.
    Header,
    /// A brace let into the studs.
    Brace,
    /// A factory opening in a steel stud.
    StudOpening,
    /// The pocket of a sliding door.
    PocketDoor,
    /// A box in the wall's other side.
    BoxBehind,
    /// Anything else.
    Other,
}

/// How a hidden thing is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum KnownBy {
    /// It was seen.
    Seen,
    /// A detector told.
    Detector,
    /// A drawing shows it.
    Drawing,
    /// It stands to reason.
    Supposed,
}

//! One reading of what is behind the face.

use super::place::{AcrossReading, UprightReading};
use crate::subject::Id;
use serde::{Deserialize, Serialize};

/// One reading of what is behind the face.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hit {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What was read.
    pub kind: HitKind,
    /// Where along the wall.
    pub x: AcrossReading,
    /// How high, where noted.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub y: Option<UprightReading>,
}

/// What a hit says.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum HitKind {
    /// A detector found an upright's left edge.
    LeftEdge,
    /// A detector found an upright's right edge.
    RightEdge,
    /// A detector found an upright's centre.
    Centre,
    /// A magnet holds on a board screw.
    Magnet,
    /// A probe met wood at full depth.
    Wood,
    /// A probe met air.
    Air,
    /// A probe met wood only near the face: lath or panelling, no stud.
    ShallowWood,
    /// A probe met metal.
    Metal,
}

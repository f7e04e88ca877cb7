//! What a wall, or a chimney breast, is made of.

use crate::units::{Length, Ratio, Stress};
use serde::{Deserialize, Serialize};

/// What stands in front of the framing.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Front {
    /// From the framing outward.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub layers: Vec<Layer>,
    /// All of it together, measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Length>,
}

/// One layer of a wall's face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Layer {
    /// Gypsum board.
    Board,
    /// Plaster on lath.
    PlasterOnLath,
    /// Tile.
    Tile,
    /// Panelling.
    Panelling,
}

/// What a wall is framed or built of. `None` stands in the job for what nobody said; `not_known` for what
/// somebody said they do not know. Both count alike.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum WallFraming {
    /// Wood studs.
    Wood(WoodStuds),
    /// Cold-formed steel studs.
    Steel(SteelStuds),
    /// Brick or block, with its joints.
    Masonry(Masonry),
    /// Concrete.
    Concrete(Concrete),
    /// A thin facing that carries nothing.
    Veneer,
    /// No framing at all: solid panel or glass.
    NoFraming,
    /// Not known.
    NotKnown,
}

/// Wood studs.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WoodStuds {
    /// The width seen from the room: 1 1/2 in for a 2x4 or 2x3, 3 1/2 in for a flat 2x4.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face: Option<Length>,
    /// From the front of the stud to its back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<Length>,
    /// The specific gravity of its wood, where known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub gravity: Option<Ratio>,
    /// Whether the face is furring on something solid, not a stud.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub furring: Option<bool>,
}

/// Cold-formed steel studs.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SteelStuds {
    /// The thickness of the steel, in mil.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Length>,
    /// The width of the flange seen from the room.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub face: Option<Length>,
    /// The depth of the web.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub depth: Option<Length>,
}

/// Brick or block.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Masonry {
    /// Whether the units are solid.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub solid: Option<bool>,
}

/// Concrete.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Concrete {
    /// Its strength, where known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub strength: Option<Stress>,
    /// Whether it is known to be of normal weight.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub normal_weight: Option<bool>,
}

impl WallFraming {
    /// The width of an upright's face, measured or usual; `None` where there are no uprights.
    ///
    /// Usual for wood is 1 1/2 in (PS 20, dressed size of a nominal 2 in; read second-hand).
    #[must_use]
    pub fn face(&self) -> Option<Length> {
        match self {
            Self::Wood(studs) => Some(studs.face.unwrap_or(Length::millimetres(38.1))),
            // 1 1/4 in, the usual flange of a light partition stud (from memory): drawn only, never counted.
            Self::Steel(studs) => Some(studs.face.unwrap_or(Length::millimetres(31.75))),
            Self::NotKnown => Some(Length::millimetres(38.1)),
            Self::Masonry(_) | Self::Concrete(_) | Self::Veneer | Self::NoFraming => None,
        }
    }

    /// Whether there are bays between uprights, in which a cable could run. What is not known may have them: a
    /// look into the bay comes before any cut.
    #[must_use]
    pub fn has_bays(&self) -> bool {
        match self {
            Self::Wood(_) | Self::Steel(_) | Self::NotKnown => true,
            Self::Masonry(_) | Self::Concrete(_) | Self::Veneer | Self::NoFraming => false,
        }
    }
}

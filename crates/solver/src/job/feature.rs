//! What is seen on a wall: a rectangle whose edges can be measured from.

use super::framing::{Front, WallFraming};
use super::place::{AcrossExtent, UprightExtent};
use crate::subject::Id;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// Something visible on the wall.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Feature {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is.
    pub kind: FeatureKind,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Its sideways extent, trim included.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub across: AcrossExtent,
    /// Its upright extent, trim included.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub upright: UprightExtent,
    /// How far it stands proud of the wall, or of the chimney breast it is on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub proud: Option<Length>,
    /// What a chimney breast is made of, where it is not as the wall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub framing: Option<WallFraming>,
    /// What stands in front of a chimney breast's own framing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub front: Option<Front>,
    /// The height of the fire opening's top, or anything worth remembering.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
}

/// A kind of feature.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FeatureKind {
    /// A window with its trim.
    Window,
    /// A door with its trim.
    Door,
    /// A mantel shelf or surround.
    Mantel,
    /// A bench.
    Bench,
    /// A shelf.
    Shelf,
    /// A power outlet.
    Outlet,
    /// A switch.
    Switch,
    /// An air vent.
    Vent,
    /// A thermostat.
    Thermostat,
    /// A radiator.
    Radiator,
    /// A baseboard.
    Baseboard,
    /// A crown moulding.
    Crown,
    /// Other trim.
    Trim,
    /// A soffit or beam.
    Soffit,
    /// A curtain, as wide as it hangs when drawn back.
    Curtain,
    /// Panelling.
    Panelling,
    /// A chimney breast: a plane of its own.
    ChimneyBreast,
    /// Anything else.
    Other,
}

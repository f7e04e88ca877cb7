//! One arrangement offered to the customer.

use super::agreed::Agreed;
use super::rule::{AcrossRule, UprightRule};
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// One arrangement offered to the customer: which pieces, on which mounts, where.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WallOption {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// What hangs where.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hangings: Vec<Hanging>,
    /// Anything worth remembering.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
    /// What the customer agreed to.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub agreed: Option<Agreed>,
}

/// A piece on its mount at its place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Hanging {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// The piece.
    pub piece: Id,
    /// The mount it hangs on; none for a piece that hangs on another.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mount: Option<Id>,
    /// The piece that it hangs on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hung_on: Option<Id>,
    /// Where it goes sideways.
    pub across: AcrossRule,
    /// How high it goes.
    pub upright: UprightRule,
    /// How far it is moved from there.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub nudge: Nudge,
    /// What was chosen by hand of its mount's holes; of a hole not named here the plan decides.
    #[serde(default, skip_serializing_if = "Vec::is_empty", deserialize_with = "each_once")]
    pub holes: Vec<ByHand>,
    /// Which of its ports are used, and where their cables should end.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub cables: Vec<CableWish>,
    /// How its cables should go, where it matters.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub way: CableWay,
}

impl Hanging {
    /// Hangs it on a mount of the job, or on none. What was chosen by hand is of the other mount's holes, and goes;
    /// what has a mount hangs on no other piece.
    pub fn hang_on(&mut self, mount: Option<Id>) {
        if self.mount != mount {
            self.holes.clear();
        }
        if mount.is_some() {
            self.hung_on = None;
        }
        self.mount = mount;
    }
}

/// What was chosen by hand of a hole.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct ByHand {
    /// The hole or slot of the mount's plate.
    pub hole: Id,
    /// What is wanted of it.
    pub wanted: Wanted,
    /// Of a slot, how far from its middle the fastener stands: to the right, in an upright slot up. Farther than its
    /// end is at its end; where not given it is the plan's.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub along: Option<Offset>,
}

/// What is wanted of a hole by hand.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Wanted {
    /// No fastener, whatever it meets.
    Empty,
    /// A fastener, whichever suits.
    Used,
    /// This fastener of the kit.
    UsedWith(Id),
}

/// Two choices for one hole are refused: nobody can tell which was meant.
fn each_once<'de, D: serde::Deserializer<'de>>(from: D) -> Result<Vec<ByHand>, D::Error> {
    let all = Vec::<ByHand>::deserialize(from)?;
    for (index, one) in all.iter().enumerate() {
        if all.iter().take(index).any(|earlier| earlier.hole == one.hole) {
            return Err(serde::de::Error::custom(format!("{} is chosen by hand twice", one.hole)));
        }
    }
    Ok(all)
}

/// How far a piece is moved from where its rules put it.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Nudge {
    /// To the right.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub right: Offset,
    /// Upward.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub up: Offset,
}

/// Which port is used, and where its cable should end.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CableWish {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// The port.
    pub port: Id,
    /// The outlet or box beside which the cable should come out, where it matters.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub ends_at: Option<Id>,
    /// The cable of the kit that is used, of this or another stocked length.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub cable: Option<Id>,
}

/// How the cables of a piece should go. What is not said is as the plan finds it best.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CableWay {
    /// What the wall is opened for behind the piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entry_kind: Option<Opening>,
    /// What it is opened for where the cables come out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exit_kind: Option<Opening>,
    /// Where the middle of the entry has to be; it moves with the piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub entry_at: Option<OnPiece>,
    /// Where the middle of the exit has to be.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub exit_at: Option<OnWall>,
    /// A place, from the wall's left end, in the one bay that may be used.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bay: Option<Length>,
    /// The furniture behind which the exit has to be.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub behind: Option<Id>,
    /// How far the exit stays from outlets and switches, at least.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub from_power: Option<Length>,
    /// Whether a raceway on the wall's face will do; not said: only where there is no allowed way inside.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub surface: Option<Surface>,
    /// Which was taken from among the ways, whatever was said of the face: one on the face, or one inside the wall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub on_face: Option<bool>,
    /// Whether studs may be bored; not said: no.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bore: Option<bool>,
    /// What is left over at each end of a cable.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub slack: Option<Length>,
    /// How far the piece is held off the wall while it is plugged.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub held_off: Option<Length>,
    /// The bore of the tube that the cables run in, where there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tube: Option<Length>,
    /// How wide that tube is outside.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tube_outside: Option<Length>,
}

impl CableWay {
    /// Whether the cables were asked for on the wall's face.
    #[must_use]
    pub fn is_on_face(&self) -> bool {
        self.surface == Some(Surface::Only) || self.on_face == Some(true)
    }
}

/// Whether cables may run on a wall's face.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Surface {
    /// Never.
    No,
    /// As well as inside: whichever costs less.
    AsWell,
    /// There and nowhere else.
    Only,
}

/// What a wall is opened for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Opening {
    /// A plain hole, as wide as the larger plug asks.
    PlainHole,
    /// A bracket for one gang.
    OneGang,
    /// A bracket for two gangs.
    TwoGang,
    /// A box or bracket of the kit.
    Stocked(Id),
}

/// A place from the middle of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OnPiece {
    /// To the right.
    pub right: Offset,
    /// Upward.
    pub up: Offset,
}

/// A place on the wall.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct OnWall {
    /// From the wall's left end.
    pub across: Length,
    /// Up from the floor there.
    pub up: Length,
}

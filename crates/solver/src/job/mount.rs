//! All of a piece's hanging hardware.

use super::plate::Plate;
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::{Angle, Length, Mass};
use serde::{Deserialize, Serialize};

/// All of a piece's hanging hardware.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mount {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is.
    pub kind: MountKind,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Its own mass.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass: Option<Mass>,
    /// A usual plate that stands in, assumed, while the mount's own is absent.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub like: Option<UsualPlate>,
    /// The part that is fixed to the wall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub plate: Option<Plate>,
    /// The two uprights on the display's back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub brackets: Option<Brackets>,
    /// How thick they are where the screws into the piece go through.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bracket_thickness: Option<Length>,
    /// From the piece's top down to the plate's top, hooks at mid height.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub drop: Option<Length>,
    /// How far the plate's top is above (or, negative, below) the pattern's upper threads, hooks at mid
    /// height: gives the drop where it was not measured.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hook_rise: Option<Offset>,
    /// How far the piece can stand to the left of the plate's middle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub play_left: Option<Length>,
    /// How far the piece can stand to the right of the plate's middle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub play_right: Option<Length>,
    /// How far its height can be adjusted, each way.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height_adjustment: Option<Length>,
    /// How far it tilts.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub tilt: Option<Tilt>,
    /// From the wall to the piece's back.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub stand_off: Option<Length>,
    /// The arm, where it has one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub arm: Option<Arm>,
    /// How the piece is put on.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lift: Option<Lift>,
    /// The free height it needs below the piece, to lock or release it.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub access_below: Option<Length>,
    /// What its maker says it can carry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub rating: Option<Rating>,
    /// What its maker requires.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub required: Option<Required>,
}

/// A kind of mount.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MountKind {
    /// Close to the wall.
    #[default]
    Flush,
    /// Tilts.
    Tilting,
    /// Swings out on an arm.
    Arm,
    /// Comes down in front of a fireplace.
    PullDown,
}

/// A plate as many are, of nobody's make, to plan with until the real one is measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum UsualPlate {
    /// One narrow rail, close to the wall.
    NarrowRail,
    /// Two long rails, for a display that tilts.
    TwoRails,
    /// A narrow upright plate of an arm, for one stud.
    ArmOnOneStud,
    /// A wide plate of an arm, for two studs.
    ArmOnTwoStuds,
    /// A wide, high plate that a display is pulled down from.
    PullDown,
}

/// The two uprights on a display's back.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Brackets {
    /// Between their middles.
    pub apart: Length,
    /// The width of each.
    pub width: Length,
    /// From the plate's top to their upper ends; upward is positive.
    pub top: Offset,
    /// Their length.
    pub length: Length,
}

/// How far a mount tilts.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Tilt {
    /// Top forward, facing down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub down: Option<Angle>,
    /// Top back, facing up.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub up: Option<Angle>,
    /// How far below the piece's top it turns; the middle of the piece where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub pivot_down: Option<Length>,
}

/// An arm.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Arm {
    /// From the wall to the piece's back, straight out.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reach: Option<Length>,
    /// How far it swings to either side at the wall.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub hinge: Option<Angle>,
    /// How far its head turns to either side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub head: Option<Angle>,
    /// How far a pull-down comes down.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub lowers: Option<Length>,
    /// How far right of the plate's middle the piece's centre is when parked.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub parked: Option<Offset>,
    /// How far the piece's middle comes down under its own weight. Not given: measure after hanging.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub droop: Option<Length>,
}

/// How a piece is put on its mount.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Lift {
    /// The way it moves last.
    pub direction: LiftDirection,
    /// How far above (or beside) its place it is brought in.
    pub by: Length,
}

/// The way a piece moves last when it is put on.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum LiftDirection {
    /// Down on to the plate.
    Down,
    /// To the right, brought in on the left.
    Right,
    /// To the left, brought in on the right.
    Left,
}

/// What a maker says a mount can carry.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Rating {
    /// The heaviest piece.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub mass: Option<Mass>,
    /// The narrowest pattern it takes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_across: Option<Length>,
    /// The widest pattern it takes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most_across: Option<Length>,
    /// The lowest pattern it takes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub least_upright: Option<Length>,
    /// The highest pattern it takes.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub most_upright: Option<Length>,
}

/// What a maker requires.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Required {
    /// In so many words.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fasteners: Option<String>,
    /// The holes that must be used.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub holes: Vec<Id>,
}

impl UsualPlate {
    /// Every usual plate, in the order in which a list shows them.
    pub const ALL: [Self; 5] =
        [Self::NarrowRail, Self::TwoRails, Self::ArmOnOneStud, Self::ArmOnTwoStuds, Self::PullDown];

    /// The kind of mount that has such a plate.
    #[must_use]
    pub fn kind(self) -> MountKind {
        match self {
            Self::NarrowRail => MountKind::Flush,
            Self::TwoRails => MountKind::Tilting,
            Self::ArmOnOneStud | Self::ArmOnTwoStuds => MountKind::Arm,
            Self::PullDown => MountKind::PullDown,
        }
    }
}

impl Mount {
    /// Whether it lets its piece come out of the wall: an arm or a pull-down.
    #[must_use]
    pub fn comes_out(&self) -> bool {
        self.arm.is_some() || matches!(self.kind, MountKind::Arm | MountKind::PullDown)
    }

    /// How far the piece's centre may be to the right of the plate's middle: the least and the most.
    ///
    /// An arm's parked offset counts. What was not measured counts as none.
    #[must_use]
    pub fn offsets(&self) -> (Length, Length) {
        let parked = self.arm.as_ref().and_then(|arm| arm.parked).map(Offset::length).unwrap_or_default();
        (parked - self.play_left.unwrap_or_default(), parked + self.play_right.unwrap_or_default())
    }
}

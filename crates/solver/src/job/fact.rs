//! What was done to the wall: a mark that has been struck, drilled or cut, and how it was found; a step that is done.
//!
//! A fact keeps the wall's numbers of the moment it was struck, and its readings, so that it can be found again
//! from what it was read from when a measurement changes later.

use super::place::{Sideways, UpDown};
use crate::geometry::Point;
use crate::subject::{Id, Subject};
use crate::tape::Offset;
use crate::units::Length;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;

/// A mark that has been struck, drilled or cut, or a step that is done.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Fact {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// The mark: its subject and what was struck.
    pub mark: MarkId,
    /// The option it was struck in; none where the wall had none and one was assumed.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub option: Option<Id>,
    /// What was done.
    pub state: FactState,
    /// Where it was planned; none of a step without a place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub planned: Option<Spot>,
    /// Where it went, where that is known to be another place: the readings are those it was planned by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub went: Option<Spot>,
    /// The sideways reading it was struck by.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub across: Option<StruckReading<Sideways>>,
    /// The upright reading it was struck by; of a line read at both its ends, the one at the left.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub upright: Option<StruckReading<UpDown>>,
    /// The fastener of the kit that a hole was drilled for.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub fastener: Option<Id>,
    /// The upright reading at the right end of a line read at both its ends.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub upright_at_right: Option<StruckReading<UpDown>>,
    /// How large an opening is as it was cut, its middle at the place; none of anything else, or where that is not
    /// known.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub size: Option<CutSize>,
}

impl Fact {
    /// How far right of, and above, its plan it went; `None` of a step without a place.
    #[must_use]
    pub fn off(&self) -> Option<Point> {
        let planned = self.planned?;
        let went = self.went.unwrap_or(planned);
        Some(Point::new(went.x.length() - planned.x.length(), went.y.length() - planned.y.length()))
    }
}

/// How large an opening in the face is.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CutSize {
    /// Across.
    pub width: Length,
    /// Up and down.
    pub height: Length,
}

/// What was done at a mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum FactState {
    /// Done: of a step that strikes nothing.
    Done,
    /// Drawn on the wall.
    Struck,
    /// Drilled.
    Drilled,
    /// Cut open.
    Cut,
    /// Drilled, and the fastener spins in it: the hole holds nothing.
    Stripped,
}

/// A place on the wall in its numbers of the moment it was struck: right of its left end, up from level.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Spot {
    /// Right of the wall's left end.
    pub x: Offset,
    /// Up from the true level plane through the first floor reading.
    pub y: Offset,
}

/// A reading that a mark was struck by.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct StruckReading<D> {
    /// What it was measured from.
    pub from: StruckFrom,
    /// How the tape was held.
    pub how: How,
    /// Which way it was read.
    pub direction: D,
    /// Where it was taken, on the other axis.
    pub at: Offset,
    /// How much the tape showed.
    pub shown: Length,
    /// Where the other mark was at that moment, along the tape, where it was read from one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub datum: Option<Offset>,
}

/// What a mark was struck from. Written `left`, `right`, `floor`, `control_line`, an edge such as
/// `door-1.right`, or another mark such as `display-1.level_line`.
#[derive(Clone, Debug, PartialEq)]
pub enum StruckFrom {
    /// The wall's left end.
    LeftEnd,
    /// The wall's right end.
    RightEnd,
    /// The floor.
    Floor,
    /// The control line.
    ControlLine,
    /// An edge of a feature, or a mark struck before.
    Thing(Subject),
}

/// How a tape is held for a reading, best first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum How {
    /// From a line already struck.
    Line,
    /// The tape's end against a proud edge that faces the mark.
    Butt,
    /// Hooked over an edge that faces away from the mark.
    Hook,
    /// Butted into an inside corner.
    Corner,
    /// A distance meter from a side wall to a card held on the mark.
    Meter,
    /// Up or down from the control line.
    Level,
    /// Up from the floor.
    Floor,
    /// From a helping mark, or with somebody's help.
    Help,
}

/// The id of a mark: a subject with its part, such as `display-1.centre_line`.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MarkId(Subject);

impl MarkId {
    /// The id of a mark; `None` for a thing as a whole, which is no mark.
    #[must_use]
    pub fn of(subject: Subject) -> Option<Self> {
        subject.part.is_some().then_some(Self(subject))
    }

    /// The mark's subject and what is struck.
    #[must_use]
    pub fn subject(&self) -> &Subject {
        &self.0
    }
}

impl Serialize for MarkId {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        self.0.serialize(serializer)
    }
}

impl<'de> Deserialize<'de> for MarkId {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let subject = Subject::deserialize(deserializer)?;
        let text = subject.to_string();
        Self::of(subject).ok_or_else(|| {
            serde::de::Error::custom(format!(
                "\"{text}\" is no mark: write its piece and what is struck, as in \"display-1.centre_line\""
            ))
        })
    }
}

impl StruckFrom {
    /// A datum from its text.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        match text {
            "left" => Some(Self::LeftEnd),
            "right" => Some(Self::RightEnd),
            "floor" => Some(Self::Floor),
            "control_line" => Some(Self::ControlLine),
            _ => Subject::read(text).filter(|subject| subject.part.is_some()).map(Self::Thing),
        }
    }
}

impl fmt::Display for StruckFrom {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::LeftEnd => f.write_str("left"),
            Self::RightEnd => f.write_str("right"),
            Self::Floor => f.write_str("floor"),
            Self::ControlLine => f.write_str("control_line"),
            Self::Thing(subject) => write!(f, "{subject}"),
        }
    }
}

impl Serialize for StruckFrom {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for StruckFrom {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text).ok_or_else(|| {
            serde::de::Error::custom(format!(
                "\"{}\" is nothing to strike from: write \"left\", \"right\", \"floor\", \"control_line\", an edge \
                 such as \"door-1.right\" or a mark such as \"display-1.level_line\"",
                text.chars().take(80).collect::<String>()
            ))
        })
    }
}

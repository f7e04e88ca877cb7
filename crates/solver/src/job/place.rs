//! Places as they were read: from which datum, which way, how far.

use crate::subject::Subject;
use crate::units::Length;
use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;

/// What a sideways distance is measured from. Written `left`, `right`, or an edge such as `door-1.right`.
#[derive(Clone, Debug, PartialEq, Default)]
pub enum AcrossDatum {
    /// The wall's left end.
    #[default]
    LeftEnd,
    /// The wall's right end.
    RightEnd,
    /// An edge of a feature or piece: its part is `left`, `right` or `centre`.
    Edge(Subject),
}

/// What a height is measured from. Written `floor`, `control_line`, or an edge such as `mantel-1.top`.
#[derive(Clone, Debug, PartialEq, Default)]
pub enum UprightDatum {
    /// The floor.
    #[default]
    Floor,
    /// The control line.
    ControlLine,
    /// An edge of a feature or piece: its part is `bottom`, `top` or `centre`.
    Edge(Subject),
}

/// A sideways direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Sideways {
    /// To the left.
    Left,
    /// To the right.
    Right,
}

/// An upright direction.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum UpDown {
    /// Upward.
    Up,
    /// Downward.
    Down,
}

impl Sideways {
    /// 1 to the right, the way `x` grows, -1 to the left.
    #[must_use]
    pub fn sign(self) -> f64 {
        match self {
            Self::Left => -1.0,
            Self::Right => 1.0,
        }
    }
}

impl UpDown {
    /// 1 upward, the way `y` grows, -1 downward.
    #[must_use]
    pub fn sign(self) -> f64 {
        match self {
            Self::Up => 1.0,
            Self::Down => -1.0,
        }
    }
}

/// A sideways reading: from the datum, away from it (or `toward` a side), by so much.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AcrossReading {
    /// What it was measured from: the wall's left end where not given.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub from: AcrossDatum,
    /// Which way, where it is not simply away from the datum (from a left edge leftward, from a right edge
    /// or a centre rightward).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub toward: Option<Sideways>,
    /// How far.
    pub by: Length,
    /// A second reading of the same place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub check: Option<Box<Self>>,
}

/// An upright reading: from the datum, upward (from a lower edge downward) or `toward`, by so much.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct UprightReading {
    /// What it was measured from: the floor where not given.
    #[serde(default, skip_serializing_if = "super::is_default")]
    pub from: UprightDatum,
    /// Which way, where it is not upward (from a lower edge downward).
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub toward: Option<UpDown>,
    /// How far.
    pub by: Length,
    /// Where along the wall it was taken; the middle of the thing where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<Box<AcrossReading>>,
    /// A second reading of the same place.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub check: Option<Box<Self>>,
}

/// The sideways extent of a thing: any two settle it, a third is a check.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AcrossExtent {
    /// Its left edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left: Option<AcrossReading>,
    /// Its right edge.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub right: Option<AcrossReading>,
    /// Its middle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub centre: Option<AcrossReading>,
    /// Its width.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Length>,
}

/// The upright extent of a thing: any two settle it, a third is a check.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct UprightExtent {
    /// Its lower edge; at its left end where `bottom_at_right` is given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bottom: Option<UprightReading>,
    /// Its lower edge at its right end, where it is out of level.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bottom_at_right: Option<UprightReading>,
    /// Its upper edge; at its left end where `top_at_right` is given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub top: Option<UprightReading>,
    /// Its upper edge at its right end, where it is out of level.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub top_at_right: Option<UprightReading>,
    /// Its middle.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub centre: Option<UprightReading>,
    /// Its height.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Length>,
}

impl AcrossReading {
    /// Which way it was read.
    #[must_use]
    pub fn way(&self) -> Sideways {
        self.toward.unwrap_or_else(|| self.from.away())
    }

    /// A reading from the wall's left end.
    #[must_use]
    pub fn from_left(by: Length) -> Self {
        Self { from: AcrossDatum::LeftEnd, toward: None, by, check: None }
    }
}

impl UprightReading {
    /// Which way it was read.
    #[must_use]
    pub fn way(&self) -> UpDown {
        self.toward.unwrap_or_else(|| self.from.away())
    }

    /// A reading up from the floor.
    #[must_use]
    pub fn from_floor(by: Length) -> Self {
        Self { from: UprightDatum::Floor, toward: None, by, at: None, check: None }
    }
}

impl fmt::Display for AcrossDatum {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::LeftEnd => f.write_str("left"),
            Self::RightEnd => f.write_str("right"),
            Self::Edge(subject) => write!(f, "{subject}"),
        }
    }
}

impl fmt::Display for UprightDatum {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Floor => f.write_str("floor"),
            Self::ControlLine => f.write_str("control_line"),
            Self::Edge(subject) => write!(f, "{subject}"),
        }
    }
}

impl AcrossDatum {
    /// Which way leads away from it, where a reading says none: into the wall from an end, from a left edge
    /// leftward, from a right edge or a centre rightward.
    #[must_use]
    pub fn away(&self) -> Sideways {
        match self {
            Self::RightEnd => Sideways::Left,
            Self::Edge(edge) if edge.part_str() == "left" => Sideways::Left,
            Self::LeftEnd | Self::Edge(_) => Sideways::Right,
        }
    }

    /// A datum from its text.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        match text {
            "left" => Some(Self::LeftEnd),
            "right" => Some(Self::RightEnd),
            _ => {
                let subject = Subject::read(text)?;
                matches!(subject.part_str(), "left" | "right" | "centre").then_some(Self::Edge(subject))
            }
        }
    }
}

impl UprightDatum {
    /// Which way leads away from it, where a reading says none: from a lower edge downward, else upward.
    #[must_use]
    pub fn away(&self) -> UpDown {
        match self {
            Self::Edge(edge) if edge.part_str() == "bottom" => UpDown::Down,
            Self::Floor | Self::ControlLine | Self::Edge(_) => UpDown::Up,
        }
    }

    /// A datum from its text.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        match text {
            "floor" => Some(Self::Floor),
            "control_line" => Some(Self::ControlLine),
            _ => {
                let subject = Subject::read(text)?;
                matches!(subject.part_str(), "bottom" | "top" | "centre").then_some(Self::Edge(subject))
            }
        }
    }
}

impl Serialize for AcrossDatum {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl Serialize for UprightDatum {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for AcrossDatum {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text).ok_or_else(|| {
            serde::de::Error::custom(format!(
                "\"{}\" is no sideways datum: write \"left\", \"right\" or an edge such as \"door-1.right\"",
                text.chars().take(80).collect::<String>()
            ))
        })
    }
}

impl<'de> Deserialize<'de> for UprightDatum {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text).ok_or_else(|| {
            serde::de::Error::custom(format!(
                "\"{}\" is no upright datum: write \"floor\", \"control_line\" or an edge such as \"mantel-1.top\"",
                text.chars().take(80).collect::<String>()
            ))
        })
    }
}

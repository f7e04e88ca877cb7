//! A wall: its size, its ends, what it is made of, what is seen on it and in it, what was done, its options.

use super::fact::Fact;
use super::feature::Feature;
use super::framing::{Front, WallFraming};
use super::hidden::Hidden;
use super::hit::Hit;
use super::option::WallOption;
use super::place::{AcrossReading, UprightReading};
use super::seat::Seat;
use crate::subject::{Id, Subject};
use crate::tape::Offset;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// One wall of the room, seen face-on.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Wall {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// From end to end at the display's height.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub width: Option<Length>,
    /// From the floor to the ceiling.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub height: Option<Length>,
    /// What its left end is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub left_end: Option<End>,
    /// What its right end is.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub right_end: Option<End>,
    /// What stands in front of the framing.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub front: Option<Front>,
    /// What it is framed or built of.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub framing: Option<WallFraming>,
    /// What is on its other side.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub beyond: Option<Beyond>,
    /// Whether it carries load.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub bearing: Option<bool>,
    /// Whether it stands at a bath, kitchen or laundry.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub wet: Option<bool>,
    /// Whether its bays are filled.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub insulated: Option<bool>,
    /// Whether a vapour barrier lies under its face.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub vapour_barrier: Option<bool>,
    /// What the control line is, where there is one.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub control_line: Option<ControlLine>,
    /// Readings from the control line down to the floor; the first is at y = 0.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub floor: Vec<FloorReading>,
    /// Readings of how far the face stands out of flat.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub flatness: Vec<FlatnessReading>,
    /// What is seen on it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub features: Vec<Feature>,
    /// What is in it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hidden: Vec<Hidden>,
    /// Readings of what is behind the face.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub hits: Vec<Hit>,
    /// Where it is looked at from.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub seats: Vec<Seat>,
    /// What was done to it.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub facts: Vec<Fact>,
    /// The arrangements offered.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub options: Vec<WallOption>,
    /// The option that was chosen.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub chosen: Option<Id>,
    /// Anything worth remembering.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
}

impl Wall {
    /// What the wall is made of, or the chimney breast `on` it where that says what it is itself.
    #[must_use]
    pub fn framing_on(&self, on: Option<&Id>) -> Option<&WallFraming> {
        let breast = on.and_then(|id| self.features.iter().find(|feature| feature.id == *id));
        breast.and_then(|breast| breast.framing.as_ref()).or(self.framing.as_ref())
    }

    /// What was done at a mark in an option; where it is told several times, the last.
    #[must_use]
    pub fn fact_of(&self, mark: &Subject, option: Option<&Id>) -> Option<&Fact> {
        self.facts.iter().rev().find(|fact| fact.mark.subject() == mark && fact.option.as_ref() == option)
    }

    /// What stands in front of that framing: what stands in front of the wall's says nothing of a breast that is built
    /// in its own way.
    #[must_use]
    pub fn front_on(&self, on: Option<&Id>) -> Option<&Front> {
        let breast = on.and_then(|id| self.features.iter().find(|feature| feature.id == *id));
        match breast {
            Some(breast) if breast.framing.is_some() || breast.front.is_some() => breast.front.as_ref(),
            _ => self.front.as_ref(),
        }
    }
}

/// What a wall's end is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum End {
    /// Another wall comes forward there: a tape's end can be butted.
    InsideCorner,
    /// The wall turns away there: a tape can be hooked over.
    OutsideCorner,
    /// Nothing to measure from.
    Open,
}

/// What is on the other side of a wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Beyond {
    /// A room of this home.
    Room,
    /// The open.
    Outside,
    /// A neighbour, a shaft or a garage: a party wall, perhaps fire-rated.
    Neighbour,
    /// Not known.
    NotKnown,
}

/// What the control line is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ControlLine {
    /// A line struck round the room.
    Line,
    /// The ticks of a line laser.
    LaserTicks,
}

/// How far the floor lies below the control line at one place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FloorReading {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// Where along the wall.
    pub at: AcrossReading,
    /// From the control line down to the floor.
    pub down: Length,
}

/// How far the face stands proud of (or, negative, behind) a straightedge at one place.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FlatnessReading {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// Where along the wall.
    pub at: AcrossReading,
    /// How high; the whole height where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub up: Option<UprightReading>,
    /// How far it stands out.
    pub proud: Offset,
}

//! A place in the room that the display is looked at from.

use super::place::AcrossReading;
use crate::subject::Id;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// Where someone sits or stands, and how high their eyes are.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Seat {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// From the wall's own face out to the eyes, level and square to the wall. What hangs on a chimney breast is nearer
    /// by what that stands proud.
    pub distance: Length,
    /// Where along the wall the eyes are. In front of the display's middle where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub at: Option<AcrossReading>,
    /// Whether people sit or stand there. They sit where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub posture: Option<Posture>,
    /// Who it is for. Anyone where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub person: Option<Person>,
    /// From the floor to the eyes. By a published table of people where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub eye_height: Option<Length>,
    /// From the floor to the top of the seat, sat on. One that suits each person where not given.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub seat_height: Option<Length>,
    /// Anything worth remembering.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub notes: Option<String>,
}

/// How people are there.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Posture {
    /// They sit.
    #[default]
    Seated,
    /// They stand.
    Standing,
}

/// Who a seat is for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Person {
    /// A man.
    Man,
    /// A woman.
    Woman,
}

impl Seat {
    /// A seat at a distance, nothing else known of it.
    #[must_use]
    pub fn away(distance: Length) -> Self {
        Self {
            id: Id::default(),
            name: None,
            distance,
            at: None,
            posture: None,
            person: None,
            eye_height: None,
            seat_height: None,
            notes: None,
        }
    }

    /// How people are there: seated where nothing is said.
    #[must_use]
    pub fn posture(&self) -> Posture {
        self.posture.unwrap_or_default()
    }
}

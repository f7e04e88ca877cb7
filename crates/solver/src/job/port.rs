//! Where a plug goes into a display.

use super::place::Sideways;
use crate::subject::Id;
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// Where a plug goes into a display.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Port {
    /// Its id.
    #[serde(default, skip_serializing_if = "Id::is_empty")]
    pub id: Id,
    /// What it is called.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// What goes through it.
    pub carries: Carries,
    /// From which side edge it was measured, as that side looked to the one measuring.
    pub from: Sideways,
    /// Whether it was measured from the front or from the back: face-down, left is on your right.
    pub read: ReadFrom,
    /// How far from that edge.
    pub by: Length,
    /// How high above the display's lower edge.
    pub up: Length,
    /// Which way the plug points, seen from the front.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub points: Option<Points>,
    /// How far the plug and its cable stand off in that way.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    pub reach: Option<Length>,
}

/// What goes through a port.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Carries {
    /// Mains power.
    Power,
    /// Anything of low voltage.
    Data,
}

/// From where a display was looked at when its side offsets were measured.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum ReadFrom {
    /// From its front, as it hangs.
    Front,
    /// From its back, as it lies face-down.
    Back,
}

/// Which way a plug points, seen from the front.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Points {
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// Upward.
    Up,
    /// Downward.
    Down,
    /// Toward the wall.
    Back,
}

impl Port {
    /// How far the port is from the display's left edge, seen from the front.
    #[must_use]
    pub fn from_left_in_front(&self, display_width: Length) -> Length {
        let left_of_viewer = self.from == Sideways::Left;
        let seen_from_front = self.read == ReadFrom::Front;
        if left_of_viewer == seen_from_front { self.by } else { display_width - self.by }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_face_down_reading_is_mirrored() {
        // Common practice, no source: 48 1/2 in wide, read on the back at 19 in from the left.
        let port = Port {
            id: Id::new("port-1"),
            name: None,
            carries: Carries::Data,
            from: Sideways::Left,
            read: ReadFrom::Back,
            by: Length::inches(19.0).quantised(),
            up: Length::default(),
            points: None,
            reach: None,
        };
        let width = Length::inches(48.5).quantised();
        assert_eq!(port.from_left_in_front(width).quantised(), Length::inches(29.5).quantised());
        let front = Port { read: ReadFrom::Front, ..port };
        assert_eq!(front.from_left_in_front(width), Length::inches(19.0).quantised());
    }
}

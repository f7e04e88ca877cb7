//! What is published on how a picture is looked at, angles in degrees.

use super::Row;

/// The least angle that a picture should fill from side to side.
pub const LEAST_FILLED: Row<f64> = Row::second_hand(30.0, "SMPTE EG-18 (1994), as two pages report it");

/// How far from a picture it is judged, in heights of the picture: the nearest and the farthest.
pub const REVIEW_HEIGHTS: Row<(f64, f64)> = Row::read((2.0, 4.0), "SMPTE 196M-2003 clause 9, as quoted");

/// How far off the picture's perpendicular it is judged, sideways and up or down alike. Nothing that was read
/// recommends looking up, so this is told as the most, not as what to go for.
pub const REVIEW_OFF: Row<f64> = Row::read(15.0, "SMPTE 196M-2003 clause 9, as quoted");

/// How far off a picture's perpendicular eyes may be in any direction: a line of sight at no less than 45 degrees to
/// its face.
pub const MOST_OFF_AXIS: Row<f64> = Row::read(45.0, "NUREG-0700 rev. 3");

/// Two lines nearer to each other than this, in minutes of arc, are one to a normal eye.
pub const TOLD_APART: Row<f64> = Row::second_hand(1.0, "ITU-R BT.500-14 (2019), second-hand");

//! Where a piece should go.

use super::place::{AcrossDatum, Sideways, UpDown, UprightDatum};
use crate::subject::{Id, Subject};
use crate::units::Length;
use serde::{Deserialize, Serialize};

/// Where a piece goes sideways.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum AcrossRule {
    /// Centred on the wall.
    OnWall,
    /// Centred on a feature or another piece.
    On(Id),
    /// Centred between two edges.
    Between(AcrossDatum, AcrossDatum),
    /// The piece's near edge at a distance from an edge, away from it or `toward` a side.
    Beside {
        /// The edge.
        from: AcrossDatum,
        /// Which way the piece stands from it, where it is not simply away from it.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        toward: Option<Sideways>,
        /// From the edge to the piece's near edge.
        by: Length,
    },
}

/// How high a piece goes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case", deny_unknown_fields)]
pub enum UprightRule {
    /// One of its own heights so far above the floor, or above or below the control line.
    Height {
        /// Which of its own heights.
        of: PieceHeight,
        /// The floor, or the control line; the floor where not given.
        #[serde(default, skip_serializing_if = "super::is_default")]
        from: UprightDatum,
        /// Up where not given.
        #[serde(default, skip_serializing_if = "Option::is_none")]
        toward: Option<UpDown>,
        /// How far.
        by: Length,
    },
    /// A gap above or below a feature or another piece.
    Gap {
        /// Above it or below it.
        side: UpDown,
        /// The feature or piece.
        of: Id,
        /// The gap, under the middle of the piece.
        by: Length,
        /// Whether to hang truly level or to split the difference with an edge that is not.
        #[serde(default, skip_serializing_if = "super::is_default")]
        follow: Follow,
    },
    /// One of its own heights level with an edge of a feature or another piece.
    Aligned {
        /// Which of its own heights.
        of: PieceHeight,
        /// The edge: `top`, `bottom` or `centre` of a feature or piece.
        with: Subject,
    },
}

/// One of a piece's own heights.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PieceHeight {
    /// Its top edge.
    Top,
    /// Its middle.
    Centre,
    /// Its bottom edge.
    Bottom,
}

/// What a piece over an edge out of level does.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[derive(Default)]
pub enum Follow {
    /// Hangs truly level.
    #[default]
    TrueLevel,
    /// Turns by half of what the edge is out.
    SplitTheDifference,
}

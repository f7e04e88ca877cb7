//! What a dimension tells: so that what is typed over its figure finds its way back into the job.

use strikeline_solver::subject::{Id, Subject};

/// What a dimension tells.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum About {
    /// A reading of a mark, by its place in the mark's list.
    Reading {
        /// The mark.
        mark: Subject,
        /// Which of its readings.
        index: usize,
    },
    /// The close of such a reading.
    Close {
        /// The mark.
        mark: Subject,
        /// Which of its readings.
        index: usize,
    },
    /// A gap beside or below a piece.
    Gap {
        /// The piece.
        piece: Id,
        /// Which gap.
        side: GapSide,
    },
    /// The width of a piece, of a thing on or in the wall, or of the wall.
    Width(Id),
    /// The height of one of them.
    Height(Id),
    /// How a thing on or in the wall, or a hit, was read.
    Read {
        /// The thing.
        thing: Id,
        /// Which of its places.
        place: ReadPlace,
    },
}

/// Which gap of a piece.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum GapSide {
    /// To the left.
    Left,
    /// To the right.
    Right,
    /// Below, at the piece's left end.
    Below,
    /// Below, at its right end.
    BelowRight,
}

/// Which place of a thing was read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ReadPlace {
    /// Its left edge.
    Left,
    /// Its right edge.
    Right,
    /// Its middle sideways, or where a hit is.
    Middle,
    /// Its lower edge, at its left end where it is out of level.
    Bottom,
    /// Its upper edge, at its left end where it is out of level.
    Top,
    /// Its middle height, or how high a hit is.
    MiddleHeight,
}

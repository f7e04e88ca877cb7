//! What a plan must tell: how grave, about what, with which values. Sentences are in `words`.

pub mod cable;
mod rule;
mod what;

pub use what::What;

use crate::geometry::Direction;
use crate::subject::{Id, Subject};
use crate::units::Length;

/// Something a plan must tell.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// How grave it is.
    pub level: Level,
    /// What it is about.
    pub subject: Subject,
    /// What was found, with its values.
    pub what: What,
    /// What kind of change may clear it.
    pub mend: Mend,
}

/// How grave a finding is; the gravest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Level {
    /// The job stops here.
    Stop,
    /// Go on with care.
    Caution,
    /// Good to know.
    Note,
}

/// What kind of change may clear a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mend {
    /// Moving the piece or its plate.
    Move,
    /// Measuring something.
    Measure,
    /// Choosing another mount or piece.
    Choose,
    /// Nothing in the plan: something to do or to ask on site.
    OnSite,
}

/// What an opening as it is cut meets.
#[derive(Clone, Debug, PartialEq)]
pub enum CutMeets {
    /// Something hidden.
    Hidden(Id),
    /// A stud.
    Stud,
    /// A solid part of the plate.
    Plate,
    /// It shows past an edge of the piece.
    Shows {
        /// Past which.
        side: Direction,
        /// By how much.
        by: Length,
    },
    /// Another bay than the cables want.
    OtherBay,
}

/// What is missing.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MissingWhat {
    /// The mass.
    Mass,
    /// The mounting pattern.
    Pattern,
    /// The mount's rating.
    Rating,
    /// What the wall is made of: no hits.
    Hits,
    /// The plate's holes.
    Holes,
    /// A mount, and no piece it hangs on.
    Mount,
    /// The thickness in front of the framing.
    Thickness,
    /// How much an arm comes down: measure after hanging.
    Droop,
}

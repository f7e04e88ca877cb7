//! The answer to a job: what follows for one wall and one option. A part a file, mirroring `solve`.
//!
//! Plans hold values only; every sentence is composed in `words`. A plan is never kept in a job.

pub mod cable;
pub mod explained;
pub mod fact;
pub mod framing;
pub mod mark;
pub mod piece;
pub mod sight;
pub mod survey;
pub mod verdict;

use crate::finding::Finding;
use crate::job::mount::UsualPlate;
use crate::subject::{Id, Subject};
use crate::tape::Style;
use crate::units::Length;

/// What follows for one wall and one option.
#[derive(Clone, Debug, PartialEq)]
pub struct Plan {
    /// The wall.
    pub wall: Id,
    /// The option; `None` where the wall has none and one was assumed.
    pub option: Option<Id>,
    /// How lengths are told.
    pub style: Style,
    /// Where everything measured is.
    pub survey: survey::Survey,
    /// What the wall is made of.
    pub framing: framing::Framing,
    /// What was done, in the job's order; of one mark in one option the last.
    pub facts: Vec<fact::PlacedFact>,
    /// What hangs on it, in the order of the option.
    pub pieces: Vec<piece::PiecePlan>,
    /// What to strike and do, in the order of work.
    pub marks: Vec<mark::Mark>,
    /// How displays are seen: seat by seat, in the order of the job.
    pub sight: Vec<sight::SeatSight>,
    /// What was assumed in the place of a value not given.
    pub assumed: Vec<Assumed>,
    /// What the plan must tell: stops first, then cautions, then notes.
    pub findings: Vec<Finding>,
    /// The one thing to do now; `None` where nothing hangs on the wall.
    pub next: Option<Next>,
}

/// A value assumed because none was given.
#[derive(Clone, Debug, PartialEq)]
pub struct Assumed {
    /// What lacks the value.
    pub subject: Subject,
    /// Which value.
    pub what: AssumedWhat,
    /// Whether the place of a mark hangs on it: such marks are not to be struck.
    pub moves_marks: bool,
}

/// Which value was assumed, and what was taken in its place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum AssumedWhat {
    /// The wall's width.
    WallWidth(Length),
    /// The wall's height.
    WallHeight(Length),
    /// That the wall's left end is an inside corner.
    LeftEnd,
    /// That the wall's right end is an inside corner.
    RightEnd,
    /// A width.
    Width(Length),
    /// A height.
    Height(Length),
    /// The drop from the piece's top to the plate's.
    Drop(Length),
    /// That the plate is a strip so wide and high.
    PlateSize(Length, Length),
    /// That the plate is a usual one.
    Plate(UsualPlate),
    /// The thickness in front of the framing.
    Thickness(Length),
    /// How far a feature stands proud.
    Proud(Length),
    /// The option: the first piece on the first mount, centred on the wall at a usual height.
    Option,
    /// Where a feature or hidden thing is sideways.
    PlaceAcross,
    /// Where a feature or hidden thing is up and down.
    PlaceUpright,
}

/// The one thing to do now.
#[derive(Clone, Debug, PartialEq)]
pub enum Next {
    /// Measure what was assumed.
    Measure(Assumed),
    /// Measure what the verdict on a piece's plate wants.
    Settle {
        /// The piece.
        piece: Id,
        /// What is wanted.
        want: verdict::Want,
    },
    /// Mend what stops the job: the finding's place in the list.
    Mend(usize),
    /// Take the first mark that is to be taken: its id.
    Take(Subject),
}

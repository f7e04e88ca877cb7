//! What the wall is made of, as far as its hits tell.

use crate::subject::Id;
use crate::units::Length;

/// The uprights found.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Framing {
    /// Whether anything is known: a wall without hits is not known, not bare.
    pub known: bool,
    /// The uprights, from left to right.
    pub studs: Vec<Stud>,
}

/// One upright.
#[derive(Clone, Debug, PartialEq)]
pub struct Stud {
    /// Its middle.
    pub centre: Length,
    /// The left edge of its face.
    pub left: Length,
    /// The right edge of its face.
    pub right: Length,
    /// Half of the 90 % interval of its middle.
    pub doubt: Length,
    /// The hits that tell of it, in the order of the job.
    pub hits: Vec<Id>,
    /// The chimney breast it is in, where it is in one.
    pub on: Option<Id>,
}

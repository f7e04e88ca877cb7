//! Why a text could not be read.

use std::borrow::Cow;
use std::fmt;

/// Why a text could not be read as a quantity: where, what is wrong there, and what would be right.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ReadError {
    /// Where, from 1, counted in characters. One past the last where something is missing at the end.
    pub column: usize,
    /// What is wrong there, as the middle of a sentence.
    pub problem: Cow<'static, str>,
    /// What would be right, as it follows the word "write".
    pub right: Cow<'static, str>,
}

impl ReadError {
    pub(super) fn new(
        column: usize,
        problem: impl Into<Cow<'static, str>>,
        right: impl Into<Cow<'static, str>>,
    ) -> Self {
        Self { column, problem: problem.into(), right: right.into() }
    }

    /// What is written cannot be held: more digits than a quantity of a job can need.
    pub(super) fn too_many_digits(column: usize) -> Self {
        Self::new(column, "the number is too long to work out exactly", "fewer digits, as in 48.125")
    }
}

impl fmt::Display for ReadError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "At column {}, {}: write {}.", self.column, self.problem, self.right)
    }
}

impl std::error::Error for ReadError {}

//! Where the fasteners of a group stand.

use super::opening::Runs;
use super::placing::Carries;
use super::why::{Input, Known, MOST_MM, Why, within};

/// What stands within this is one row or one column: 1 mm, what holes of one row differ by as made (chosen).
pub const SAME_ROW_MM: f64 = 1.0;

/// A used fastener. Places are in millimetres from any one origin, the same as the loads'; x to the right and y
/// up, along the plate's own axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// To the right.
    pub x_mm: f64,
    /// Up.
    pub y_mm: f64,
    /// Which stud it is in; in concrete each may have a number of its own.
    pub stud: usize,
    /// Whether it carries up-and-down shear: not in an upright slot.
    pub along: bool,
    /// Whether it carries sideways shear: not in a sideways slot, nor a lag in a single 2x face.
    pub across: bool,
}

impl Seat {
    /// A fastener in a stud, by which way it carries there and which way its hole or slot is long.
    #[must_use]
    pub fn in_stud(x_mm: f64, y_mm: f64, stud: usize, carries: Carries, runs: Runs) -> Self {
        let (along, across) = runs.bears();
        Self { x_mm, y_mm, stud, along, across: across && carries == Carries::Both }
    }
}

/// The plate's outline, on the same axes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Edges {
    /// Its left edge.
    pub left_mm: f64,
    /// Its right edge.
    pub right_mm: f64,
    /// Its lower edge.
    pub bottom_mm: f64,
    /// Its upper edge.
    pub top_mm: f64,
}

/// Refuses places that are not on a wall.
///
/// # Errors
/// Where there is no seat, or a place is not finite or beyond 100 m.
pub(super) fn sound(seats: &[Seat], edges: &Edges) -> Known<()> {
    if seats.is_empty() {
        return Err(Why::NoFastener);
    }
    for seat in seats {
        within(seat.x_mm, MOST_MM, Input::Seat)?;
        within(seat.y_mm, MOST_MM, Input::Seat)?;
    }
    for edge in [edges.left_mm, edges.right_mm, edges.bottom_mm, edges.top_mm] {
        within(edge, MOST_MM, Input::Seat)?;
    }
    Ok(())
}

//! The cheapest way for a cable among rectangles. Pure geometry: it knows no job and no wall.
//!
//! A way is made of up-down and left-right pieces. Its cost is a list, compared in order. Such a way can be slid, piece
//! by piece and at no cost, until each piece lies on an edge of a rectangle, on an edge of a zone or on a wished line:
//! so the cheapest way on the grid of those lines is the cheapest of all.

mod cost;
mod field;
mod grid;
mod marked;
mod search;

pub use cost::Cost;
pub use field::{Area, Beside, Crossing, Field, Goal, Place, Start, Zone, length, nm};
pub use search::{Found, cheapest};

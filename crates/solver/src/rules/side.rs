//! Edges, and what lies past them, alike on all four sides, so that left and right cannot differ.

use crate::geometry::{Direction, Rect};
use crate::units::Length;

/// The four sides.
pub(super) const SIDES: [Direction; 4] = [Direction::Left, Direction::Right, Direction::Up, Direction::Down];

/// The place of a rectangle's edge on one side, along that side's axis.
pub(super) fn edge(rect: Rect, side: Direction) -> Length {
    match side {
        Direction::Left => rect.left,
        Direction::Right => rect.right,
        Direction::Up => rect.top,
        Direction::Down => rect.bottom,
    }
}

/// How far `rect` goes past `limit`'s edge on one side; negative where it stays within.
pub(super) fn past(rect: Rect, limit: Rect, side: Direction) -> Length {
    (edge(rect, side) - edge(limit, side)) * side.sign()
}

/// From `rect`'s edge on one side to the near edge of what lies there; negative where they overlap.
pub(super) fn gap(rect: Rect, other: Rect, side: Direction) -> Length {
    (edge(other, side.opposite()) - edge(rect, side)) * side.sign()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Span;

    #[test]
    fn a_gap_is_seen_alike_from_both_sides() {
        let mm = Length::millimetres;
        let rect = Rect::new(Span::new(mm(10.0), mm(30.0)), Span::new(mm(5.0), mm(9.0)));
        for side in SIDES {
            let other = match side {
                Direction::Left => rect.moved(mm(-27.0), mm(0.0)),
                Direction::Right => rect.moved(mm(27.0), mm(0.0)),
                Direction::Up => rect.moved(mm(0.0), mm(11.0)),
                Direction::Down => rect.moved(mm(0.0), mm(-11.0)),
            };
            assert_eq!(gap(rect, other, side), mm(7.0));
            assert_eq!(gap(other, rect, side.opposite()), mm(7.0));
            assert!(past(other, rect, side) > mm(10.0));
            assert!(past(rect, other, side) < mm(-10.0));
        }
    }
}

//! The opening of a plate: what its solid parts enclose on all four sides. Between two rails there is none.

use crate::geometry::{Point, Rect, Span};
use crate::units::Length;

/// The rectangle round all that solid parts enclose; `None` where they enclose nothing.
pub(super) fn enclosed(solids: &[Rect]) -> Option<Rect> {
    let lines = |of: fn(&Rect) -> [Length; 2]| {
        let mut lines: Vec<Length> = solids.iter().flat_map(of).collect();
        lines.sort_by(|a, b| a.mm().total_cmp(&b.mm()));
        lines.dedup();
        lines
    };
    let (xs, ys) = (lines(|one| [one.left, one.right]), lines(|one| [one.bottom, one.top]));
    let cells = xs.windows(2).flat_map(|x| ys.windows(2).map(move |y| (x, y)));
    let cells = cells.filter_map(|(x, y)| match (x, y) {
        ([left, right], [bottom, top]) => Some(Rect::new(Span::new(*left, *right), Span::new(*bottom, *top))),
        _ => None,
    });
    let inside = cells.filter(|cell| is_enclosed(solids, cell.centre()));
    inside.reduce(|a, b| Rect {
        left: a.left.min(b.left),
        right: a.right.max(b.right),
        bottom: a.bottom.min(b.bottom),
        top: a.top.max(b.top),
    })
}

/// Whether a place is in no solid part, and has one to its left, its right, above it and below it.
fn is_enclosed(solids: &[Rect], at: Point) -> bool {
    let beside = |one: &&Rect| one.upright().holds(at.y);
    let over = |one: &&Rect| one.across().holds(at.x);
    !solids.iter().any(|one| one.holds(at))
        && solids.iter().filter(beside).any(|one| one.right < at.x)
        && solids.iter().filter(beside).any(|one| at.x < one.left)
        && solids.iter().filter(over).any(|one| one.top < at.y)
        && solids.iter().filter(over).any(|one| at.y < one.bottom)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rect(across: (f64, f64), upright: (f64, f64)) -> Rect {
        let span = |(from, to)| Span::new(Length::inches(from), Length::inches(to));
        Rect::new(span(across), span(upright))
    }

    #[test]
    fn a_frame_encloses_what_two_rails_do_not() {
        let rails = [rect((0.0, 20.0), (8.0, 10.0)), rect((0.0, 20.0), (0.0, 2.0))];
        assert_eq!(enclosed(&rails), None);
        let sides = [rect((0.0, 3.0), (0.0, 10.0)), rect((17.0, 20.0), (0.0, 10.0))];
        assert_eq!(enclosed(&[rails, sides].concat()), Some(rect((3.0, 17.0), (2.0, 8.0))));
        // With a bar across, both openings.
        let bar = [rect((0.0, 20.0), (4.0, 5.0))];
        assert_eq!(enclosed(&[&rails[..], &sides, &bar].concat()), Some(rect((3.0, 17.0), (2.0, 8.0))));
        assert_eq!(enclosed(&[]), None);
    }
}

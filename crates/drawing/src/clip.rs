//! Cuts lines and outlines that run far past the paper, so that a close look at a long wall costs no painter
//! a million dashes.

use crate::paper::{PaperPoint, PaperRect};

/// One side of a frame: how far inside it a place lies; negative outside.
type Inside = fn(PaperRect, PaperPoint) -> f64;

const SIDES: [Inside; 4] = [
    |frame, place| place.x_mm - frame.left_mm,
    |frame, place| frame.right_mm - place.x_mm,
    |frame, place| place.y_mm - frame.top_mm,
    |frame, place| frame.bottom_mm - place.y_mm,
];

/// Where the line from `a` to `b`, so far inside at each, meets the side. Their signs differ.
fn meeting(a: (PaperPoint, f64), b: (PaperPoint, f64)) -> PaperPoint {
    let share = a.1 / (a.1 - b.1);
    a.0.moved((b.0.x_mm - a.0.x_mm) * share, (b.0.y_mm - a.0.y_mm) * share)
}

/// The part of a line inside a frame; `None` where there is none.
pub(crate) fn line(frame: PaperRect, from: PaperPoint, to: PaperPoint) -> Option<(PaperPoint, PaperPoint)> {
    SIDES.into_iter().try_fold((from, to), |(from, to), side| {
        let (a, b) = (side(frame, from), side(frame, to));
        match (a < 0.0, b < 0.0) {
            (true, true) => None,
            (false, false) => Some((from, to)),
            (true, false) => Some((meeting((from, a), (to, b)), to)),
            (false, true) => Some((from, meeting((from, a), (to, b)))),
        }
    })
}

/// The part of an outline inside a frame, by cutting it along each side in turn; empty where there is none.
pub(crate) fn outline(frame: PaperRect, points: &[PaperPoint]) -> Vec<PaperPoint> {
    SIDES.into_iter().fold(points.to_vec(), |points, side| {
        let before = points.iter().skip(points.len().saturating_sub(1)).chain(&points);
        let mut kept = Vec::new();
        for (&last, &next) in before.zip(&points) {
            let (a, b) = (side(frame, last), side(frame, next));
            if (a < 0.0) != (b < 0.0) {
                kept.push(meeting((last, a), (next, b)));
            }
            if b >= 0.0 {
                kept.push(next);
            }
        }
        kept
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    const FRAME: PaperRect = PaperRect { left_mm: 0.0, top_mm: 0.0, right_mm: 10.0, bottom_mm: 10.0 };

    fn at(x: f64, y: f64) -> PaperPoint {
        PaperPoint::new(x, y)
    }

    #[test]
    fn a_line_is_cut_at_the_frame() {
        assert_eq!(line(FRAME, at(-5.0, 5.0), at(1e5, 5.0)), Some((at(0.0, 5.0), at(10.0, 5.0))));
        assert_eq!(line(FRAME, at(-5.0, -5.0), at(5.0, 5.0)), Some((at(0.0, 0.0), at(5.0, 5.0))));
        assert_eq!(line(FRAME, at(2.0, 3.0), at(4.0, 5.0)), Some((at(2.0, 3.0), at(4.0, 5.0))));
        assert_eq!(line(FRAME, at(-5.0, 4.0), at(4.0, -5.0 - 1.0)), None);
        assert_eq!(line(FRAME, at(20.0, 0.0), at(20.0, 10.0)), None);
    }

    #[test]
    fn an_outline_is_cut_at_the_frame() {
        let huge = [at(-1e5, -1e5), at(1e5, -1e5), at(1e5, 1e5), at(-1e5, 1e5)];
        assert_eq!(PaperRect::round(&outline(FRAME, &huge)), Some(FRAME));
        let inner = [at(1.0, 1.0), at(2.0, 1.0), at(2.0, 2.0)];
        assert_eq!(outline(FRAME, &inner), inner);
        let corner = outline(FRAME, &[at(5.0, 5.0), at(15.0, 5.0), at(15.0, 15.0), at(5.0, 15.0)]);
        assert_eq!(PaperRect::round(&corner), Some(PaperRect { left_mm: 5.0, top_mm: 5.0, ..FRAME }));
        assert!(outline(FRAME, &inner.map(|place| place.moved(100.0, 0.0))).is_empty());
    }
}

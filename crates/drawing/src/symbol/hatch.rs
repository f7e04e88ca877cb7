//! Oblique lines at 45 degrees to the frame.

use crate::paper::{PaperPoint, PaperRect};

/// Between the lines of the hatch of what is cut through, on paper.
pub(crate) const HATCH_MM: f64 = 2.4;

/// More lines than this are never drawn: the hatch gets coarser instead (chosen: still quick to paint).
const MOST_LINES: f64 = 150.0;

/// The lines that rise to the right through a rectangle, about `step_mm` apart along its edges.
pub(crate) fn hatch(rect: PaperRect, step_mm: f64) -> Vec<(PaperPoint, PaperPoint)> {
    let reach = rect.width_mm() + rect.height_mm();
    let step = step_mm.max(reach / MOST_LINES);
    if !(step > 0.0 && reach.is_finite()) {
        return Vec::new();
    }
    // x + y is the same all along a line. The first stands half a step from the corner, so that the hatch moves
    // with its frame.
    let first = (rect.left_mm + rect.top_mm) + step / 2.0;
    let count = (reach / step) as usize;
    (0..count)
        .map(|index| {
            let sum = first + index as f64 * step;
            let left = rect.left_mm.max(sum - rect.bottom_mm);
            let right = rect.right_mm.min(sum - rect.top_mm);
            (PaperPoint::new(left, sum - left), PaperPoint::new(right, sum - right))
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_run_at_45_degrees_and_stay_inside() {
        let rect = PaperRect { left_mm: 10.0, top_mm: 20.0, right_mm: 40.0, bottom_mm: 30.0 };
        let lines = hatch(rect, 3.0);
        assert_eq!(lines.len(), 13);
        for (from, to) in lines {
            assert!((to.x_mm - from.x_mm - (from.y_mm - to.y_mm)).abs() < 1e-9, "45 degrees");
            assert!(rect.grown(1e-9).meets(PaperRect::of(from, to)) && to.x_mm >= from.x_mm);
            assert!(from.y_mm <= 30.0 + 1e-9 && to.y_mm >= 20.0 - 1e-9);
        }
    }

    #[test]
    fn a_huge_or_empty_frame_stays_small() {
        let huge = PaperRect { left_mm: -1e6, top_mm: -1e6, right_mm: 1e6, bottom_mm: 1e6 };
        assert!(hatch(huge, 1.0).len() <= 150);
        assert_eq!(hatch(PaperRect::default(), 0.0), Vec::new());
    }
}

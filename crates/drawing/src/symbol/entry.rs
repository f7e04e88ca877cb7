//! The opening for cables behind a piece: a frame with a short diagonal in each corner, where the saw starts.

use crate::ink::Ink;
use crate::pen::Pen;
use strikeline_solver::geometry::Rect;

/// How far a corner's diagonal reaches, at most.
const CORNER_MM: f64 = 1.2;

/// Draws the opening.
pub(crate) fn entry(pen: &mut Pen<'_>, entry: Rect) {
    let rect = pen.scale.paper_rect(entry);
    pen.shape(Ink::Entry, &rect.corners());
    let reach = CORNER_MM.min(rect.width_mm().min(rect.height_mm()) / 3.0);
    for (right, down) in [(0.0, 0.0), (1.0, 0.0), (0.0, 1.0), (1.0, 1.0)] {
        let corner = rect.at(right, down);
        let inward = |share: f64| if share == 0.0 { reach } else { -reach };
        pen.line(Ink::Entry, corner, corner.moved(inward(right), inward(down)));
    }
}

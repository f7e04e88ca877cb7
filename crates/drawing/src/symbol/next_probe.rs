//! Where to probe next: a ring round a cross, open so that what lies under it shows.

use crate::ink::Ink;
use crate::paper::PaperPoint;
use crate::pen::Pen;

/// The ring's radius.
const RADIUS_MM: f64 = 2.2;

/// Draws the place of the next probe.
pub(crate) fn next_probe(pen: &mut Pen<'_>, at: PaperPoint) {
    pen.circle(Ink::Mark, at, RADIUS_MM, false);
    for (right, down) in [(1.0, 0.0), (-1.0, 0.0), (0.0, 1.0), (0.0, -1.0)] {
        let from = at.moved(right * RADIUS_MM * 0.5, down * RADIUS_MM * 0.5);
        pen.line(Ink::Mark, from, at.moved(right * RADIUS_MM * 1.6, down * RADIUS_MM * 1.6));
    }
}

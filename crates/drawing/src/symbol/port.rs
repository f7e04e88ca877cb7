//! A port of a display: a small square, filled where it is used.

use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::Pen;

/// Half its side.
const HALF_MM: f64 = 0.8;

/// Draws a port.
pub(crate) fn port(pen: &mut Pen<'_>, at: PaperPoint, used: bool) {
    let corners = PaperRect::of(at, at).grown(HALF_MM).corners();
    if used {
        pen.shape(Ink::Port, &corners);
    } else {
        pen.outline(Ink::Port, &corners);
    }
}

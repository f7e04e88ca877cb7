//! An upright behind the wall's face: its edges firm where a probe met it, broken where only hits tell of it, pale and
//! open where it is no more than expected; a centre line, and its doubt as a lighter band.

use crate::ink::Ink;
use crate::pen::Pen;
use strikeline_solver::geometry::{Rect, Span};
use strikeline_solver::plan::framing::{Known, Stud};

/// A face narrower than this on paper has no edges of its own (chosen: three lines within it would run together).
const EDGES_MM: f64 = 2.5;

/// Draws an upright over a height.
pub(crate) fn stud(pen: &mut Pen<'_>, stud: &Stud, upright: Span) {
    let face = pen.scale.paper_rect(Rect::new(Span::new(stud.left, stud.right), upright));
    let ink = if stud.known == Known::Met { Ink::LumberMet } else { Ink::Lumber };
    let doubt = pen.scale.paper_rect(Rect::new(Span::about(stud.centre, stud.doubt.abs() * 2.0), upright));
    if stud.known != Known::Expected {
        pen.fill(ink, &face.corners());
        pen.fill(Ink::LumberDoubt, &doubt.corners());
    }
    // Too narrow to be told apart, its edges are left to its tint, unless only the edges tell what it is.
    if face.width_mm() >= EDGES_MM || stud.known == Known::Expected {
        pen.line(ink, face.at(0.0, 1.0), face.at(0.0, 0.0));
        pen.line(ink, face.at(1.0, 1.0), face.at(1.0, 0.0));
    } else if stud.known == Known::Met {
        pen.line(ink, face.at(0.5, 1.0), face.at(0.5, 0.0));
        return;
    }
    pen.line(Ink::LumberCentre, doubt.at(0.5, 1.0), doubt.at(0.5, 0.0));
}

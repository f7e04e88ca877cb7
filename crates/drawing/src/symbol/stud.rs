//! An upright behind the wall's face: broken edges, a centre line, and its doubt as a lighter band.

use crate::ink::Ink;
use crate::pen::Pen;
use strikeline_solver::geometry::{Rect, Span};
use strikeline_solver::plan::framing::Stud;

/// Draws an upright over a height.
pub(crate) fn stud(pen: &mut Pen<'_>, stud: &Stud, upright: Span) {
    let face = pen.scale.paper_rect(Rect::new(Span::new(stud.left, stud.right), upright));
    pen.fill(Ink::Lumber, &face.corners());
    let doubt = pen.scale.paper_rect(Rect::new(Span::about(stud.centre, stud.doubt.abs() * 2.0), upright));
    pen.fill(Ink::LumberDoubt, &doubt.corners());
    pen.line(Ink::Lumber, face.at(0.0, 1.0), face.at(0.0, 0.0));
    pen.line(Ink::Lumber, face.at(1.0, 1.0), face.at(1.0, 0.0));
    pen.line(Ink::LumberCentre, doubt.at(0.5, 1.0), doubt.at(0.5, 0.0));
}

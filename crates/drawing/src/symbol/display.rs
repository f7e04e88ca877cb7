//! A piece that hangs: its outline, seen through to what it will cover, and what tells a display from a shelf.

use crate::ink::Ink;
use crate::pen::{Pen, turned};
use strikeline_solver::geometry::{Frame, Rect};
use strikeline_solver::job::piece::PieceKind;
use strikeline_solver::units::Length;

/// The rim of a display, in wall millimetres: usual for a flat one (common practice, no source).
const RIM_MM: f64 = 10.0;

/// Draws a piece as the customer sees it: nothing shows through it.
pub(crate) fn seen(pen: &mut Pen<'_>, kind: PieceKind, outline: Rect, frame: Frame) {
    let corners = |rect: Rect| turned(rect, frame);
    let whole = corners(outline).map(|corner| pen.at(corner));
    pen.shape(Ink::PieceFace, &whole);
    if kind == PieceKind::Display {
        let picture = corners(outline.grown(Length::millimetres(-RIM_MM))).map(|corner| pen.at(corner));
        pen.shape(Ink::Picture, &picture);
    }
}

/// Draws a piece at its place. `frame`'s origin is the middle of `outline`.
pub(crate) fn piece(pen: &mut Pen<'_>, kind: PieceKind, outline: Rect, frame: Frame) {
    let corners = turned(outline, frame).map(|corner| pen.at(corner));
    pen.outline(Ink::Piece, &corners);
    let rim = Length::millimetres(-RIM_MM);
    match kind {
        PieceKind::Display => {
            let inner = turned(outline.grown(rim), frame).map(|corner| pen.at(corner));
            pen.outline(Ink::PieceDetail, &inner);
        }
        PieceKind::SoundBar => {
            let [lower_left, lower_right, upper_right, upper_left] = corners;
            for share in [0.12, 0.88] {
                let between = |a: crate::paper::PaperPoint, b: crate::paper::PaperPoint| {
                    a.moved((b.x_mm - a.x_mm) * share, (b.y_mm - a.y_mm) * share)
                };
                pen.line(
                    Ink::PieceDetail,
                    between(lower_left, lower_right),
                    between(upper_left, upper_right),
                );
            }
        }
        PieceKind::Shelf | PieceKind::Box => {}
    }
}

//! Windows and doors, trim included.

use crate::ink::Ink;
use crate::paper::PaperRect;
use crate::pen::Pen;
use strikeline_solver::units::Length;

/// The trim round an opening, in wall millimetres: 2 1/4 in, usual (common practice, no source). Drawn only.
const TRIM_MM: f64 = 57.0;

/// A frame inside the trim; never less than two thirds of the outline.
fn inside(pen: &Pen<'_>, rect: PaperRect) -> PaperRect {
    let trim = pen.scale.paper_mm(Length::millimetres(TRIM_MM));
    rect.grown(-trim.min(rect.width_mm() / 6.0).min(rect.height_mm() / 6.0))
}

/// Draws a window's sashes into its outline.
pub(crate) fn window(pen: &mut Pen<'_>, rect: PaperRect) {
    let pane = inside(pen, rect);
    pen.outline(Ink::FeatureDetail, &pane.corners());
    pen.line(Ink::FeatureDetail, pane.at(0.0, 0.5), pane.at(1.0, 0.5));
    // Glass, by two short strokes in each sash.
    let stroke = pane.width_mm().min(pane.height_mm()) * 0.12;
    for down in [0.25, 0.75] {
        for right in [0.45, 0.55] {
            let middle = pane.at(right, down);
            pen.line(Ink::FeatureDetail, middle.moved(-stroke, stroke), middle.moved(stroke, -stroke));
        }
    }
}

/// Draws a door's leaf, panels and knob into its outline. The trim runs to the floor.
pub(crate) fn door(pen: &mut Pen<'_>, rect: PaperRect) {
    let leaf = PaperRect { bottom_mm: rect.bottom_mm, ..inside(pen, rect) };
    pen.outline(Ink::FeatureDetail, &leaf.corners());
    for (from, to) in [(0.08, 0.44), (0.54, 0.93)] {
        let panel = PaperRect::of(leaf.at(0.16, from), leaf.at(0.84, to));
        pen.outline(Ink::FeatureDetail, &panel.corners());
    }
    pen.circle(Ink::FeatureDetail, leaf.at(0.92, 0.5), (leaf.width_mm() * 0.025).max(0.3), false);
}

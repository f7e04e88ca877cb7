//! A mantel and a chimney breast.

use crate::ink::Ink;
use crate::paper::PaperRect;
use crate::pen::Pen;

/// Draws a mantel's moulding under its upper edge, or of a whole surround its shelf and two legs.
pub(crate) fn mantel(pen: &mut Pen<'_>, rect: PaperRect) {
    let shelf = rect.height_mm() < rect.width_mm() * 0.35;
    if shelf {
        pen.line(Ink::FeatureDetail, rect.at(0.0, 0.4), rect.at(1.0, 0.4));
        pen.line(Ink::FeatureDetail, rect.at(0.02, 0.7), rect.at(0.98, 0.7));
    } else {
        pen.line(Ink::FeatureDetail, rect.at(0.0, 0.12), rect.at(1.0, 0.12));
        let fire = PaperRect::of(rect.at(0.2, 0.3), rect.at(0.8, 1.0));
        pen.outline(Ink::FeatureDetail, &fire.corners());
    }
}

/// Draws the shade of a chimney breast along its two edges: it stands in front of the wall.
pub(crate) fn chimney_breast(pen: &mut Pen<'_>, rect: PaperRect) {
    let inset = (rect.width_mm() * 0.02).min(0.9);
    for right in [rect.left_mm + inset, rect.right_mm - inset] {
        let (top, bottom) = (rect.at(0.0, 0.0), rect.at(0.0, 1.0));
        let shift = right - rect.left_mm;
        pen.line(Ink::FeatureDetail, top.moved(shift, 0.0), bottom.moved(shift, 0.0));
    }
}

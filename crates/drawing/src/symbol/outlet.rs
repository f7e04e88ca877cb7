//! A power outlet and a switch.

use crate::ink::Ink;
use crate::paper::PaperRect;
use crate::pen::Pen;

/// Draws an outlet's two slits and its round hole into its frame.
pub(crate) fn outlet(pen: &mut Pen<'_>, rect: PaperRect) {
    for down in [0.3, 0.7] {
        for right in [0.36, 0.64] {
            pen.line(Ink::FeatureDetail, rect.at(right, down - 0.09), rect.at(right, down + 0.05));
        }
        let size = rect.width_mm().min(rect.height_mm()) * 0.05;
        pen.circle(Ink::FeatureDetail, rect.at(0.5, down + 0.12), size, false);
    }
}

/// Draws a switch's lever into its frame.
pub(crate) fn switch(pen: &mut Pen<'_>, rect: PaperRect) {
    let lever = PaperRect::of(rect.at(0.38, 0.32), rect.at(0.62, 0.68));
    pen.outline(Ink::FeatureDetail, &lever.corners());
    pen.line(Ink::FeatureDetail, rect.at(0.38, 0.5), rect.at(0.62, 0.5));
}

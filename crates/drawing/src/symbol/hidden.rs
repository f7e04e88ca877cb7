//! Something hidden in the wall: a broken outline, hatched; lumber set across is crossed instead.

use super::hatch::hatch;
use crate::ink::Ink;
use crate::pen::Pen;
use strikeline_solver::job::hidden::HiddenKind;
use strikeline_solver::plan::survey::PlacedHidden;

/// Between the lines of the hatch: wider than of what is cut through.
const HIDDEN_HATCH_MM: f64 = 3.0;

/// Draws something hidden.
pub(crate) fn hidden(pen: &mut Pen<'_>, hidden: &PlacedHidden) {
    let rect = pen.scale.paper_rect(hidden.rect);
    match hidden.kind {
        // Crossed, as cut lumber is on drawings (from memory).
        HiddenKind::FireBlock | HiddenKind::Header => {
            pen.shape(Ink::Hidden, &rect.corners());
            pen.cross(Ink::Hatch, rect);
        }
        HiddenKind::Brace => {
            pen.outline(Ink::Hidden, &rect.corners());
            pen.line(Ink::Hatch, rect.at(0.0, 1.0), rect.at(1.0, 0.0));
        }
        // Nothing is there: no hatch.
        HiddenKind::StudOpening => pen.outline(Ink::Hidden, &rect.corners()),
        HiddenKind::Pipe
        | HiddenKind::Drain
        | HiddenKind::Cable
        | HiddenKind::Duct
        | HiddenKind::Flue
        | HiddenKind::PocketDoor
        | HiddenKind::BoxBehind
        | HiddenKind::Other => {
            pen.outline(Ink::Hidden, &rect.corners());
            // Only what is on the paper is hatched, so that a close look at a long pipe stays fine.
            let seen = rect.shared(pen.scale.page()).unwrap_or_default();
            for (from, to) in hatch(seen, HIDDEN_HATCH_MM) {
                pen.line(Ink::Hatch, from, to);
            }
        }
    }
}

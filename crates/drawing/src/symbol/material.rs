//! What is cut through, by its material: wood by its grain, board by a fine hatch that falls, brick and block by one
//! that rises, concrete by pairs of such lines, steel by its flanges. What nobody named is left open.
//!
//! The hatches are of our own choosing within what drafting handbooks have (from memory); a key beside them is not
//! needed, since the plan's words name the material.

use super::hatch::{HATCH_MM, hatch};
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::Pen;
use strikeline_solver::job::framing::WallFraming;

/// Between the two lines of a pair.
const PAIR_MM: f64 = 0.7;
/// Where the grain runs, as shares of the width.
const GRAIN: [f64; 4] = [0.18, 0.34, 0.58, 0.8];
/// A flange of a stud: a share of its depth.
const FLANGE: f64 = 0.1;

/// Draws what a wall is framed or built of, where it is cut.
pub(crate) fn framing(pen: &mut Pen<'_>, rect: PaperRect, framing: Option<&WallFraming>) {
    match framing {
        Some(WallFraming::Wood(_)) => {
            for right in GRAIN {
                pen.line(Ink::Hatch, rect.at(right, 0.0), rect.at(right, 1.0));
            }
        }
        Some(WallFraming::Steel(_)) => {
            for right in [FLANGE, 1.0 - FLANGE] {
                pen.line(Ink::Hatch, rect.at(right, 0.0), rect.at(right, 1.0));
            }
        }
        Some(WallFraming::Masonry(_) | WallFraming::Veneer) => lines(pen, hatch(rect, HATCH_MM)),
        Some(WallFraming::Concrete(_)) => {
            lines(pen, hatch(rect, HATCH_MM * 2.0));
            let beside = PaperRect { left_mm: rect.left_mm + PAIR_MM, ..rect };
            lines(pen, hatch(beside, HATCH_MM * 2.0));
        }
        Some(WallFraming::NoFraming | WallFraming::NotKnown) | None => {}
    }
}

/// Draws the board or plaster in front of it.
pub(crate) fn board(pen: &mut Pen<'_>, rect: PaperRect) {
    let mirrored = |place: PaperPoint| PaperPoint::new(rect.left_mm + rect.right_mm - place.x_mm, place.y_mm);
    let falling = hatch(rect, HATCH_MM / 2.0).into_iter().map(|(from, to)| (mirrored(from), mirrored(to)));
    lines(pen, falling.collect());
}

fn lines(pen: &mut Pen<'_>, lines: Vec<(PaperPoint, PaperPoint)>) {
    for (from, to) in lines {
        pen.line(Ink::Hatch, from, to);
    }
}

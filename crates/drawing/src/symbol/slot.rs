//! A slot of a plate: two sides and its round ends, here in eighths of a circle.

use crate::ink::Ink;
use crate::pen::Pen;
use strikeline_solver::geometry::Frame;
use strikeline_solver::job::plate::PlateSlot;
use strikeline_solver::units::Length;

/// A slot of no stated width is drawn a quarter of an inch wide (chosen: takes the usual lag screw).
const WIDTH_MM: f64 = 6.35;

/// The ends of a slot along it and across it, in half widths from either end of its travel.
const ROUND: [(f64, f64); 5] = [(0.0, -1.0), (0.707, -0.707), (1.0, 0.0), (0.707, 0.707), (0.0, 1.0)];

/// Draws a slot's outline. `frame` is the plate's: its origin the middle of the plate's top edge.
pub(crate) fn slot(pen: &mut Pen<'_>, slot: &PlateSlot, frame: Frame, ink: Ink) {
    let half = slot.width.unwrap_or(Length::millimetres(WIDTH_MM)) / 2.0;
    let travel = slot.travel.abs() / 2.0;
    let (middle_right, middle_up) = (slot.right.length(), -slot.down);
    let ends = [1.0, -1.0].into_iter().flat_map(|end| ROUND.map(|(out, over)| (end, out, over)));
    let outline: Vec<_> = ends
        .map(|(end, out, over)| {
            let (along, across) = ((travel + half * out) * end, half * (over * end));
            let (right, up) = if slot.upright { (-across, along) } else { (along, across) };
            pen.at(frame.to_wall(middle_right + right, middle_up + up))
        })
        .collect();
    pen.outline(ink, &outline);
}

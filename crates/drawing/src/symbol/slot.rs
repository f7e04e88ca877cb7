//! A slot of a plate: two sides and its round ends.

use crate::ink::Ink;
use crate::pen::Pen;
use strikeline_solver::geometry::Frame;
use strikeline_solver::job::plate::PlateSlot;
use strikeline_solver::units::Length;

/// A slot of no stated width is drawn a quarter of an inch wide (chosen: takes the usual lag screw).
const WIDTH_MM: f64 = 6.35;

/// In how many straight parts a round end is drawn: of 15 degrees each, which looks round in the closest look (chosen).
const PARTS: u8 = 12;

/// A round end: along the slot and across it, in half widths from the end of its travel.
fn round_end() -> impl Iterator<Item = (f64, f64)> {
    (0..=PARTS).map(|part| {
        let (sine, cosine) = (std::f64::consts::PI * f64::from(part) / f64::from(PARTS)).sin_cos();
        (sine, -cosine)
    })
}

/// Draws a slot's outline. `frame` is the plate's: its origin the middle of the plate's top edge.
pub(crate) fn slot(pen: &mut Pen<'_>, slot: &PlateSlot, frame: Frame, ink: Ink) {
    let half = slot.width.unwrap_or(Length::millimetres(WIDTH_MM)) / 2.0;
    let travel = slot.travel.abs() / 2.0;
    let (middle_right, middle_up) = (slot.right.length(), -slot.down);
    let ends = [1.0, -1.0].into_iter().flat_map(|end| round_end().map(move |(out, over)| (end, out, over)));
    let outline: Vec<_> = ends
        .map(|(end, out, over)| {
            let (along, across) = ((travel + half * out) * end, half * (over * end));
            let (right, up) = if slot.upright { (-across, along) } else { (along, across) };
            pen.at(frame.to_wall(middle_right + right, middle_up + up))
        })
        .collect();
    pen.outline(ink, &outline);
}

//! A hole of a plate. Its shape tells what it meets, without colour: filled for a stud, half filled for a
//! stud's edge, open for board, crossed for something hidden, ringed for masonry, a bare cross for nothing.

use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::Pen;
use strikeline_solver::plan::piece::Meets;
use strikeline_solver::units::Length;

/// No smaller than this on paper, however small the scale.
const LEAST_RADIUS_MM: f64 = 0.8;
/// The same for a crossed one: a cross must be told from a dot.
const LEAST_CROSSED_MM: f64 = 1.1;

/// Draws a hole where a fastener goes through it.
pub(crate) fn hole(pen: &mut Pen<'_>, at: PaperPoint, diameter: Option<Length>, meets: Meets) {
    let ink = Ink::Hole(meets);
    let radius = diameter.map_or(0.0, |diameter| pen.scale.paper_mm(diameter) / 2.0).max(LEAST_RADIUS_MM);
    match meets {
        Meets::Stud => pen.circle(ink, at, radius, true),
        Meets::StudEdge => {
            pen.circle(ink, at, radius, false);
            pen.shape(ink, &half_disc(at, radius));
        }
        Meets::Board => pen.circle(ink, at, radius, false),
        Meets::NotKnown => {
            pen.circle(ink, at, radius, false);
            pen.line(ink, at.moved(0.0, -radius * 1.8), at.moved(0.0, -radius));
            pen.line(ink, at.moved(0.0, radius), at.moved(0.0, radius * 1.8));
        }
        Meets::Masonry => {
            pen.circle(ink, at, radius, false);
            pen.circle(ink, at, radius * 0.4, true);
        }
        Meets::Hidden => {
            let radius = radius.max(LEAST_CROSSED_MM);
            pen.circle(ink, at, radius, false);
            pen.cross(ink, PaperRect::of(at, at).grown(radius * 0.7));
        }
        Meets::OffWall => pen.cross(ink, PaperRect::of(at, at).grown(radius.max(LEAST_CROSSED_MM))),
    }
}

/// Rings a hole that is to take a fastener: a hexagon, as a head is seen.
pub(crate) fn in_use(pen: &mut Pen<'_>, at: PaperPoint, diameter: Option<Length>, meets: Meets) {
    const CORNERS: [(f64, f64); 6] =
        [(1.0, 0.0), (0.5, 0.866), (-0.5, 0.866), (-1.0, 0.0), (-0.5, -0.866), (0.5, -0.866)];
    let radius = diameter.map_or(0.0, |diameter| pen.scale.paper_mm(diameter) / 2.0).max(LEAST_RADIUS_MM);
    let head = CORNERS.map(|(right, down)| at.moved(right * radius * 1.9, down * radius * 1.9));
    pen.outline(Ink::Hole(meets), &head);
}

/// Flags a hole that was chosen by hand: a pennant on a staff, filled for one to be used, open for one to stay empty.
pub(crate) fn by_hand(
    pen: &mut Pen<'_>,
    at: PaperPoint,
    diameter: Option<Length>,
    meets: Meets,
    is_used: bool,
) {
    let radius = diameter.map_or(0.0, |diameter| pen.scale.paper_mm(diameter) / 2.0).max(LEAST_RADIUS_MM);
    let ink = Ink::Hole(meets);
    // From the ring's upper right corner, so that neither the hole nor its ring is covered.
    let (foot, top) = (at.moved(radius, -radius * 1.7), at.moved(radius, -radius * 4.4));
    pen.line(ink, foot, top);
    let pennant = [top, top.moved(radius * 1.8, radius * 0.7), top.moved(0.0, radius * 1.4)];
    if is_used {
        pen.shape(ink, &pennant);
    } else {
        pen.outline(ink, &pennant);
    }
}

/// The left half of a disc, as an outline.
fn half_disc(at: PaperPoint, radius: f64) -> Vec<PaperPoint> {
    // Half-circle in steps of 22.5 degrees, from the top over the left to the bottom.
    const UNIT: [(f64, f64); 9] = [
        (0.0, -1.0),
        (-0.383, -0.924),
        (-0.707, -0.707),
        (-0.924, -0.383),
        (-1.0, 0.0),
        (-0.924, 0.383),
        (-0.707, 0.707),
        (-0.383, 0.924),
        (0.0, 1.0),
    ];
    UNIT.iter().map(|(right, down)| at.moved(right * radius, down * radius)).collect()
}

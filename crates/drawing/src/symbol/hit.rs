//! One reading of what is behind the face: a tick of its own for each kind.

use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::Pen;
use strikeline_solver::job::hit::HitKind;

/// Half the size of a tick.
const HALF_MM: f64 = 1.1;

/// Strikes out a hit that is taken for something else than a stud.
pub(crate) fn outlier(pen: &mut Pen<'_>, at: PaperPoint) {
    let reach = HALF_MM * 1.9;
    pen.line(Ink::Hit, at.moved(-reach, reach), at.moved(reach, -reach));
}

/// Draws a hit at its place.
pub(crate) fn hit(pen: &mut Pen<'_>, at: PaperPoint, kind: HitKind) {
    let box_ = PaperRect::of(at, at).grown(HALF_MM);
    let upright =
        |pen: &mut Pen<'_>, reach: f64| pen.line(Ink::Hit, at.moved(0.0, -reach), at.moved(0.0, reach));
    match kind {
        // A bracket that opens toward the wood.
        HitKind::LeftEdge | HitKind::RightEdge => {
            let toward = if kind == HitKind::LeftEdge { HALF_MM } else { -HALF_MM };
            upright(pen, HALF_MM * 1.4);
            pen.line(Ink::Hit, at.moved(0.0, -HALF_MM * 1.4), at.moved(toward, -HALF_MM * 1.4));
            pen.line(Ink::Hit, at.moved(0.0, HALF_MM * 1.4), at.moved(toward, HALF_MM * 1.4));
        }
        HitKind::Centre => {
            upright(pen, HALF_MM * 1.6);
            pen.line(Ink::Hit, at.moved(-HALF_MM, 0.0), at.moved(HALF_MM, 0.0));
        }
        HitKind::Magnet => {
            let diamond = [(-1.0, 0.0), (0.0, -1.0), (1.0, 0.0), (0.0, 1.0)];
            pen.outline(Ink::Hit, &diamond.map(|(right, down)| at.moved(right * HALF_MM, down * HALF_MM)));
        }
        HitKind::Wood => pen.circle(Ink::Hit, at, HALF_MM * 0.8, true),
        HitKind::Air => pen.circle(Ink::Hit, at, HALF_MM * 0.8, false),
        HitKind::ShallowWood => {
            pen.circle(Ink::Hit, at, HALF_MM * 0.8, false);
            pen.line(Ink::Hit, at.moved(-HALF_MM * 0.8, 0.0), at.moved(HALF_MM * 0.8, 0.0));
        }
        HitKind::Metal => {
            pen.outline(Ink::Hit, &box_.corners());
            pen.cross(Ink::Hit, box_);
        }
    }
}

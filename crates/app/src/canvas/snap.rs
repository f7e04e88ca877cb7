//! What a held thing is drawn to: where it was, and centres, edges and studs within a few points of it.

use crate::moves::{Handle, HandleKind};
use strikeline_solver::geometry::{Axis, Point, Rect};
use strikeline_solver::plan::Plan;
use strikeline_solver::units::Length;

/// What things are drawn to along one axis.
#[derive(Clone, Debug, Default, PartialEq)]
struct Lines {
    /// Places for a middle.
    centres: Vec<Length>,
    /// Places for an edge.
    edges: Vec<Length>,
}

/// The place to which a thing whose middle is wished at `to` is drawn, each axis for itself: the nearest line
/// within reach, or the wish where there is none.
///
/// A hit is drawn to nothing: it is what was read.
#[must_use]
pub fn snapped(plan: &Plan, handle: &Handle, to: Point, within: Length) -> Point {
    let Some(body) = body(plan, handle) else { return to };
    let along = |axis| {
        let lines = lines(plan, handle, axis);
        nearest(&lines, to.along(axis), body.span(axis).length() / 2.0, within)
    };
    Point::new(along(Axis::Across), along(Axis::Upright))
}

/// The outline of what is held; `None` for a hit.
fn body(plan: &Plan, handle: &Handle) -> Option<Rect> {
    match handle.kind {
        HandleKind::Piece => plan.pieces.iter().find(|p| p.id == handle.id).map(|p| p.outline),
        HandleKind::Feature => plan.survey.features.iter().find(|f| f.id == handle.id).map(|f| f.rect),
        HandleKind::Hidden => plan.survey.hidden.iter().find(|h| h.id == handle.id).map(|h| h.rect),
        HandleKind::Hit => None,
    }
}

fn lines(plan: &Plan, handle: &Handle, axis: Axis) -> Lines {
    let mut lines = Lines::default();
    // To where it was: a drag that comes back changes nothing, and a level one keeps its height.
    lines.centres.extend(body(plan, handle).map(|body| body.centre().along(axis)));
    let wall = plan.survey.outline.span(axis);
    lines.edges.extend([wall.from, wall.to]);
    if axis == Axis::Across {
        lines.centres.push(wall.middle());
        lines.centres.extend(plan.framing.studs.iter().map(|stud| stud.centre));
    }
    let pieces = plan.pieces.iter().filter(|p| p.id != handle.id);
    if let Some(piece) = plan.pieces.iter().find(|p| p.id == handle.id) {
        lines.centres.push(piece.ruled_centre.along(axis));
    }
    let features = plan.survey.features.iter().filter(|f| f.id != handle.id);
    for rect in pieces.map(|p| p.outline).chain(features.map(|f| f.rect)) {
        let span = rect.span(axis);
        lines.centres.push(span.middle());
        lines.edges.extend([span.from, span.to]);
    }
    lines
}

/// The middle to which a thing is drawn along one axis.
fn nearest(lines: &Lines, middle: Length, half: Length, within: Length) -> Length {
    let by_centre = lines.centres.iter().copied();
    let by_edge = lines.edges.iter().flat_map(|&edge| [edge - half, edge + half]);
    let away = |place: &Length| (*place - middle).abs().mm();
    by_centre
        .chain(by_edge)
        .filter(|place| away(place) <= within.mm())
        .min_by(|a, b| away(a).total_cmp(&away(b)))
        .unwrap_or(middle)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::millimetres(value)
    }

    fn drawn(middle: f64) -> f64 {
        let lines = Lines { centres: vec![mm(500.0)], edges: vec![mm(0.0), mm(590.0)] };
        nearest(&lines, mm(middle), mm(100.0), mm(8.0)).mm()
    }

    #[test]
    fn the_nearest_line_within_reach_draws() {
        assert_eq!(drawn(496.0), 500.0);
        assert_eq!(drawn(494.0), 490.0, "its right edge to 590 is nearer than its middle to 500");
        assert_eq!(drawn(93.0), 100.0, "its left edge to 0");
        assert_eq!(drawn(300.0), 300.0);
    }
}

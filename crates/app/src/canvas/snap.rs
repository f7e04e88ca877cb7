//! What a held thing is drawn to: where it was, and centres, edges and studs within a few points of it. What it is
//! drawn to once it keeps until the hand is clearly away from it, so that it does not flutter between two.

use crate::moves::{Handle, HandleKind, edge};
use strikeline_solver::geometry::{Axis, Point, Rect};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Subject;
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// How near the hand has to be to be drawn, and how far away to be let go.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reach {
    /// Within this much it is drawn.
    pub enter: Length,
    /// Beyond this much it is let go.
    pub leave: Length,
}

/// Where a held thing stands, and what it was drawn to there.
#[derive(Clone, Debug, PartialEq)]
pub struct Snapped {
    /// The place of its handle.
    pub to: Point,
    /// What it is drawn to sideways.
    pub across: Option<Target>,
    /// What it is drawn to in height.
    pub upright: Option<Target>,
}

/// A place that a handle is drawn to along one axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Target {
    /// Where the handle then is.
    place: Length,
    /// Where the line is that draws it.
    pub line: Length,
    /// What that line is.
    pub what: Line,
}

/// A line that draws.
#[derive(Clone, Debug, PartialEq)]
pub enum Line {
    /// Where the thing was.
    Start,
    /// Where its rule puts it.
    Rule,
    /// The middle of a stud.
    Stud,
    /// An edge or the middle of something.
    Of(Subject),
}

impl Line {
    /// The same for the eye: `to the stud`, `to the window's right trim`.
    #[must_use]
    pub fn words(&self, plan: &Plan) -> String {
        match self {
            Self::Start => "where it was".to_owned(),
            Self::Rule => "to its rule's own place".to_owned(),
            Self::Stud => "to the stud".to_owned(),
            Self::Of(subject) if subject.id == plan.wall => {
                let edge = match subject.part_str() {
                    "left" => words::datum(plan, &strikeline_solver::plan::mark::ReadingDatum::LeftEnd),
                    "right" => words::datum(plan, &strikeline_solver::plan::mark::ReadingDatum::RightEnd),
                    "bottom" => words::datum(plan, &strikeline_solver::plan::mark::ReadingDatum::Floor),
                    "top" => "the ceiling".to_owned(),
                    _ => "the wall's middle".to_owned(),
                };
                format!("to {edge}")
            }
            Self::Of(subject) => format!("to {}", words::thing(plan, subject)),
        }
    }
}

/// The place to which a handle that is wished at `to` is drawn, each axis for itself: what held it before as long
/// as that is near, else the nearest line within reach, else the wish.
///
/// A hit is drawn to nothing: it is what was read. An edge moves along its own axis alone.
#[must_use]
pub fn snapped(plan: &Plan, handle: &Handle, to: Point, reach: Reach, before: Option<&Snapped>) -> Snapped {
    let along = |axis: Axis, held: Option<&Target>| {
        let targets = targets(plan, handle, axis);
        choose(&targets, to.along(axis), reach, held).cloned()
    };
    let across = along(Axis::Across, before.and_then(|before| before.across.as_ref()));
    let upright = along(Axis::Upright, before.and_then(|before| before.upright.as_ref()));
    let place = |target: &Option<Target>, wish| target.as_ref().map_or(wish, |target| target.place);
    Snapped { to: Point::new(place(&across, to.x), place(&upright, to.y)), across, upright }
}

/// The outline of what is held; `None` for a hit.
fn body(plan: &Plan, handle: &Handle) -> Option<Rect> {
    match handle.kind {
        HandleKind::Piece => plan.pieces.iter().find(|p| p.id == handle.id).map(|p| p.outline),
        HandleKind::Feature | HandleKind::Hidden | HandleKind::Edge(_) => edge::outline(plan, &handle.id),
        // Openings are drawn to their best alone, which the move itself knows.
        HandleKind::Hit | HandleKind::Entry | HandleKind::Exit => None,
    }
}

/// All that draws a handle along an axis.
fn targets(plan: &Plan, handle: &Handle, axis: Axis) -> Vec<Target> {
    let Some(body) = body(plan, handle) else { return Vec::new() };
    let mut targets = Vec::new();
    if let HandleKind::Edge(side) = handle.kind {
        if side.axis() == axis {
            let start = side.of(body).along(axis);
            targets.push(Target { place: start, line: start, what: Line::Start });
            for (line, what) in centres(plan, handle, axis).into_iter().chain(edges(plan, handle, axis)) {
                targets.push(Target { place: line, line, what });
            }
        }
        return targets;
    }
    // To where it was: a drag that comes back changes nothing, and a level one keeps its height.
    let start = body.centre().along(axis);
    targets.push(Target { place: start, line: start, what: Line::Start });
    if let Some(piece) = plan.pieces.iter().find(|p| p.id == handle.id) {
        let place = piece.ruled_centre.along(axis);
        targets.push(Target { place, line: place, what: Line::Rule });
    }
    for (line, what) in centres(plan, handle, axis) {
        targets.push(Target { place: line, line, what });
    }
    let half = body.span(axis).length() / 2.0;
    for (line, what) in edges(plan, handle, axis) {
        for place in [line - half, line + half] {
            targets.push(Target { place, line, what: what.clone() });
        }
    }
    targets
}

/// The wall, and every other thing on it with its outline.
fn others<'a>(
    plan: &'a Plan,
    handle: &'a Handle,
) -> impl Iterator<Item = (&'a strikeline_solver::subject::Id, Rect)> {
    let pieces = plan.pieces.iter().map(|p| (&p.id, p.outline));
    let features = plan.survey.features.iter().map(|f| (&f.id, f.rect));
    let wall = std::iter::once((&plan.wall, plan.survey.outline));
    wall.chain(pieces).chain(features).filter(|(id, _)| **id != handle.id)
}

/// The middles that draw.
fn centres(plan: &Plan, handle: &Handle, axis: Axis) -> Vec<(Length, Line)> {
    let mut centres: Vec<(Length, Line)> = others(plan, handle)
        // Half the height of a wall is nothing that anyone looks for.
        .filter(|(id, _)| axis == Axis::Across || **id != plan.wall)
        .map(|(id, rect)| (rect.span(axis).middle(), Line::Of(id.part("centre"))))
        .collect();
    if axis == Axis::Across {
        centres.extend(plan.framing.studs.iter().map(|stud| (stud.centre, Line::Stud)));
    }
    centres
}

/// The edges that draw.
fn edges(plan: &Plan, handle: &Handle, axis: Axis) -> Vec<(Length, Line)> {
    let (lower, upper) = match axis {
        Axis::Across => ("left", "right"),
        Axis::Upright => ("bottom", "top"),
    };
    let both = |(id, rect): (&strikeline_solver::subject::Id, Rect)| {
        let span = rect.span(axis);
        [(span.from, Line::Of(id.part(lower))), (span.to, Line::Of(id.part(upper)))]
    };
    others(plan, handle).flat_map(both).collect()
}

/// What draws a handle along one axis. Of two at one place the first.
fn choose<'a>(
    targets: &'a [Target],
    wish: Length,
    reach: Reach,
    held: Option<&Target>,
) -> Option<&'a Target> {
    let away = |target: &Target| (target.place - wish).abs().mm();
    let nearest = targets
        .iter()
        .filter(|target| away(target) <= reach.enter.mm())
        .min_by(|a, b| away(a).total_cmp(&away(b)));
    let kept =
        targets.iter().find(|target| Some(*target) == held).filter(|target| away(target) <= reach.leave.mm());
    match (kept, nearest) {
        // Another one takes over where it is nearer by as much as a hand trembles.
        (Some(kept), Some(nearest)) if away(nearest) + (reach.leave - reach.enter).mm() < away(kept) => {
            Some(nearest)
        }
        (Some(kept), _) => Some(kept),
        (None, nearest) => nearest,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::millimetres(value)
    }

    fn target(place: f64) -> Target {
        Target { place: mm(place), line: mm(place), what: Line::Stud }
    }

    const NEAR: [f64; 3] = [490.0, 500.0, 100.0];

    fn drawn(wish: f64, held: Option<f64>) -> Option<f64> {
        let reach = Reach { enter: mm(8.0), leave: mm(11.0) };
        let held = held.map(target);
        choose(&NEAR.map(target), mm(wish), reach, held.as_ref()).map(|target| target.place.mm())
    }

    #[test]
    fn the_nearest_line_within_reach_draws() {
        assert_eq!(drawn(496.0, None), Some(500.0));
        assert_eq!(drawn(494.0, None), Some(490.0));
        assert_eq!(drawn(93.0, None), Some(100.0));
        assert_eq!(drawn(300.0, None), None);
        assert_eq!(drawn(91.0, None), None);
    }

    #[test]
    fn what_draws_keeps_until_the_hand_is_clearly_away() {
        assert_eq!(drawn(90.0, Some(100.0)), Some(100.0));
        assert_eq!(drawn(88.0, Some(100.0)), None);
        assert_eq!(drawn(496.0, Some(490.0)), Some(490.0), "nearer to the other by less than a tremble");
        assert_eq!(drawn(497.0, Some(490.0)), Some(500.0));
        assert_eq!(drawn(300.0, Some(300.0)), None, "a line that is no more draws nothing");
    }
}

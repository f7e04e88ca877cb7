//! The wall itself: its face, its ends, ceiling, floor and control line.

use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::Pen;
use crate::scene::ItemKind;
use crate::symbol::hatch::hatch;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::wall::End;
use strikeline_solver::plan::survey::Survey;
use strikeline_solver::plan::{AssumedWhat, Plan};

/// How deep the ground is hatched under the floor line.
pub(crate) const GROUND_MM: f64 = 2.2;
/// Between the lines of the ground's hatch.
const GROUND_STEP_MM: f64 = 2.4;
/// How far a return is drawn at an end: another wall comes forward, or this one goes back.
const RETURN_MM: f64 = 2.5;

/// The floor line from the wall's left end to its right one, through the readings between.
fn floor(pen: &Pen<'_>, survey: &Survey) -> Vec<PaperPoint> {
    let (left, right) = (survey.outline.left, survey.outline.right);
    let between = survey.floor.readings.iter().map(|reading| reading.x).filter(|x| left < *x && *x < right);
    std::iter::once(left)
        .chain(between)
        .chain(std::iter::once(right))
        .map(|x| pen.at(Point::new(x, survey.floor.y_at(x))))
        .collect()
}

/// Draws the face, behind everything.
pub(crate) fn face(pen: &mut Pen<'_>, plan: &Plan) {
    pen.take(plan.wall.whole(), false);
    let outline = plan.survey.outline;
    let mut corners = floor(pen, &plan.survey);
    corners.push(pen.at(Point::new(outline.right, outline.top)));
    corners.push(pen.at(Point::new(outline.left, outline.top)));
    pen.fill(Ink::WallFace, &corners);
}

/// Draws the outline, over what stands on the wall.
pub(crate) fn edges(pen: &mut Pen<'_>, plan: &Plan) {
    let survey = &plan.survey;
    let outline = survey.outline;
    let assumed = |which: fn(&AssumedWhat) -> bool| {
        plan.assumed.iter().any(|it| it.subject.id == plan.wall && which(&it.what))
    };
    let width_assumed = assumed(|what| matches!(what, AssumedWhat::WallWidth(_)));
    let height_assumed = assumed(|what| matches!(what, AssumedWhat::WallHeight(_)));

    let line = floor(pen, survey);
    for pair in line.windows(2) {
        let [from, to] = pair else { continue };
        // The hatch hangs from the floor line and may run with it out of level.
        let ground = PaperRect { left_mm: from.x_mm, right_mm: to.x_mm, top_mm: 0.0, bottom_mm: GROUND_MM };
        let rise = (to.y_mm - from.y_mm) / (to.x_mm - from.x_mm).max(f64::MIN_POSITIVE);
        pen.take(plan.wall.part("floor"), false);
        for (a, b) in hatch(ground, GROUND_STEP_MM) {
            let on_floor = |place: PaperPoint| {
                PaperPoint::new(place.x_mm, from.y_mm + (place.x_mm - from.x_mm) * rise + place.y_mm)
            };
            pen.line(Ink::Ground, on_floor(a), on_floor(b));
        }
    }
    let ends = (line.first().copied(), line.last().copied());
    pen.add(Ink::Floor, ItemKind::Polyline { points: line });

    let (top_left, top_right) =
        (pen.at(Point::new(outline.left, outline.top)), pen.at(Point::new(outline.right, outline.top)));
    pen.take(plan.wall.part("top"), height_assumed);
    pen.line(Ink::WallEdge, top_left, top_right);
    for (part, end, foot, head, out) in [
        ("left", survey.left_end, ends.0, top_left, -RETURN_MM),
        ("right", survey.right_end, ends.1, top_right, RETURN_MM),
    ] {
        let Some(foot) = foot else { continue };
        pen.take(plan.wall.part(part), width_assumed && part == "right");
        let ink = if end == End::Open { Ink::OpenEnd } else { Ink::WallEdge };
        pen.line(ink, foot, head);
        // The other wall comes forward: its cut is seen beside the corner, above and below.
        if end == End::InsideCorner {
            for at in [foot, head] {
                pen.line(Ink::WallEdge, at, at.moved(out, 0.0));
            }
        }
    }
}

/// Draws the level line that floor and heights are read from, where there is one.
pub(super) fn control_line(pen: &mut Pen<'_>, plan: &Plan) {
    let outline = plan.survey.outline;
    if let Some(y) = plan.survey.control_line_y {
        pen.take(plan.wall.part("control_line"), false);
        let (from, to) = (pen.at(Point::new(outline.left, y)), pen.at(Point::new(outline.right, y)));
        pen.line(Ink::ControlLine, from, to);
    }
}

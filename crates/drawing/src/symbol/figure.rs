//! A person seen from the front or from behind: a figure of strokes, to tell how large things are.

use crate::ink::Ink;
use crate::pen::Pen;
use strikeline_solver::geometry::{Point, Rect, Span};
use strikeline_solver::units::Length;

/// Half of a head's height (chosen: a head is about 220 mm high, its eyes at half of it).
pub(crate) const HEAD_MM: f64 = 110.0;
/// From the eyes down to the shoulders (chosen: a head's half and a neck).
const SHOULDERS_BELOW_MM: f64 = 290.0;
/// Half of the width of the shoulders (chosen: about 400 mm from joint to joint).
const HALF_SHOULDERS_MM: f64 = 200.0;
/// The hips of someone standing: this share of the eyes' height (chosen: a little over half).
pub(crate) const HIP_SHARE: f64 = 0.56;
/// How far an arm hangs down from the shoulder (chosen: to the middle of the thigh).
const ARM_MM: f64 = 640.0;
/// Half of the width of a chair (chosen: a usual easy chair).
const HALF_CHAIR_MM: f64 = 330.0;

/// Draws someone who stands, their eyes at a place and their feet on the floor.
pub(crate) fn standing(pen: &mut Pen<'_>, ink: Ink, eyes: Point, floor: Length) {
    let mm = Length::millimetres;
    let shoulders = upper_body(pen, ink, eyes);
    let hip = Point::new(eyes.x, floor + (eyes.y - floor) * HIP_SHARE);
    strokes(pen, ink, &[Point::new(eyes.x, shoulders), hip]);
    for side in [-1.0, 1.0] {
        let shoulder = Point::new(eyes.x + mm(side * HALF_SHOULDERS_MM), shoulders);
        let hand = Point::new(shoulder.x + mm(side * 40.0), shoulder.y - mm(ARM_MM));
        strokes(pen, ink, &[shoulder, hand]);
        let foot = Point::new(eyes.x + mm(side * 110.0), floor);
        strokes(pen, ink, &[hip, foot]);
    }
}

/// Draws someone who sits with their back to us, and the chair that hides the rest of them.
pub(crate) fn seated(pen: &mut Pen<'_>, ink: Ink, eyes: Point, floor: Length) {
    let shoulders = upper_body(pen, ink, eyes);
    let half = Length::millimetres(HALF_CHAIR_MM);
    let chair = Rect::new(Span::new(eyes.x - half, eyes.x + half), Span::new(floor, shoulders.max(floor)));
    pen.outline(ink, &pen.scale.paper_rect(chair).corners());
}

/// Head, neck and shoulders; how high the shoulders are.
fn upper_body(pen: &mut Pen<'_>, ink: Ink, eyes: Point) -> Length {
    let mm = Length::millimetres;
    let radius = pen.scale.paper_mm(mm(HEAD_MM));
    let centre = pen.at(eyes);
    pen.circle(ink, centre, radius, true);
    let shoulders = eyes.y - mm(SHOULDERS_BELOW_MM);
    strokes(pen, ink, &[Point::new(eyes.x, eyes.y - mm(HEAD_MM)), Point::new(eyes.x, shoulders)]);
    let half = mm(HALF_SHOULDERS_MM);
    strokes(pen, ink, &[Point::new(eyes.x - half, shoulders), Point::new(eyes.x + half, shoulders)]);
    shoulders
}

fn strokes(pen: &mut Pen<'_>, ink: Ink, joints: &[Point]) {
    for pair in joints.windows(2) {
        let [from, to] = pair else { continue };
        let (from, to) = (pen.at(*from), pen.at(*to));
        pen.line(ink, from, to);
    }
}

//! A person from the side, facing the wall: a figure of strokes that reaches from the floor to the eyes.

use crate::ink::Ink;
use crate::pen::Pen;
use crate::symbol::figure::{HEAD_MM, HIP_SHARE};
use strikeline_solver::geometry::Point;
use strikeline_solver::handbook::eye_height::{KNEE, SEATED};
use strikeline_solver::job::seat::Posture;
use strikeline_solver::plan::sight::SeatSight;
use strikeline_solver::units::Length;

/// The eyes are so far in front of the head's middle (chosen).
const EYES_FORWARD_MM: f64 = 80.0;
/// From hip to knee of someone seated (chosen: a usual thigh).
const THIGH_MM: f64 = 450.0;

/// Where a seat is whose height nobody measured: this share of the eyes' height, as the knee's of the median of all
/// people of the survey is of their seated eyes'.
fn seat_share() -> f64 {
    KNEE.all.value.p50 / SEATED.all.value.p50
}

/// A head's height above its eyes, in paper millimetres.
pub(super) fn head(pen: &Pen<'_>) -> f64 {
    pen.scale.paper_mm(Length::millimetres(HEAD_MM))
}

/// The middle of the head of the person at a seat, in the view.
pub(super) fn head_at(sight: &SeatSight) -> Point {
    Point::new(sight.from_wall + Length::millimetres(EYES_FORWARD_MM), sight.eyes_at.y)
}

/// Draws the person at a seat; `seat` is how high they sit, where it was measured.
pub(super) fn person(pen: &mut Pen<'_>, sight: &SeatSight, seat: Option<Length>) {
    let mm = Length::millimetres;
    let eyes = Point::new(sight.from_wall, sight.eyes_at.y);
    let floor = eyes.y - sight.eyes.height;
    let head = head_at(sight);
    let neck = Point::new(head.x, head.y - mm(HEAD_MM));
    let mut joints = vec![neck];
    match sight.posture {
        Posture::Standing => {
            let hip = Point::new(head.x, floor + sight.eyes.height * HIP_SHARE);
            joints.extend([hip, Point::new(head.x, floor)]);
        }
        Posture::Seated => {
            let sits = floor + seat.unwrap_or(sight.eyes.height * seat_share());
            let hip = Point::new(head.x + mm(60.0), sits);
            let knee = Point::new(hip.x - mm(THIGH_MM), sits);
            joints.extend([hip, knee, Point::new(knee.x, floor)]);
            // The seat under them, and its leg.
            let (front, back) = (Point::new(knee.x + mm(60.0), sits), Point::new(hip.x + mm(120.0), sits));
            let leg = Point::new(back.x, floor);
            for (from, to) in [(front, back), (back, leg)] {
                let (from, to) = (pen.at(from), pen.at(to));
                pen.line(Ink::FeatureDetail, from, to);
            }
        }
    }
    let radius = self::head(pen);
    let centre = pen.at(head);
    pen.circle(Ink::Feature, centre, radius, false);
    for pair in joints.windows(2) {
        let [from, to] = pair else { continue };
        let (from, to) = (pen.at(*from), pen.at(*to));
        pen.line(Ink::Feature, from, to);
    }
    // Nine in ten have their eyes between these.
    if sight.eyes.low < sight.eyes.high {
        let at = |height: Length| Point::new(eyes.x, floor + height);
        let (low, high) = (pen.at(at(sight.eyes.low)), pen.at(at(sight.eyes.high)));
        pen.line(Ink::DimensionTick, low, high);
    }
    let at = pen.at(eyes);
    pen.circle(Ink::Feature, at, 0.5, true);
}

//! How displays are seen, as JSON.

use super::mm;
use serde_json::{Value, json};
use strikeline_solver::ledger::Label;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::sight::{SeatSight, Seen};
use strikeline_solver::units::Angle;
use strikeline_solver::words;

/// Degrees rounded to 1e-6; never minus nothing.
fn deg(angle: Angle) -> Value {
    let rounded = (angle.deg() * 1e6).round() / 1e6;
    json!(if rounded == 0.0 { 0.0 } else { rounded })
}

/// A display as it is seen from a seat. Angles that cannot be worked out are `null`, and a finding says why.
pub(super) fn seat(plan: &Plan, one: &SeatSight) -> Value {
    let seen = one.seen.as_ref();
    let angle = |of: fn(&Seen) -> Angle| seen.map(|seen| deg(of(seen)));
    json!({
        "seat": one.seat.to_string(),
        "piece": one.piece.to_string(),
        "horizontal_deg": angle(|seen| seen.horizontal),
        "up_deg": angle(|seen| seen.up),
        "top_deg": angle(|seen| seen.top),
        "off_axis_deg": angle(|seen| seen.off_axis),
        "square_tilt_deg": angle(|seen| seen.tilt),
        "square_height_mm": seen.map(|_| mm(one.eyes.height)),
        "distance_mm": seen.map(|seen| mm(seen.distance)),
        "lines_merge_mm": seen.and_then(|seen| seen.lines).map(|(_, merge)| mm(merge)),
        "eyes_mm": mm(one.eyes.height),
        "eyes_measured": one.eyes.label == Label::Measured,
        "assumed": one.assumed || one.in_front,
        "words": words::sight(plan, one),
    })
}

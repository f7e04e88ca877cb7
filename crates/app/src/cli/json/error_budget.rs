//! How far off the finished piece can be, as JSON.

use serde_json::{Value, json};
use strikeline_solver::error_budget::{Budget, ErrorBudget, ErrorFrom};

/// The budget of a plan's piece.
pub(super) fn told(budget: &ErrorBudget) -> Value {
    json!({
        "piece": budget.piece.to_string(),
        "centre_mm": one(&budget.centre),
        "top_mm": one(&budget.top),
        "tilt_deg": one(&budget.tilt),
        "level_deg": rounded(budget.level.value.deg()),
    })
}

fn rounded(value: f64) -> Value {
    json!((value * 1e6).round() / 1e6)
}

fn one(budget: &Budget) -> Value {
    json!({
        "worst": rounded(budget.stack.worst),
        "rss": rounded(budget.stack.rss),
        "largest": budget.largest().map(name),
    })
}

fn name(from: ErrorFrom) -> &'static str {
    match from {
        ErrorFrom::Tape => "tape",
        ErrorFrom::Meter => "meter",
        ErrorFrom::Graduation => "graduation",
        ErrorFrom::Pencil => "pencil",
        ErrorFrom::Corner => "corner",
        ErrorFrom::ControlLine => "control_line",
        ErrorFrom::Floor => "floor",
        ErrorFrom::Plate => "plate",
        ErrorFrom::Drop => "drop",
    }
}

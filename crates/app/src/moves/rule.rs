//! A piece's rule changed for another kind: where the rule has a value it is taken from the plan as it is, in whole
//! graduations, so that the piece stays about where it is.

mod across;
mod offers;
mod upright;

pub use across::{AcrossKind, across_rule, beside_rule};
pub use offers::{across_datums, level_edges, things, upright_datums};
pub use upright::{UprightKind, gap_rule, height_rule, upright_rule};

use strikeline_solver::geometry::Rect;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// A piece's outline; nothing at the wall's corner where it is not in the plan.
fn outline(plan: &Plan, id: &Id) -> Rect {
    plan.pieces.iter().find(|piece| piece.id == *id).map(|piece| piece.outline).unwrap_or_default()
}

/// The outline of a feature or piece.
fn rect(plan: &Plan, id: &Id) -> Option<Rect> {
    let feature = plan.survey.features.iter().find(|feature| feature.id == *id).map(|feature| feature.rect);
    feature.or_else(|| plan.pieces.iter().find(|piece| piece.id == *id).map(|piece| piece.outline))
}

/// A distance in whole graduations, never below nothing.
fn whole(length: Length, plan: &Plan) -> Length {
    plan.style.length_of(plan.style.steps(length)).max(Length::default())
}

//! A piece's rule changed for another kind: it stays about where it is, in whole graduations.

use strikeline_solver::geometry::Rect;
use strikeline_solver::job::place::UpDown;
use strikeline_solver::job::place::UprightDatum;
use strikeline_solver::job::rule::{Follow, PieceHeight, UprightRule};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// A height above the floor for one of a piece's own heights. A piece that is not in the plan counts as on the
/// floor.
#[must_use]
pub fn height_rule(plan: &Plan, piece: &Id, of: PieceHeight) -> UprightRule {
    let now = outline(plan, piece);
    let y = match of {
        PieceHeight::Top => now.top,
        PieceHeight::Centre => now.centre().y,
        PieceHeight::Bottom => now.bottom,
    };
    let above = y - plan.survey.floor.y_at(now.centre().x);
    UprightRule::Height { of, from: UprightDatum::Floor, toward: None, by: whole(above, plan) }
}

/// A gap above a feature or another piece; none where the piece is lower than that, or the thing is not there.
#[must_use]
pub fn gap_rule(plan: &Plan, piece: &Id, over: &Id) -> UprightRule {
    let now = outline(plan, piece);
    let feature = plan.survey.features.iter().find(|feature| feature.id == *over);
    let other = plan.pieces.iter().find(|other| other.id == *over);
    let edge = feature.map(|feature| feature.top_at(now.centre().x)).or(other.map(|other| other.outline.top));
    let by = whole(now.bottom - edge.unwrap_or(now.bottom), plan);
    UprightRule::Gap { side: UpDown::Up, of: over.clone(), by, follow: Follow::default() }
}

fn outline(plan: &Plan, id: &Id) -> Rect {
    plan.pieces.iter().find(|piece| piece.id == *id).map(|piece| piece.outline).unwrap_or_default()
}

fn whole(length: Length, plan: &Plan) -> Length {
    plan.style.length_of(plan.style.steps(length)).max(Length::default())
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;
    use strikeline_solver::job::Job;

    /// How far a rule moves the sample's display, in millimetres, and by how much it may.
    fn moved_mm(rule: UprightRule) -> (f64, f64) {
        let before = plan(&job());
        let mut after: Job = job();
        after.walls[0].options[0].hangings[0].upright = rule;
        let off = plan(&after).pieces[0].outline.centre().y - before.pieces[0].outline.centre().y;
        (off.mm().abs(), before.style.length_of(1).mm() / 2.0 + 1e-6)
    }

    #[test]
    fn another_kind_of_rule_leaves_the_piece_where_it_is() {
        let before = plan(&job());
        let piece = &before.pieces[0].id;
        for of in [PieceHeight::Top, PieceHeight::Centre, PieceHeight::Bottom] {
            let (off, most) = moved_mm(height_rule(&before, piece, of));
            assert!(off <= most, "{of:?}: {off}");
        }
    }

    #[test]
    fn a_gap_is_never_below_nothing() {
        let before = plan(&job());
        let over = before.pieces[0].id.clone();
        let UprightRule::Gap { by, .. } = gap_rule(&before, &over, &over) else { panic!("a gap") };
        assert_eq!(by, Length::default(), "over itself there is none");
    }
}

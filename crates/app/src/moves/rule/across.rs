//! Where a piece goes sideways.

use super::{outline, rect, whole};
use strikeline_solver::job::place::{AcrossDatum, Sideways};
use strikeline_solver::job::rule::AcrossRule;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::Gap;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// A kind of rule.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum AcrossKind {
    /// Centred on the wall.
    OnWall,
    /// Centred on a thing.
    On,
    /// Centred between two edges.
    Between,
    /// So far beside an edge.
    Beside,
}

impl AcrossKind {
    /// All kinds, in the order in which they are offered.
    pub const ALL: [Self; 4] = [Self::OnWall, Self::On, Self::Between, Self::Beside];

    /// The kind of a rule.
    #[must_use]
    pub fn of(rule: &AcrossRule) -> Self {
        match rule {
            AcrossRule::OnWall => Self::OnWall,
            AcrossRule::On(_) => Self::On,
            AcrossRule::Between(..) => Self::Between,
            AcrossRule::Beside { .. } => Self::Beside,
        }
    }
}

/// A rule of a kind to begin with: the nearest thing, the neighbours to either side, or the nearer of them.
/// `None` where there is nothing to be centred on.
#[must_use]
pub fn across_rule(plan: &Plan, piece: &Id, kind: AcrossKind, things: &[Id]) -> Option<AcrossRule> {
    match kind {
        AcrossKind::OnWall => Some(AcrossRule::OnWall),
        AcrossKind::On => {
            let middle = outline(plan, piece).centre().x;
            let away =
                |id: &Id| rect(plan, id).map_or(f64::INFINITY, |rect| (rect.centre().x - middle).abs().mm());
            let nearest = things.iter().min_by(|a, b| away(a).total_cmp(&away(b)))?;
            Some(AcrossRule::On(nearest.clone()))
        }
        AcrossKind::Between => {
            let ((left, _), (right, _)) = neighbours(plan, piece, things);
            Some(AcrossRule::Between(left, right))
        }
        AcrossKind::Beside => {
            let ((left, left_gap), (right, right_gap)) = neighbours(plan, piece, things);
            let from = if right_gap < left_gap { right } else { left };
            Some(beside_rule(plan, piece, from, None))
        }
    }
}

/// What stands to the left and to the right of a piece, and how far off; an end of the wall where nothing does.
fn neighbours(plan: &Plan, piece: &Id, things: &[Id]) -> ((AcrossDatum, Length), (AcrossDatum, Length)) {
    let gaps = plan.pieces.iter().find(|one| one.id == *piece).map(|one| &one.gaps);
    let neighbour = |gap: Option<&Gap>, end: AcrossDatum, to_end: Length| match gap {
        Some(gap) if things.contains(&gap.to.id) => (AcrossDatum::Edge(gap.to.clone()), gap.from),
        _ => (end, to_end),
    };
    let (now, wall) = (outline(plan, piece), plan.survey.outline);
    let left = gaps.and_then(|gaps| gaps.left.as_ref());
    let right = gaps.and_then(|gaps| gaps.right.as_ref());
    (
        neighbour(left, AcrossDatum::LeftEnd, now.left - wall.left),
        neighbour(right, AcrossDatum::RightEnd, wall.right - now.right),
    )
}

/// So far beside an edge, away from it or `toward` a side; where no side is given, on the one where the piece is.
/// None where the piece is not wholly on that side, or the edge is not there.
#[must_use]
pub fn beside_rule(plan: &Plan, piece: &Id, from: AcrossDatum, toward: Option<Sideways>) -> AcrossRule {
    let now = outline(plan, piece);
    let away = from.away();
    let edge = edge(plan, &from).unwrap_or_default();
    let gap = |side| match side {
        Sideways::Left => edge - now.right,
        Sideways::Right => now.left - edge,
    };
    let other = if away == Sideways::Left { Sideways::Right } else { Sideways::Left };
    let is_on_other = gap(away) < Length::default() && gap(other) >= Length::default();
    let side = toward.unwrap_or(if is_on_other { other } else { away });
    AcrossRule::Beside { from, toward: (side != away).then_some(side), by: whole(gap(side), plan) }
}

/// Where an edge is.
fn edge(plan: &Plan, datum: &AcrossDatum) -> Option<Length> {
    let wall = plan.survey.outline;
    match datum {
        AcrossDatum::LeftEnd => Some(wall.left),
        AcrossDatum::RightEnd => Some(wall.right),
        AcrossDatum::Edge(subject) => {
            let rect = if subject.id == plan.wall { wall } else { rect(plan, &subject.id)? };
            Some(match subject.part_str() {
                "left" => rect.left,
                "right" => rect.right,
                _ => rect.centre().x,
            })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::super::super::sample::{job, plan};
    use super::*;
    use strikeline_solver::job::Job;

    fn display() -> Id {
        Id::new("display-1")
    }

    fn door(part: &str) -> AcrossDatum {
        AcrossDatum::Edge(Id::new("door-1").part(part))
    }

    /// The sample with a rule for its display.
    fn ruled(rule: AcrossRule) -> Job {
        let mut job = job();
        job.walls[0].options[0].hangings[0].across = rule;
        job
    }

    fn moved_mm(before: &Plan, rule: AcrossRule) -> f64 {
        let after = plan(&ruled(rule));
        (after.pieces[0].outline.centre().x - before.pieces[0].outline.centre().x).mm().abs()
    }

    #[test]
    fn beside_any_edge_the_piece_stays_where_it_is() {
        let before = plan(&job());
        let most = before.style.length_of(1).mm() / 2.0 + 1e-6;
        for from in [AcrossDatum::LeftEnd, AcrossDatum::RightEnd, door("left"), door("right")] {
            let rule = beside_rule(&before, &display(), from.clone(), None);
            assert!(moved_mm(&before, rule) <= most, "{from:?}");
        }
    }

    #[test]
    fn the_side_is_written_where_it_is_not_away_from_the_edge() {
        let plan = plan(&job());
        let toward = |from, wished| match beside_rule(&plan, &display(), from, wished) {
            AcrossRule::Beside { toward, by, .. } => (toward, by > Length::default()),
            other => panic!("{other:?}"),
        };
        assert_eq!(toward(door("left"), None), (None, true), "left of a left edge");
        assert_eq!(toward(door("right"), None), (Some(Sideways::Left), true));
        assert_eq!(toward(door("right"), Some(Sideways::Right)), (None, false), "it is not there: no gap");
    }

    #[test]
    fn a_kind_begins_with_what_is_near() {
        let plan = plan(&job());
        let things = [Id::new("door-1")];
        let rule = |kind| across_rule(&plan, &display(), kind, &things);
        assert_eq!(rule(AcrossKind::OnWall), Some(AcrossRule::OnWall));
        assert_eq!(rule(AcrossKind::On), Some(AcrossRule::On(Id::new("door-1"))));
        assert_eq!(rule(AcrossKind::Between), Some(AcrossRule::Between(AcrossDatum::LeftEnd, door("left"))));
        assert!(matches!(rule(AcrossKind::Beside), Some(AcrossRule::Beside { .. })));
        assert_eq!(across_rule(&plan, &display(), AcrossKind::On, &[]), None);
        for kind in AcrossKind::ALL {
            assert_eq!(rule(kind).as_ref().map(AcrossKind::of), Some(kind));
        }
    }
}

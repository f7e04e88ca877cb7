//! What a piece can be placed by.

use strikeline_solver::job::option::Hanging;
use strikeline_solver::job::place::{AcrossDatum, UprightDatum};
use strikeline_solver::job::rule::{AcrossRule, UprightRule};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::{Id, Subject};

/// The features and other pieces that a piece can be placed by: none that is itself placed by the piece, however
/// many lie between.
#[must_use]
pub fn things(plan: &Plan, hangings: &[Hanging], piece: &Id) -> Vec<Id> {
    let mut leaning = vec![piece.clone()];
    loop {
        let leans = |hanging: &&Hanging| {
            !leaning.contains(&hanging.piece) && named(hanging).iter().any(|id| leaning.contains(id))
        };
        let Some(next) = hangings.iter().find(leans) else { break };
        leaning.push(next.piece.clone());
    }
    let features = plan.survey.features.iter().map(|feature| &feature.id);
    let pieces = plan.pieces.iter().map(|piece| &piece.id).filter(|id| !leaning.contains(id));
    features.chain(pieces).cloned().collect()
}

/// What a hanging's rules name.
fn named(hanging: &Hanging) -> Vec<Id> {
    let across = |datum: &AcrossDatum| match datum {
        AcrossDatum::Edge(edge) => Some(edge.id.clone()),
        AcrossDatum::LeftEnd | AcrossDatum::RightEnd => None,
    };
    let mut named: Vec<Id> = match &hanging.across {
        AcrossRule::OnWall => Vec::new(),
        AcrossRule::On(id) => vec![id.clone()],
        AcrossRule::Between(a, b) => [a, b].into_iter().filter_map(across).collect(),
        AcrossRule::Beside { from, .. } => across(from).into_iter().collect(),
    };
    named.extend(match &hanging.upright {
        UprightRule::Height { from: UprightDatum::Edge(edge), .. } => Some(edge.id.clone()),
        UprightRule::Height { .. } => None,
        UprightRule::Gap { of, .. } => Some(of.clone()),
        UprightRule::Aligned { with, .. } => Some(with.id.clone()),
    });
    named
}

/// What a sideways place can be measured from: the wall's ends, and either edge of each thing.
#[must_use]
pub fn across_datums(things: &[Id]) -> Vec<AcrossDatum> {
    let edges = things.iter().flat_map(|id| ["left", "right"].map(|part| AcrossDatum::Edge(id.part(part))));
    [AcrossDatum::LeftEnd, AcrossDatum::RightEnd].into_iter().chain(edges).collect()
}

/// What a height can be measured from: the floor, the control line where there is one, either edge of each thing.
#[must_use]
pub fn upright_datums(plan: &Plan, things: &[Id]) -> Vec<UprightDatum> {
    let line = plan.survey.control_line_y.map(|_| UprightDatum::ControlLine);
    let edges = things.iter().flat_map(|id| ["top", "bottom"].map(|part| UprightDatum::Edge(id.part(part))));
    std::iter::once(UprightDatum::Floor).chain(line).chain(edges).collect()
}

/// What a height can be level with: top, middle and bottom of each thing.
#[must_use]
pub fn level_edges(things: &[Id]) -> Vec<Subject> {
    things.iter().flat_map(|id| ["top", "centre", "bottom"].map(|part| id.part(part))).collect()
}

#[cfg(test)]
mod tests {
    use super::super::super::sample::{job, plan};
    use super::*;
    use strikeline_solver::job::rule::PieceHeight;

    #[test]
    fn nothing_is_placed_by_what_is_placed_by_it() {
        let job = job();
        let plan = {
            let mut plan = plan(&job);
            for id in ["bar-1", "shelf-1", "lamp-1"] {
                let mut piece = plan.pieces[0].clone();
                piece.id = Id::new(id);
                plan.pieces.push(piece);
            }
            plan
        };
        let display = job.walls[0].options[0].hangings[0].clone();
        let on = |piece: &str, across: AcrossRule, upright: UprightRule| Hanging {
            piece: Id::new(piece),
            across,
            upright,
            ..display.clone()
        };
        let level =
            |with: &str| UprightRule::Aligned { of: PieceHeight::Top, with: Id::new(with).part("top") };
        let hangings = [
            on("shelf-1", AcrossRule::OnWall, level("bar-1")),
            on("bar-1", AcrossRule::On(Id::new("display-1")), display.upright.clone()),
            on("lamp-1", AcrossRule::OnWall, display.upright.clone()),
            display.clone(),
        ];
        let offered = |piece: &str| {
            things(&plan, &hangings, &Id::new(piece))
                .iter()
                .map(|id| id.as_str().to_owned())
                .collect::<Vec<_>>()
        };
        assert_eq!(offered("display-1"), ["door-1", "lamp-1"]);
        assert_eq!(offered("bar-1"), ["door-1", "display-1", "lamp-1"]);
        assert_eq!(offered("lamp-1"), ["door-1", "display-1", "bar-1", "shelf-1"]);
    }
}

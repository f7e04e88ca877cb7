//! Where on the wall a subject is: what has to be seen when it is chosen in a list.

use strikeline_solver::geometry::{Point, Rect, Span};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::{Id, Subject};

/// The rectangle that a subject takes on the wall, of no size for a single place. `None` for what has no place.
///
/// A part that has no place of its own is where the whole is; a mount and a hanging are where their piece is.
#[must_use]
pub fn whereabouts(plan: &Plan, subject: &Subject) -> Option<Rect> {
    if let Some(mark) = plan.marks.iter().find(|mark| mark.id == *subject) {
        let line = mark.line.map(|(from, to)| Rect::new(Span::new(from.x, to.x), Span::new(from.y, to.y)));
        if let Some(rect) = mark.outline.or(line).or_else(|| mark.place.map(spot)) {
            return Some(rect);
        }
    }
    let holes = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
    if let Some(hole) = holes.into_iter().find(|hole| hole.subject == *subject) {
        return Some(spot(hole.place));
    }
    thing(plan, &subject.id)
}

fn spot(place: Point) -> Rect {
    Rect::new(Span::new(place.x, place.x), Span::new(place.y, place.y))
}

/// The rectangle of a whole thing.
fn thing(plan: &Plan, id: &Id) -> Option<Rect> {
    let survey = &plan.survey;
    let is_its = |piece: &&strikeline_solver::plan::piece::PiecePlan| {
        piece.id == *id || piece.hanging == *id || piece.mount.as_ref().is_some_and(|mount| mount.id == *id)
    };
    if let Some(piece) = plan.pieces.iter().find(is_its) {
        return Some(piece.outline);
    }
    if let Some(hit) = survey.hits.iter().find(|hit| hit.id == *id) {
        let heights = hit.y.map_or(survey.outline.upright(), |y| Span::new(y, y));
        return Some(Rect::new(Span::new(hit.x, hit.x), heights));
    }
    let wall = (plan.wall == *id).then_some(survey.outline);
    super::edge::outline(plan, id).or(wall)
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;
    use strikeline_solver::units::Length;

    #[test]
    fn marks_holes_things_and_what_belongs_to_a_piece_are_found() {
        let plan = plan(&job());
        let of = |text: &str| whereabouts(&plan, &Subject::read(text).unwrap());
        let piece = plan.pieces[0].outline;
        for text in ["display-1", "mount-1", "hanging-1", "display-1.left"] {
            assert_eq!(of(text), Some(piece), "{text}");
        }
        let mount = plan.pieces[0].mount.as_ref().unwrap();
        assert_eq!(of("display-1.hole-2"), Some(spot(mount.holes[1].place)));
        assert_eq!(of("door-1.left"), Some(plan.survey.features[0].rect));
        assert_eq!(of("wall-1.left"), Some(plan.survey.outline));
        assert_eq!(of("hit-2").map(Rect::height).map(Length::mm), Some(0.0));
        assert_eq!(
            of("hit-1").map(Rect::height),
            Some(plan.survey.outline.height()),
            "its height was not noted"
        );
        let level = of("display-1.level_line").unwrap();
        assert!(level.width() > mount.plate.width() && level.height().mm().abs() < 1e-9);
        assert_eq!(of("nothing-7"), None);
    }
}

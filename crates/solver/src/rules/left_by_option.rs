//! What was struck, drilled or cut for another option, or for a piece that hangs here no more, is there still: where
//! nothing covers it, it is rubbed out or patched.

use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::Point;
use crate::job::Job;
use crate::job::fact::FactState;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::fact::PlacedFact;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let covered = |place: Point| plan.pieces.iter().any(|piece| piece.outline.holds(place));
    // What is told at its mark is told there.
    let is_marked = |fact: &PlacedFact| fact.is_own && plan.marks.iter().any(|mark| mark.id == fact.mark);
    let left = plan.facts.iter().filter(|fact| !is_marked(fact) && fact.state != FactState::Done);
    let told = left.filter_map(|fact| {
        let place = fact.place?;
        let shows = !covered(place) || fact.right_end.is_some_and(|end| !covered(end));
        let is_open = fact.state != FactState::Struck;
        // A pencil line that a piece covers needs nothing.
        (shows || is_open).then(|| Finding {
            level: if shows { Level::Caution } else { Level::Note },
            subject: plan.wall.whole(),
            what: What::LeftByOption {
                mark: fact.mark.clone(),
                is_own: fact.is_own,
                state: fact.state,
                place,
                shows,
            },
            mend: Mend::OnSite,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::subject::Id;

    /// What was done at a mark of a piece, at such a place.
    fn fact(piece: &str, part: &str, state: FactState, x: f64, is_own: bool) -> PlacedFact {
        PlacedFact {
            id: Id::new("fact-1"),
            mark: Id::new(piece).part(part),
            option: Some(Id::new("option-9")),
            is_own,
            state,
            place: Some(Point::new(mm(x), mm(1500.0))),
            right_end: None,
            fastener: None,
            size: None,
        }
    }

    fn left(facts: Vec<PlacedFact>) -> Vec<Level> {
        let mut room = Sample::good();
        room.plan.facts = facts;
        room.told(check).into_iter().map(|(level, _, _)| level).collect()
    }

    #[test]
    fn what_another_option_left_is_told_as_it_shows() {
        let left = |state, x, is_own| left(vec![fact("display-1", "hole-1", state, x, is_own)]);
        // The display covers 1400 to 2600.
        assert_eq!(left(FactState::Drilled, 2000.0, false), [Level::Note]);
        assert_eq!(left(FactState::Drilled, 300.0, false), [Level::Caution]);
        assert_eq!(left(FactState::Struck, 300.0, false), [Level::Caution]);
        assert_eq!(left(FactState::Struck, 2000.0, false), []);
        assert_eq!(left(FactState::Done, 300.0, false), []);
        assert_eq!(left(FactState::Drilled, 300.0, true), []);
    }

    #[test]
    fn what_was_done_for_a_piece_that_hangs_here_no_more_is_told() {
        assert_eq!(left(vec![fact("shelf-9", "hole-1", FactState::Drilled, 300.0, true)]), [Level::Caution]);
        assert_eq!(left(vec![fact("shelf-9", "hole-1", FactState::Drilled, 2000.0, true)]), [Level::Note]);
        assert_eq!(left(vec![fact("shelf-9", "entry", FactState::Cut, 300.0, true)]), [Level::Caution]);
    }

    #[test]
    fn a_line_shows_that_is_covered_at_one_end_alone() {
        let mut line = fact("display-1", "level_line", FactState::Struck, 2000.0, false);
        line.right_end = Some(Point::new(mm(2500.0), mm(1500.0)));
        assert_eq!(left(vec![line.clone()]), []);
        line.right_end = Some(Point::new(mm(2700.0), mm(1500.0)));
        assert_eq!(left(vec![line]), [Level::Caution]);
    }
}

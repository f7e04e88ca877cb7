//! What was struck, drilled or cut for another option is there in this one too: where nothing covers it, it is rubbed
//! out or patched.

use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::Point;
use crate::job::Job;
use crate::job::fact::FactState;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let covered = |place: Point| plan.pieces.iter().any(|piece| piece.outline.holds(place));
    let left = plan.facts.iter().filter(|fact| !fact.is_own && fact.state != FactState::Done);
    let told = left.filter_map(|fact| {
        let place = fact.place?;
        let shows = !covered(place);
        let is_open = fact.state != FactState::Struck;
        // A pencil line that a piece covers needs nothing.
        (shows || is_open).then(|| Finding {
            level: if shows { Level::Caution } else { Level::Note },
            subject: plan.wall.whole(),
            what: What::LeftByOption { mark: fact.mark.clone(), state: fact.state, place, shows },
            mend: Mend::OnSite,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::plan::fact::PlacedFact;
    use crate::subject::Id;

    #[test]
    fn what_another_option_left_is_told_as_it_shows() {
        let mut room = Sample::good();
        let mut left = |state: FactState, x: f64, is_own: bool| {
            room.plan.facts = vec![PlacedFact {
                id: Id::new("fact-1"),
                mark: Id::new("display-1").part("hole-1"),
                option: Some(Id::new("option-9")),
                is_own,
                state,
                place: Some(Point::new(mm(x), mm(1500.0))),
                right_end: None,
                fastener: None,
            }];
            room.told(check).into_iter().map(|(level, _, _)| level).collect::<Vec<_>>()
        };
        // The display covers 1400 to 2600.
        assert_eq!(left(FactState::Drilled, 2000.0, false), [Level::Note]);
        assert_eq!(left(FactState::Drilled, 300.0, false), [Level::Caution]);
        assert_eq!(left(FactState::Struck, 300.0, false), [Level::Caution]);
        assert_eq!(left(FactState::Struck, 2000.0, false), []);
        assert_eq!(left(FactState::Done, 300.0, false), []);
        assert_eq!(left(FactState::Drilled, 300.0, true), []);
    }
}

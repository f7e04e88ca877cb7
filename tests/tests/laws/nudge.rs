//! On a wall without hits a nudge moves all of a piece's marks by as much.

use super::room::{plan, rooms_without_hits};
use proptest::prelude::*;
use strikeline_solver::job::option::Nudge;
use strikeline_solver::plan::mark::MarkWhat;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

proptest! {
    #![proptest_config(super::config())]

    #[test]
    fn a_nudge_moves_every_mark_by_as_much(
        room in rooms_without_hits(), right in -40.0..40.0_f64, up in -40.0..40.0_f64,
    ) {
        let mm = |value: f64| Length::millimetres(value).quantised();
        let mut job = room.job();
        job.walls[0].options[0].hangings[0].nudge = Nudge::default();
        let before = plan(&job);
        job.walls[0].options[0].hangings[0].nudge = Nudge { right: Offset(mm(right)), up: Offset(mm(up)) };
        let after = plan(&job);
        for mark in before.marks.iter().filter(|mark| mark.what != MarkWhat::Help) {
            let Some(place) = mark.place else { continue };
            let Some(moved) = after.marks.iter().find(|other| other.id == mark.id).and_then(|other| other.place)
            else {
                // A hole moved over an opening or off the wall is not to be drilled.
                prop_assert!(matches!(mark.what, MarkWhat::Hole { .. }), "{}", mark.id);
                continue;
            };
            prop_assert!((moved.x - place.x - mm(right)).mm().abs() < 1e-5, "{}", mark.id);
            prop_assert!((moved.y - place.y - mm(up)).mm().abs() < 1e-5, "{}", mark.id);
        }
    }
}

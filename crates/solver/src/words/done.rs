//! What was done at the marks, in words: at one mark, and the short list of what has to follow on the wall.

use super::mark_name::in_words;
use super::phrase::{capital, list, sentence};
use super::reading::readings;
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkState, MarkWhat};
use crate::subject::Subject;

/// What was done at a mark, in a word or two; `None` where nothing was yet.
#[must_use]
pub fn state(state: MarkState) -> Option<&'static str> {
    match state {
        MarkState::ToDo => None,
        MarkState::Done => Some("Done"),
        MarkState::Struck => Some("Struck"),
        MarkState::Drilled => Some("Drilled"),
        MarkState::Cut => Some("Cut"),
        MarkState::Stripped => Some("Stripped"),
    }
}

/// What was done at a mark, and what has to follow there: sentences; empty where nothing was done.
pub(super) fn at_mark(plan: &Plan, mark: &Mark) -> Vec<String> {
    let Some(state) = state(mark.state) else { return Vec::new() };
    let mut told = vec![format!("{state}.")];
    told.extend(follows(plan, mark).map(|(_, clause)| sentence(&clause)));
    told
}

/// What kind of thing has to follow where something was done and is not good any more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FollowKind {
    /// A line or tick is rubbed out for good.
    RubOut,
    /// Tape is moved.
    Move,
    /// A line is rubbed out and struck anew.
    StrikeAnew,
    /// A hole or an opening is not of use any more.
    MakeGood,
}

/// What has to follow on the wall.
#[derive(Clone, Debug, PartialEq)]
pub struct Follow {
    /// What kind of thing, and at which mark; `None` for what is still good, which is told in one.
    pub asked: Option<(FollowKind, Subject)>,
    /// A sentence.
    pub text: String,
}

/// The short list of what has to follow on the wall after the plan was made anew: what to rub out, move, strike anew or
/// make good, and last what is still good. Empty where nothing was done yet.
#[must_use]
pub fn follow_up(plan: &Plan) -> Vec<Follow> {
    let is_done = |mark: &&Mark| !matches!(mark.state, MarkState::ToDo | MarkState::Done);
    let (mut told, mut good) = (Vec::new(), Vec::new());
    for mark in plan.marks.iter().filter(is_done) {
        match follows(plan, mark) {
            Some((kind, clause)) => {
                told.push(Follow { asked: Some((kind, mark.id.clone())), text: sentence(&clause) });
            }
            None => good.push(in_words(plan, mark)),
        }
    }
    if !good.is_empty() {
        let text = if told.is_empty() {
            format!("Nothing to rub out or strike anew. Still good: {}.", list(&good))
        } else {
            format!("Still good: {}.", list(&good))
        };
        told.push(Follow { asked: None, text });
    }
    told
}

/// What has to follow where something was done; `None` where it is still good.
fn follows(plan: &Plan, mark: &Mark) -> Option<(FollowKind, String)> {
    let name = in_words(plan, mark);
    let fits = mark.is_needed && mark.planned.is_none();
    match (mark.state, &mark.planned) {
        (MarkState::ToDo | MarkState::Done, _) => None,
        (MarkState::Struck | MarkState::Drilled | MarkState::Cut, _) if fits => None,
        (MarkState::Stripped, _) => {
            Some((FollowKind::MakeGood, format!("{name} is stripped: leave it empty; another hole is found")))
        }
        (MarkState::Struck, None) => Some((FollowKind::RubOut, format!("rub out {name}"))),
        (MarkState::Struck, Some(planned)) => {
            let anew =
                Mark { readings: planned.readings.clone(), place: Some(planned.place), ..mark.clone() };
            let found = readings(plan, &anew).join(" ");
            let (kind, what) = if matches!(mark.what, MarkWhat::Corner { .. }) {
                (FollowKind::Move, format!("move the tape of {name}"))
            } else {
                (FollowKind::StrikeAnew, format!("rub out {name} and strike it anew"))
            };
            let text = if found.is_empty() { what } else { format!("{what}. {found}") };
            // The readings end in a full stop of their own.
            Some((kind, text.trim_end_matches('.').to_owned()))
        }
        (MarkState::Drilled, _) => Some((
            FollowKind::MakeGood,
            if mark.is_needed {
                format!("{name} does not stand under the plate's own: leave it empty and use another")
            } else {
                format!("{name} takes no fastener now: leave it, or fill it where it shows")
            },
        )),
        // Where cables would rather have it is told as a finding where it matters; it stays.
        (MarkState::Cut, _) => {
            (!mark.is_needed).then(|| (FollowKind::MakeGood, format!("close and patch {name}")))
        }
    }
}

/// What is asked of a hand, in two words, as the heading of an entry of the short list.
#[must_use]
pub fn follow_kind(kind: FollowKind) -> String {
    capital(match kind {
        FollowKind::RubOut => "rub out",
        FollowKind::Move => "move",
        FollowKind::StrikeAnew => "strike anew",
        FollowKind::MakeGood => "make good",
    })
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::geometry::Point;
    use crate::plan::mark::Planned;

    fn plan_with(id: &str, state: MarkState, change: impl FnOnce(&mut Mark)) -> Plan {
        let mut plan = sample::plan();
        let mark = plan.marks.iter_mut().find(|mark| mark.id.to_string() == id).unwrap();
        mark.state = state;
        change(mark);
        plan
    }

    fn only(plan: &Plan) -> (Option<FollowKind>, String) {
        let told = follow_up(plan);
        assert_eq!(told.len(), 1, "{told:?}");
        well_told(&told[0].text);
        (told[0].asked.as_ref().map(|(kind, _)| *kind), told[0].text.clone())
    }

    #[test]
    fn of_a_stripped_hole_nothing_is_asked_any_more() {
        let plan = plan_with("display-1.hole-2", MarkState::Stripped, |mark| mark.is_needed = false);
        let mark = plan.marks.iter().find(|mark| mark.state == MarkState::Stripped).unwrap();
        let told = super::super::mark(&plan, mark);
        assert!(told.starts_with("Stripped. Hole 2 is stripped: leave it empty"), "{told}");
        assert!(!told.contains("trike it"), "{told}");
    }

    #[test]
    fn with_nothing_done_nothing_follows() {
        assert_eq!(follow_up(&sample::plan()), []);
    }

    #[test]
    fn what_fits_is_said_to_be_good_plainly() {
        let plan = plan_with("display-1.level_line", MarkState::Struck, |_| ());
        let good = "Nothing to rub out or strike anew. Still good: the level line.".to_owned();
        assert_eq!(only(&plan), (None, good));
    }

    #[test]
    fn what_does_not_fit_says_what_the_hand_does_and_by_which_reading() {
        let elsewhere = |mark: &mut Mark| {
            let place = Point::new(inches("40"), inches("60"));
            mark.planned = Some(Planned { place, line: None, readings: mark.readings.clone() });
        };
        let (kind, text) = only(&plan_with("display-1.level_line", MarkState::Struck, elsewhere));
        assert_eq!(kind, Some(FollowKind::StrikeAnew));
        assert!(text.starts_with("Rub out the level line and strike it anew. "), "{text}");
        assert!(text.len() > 50, "with its readings: {text}");
        let (kind, _) = only(&plan_with("display-1.corner_top_left", MarkState::Struck, elsewhere));
        assert_eq!(kind, Some(FollowKind::Move));
        let gone = |mark: &mut Mark| mark.is_needed = false;
        let (kind, text) = only(&plan_with("display-1.piece_centre", MarkState::Struck, gone));
        assert_eq!((kind, text.starts_with("Rub out")), (Some(FollowKind::RubOut), true));
        for (state, change) in [
            (MarkState::Stripped, gone as fn(&mut Mark)),
            (MarkState::Drilled, gone),
            (MarkState::Drilled, |mark: &mut Mark| {
                mark.planned = Some(Planned { place: Point::default(), line: None, readings: Vec::new() });
            }),
            (MarkState::Cut, gone),
        ] {
            let (kind, _) = only(&plan_with("display-1.hole-2", state, change));
            assert_eq!(kind, Some(FollowKind::MakeGood));
        }
    }
}

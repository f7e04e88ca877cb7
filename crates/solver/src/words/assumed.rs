//! What was assumed, and what is to be measured in its place.

use super::phrase::{list, sentence};
use super::things::{piece_words, thing, whole};
use crate::job::mount::UsualPlate;
use crate::plan::mark::{Mark, Stage};
use crate::plan::{Assumed, AssumedWhat, Next, Plan};
use crate::units::Length;

/// How many things to measure are named with one mark: more are not taken in at a glance.
const MOST_NAMED: usize = 3;

/// What was assumed, and where marks hang on it, that it is to be measured first.
#[must_use]
pub fn assumed(plan: &Plan, assumed: &Assumed) -> String {
    let lacking = lacking(plan, assumed);
    let mut told = match taken(plan, &assumed.what) {
        Some(taken) => sentence(&format!("{lacking} is not given: {taken} assumed")),
        None => sentence(&format!("{lacking} is not given and was assumed")),
    };
    if assumed.moves_marks {
        told.push_str(" Marks hang on it: do not strike before it is measured.");
    }
    told
}

/// Whether what the hand strikes first is settled: the corners, the level line and the centre line.
///
/// Holes may still wait for a plate that was not measured; the sentence says so.
#[must_use]
pub fn settled(plan: &Plan) -> String {
    let is_first = |mark: &&Mark| matches!(mark.stage, Stage::Agree | Stage::Level);
    let is_settled = plan.marks.iter().any(|mark| is_first(&mark))
        && plan.marks.iter().filter(is_first).all(|mark| !mark.assumed);
    let waiting = plan.assumed.iter().filter(|assumed| assumed.moves_marks).count();
    match (is_settled, waiting) {
        (true, _) if matches!(plan.next, Some(Next::Mend(_))) => {
            "The set of marks is complete, but a finding stops the job: see it first.".to_owned()
        }
        (true, 0) if plan.marks.iter().all(|mark| !mark.assumed) => {
            "The set of marks is complete: no mark hangs on anything assumed.".to_owned()
        }
        (true, _) => {
            "Corners, level line and centre line are complete. What hangs on assumed values is not to be struck yet."
                .to_owned()
        }
        (false, 0) => "There is nothing to strike yet.".to_owned(),
        (false, 1) => "One value is still assumed: marks that hang on it are not to be struck yet.".to_owned(),
        (false, _) => {
            format!("{waiting} values are still assumed: marks that hang on them are not to be struck yet.")
        }
    }
}

/// What to do about one assumed value: `measure the display's width`.
pub(super) fn to_do(plan: &Plan, assumed: &Assumed) -> String {
    match assumed.what {
        AssumedWhat::Option => "settle where the piece goes".to_owned(),
        AssumedWhat::LeftEnd | AssumedWhat::RightEnd => format!("see {}", lacking(plan, assumed)),
        _ => format!("measure {}", lacking(plan, assumed)),
    }
}

/// The sentence of an assumed mark that says what to measure.
pub(super) fn first_to_measure(plan: &Plan) -> String {
    let moving = plan.assumed.iter().filter(|assumed| assumed.moves_marks);
    let mut named: Vec<String> = moving.map(|assumed| to_do(plan, assumed)).collect();
    if named.is_empty() {
        return "Measure first what it hangs on.".to_owned();
    }
    let more = named.len() > MOST_NAMED;
    named.truncate(MOST_NAMED);
    if more {
        named.push("what else is assumed".to_owned());
    }
    sentence(&list(&named))
}

/// The value that is lacking, in the middle of a sentence.
fn lacking(plan: &Plan, assumed: &Assumed) -> String {
    let own = |part: &str| match whole(plan, &assumed.subject.id) {
        Some(called) => called.own(part),
        None => format!("the {part} of \"{}\"", assumed.subject),
    };
    match assumed.what {
        AssumedWhat::WallWidth(_) => "the wall's width".to_owned(),
        AssumedWhat::WallHeight(_) => "the wall's height".to_owned(),
        AssumedWhat::LeftEnd => "the kind of the wall's left end".to_owned(),
        AssumedWhat::RightEnd => "the kind of the wall's right end".to_owned(),
        AssumedWhat::Width(_) => own("width"),
        AssumedWhat::Height(_) => own("height"),
        AssumedWhat::Drop(_) => {
            format!("the drop from the top of {} to its plate's", piece_words(plan, &assumed.subject))
        }
        AssumedWhat::PlateSize(..) => {
            format!("the size of {}", super::things::piece_part(plan, &assumed.subject, "plate"))
        }
        AssumedWhat::Plate(_) => super::things::piece_part(plan, &assumed.subject, "plate"),
        AssumedWhat::Thickness(_) => "the thickness in front of the framing".to_owned(),
        AssumedWhat::Proud(_) => format!("how far {} stands proud", thing(plan, &assumed.subject)),
        AssumedWhat::Option => "where the piece goes".to_owned(),
        AssumedWhat::PlaceAcross => format!("the place of {} along the wall", thing(plan, &assumed.subject)),
        AssumedWhat::PlaceUpright => {
            format!("the height of {} above the floor", thing(plan, &assumed.subject))
        }
    }
}

/// What was taken in its place, as words that `assumed` can follow; `None` where it has no words of its own.
fn taken(plan: &Plan, what: &AssumedWhat) -> Option<String> {
    let is = |length: Length| format!("{} is", plan.style.print(length));
    match *what {
        AssumedWhat::WallWidth(length)
        | AssumedWhat::WallHeight(length)
        | AssumedWhat::Width(length)
        | AssumedWhat::Height(length)
        | AssumedWhat::Drop(length)
        | AssumedWhat::Thickness(length)
        | AssumedWhat::Proud(length) => Some(is(length)),
        AssumedWhat::PlateSize(width, height) => {
            Some(format!("a strip {} wide and {} high is", plan.style.print(width), plan.style.print(height)))
        }
        AssumedWhat::Plate(like) => Some(format!("{} is", usual_plate(like))),
        AssumedWhat::LeftEnd | AssumedWhat::RightEnd => Some("an inside corner is".to_owned()),
        AssumedWhat::Option => {
            Some("the first piece on the first mount, centred on the wall at a usual height, is".to_owned())
        }
        AssumedWhat::PlaceAcross | AssumedWhat::PlaceUpright => None,
    }
}

/// What a usual plate is called, within a sentence.
#[must_use]
pub const fn usual_plate(like: UsualPlate) -> &'static str {
    match like {
        UsualPlate::NarrowRail => "a narrow rail",
        UsualPlate::TwoRails => "a plate of two rails",
        UsualPlate::ArmOnOneStud => "an arm's plate for one stud",
        UsualPlate::ArmOnTwoStuds => "an arm's plate for two studs",
        UsualPlate::PullDown => "a pull-down mount's plate",
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::subject::Subject;

    fn all() -> Vec<(&'static str, AssumedWhat)> {
        let length = inches("3 1/2");
        vec![
            ("wall-1", AssumedWhat::WallWidth(length)),
            ("wall-1", AssumedWhat::WallHeight(length)),
            ("wall-1.left", AssumedWhat::LeftEnd),
            ("wall-1.right", AssumedWhat::RightEnd),
            ("display-1", AssumedWhat::Width(length)),
            ("display-1", AssumedWhat::Height(length)),
            ("mount-1", AssumedWhat::Drop(length)),
            ("mount-1", AssumedWhat::PlateSize(length, length)),
            ("mount-1", AssumedWhat::Plate(UsualPlate::TwoRails)),
            ("wall-1", AssumedWhat::Thickness(length)),
            ("window-1", AssumedWhat::Proud(length)),
            ("wall-1", AssumedWhat::Option),
            ("pipe-1", AssumedWhat::PlaceAcross),
            ("door-1", AssumedWhat::PlaceUpright),
        ]
    }

    #[test]
    fn every_assumption_is_well_told() {
        let plan = sample::plan();
        for (subject, what) in all() {
            for moves_marks in [false, true] {
                let value = Assumed { subject: Subject::read(subject).unwrap(), what, moves_marks };
                let text = assumed(&plan, &value);
                well_told(&text);
                assert_eq!(text.contains("do not strike"), moves_marks, "{text}");
                well_told(&sentence(&to_do(&plan, &value)));
            }
        }
    }

    #[test]
    fn the_marks_are_settled_once_none_of_the_first_hangs_on_what_is_assumed() {
        let mut plan = sample::plan();
        plan.next = None;
        let moving = Assumed { moves_marks: true, ..sample::assumed_width() };
        for (assumed, of_first, said) in [
            (vec![moving.clone(), moving.clone()], true, "2 values are still assumed"),
            (vec![moving.clone()], true, "One value is still assumed"),
            (vec![moving], false, "Corners, level line and centre line are complete."),
            (Vec::new(), false, "The set of marks is complete: no mark"),
        ] {
            plan.assumed = assumed;
            plan.marks.iter_mut().for_each(|mark| mark.assumed = of_first);
            let text = settled(&plan);
            well_told(&text);
            assert!(text.starts_with(said), "{text}");
        }
        plan.next = Some(Next::Mend(0));
        assert!(settled(&plan).ends_with("see it first."));
        plan.marks.clear();
        assert_eq!(settled(&plan), "There is nothing to strike yet.");
    }

    #[test]
    fn an_assumed_width_reads_as_spoken() {
        assert_eq!(
            assumed(&sample::plan(), &sample::assumed_width()),
            "The display's width is not given: 40\" is assumed. Marks hang on it: do not strike before it is measured."
        );
    }

    #[test]
    fn at_most_three_are_named_with_a_mark() {
        let mut plan = sample::plan();
        assert_eq!(first_to_measure(&plan), "Measure first what it hangs on.");
        let moving = |(subject, what): (&str, AssumedWhat)| Assumed {
            subject: Subject::read(subject).unwrap(),
            what,
            moves_marks: true,
        };
        plan.assumed = all().into_iter().map(moving).collect();
        let text = first_to_measure(&plan);
        assert!(text.ends_with("see the kind of the wall's left end and what else is assumed."), "{text}");
    }
}

//! What a finding about something struck, drilled or cut says.

use super::super::phrase::{amount, edge, list};
use super::super::things::{above_floor, along, piece_words, thing};
use super::called;
use crate::finding::{CutMeets, Finding, What};
use crate::job::fact::FactState;
use crate::plan::Plan;
use crate::plan::piece::HeldBy;
use crate::units::Length;

/// The finding as a clause, without its capital and full stop; empty for any other.
pub(super) fn clause(plan: &Plan, finding: &Finding) -> String {
    let subject = &finding.subject;
    match &finding.what {
        What::HeldAway { by, right, up } => {
            let free = match by {
                HeldBy::Lines => "agree to that, or rub the lines out and take back that they were struck",
                HeldBy::Holes => "agree to that, or drill anew and take back that the holes were drilled",
            };
            let what = match by {
                HeldBy::Lines => "the lines as they are struck hold",
                HeldBy::Holes => "the holes as they are drilled hold",
            };
            format!(
                "{what} {} {} where it was wished; {free}",
                piece_words(plan, subject),
                off(plan, *right, *up)
            )
        }
        What::HoleApart { right, up } => format!(
            "{} is drilled {} where the plate, held by all its drilled holes, has it: no fastener goes straight through; \
             leave it empty and use another hole, never bend one in",
            thing(plan, subject),
            off(plan, *right, *up)
        ),
        What::StruckElsewhere { right, up, right_end } => {
            let none = Length::default();
            let is_off = |by: Length| plan.style.steps(by.abs()) != 0;
            let left = off(plan, *right, *up);
            let how = match right_end {
                None => left,
                Some(end) if !is_off(*right) && !is_off(*up) => {
                    format!("with its right end {}", off(plan, none, *end))
                }
                Some(end) if !is_off(*end) => format!("with its left end {left}"),
                Some(end) => format!("{left}, and with its right end {},", off(plan, none, *end)),
            };
            format!(
                "{} is struck {how} where the plan now has it: rub it out and strike it anew",
                thing(plan, subject)
            )
        }
        What::CutOpening { meets } => cut(plan, finding, meets),
        What::MovedSinceAgreed { right, up } => format!(
            "{} hangs {} where the customer agreed to it: ask again, or move it back",
            piece_words(plan, subject),
            off(plan, *right, *up)
        ),
        What::LeftByOption { mark, is_own, state, place, shows } => {
            let (what, then) = match (state, shows) {
                (FactState::Cut, true) => ("an opening was cut", "close and patch it"),
                (FactState::Cut, false) => ("an opening was cut", "it is covered: use it or close it"),
                (FactState::Struck | FactState::Done, _) => ("a mark was struck", "rub it out"),
                (FactState::Drilled | FactState::Stripped, true) => ("a hole was drilled", "patch it"),
                (FactState::Drilled | FactState::Stripped, false) => {
                    ("a hole was drilled", "it is covered: no fastener of this option goes beside it")
                }
            };
            let whose = if *is_own { "what hangs here no more" } else { "another option" };
            format!(
                "{what} for {whose} ({mark}), {}, {}: {then}",
                along(plan, place.x),
                above_floor(plan, *place)
            )
        }
        _ => String::new(),
    }
}

fn cut(plan: &Plan, finding: &Finding, meets: &CutMeets) -> String {
    let opening = thing(plan, &finding.subject);
    let piece = piece_words(plan, &finding.subject);
    match meets {
        CutMeets::Hidden(hidden) => {
            format!("{opening}, as it is cut, is on {}: stop and look", called(plan, hidden))
        }
        CutMeets::Stud => format!("{opening}, as it is cut, has a stud behind it: look on both sides of it"),
        CutMeets::Plate => {
            format!("{opening}, as it is cut, lies under a solid part of the plate of {piece}")
        }
        CutMeets::Shows { side, by } => format!(
            "{opening}, as it is cut, shows {} past the {} of {piece}: move it, or close and patch the opening",
            amount(plan, *by),
            edge(*side)
        ),
        CutMeets::OtherBay => format!(
            "{opening} is cut in another bay than the cables of {piece} want: lead them across behind {piece}, or cut \
             anew and close this one"
        ),
    }
}

/// `3/8" right of`, `1/4" above`, `3/8" right of and 1/4" below`.
pub(in crate::words) fn off(plan: &Plan, right: Length, up: Length) -> String {
    let none = Length::default();
    let told = |by: Length, more: &str, less: &str| {
        let counts = plan.style.steps(by.abs()) != 0;
        counts.then(|| format!("{} {}", amount(plan, by), if by > none { more } else { less }))
    };
    let parts: Vec<String> =
        [told(right, "right of", "left of"), told(up, "above", "below")].into_iter().flatten().collect();
    if parts.is_empty() { "a little off".to_owned() } else { list(&parts) }
}

#[cfg(test)]
mod tests {
    use super::super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::finding::{Level, Mend};
    use crate::geometry::{Direction, Point};
    use crate::subject::{Id, Subject};

    fn told(subject: &str, what: What) -> String {
        let subject = Subject::read(subject).unwrap();
        let finding = Finding { level: Level::Caution, subject, what, mend: Mend::OnSite };
        let text = super::super::finding(&sample::plan(), &finding);
        well_told(&text);
        text
    }

    #[test]
    fn what_is_done_and_does_not_fit_is_told_with_how_far_and_what_to_do() {
        let (right, up) = (inches("3/8"), inches("-1/4"));
        for by in [HeldBy::Lines, HeldBy::Holes] {
            let text = told("display-1", What::HeldAway { by, right, up });
            assert!(text.contains("3/8\" right of and 1/4\" below where it was wished"), "{text}");
        }
        let text = told("display-1", What::MovedSinceAgreed { right, up });
        assert!(
            text.contains("3/8\" right of and 1/4\" below where the customer agreed to it: ask"),
            "{text}"
        );
        let text = told("display-1.hole-2", What::HoleApart { right: inches("-3/16"), up: inches("0") });
        assert!(text.contains("is drilled 3/16\" left of where the plate"), "{text}");
        let text = told(
            "display-1.level_line",
            What::StruckElsewhere { right: inches("0"), up: inches("1/4"), right_end: None },
        );
        assert!(text.contains("struck 1/4\" above where the plan now has it: rub it out"), "{text}");
        for (up, right_end, said) in [
            ("0", "1/4", "struck with its right end 1/4\" above where"),
            ("1/4", "0", "struck with its left end 1/4\" above where"),
            ("1/4", "-1/2", "struck 1/4\" above, and with its right end 1/2\" below, where"),
        ] {
            let (up, right_end) = (inches(up), Some(inches(right_end)));
            let text =
                told("display-1.level_line", What::StruckElsewhere { right: inches("0"), up, right_end });
            assert!(text.contains(said), "{text}");
        }
    }

    #[test]
    fn an_opening_and_what_another_option_left() {
        for meets in [
            CutMeets::Stud,
            CutMeets::Plate,
            CutMeets::OtherBay,
            CutMeets::Hidden(Id::new("pipe-1")),
            CutMeets::Shows { side: Direction::Left, by: inches("1") },
        ] {
            told("display-1.entry", What::CutOpening { meets });
        }
        let mark = Id::new("display-1").part("hole-1");
        let place = Point::new(inches("40"), inches("60"));
        for (is_own, state, shows, said) in [
            (false, FactState::Cut, true, "close and patch it"),
            (false, FactState::Cut, false, "use it or close it"),
            (false, FactState::Struck, true, "rub it out"),
            (false, FactState::Drilled, true, "for another option"),
            (true, FactState::Drilled, true, "for what hangs here no more"),
            (false, FactState::Stripped, false, "beside it"),
        ] {
            let mark = mark.clone();
            let text = told("wall-1", What::LeftByOption { mark, is_own, state, place, shows });
            assert!(text.contains(said), "{text}");
        }
    }
}

//! The entries of a pull, each with what it makes and what is odd about it.

use crate::moves::one_pull::{EndCheck, Entry, OnePull, Part, Seen};
use strikeline_solver::tape::Style;
use strikeline_solver::units::Length;

/// A line of the list.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Line {
    pub(super) text: String,
    /// Whether it should be looked at again.
    pub(super) is_odd: bool,
}

/// A line an entry, in the order in which they were read.
pub(super) fn lines(pull: &OnePull, style: Style, end: Option<EndCheck>) -> Vec<Line> {
    let parts = pull.parts();
    let lines = pull.entries.iter().zip(&parts).enumerate().map(|(index, (entry, part))| {
        let shown = style.print(entry.by);
        let (made, is_odd) = made(pull, entry, *part, style, end);
        let is_late = pull.is_out_of_turn(index);
        let turn = if is_late { " Less than before: read it again." } else { "" };
        Line { text: format!("{shown}  {made}.{turn}"), is_odd: is_odd || is_late }
    });
    lines.collect()
}

fn made(pull: &OnePull, entry: &Entry, part: Part, style: Style, end: Option<EndCheck>) -> (String, bool) {
    let thing = match entry.seen {
        Seen::Window => "window",
        Seen::Door => "door",
        Seen::Outlet => "outlet",
        Seen::Switch => "switch",
        Seen::StudLeft => "stud's left edge",
        Seen::StudRight => "stud's right edge",
        Seen::StudCentre => "stud's centre",
        Seen::End => "wall's end",
    };
    match part {
        Part::NearEdge(None) => (format!("{thing}: near edge, its far edge is not read yet"), false),
        Part::NearEdge(Some(_)) => (format!("{thing}: near edge"), false),
        Part::FarEdge(near) => {
            let width = pull.entries.get(near).map(|near| entry.by - near.by).unwrap_or_default();
            (format!("{thing}: far edge, {} wide with its trim", style.print(width)), false)
        }
        Part::Middle => (format!("{thing}: its middle"), false),
        Part::Hit => (thing.to_owned(), false),
        Part::End => at_end(thing, style, end),
    }
}

fn at_end(thing: &str, style: Style, end: Option<EndCheck>) -> (String, bool) {
    match end {
        Some(EndCheck::Sets) => (format!("{thing}: becomes the wall's width"), false),
        Some(EndCheck::Agrees) => (format!("{thing}: agrees with what was measured before"), false),
        Some(EndCheck::Differs(over)) => {
            let more = if over > Length::default() { "more" } else { "less" };
            let by = style.print(over.abs());
            (
                format!("{thing}: {by} {more} than measured before, which stays: measure one of them again"),
                true,
            )
        }
        Some(EndCheck::Alone) => {
            (format!("{thing}: nothing to hold it against, the wall's width is not given"), false)
        }
        None => (thing.to_owned(), false),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::job::place::AcrossDatum;
    use strikeline_solver::tape::{Graduation, read_length};
    use strikeline_solver::units::LengthUnit;

    #[test]
    fn each_entry_says_what_it_makes_and_what_is_odd() {
        let entry = |by, seen| Entry { by: read_length(by, LengthUnit::Inch).unwrap(), seen };
        let entries = vec![
            entry("10", Seen::Window),
            entry("42 1/2", Seen::Window),
            entry("40", Seen::StudCentre),
            entry("120", Seen::End),
        ];
        let pull = OnePull { entries, ..OnePull::from(AcrossDatum::LeftEnd) };
        let style = Style { graduation: Graduation::Sixteenth, feet_inches: false };
        let over = Some(EndCheck::Differs(-Length::inches(0.5).quantised()));
        let lines = lines(&pull, style, over);
        let texts: Vec<&str> = lines.iter().map(|line| line.text.as_str()).collect();
        assert_eq!(
            texts,
            [
                "10\"  window: near edge.",
                "42 1/2\"  window: far edge, 32 1/2\" wide with its trim.",
                "40\"  stud's centre. Less than before: read it again.",
                "120\"  wall's end: 1/2\" less than measured before, which stays: measure one of them again.",
            ]
        );
        assert_eq!(lines.iter().map(|line| line.is_odd).collect::<Vec<_>>(), [false, false, true, true]);
    }
}

//! The small parts that sentences are put together from: capitals, lists, counts, masses, directions.

use crate::geometry::Direction;
use crate::letters::composed;
use crate::plan::Plan;
use crate::subject::Id;
use crate::units::{Length, Mass, MassUnit};

/// The text with its first letter as a capital.
#[must_use]
pub fn capital(text: &str) -> String {
    let mut letters = text.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

/// A clause as a sentence: a capital first and a full stop last.
pub(super) fn sentence(clause: &str) -> String {
    format!("{}.", capital(clause))
}

/// `a`, `a and b`, `a, b and c`.
pub(super) fn list(parts: &[String]) -> String {
    match parts {
        [] => String::new(),
        [only] => only.clone(),
        [before @ .., last] => format!("{} and {last}", before.join(", ")),
    }
}

/// A name of the job on one line: whatever breaks a line counts as a space, and an accent that is typed apart is one
/// with its letter, since a typeface has the two as one.
pub(super) fn one_line(name: &str) -> String {
    let words: Vec<&str> =
        name.split(|c: char| c.is_whitespace() || c.is_control()).filter(|word| !word.is_empty()).collect();
    composed(&words.join(" "))
}

/// A name on one line, else the id.
pub(super) fn named(name: Option<&String>, id: &Id) -> String {
    let name = name.map(|name| one_line(name)).unwrap_or_default();
    if name.is_empty() { id.to_string() } else { name }
}

/// `no studs`, `one stud`, `two studs`, `14 studs`.
pub(super) fn count(number: usize, one: &str, many: &str) -> String {
    const SMALL: [&str; 7] = ["no", "one", "two", "three", "four", "five", "six"];
    let noun = if number == 1 { one } else { many };
    SMALL.get(number).map_or_else(|| format!("{number} {noun}"), |word| format!("{word} {noun}"))
}

/// A length without its sign; what rounds to nothing without being so is told as less than one graduation.
pub(super) fn amount(plan: &Plan, length: Length) -> String {
    let length = length.abs();
    if plan.style.steps(length) == 0 && length > Length::default() {
        format!("less than {}", plan.style.print_steps(1))
    } else {
        plan.style.print(length)
    }
}

/// A mass to a tenth of the unit it was given in.
pub(super) fn mass(mass: Mass) -> String {
    let (value, unit) = match mass.unit() {
        MassUnit::Kilogram => (mass.kg(), "kg"),
        MassUnit::Pound => (mass.lb(), "lb"),
    };
    let tenths = format!("{value:.1}");
    format!("{} {unit}", tenths.strip_suffix(".0").unwrap_or(&tenths))
}

/// Which way a tape is read.
pub(super) fn way(direction: Direction) -> &'static str {
    match direction {
        Direction::Left => "left",
        Direction::Right => "right",
        Direction::Up => "up",
        Direction::Down => "down",
    }
}

/// Where something is from a datum that it was read from that way.
pub(super) fn side_of(direction: Direction) -> &'static str {
    match direction {
        Direction::Left => "left of",
        Direction::Right => "right of",
        Direction::Up => "above",
        Direction::Down => "below",
    }
}

/// An edge of a piece or plate.
pub(super) fn edge(side: Direction) -> &'static str {
    match side {
        Direction::Left => "left edge",
        Direction::Right => "right edge",
        Direction::Up => "top",
        Direction::Down => "bottom",
    }
}

/// Where room is, seen from a piece.
pub(super) fn beside(side: Direction) -> &'static str {
    match side {
        Direction::Left => "on its left",
        Direction::Right => "on its right",
        Direction::Up => "above it",
        Direction::Down => "below it",
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample;
    use super::*;

    #[test]
    fn lists_and_counts_read_as_spoken() {
        let parts = |words: &[&str]| list(&words.iter().map(|word| (*word).to_owned()).collect::<Vec<_>>());
        assert_eq!(parts(&["a", "b", "c"]), "a, b and c");
        assert_eq!(parts(&["a", "b"]), "a and b");
        assert_eq!(count(0, "stud", "studs"), "no studs");
        assert_eq!(count(1, "stud", "studs"), "one stud");
        assert_eq!(count(14, "stud", "studs"), "14 studs");
    }

    #[test]
    fn a_name_stays_on_its_line() {
        assert_eq!(one_line(" Garden\n\tdoor\u{7} "), "Garden door");
    }

    #[test]
    fn masses_keep_their_unit_and_small_amounts_are_not_nothing() {
        assert_eq!(mass(Mass::pounds(66.0)), "66 lb");
        assert_eq!(mass(Mass::kilograms(30.25)), "30.2 kg");
        let plan = sample::plan();
        assert_eq!(amount(&plan, Length::inches(0.01)), "less than 1/16\"");
        assert_eq!(amount(&plan, Length::inches(-2.5)), "2 1/2\"");
    }
}

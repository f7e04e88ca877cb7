//! The sizes of fasteners that a maker's words name, against one of the kit.

use super::read::{Run, runs};
use crate::handbook::wood_screw;
use crate::tolerance::SAME_SIZE_IN;
use crate::units::Length;

/// What is thinner is read as a diameter, what is not as a length, in inches (chosen: what hangs displays is thinner).
const THICKEST_IN: f64 = 0.8;
/// What is longer is no fastener's length but how far studs are apart, and such (chosen).
const LONGEST_IN: f64 = 6.5;
/// A length without a unit is in inches up to this, else in millimetres (chosen).
const MOST_INCHES: f64 = 12.0;
/// Lengths so near are one, in inches (chosen: half of the least step that fasteners are made in).
const SAME_LENGTH_IN: f64 = 0.03;

/// After or before these a longer fastener will do.
const AT_LEAST: [&str; 5] = ["least", "minimum", "min", "longer", "more"];

/// The sizes named, in the order of the words: each with what it may be read as, in inches.
pub(super) struct Sizes {
    named: Vec<Vec<f64>>,
    at_least: bool,
}

impl Sizes {
    /// Of a text.
    pub(super) fn of(text: &str) -> Self {
        let runs = runs(text);
        let at_least = runs.iter().any(|run| AT_LEAST.contains(&run.text.as_str()));
        let named = (0..runs.len()).map(|at| sizes(&runs, at)).filter(|read| !read.is_empty());
        Self { named: named.collect(), at_least }
    }

    /// Whether any are.
    pub(super) fn are_named(&self) -> bool {
        !self.named.is_empty()
    }

    /// Whether a fastener is as thick as one of the diameters and as long as one of the lengths, where any are named.
    /// What may be read as either asks for none of them, and may be what is meant.
    pub(super) fn fit(&self, diameter: Length, length: Length) -> bool {
        let (thick_in, long_in) = (diameter.in_inches(), length.in_inches());
        let is_one = |is: &dyn Fn(f64) -> bool, fits: &dyn Fn(f64) -> bool| {
            let asks = self.named.iter().any(|read| read.iter().all(|size| is(*size)));
            !asks || self.named.iter().flatten().any(|size| is(*size) && fits(*size))
        };
        let is_thick = is_one(&|size| size < THICKEST_IN, &|size| (size - thick_in).abs() <= SAME_SIZE_IN);
        let is_long = is_one(&|size| (THICKEST_IN..=LONGEST_IN).contains(&size), &|size| {
            (size - long_in).abs() <= SAME_LENGTH_IN || self.at_least && long_in >= size
        });
        is_thick && is_long
    }
}

/// What a run of figures may be read as, in inches; nothing where it is no size.
fn sizes(runs: &[Run], at: usize) -> Vec<f64> {
    let Some(run) = runs.get(at) else { return Vec::new() };
    let text = |at: Option<usize>| at.and_then(|at| runs.get(at)).map_or("", |run| run.text.as_str());
    let before = text(at.checked_sub(1));
    let after = |more: usize| text(Some(at + more));
    // "M8", and "M8x60" in one run: its thread.
    let thread =
        run.text.strip_prefix('m').map(|size| size.split_once('x').map_or(size, |(thread, _)| thread));
    if let Some(metric) = thread.and_then(number) {
        return vec![inches(metric)];
    }
    let Some(value) = number(&run.text) else { return Vec::new() };
    if !run.is_broken() && (run.before == Some('#') || matches!(before, "no" | "nr" | "size")) {
        // One that the table does not have is named all the same, and no fastener is of it.
        let size = wood_screw::SIZES.iter().find(|row| f64::from(row.value.number) == value);
        return vec![size.map_or(0.0, |row| row.value.diameter_in)];
    }
    // A whole before a fraction is told with that: "2 3/4", "1-1/2".
    let is_fraction = |run: &Run| run.is_broken() && run.text.contains('/');
    if !run.is_broken() && runs.get(at + 1).is_some_and(is_fraction) {
        return Vec::new();
    }
    let whole = at.checked_sub(1).and_then(|at| runs.get(at)).filter(|run| !run.is_broken());
    let whole = whole.and_then(|run| number(&run.text)).filter(|_| run.is_broken() && run.text.contains('/'));
    // "3/8 x 2 1/2", "3-1/2": one size for sure; by itself it may be two of the half.
    let before_whole = || at.checked_sub(2).and_then(|at| runs.get(at)).is_some_and(|run| run.text == "x");
    let is_joined = at.checked_sub(1).and_then(|at| runs.get(at)).is_some_and(|run| run.after == Some('-'));
    let is_one = whole.is_some() && (is_joined || before_whole());
    let both = |scale: f64| {
        std::iter::once(value)
            .filter(|_| !is_one)
            .chain(whole.map(|whole| whole + value))
            .map(|size| size * scale)
            .collect()
    };
    let is_inches = run.after.is_some_and(|sign| matches!(sign, '"' | '\u{2033}' | '\u{201d}'));
    match after(1) {
        _ if is_inches => both(1.0),
        "in" | "inch" | "inches" => both(1.0),
        "mm" => both(inches(1.0)),
        "cm" => both(inches(10.0)),
        "ft" | "feet" | "foot" | "m" | "mil" | "mils" | "ga" | "gauge" | "gage" => Vec::new(),
        _ if run.is_broken() => both(1.0),
        _ if before == "x" && value > MOST_INCHES => vec![inches(value)],
        _ if before == "x" => vec![value],
        // "8 x 60 mm".
        "x" if after(3) == "mm" => vec![inches(value)],
        _ => Vec::new(),
    }
}

fn inches(mm: f64) -> f64 {
    Length::millimetres(mm).in_inches()
}

/// A number as it is written: `3`, `0.25`, `5/16`, one sign for a half or a quarter.
fn number(text: &str) -> Option<f64> {
    match text {
        "\u{bd}" => return Some(0.5),
        "\u{bc}" => return Some(0.25),
        "\u{be}" => return Some(0.75),
        _ => {}
    }
    let value = match text.split_once('/') {
        Some((over, under)) => over.parse::<f64>().ok()? / under.parse::<f64>().ok()?,
        None => text.parse().ok()?,
    };
    (value.is_finite() && value > 0.0).then_some(value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_fastener_is_of_a_size_that_is_named() {
        let (lag, thicker) = ((0.3125, 3.0), (0.375, 3.0));
        for (text, (diameter, length), expected) in [
            ("", lag, true),
            ("lag screws, two studs 16 in apart", lag, true),
            ("lag screws 5/16 in", lag, true),
            ("lag screws 3/8 x 3", lag, false),
            ("lag screws 3/8 x 3", thicker, true),
            ("lag screws 3/8 x 2 1/2 in", thicker, false),
            ("lag screws 5/16 x 2 3/4 in, two in each of two studs", (0.3125, 2.75), true),
            ("5/16\" lags, 2-1/2\" minimum", lag, true),
            ("5/16\" lags, 3-1/2\" minimum", lag, false),
            ("lags at least 2 1/2 in long", lag, true),
            ("four wood screws #14 x 3", (0.242, 3.0), true),
            ("four wood screws #14 x 3", (0.25, 3.0), false),
            ("No. 10 wood screws", (0.19, 2.0), true),
            ("No. 10 wood screws", (0.242, 2.0), false),
            ("#5 wood screws", (0.19, 2.0), false),
            ("lags, size 5/16", lag, true),
            ("lags, size 3/8", lag, false),
            ("M8x60 lag screws", (8.0 / 25.4, 60.0 / 25.4), true),
            ("M8x60 lag screws", lag, false),
            ("M8 x 60 lag screws", (8.0 / 25.4, 60.0 / 25.4), true),
            ("M8 x 60 lag screws", lag, false),
            ("8 x 60 mm lag screws", (8.0 / 25.4, 60.0 / 25.4), true),
            ("8 x 60 mm lag screws", (6.0 / 25.4, 60.0 / 25.4), false),
            ("\u{bd} in lags", (0.5, 3.0), true),
            ("5/0 and 0/0 lags", lag, true),
        ] {
            let fits = Sizes::of(text).fit(Length::inches(diameter), Length::inches(length));
            assert_eq!(fits, expected, "{text}");
        }
    }
}

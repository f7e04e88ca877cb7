//! A maker's words taken apart: which of its numbers count things, and which are sizes.

/// Numbers as they are spoken, from one on.
const NUMBERS: [&str; 12] =
    ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve"];

/// A larger figure is a size, not a count (chosen).
const MOST_ASKED: usize = 24;

/// What makes the number before it a size.
const UNITS: [&str; 14] =
    ["in", "inch", "inches", "mm", "cm", "m", "ft", "feet", "foot", "mil", "mils", "ga", "gauge", "gage"];

/// What makes the number after it a size.
const SIZED: [&str; 6] = ["no", "nr", "size", "gauge", "gage", "ga"];

/// After these a full stop ends no sentence.
const SHORTENED: [&str; 9] = ["no", "nr", "in", "ft", "min", "max", "dia", "approx", "qty"];

/// What follows an `in` that is no inch: "4 in each stud".
const INTO: [&str; 16] = [
    "each", "every", "the", "a", "one", "two", "both", "all", "total", "wood", "concrete", "studs", "wall",
    "solid", "brick", "masonry",
];

/// A part of what a maker says.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Spoken {
    /// A word, in small letters.
    Word(String),
    /// A number of things.
    Count(usize),
    /// A number of things, or a size: `4 x 60`.
    Perhaps(usize),
    /// A size: a fraction, a number with its unit, one that follows `#`, `No.` or a times.
    Size,
    /// The end of a sentence.
    End,
}

impl Spoken {
    /// Whether it is one of some words.
    pub(super) fn is(&self, any: &[&str]) -> bool {
        matches!(self, Self::Word(word) if any.contains(&word.as_str()))
    }
}

/// A run of letters or figures, with the signs that touch it.
pub(super) struct Run {
    pub(super) text: String,
    pub(super) before: Option<char>,
    pub(super) after: Option<char>,
    /// Whether a sentence ends with it.
    ends: bool,
}

impl Run {
    fn is_number(&self) -> bool {
        self.text.starts_with(|first: char| first.is_numeric())
    }

    /// Whether it is a part of a whole, or has one: `5/16`, `0.25`, one sign for a half.
    pub(super) fn is_broken(&self) -> bool {
        self.is_number() && !self.text.chars().all(|one| one.is_ascii_digit())
    }
}

/// What a text says, part by part.
pub(super) fn read(text: &str) -> Vec<Spoken> {
    let runs = runs(text);
    let mut said = Vec::new();
    for (at, run) in runs.iter().enumerate() {
        let before = at.checked_sub(1).and_then(|before| runs.get(before)).filter(|run| !run.ends);
        let after = |more: usize| runs.get(at + more).filter(|_| !run.ends);
        // A unit is a part of its size.
        let is_unit = before.is_some_and(Run::is_number) && UNITS.contains(&run.text.as_str());
        if is_unit && !is_into(Some(run), after(1)) {
            said.extend(run.ends.then_some(Spoken::End));
            continue;
        }
        said.push(if run.is_broken() {
            Spoken::Size
        } else if run.is_number() {
            number(run, before, after(1), after(2))
        } else if run.text == "no" && after(1).is_some_and(Run::is_number) {
            // "No. 10" forbids nothing.
            Spoken::Size
        } else {
            let spoken = NUMBERS.iter().position(|name| *name == run.text);
            spoken.map_or_else(|| Spoken::Word(run.text.clone()), |at| Spoken::Count(at + 1))
        });
        if run.ends {
            said.push(Spoken::End);
        }
    }
    said
}

/// Whether a run is an `in` that is no inch, by the run after it.
fn is_into(run: Option<&Run>, next: Option<&Run>) -> bool {
    run.is_some_and(|run| run.text == "in") && next.is_some_and(|next| INTO.contains(&next.text.as_str()))
}

/// What a whole number is, by what stands beside it.
fn number(run: &Run, before: Option<&Run>, after: Option<&Run>, second: Option<&Run>) -> Spoken {
    let is = |run: Option<&Run>, any: &[&str]| run.is_some_and(|run| any.contains(&run.text.as_str()));
    let count = run.text.parse().ok().filter(|count| (1..=MOST_ASKED).contains(count));
    let Some(count) = count else { return Spoken::Size };
    let marks = ['"', '\'', '\u{2033}', '\u{2032}', '\u{201d}', '\u{2019}'];
    let is_into = is_into(after, second);
    if run.before == Some('#')
        || is(before, &SIZED)
        || is(before, &["x"])
        || run.after.is_some_and(|sign| marks.contains(&sign))
        || is(after, &UNITS) && !is_into
    {
        return Spoken::Size;
    }
    // "Number 10 screws", "minimum number: 4 lags".
    if is(before, &["number"]) {
        return Spoken::Perhaps(count);
    }
    match after {
        // "1-1/2" is one size; "4 5/16" may be four of them.
        Some(next) if next.is_broken() && run.after == Some('-') => Spoken::Size,
        Some(next) if next.is_broken() || next.text == "x" => Spoken::Perhaps(count),
        _ => Spoken::Count(count),
    }
}

/// The runs of a text in small letters. A times between figures is a run of its own, and so is a unit that touches its
/// number.
pub(super) fn runs(text: &str) -> Vec<Run> {
    let letters: Vec<char> = text
        .to_lowercase()
        .chars()
        .map(|one| match one {
            '\u{d7}' => 'x',
            '\u{2044}' => '/',
            other => other,
        })
        .collect();
    let is_figure = |at: usize| letters.get(at).is_some_and(|one| one.is_numeric());
    let is_letter = |at: usize| letters.get(at).is_some_and(|one| one.is_alphabetic());
    let mut runs: Vec<Run> = Vec::new();
    let mut at = 0;
    while let Some(first) = letters.get(at) {
        let from = at;
        at += 1;
        if first.is_numeric() {
            let joins =
                |at: usize| matches!(letters.get(at), Some('.' | '/')) && is_figure(at + 1) || is_figure(at);
            while joins(at) {
                at += 1;
            }
        } else if *first == 'x' && !is_letter(at) {
            // A times by itself, or before a figure.
        } else if first.is_alphanumeric() {
            while is_letter(at) || is_figure(at) {
                at += 1;
            }
        } else {
            if matches!(first, '.' | ';' | '!' | '?' | '\n')
                && let Some(last) = runs.last_mut()
            {
                last.ends |= *first != '.' || !SHORTENED.contains(&last.text.as_str());
            }
            continue;
        }
        let before = from.checked_sub(1).and_then(|before| letters.get(before)).copied();
        let text = letters.iter().skip(from).take(at - from).collect();
        runs.push(Run { text, before, after: letters.get(at).copied(), ends: false });
    }
    runs
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_are_no_counts() {
        use Spoken::{Count, Perhaps, Size};
        for (text, expected) in [
            ("5/16 lag screws", vec![Size]),
            ("3/8\" bolts", vec![Size]),
            ("#10 screws", vec![Size]),
            ("1/4 x 3 lag bolts", vec![Size, Size]),
            ("1/4x3 lag bolts", vec![Size, Size]),
            ("four 5/16\" lag screws", vec![Count(4), Size]),
            ("4 5/16\" lag screws", vec![Perhaps(4), Size]),
            ("1-1/2 in screws", vec![Size, Size]),
            ("No. 10 wood screws", vec![Size, Size]),
            ("6 mm screws", vec![Size]),
            ("6mm screws", vec![Size]),
            ("M8 x 60 lag screws", vec![Size]),
            ("8 x 60 mm lag screws", vec![Perhaps(8), Size]),
            ("4x 5/16 lag", vec![Perhaps(4), Size]),
            ("3 in. lags", vec![Size]),
            ("3-inch lags", vec![Size]),
            ("3' and 3\u{2033} lags", vec![Size, Size]),
            ("\u{bd} in lags", vec![Size]),
            ("0.25 in lags", vec![Size]),
            ("4 in each stud", vec![Count(4)]),
            ("at least 6 fasteners", vec![Count(6)]),
            ("minimum number: 4 lags", vec![Perhaps(4)]),
            ("4 in solid wood", vec![Count(4)]),
            ("400 lags", vec![Size]),
            ("16 gauge steel, gauge 16", vec![Size, Size]),
            ("hex heads, box of 4", vec![Count(4)]),
        ] {
            let numbers: Vec<Spoken> =
                read(text).into_iter().filter(|one| !matches!(one, Spoken::Word(_) | Spoken::End)).collect();
            assert_eq!(numbers, expected, "{text}");
        }
    }

    #[test]
    fn a_sentence_ends_at_a_stop_that_shortens_nothing() {
        let ends = |text: &str| read(text).iter().filter(|one| **one == Spoken::End).count();
        assert_eq!(ends("Lags, 5/16 in. long. No. 10 screws; 0.25 wide"), 2);
        assert_eq!(ends("..."), 0);
    }
}

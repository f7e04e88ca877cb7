//! What the keys of the keypad do to the text of a field. Pure; it reads nothing: whether the text makes sense
//! is for the field to say.

/// A key that writes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Stroke {
    /// A digit, or the decimal point.
    Digit(char),
    /// A fraction, such as `3/8`.
    Fraction(u8, u8),
    /// A unit.
    Unit(&'static str),
    /// Plus, minus, times or divided by.
    Sum(Sum),
    /// An opening parenthesis.
    Open,
    /// A closing parenthesis.
    Close,
}

/// A sign between two numbers.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sum {
    /// Plus.
    Plus,
    /// Minus; at the beginning a sign.
    Minus,
    /// Times.
    Times,
    /// Divided by: a sign that is never the stroke of a fraction.
    Divide,
}

impl Sum {
    fn sign(self) -> char {
        match self {
            Self::Plus => '+',
            Self::Minus => '-',
            Self::Times => '\u{d7}',
            Self::Divide => '\u{f7}',
        }
    }
}

/// What a text ends with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Last {
    Nothing,
    Number,
    Fraction,
    Unit,
    /// A sign between two numbers, or before one.
    Sign,
    Open,
    Close,
}

/// The text of a field while keys are pressed, with what it was before each.
#[derive(Clone, Debug, PartialEq, Eq, Default)]
pub struct Entry {
    text: String,
    before: Vec<String>,
    /// Whether it still holds what was there before the first key: a number then begins anew.
    is_untouched: bool,
}

impl Entry {
    /// An entry on a text that is there.
    #[must_use]
    pub fn on(text: &str) -> Self {
        Self { text: text.to_owned(), before: Vec::new(), is_untouched: true }
    }

    /// The text.
    #[must_use]
    pub fn text(&self) -> &str {
        &self.text
    }

    /// Takes over what a keyboard wrote meanwhile, as one key more.
    pub fn follow(&mut self, text: &str) {
        if self.text != text {
            self.write(text.to_owned());
        }
    }

    /// Whether there is a key to be undone.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        !self.before.is_empty()
    }

    /// Takes back the last key.
    pub fn undo(&mut self) {
        if let Some(before) = self.before.pop() {
            self.text = before;
        }
    }

    /// Takes away all of the text, as one key.
    pub fn clear(&mut self) {
        self.write(String::new());
    }

    /// Writes what a key stands for. A key that makes no sense where it is pressed writes nothing.
    pub fn press(&mut self, stroke: Stroke) {
        let begins_anew =
            self.is_untouched && matches!(stroke, Stroke::Digit(_) | Stroke::Fraction(..) | Stroke::Open);
        let text = if begins_anew { "" } else { self.text.as_str() };
        if let Some(after) = written(text, stroke) {
            self.write(after);
        }
    }

    fn write(&mut self, text: String) {
        self.is_untouched = false;
        if self.text != text {
            self.before.push(std::mem::replace(&mut self.text, text));
        }
    }
}

/// A text after a key; `None` where the key makes no sense.
fn written(text: &str, stroke: Stroke) -> Option<String> {
    let last = last(text);
    let trimmed = text.trim_end();
    let joined = |piece: &str| match last {
        // A sign before a number touches it; one between two numbers does not.
        Last::Nothing | Last::Open => format!("{trimmed}{piece}"),
        Last::Sign if is_leading(trimmed) => format!("{trimmed}{piece}"),
        Last::Sign | Last::Number | Last::Fraction | Last::Unit | Last::Close => format!("{trimmed} {piece}"),
    };
    match stroke {
        Stroke::Digit(digit) if last == Last::Number => Some(format!("{trimmed}{digit}")),
        Stroke::Digit(digit) => Some(joined(&digit.to_string())),
        // The last of two fractions is the one that was meant.
        Stroke::Fraction(above, below) if last == Last::Fraction => {
            written(without_last_word(trimmed), Stroke::Fraction(above, below))
        }
        Stroke::Fraction(above, below) => Some(joined(&format!("{above}/{below}"))),
        Stroke::Unit(unit) => match last {
            Last::Number | Last::Fraction | Last::Close => Some(format!("{trimmed} {unit}")),
            Last::Unit => written(without_unit(trimmed), stroke),
            Last::Nothing | Last::Sign | Last::Open => None,
        },
        Stroke::Sum(sum) => match last {
            Last::Number | Last::Fraction | Last::Unit | Last::Close => {
                Some(format!("{trimmed} {} ", sum.sign()))
            }
            Last::Sign if !is_leading(trimmed) => written(without_last_word(trimmed), stroke),
            Last::Nothing | Last::Open if sum == Sum::Minus => Some(format!("{trimmed}-")),
            Last::Sign | Last::Nothing | Last::Open => None,
        },
        Stroke::Open => Some(joined("(")),
        Stroke::Close if last == Last::Nothing => None,
        Stroke::Close => Some(format!("{trimmed})")),
    }
}

fn last(text: &str) -> Last {
    let text = text.trim_end();
    let Some(end) = text.chars().next_back() else { return Last::Nothing };
    match end {
        '0'..='9' | '.' if is_fraction(text) => Last::Fraction,
        '0'..='9' | '.' => Last::Number,
        '(' => Last::Open,
        ')' => Last::Close,
        '+' | '-' | '*' | '/' | '\u{d7}' | '\u{f7}' | '\u{2212}' => Last::Sign,
        _ => Last::Unit,
    }
}

/// Whether the last word is digits over digits.
fn is_fraction(text: &str) -> bool {
    let word = text.rsplit([' ', '(']).next().unwrap_or_default();
    let is_digits = |part: &str| !part.is_empty() && part.chars().all(|digit| digit.is_ascii_digit());
    word.trim_start_matches('-')
        .split_once('/')
        .is_some_and(|(above, below)| is_digits(above) && is_digits(below))
}

/// Whether the sign at the end of a text stands before the first number of it, or of a parenthesis.
fn is_leading(text: &str) -> bool {
    let before = text.strip_suffix('-').map(str::trim_end);
    before.is_some_and(|before| before.is_empty() || before.ends_with('('))
}

/// A text without what follows the last space or parenthesis.
fn without_last_word(text: &str) -> &str {
    text.trim_end_matches(|letter| !matches!(letter, ' ' | '('))
}

/// A text without the unit at its end.
fn without_unit(text: &str) -> &str {
    text.trim_end_matches(|letter: char| !(letter.is_ascii_digit() || matches!(letter, '.' | ')' | ' ')))
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::tape::read_length;
    use strikeline_solver::units::{Length, LengthUnit};

    /// The text after some keys, written as one would say them.
    fn typed(keys: &str) -> String {
        let mut entry = Entry::on("");
        keys.split(' ').for_each(|key| press(&mut entry, key));
        entry.text().to_owned()
    }

    fn press(entry: &mut Entry, key: &str) {
        match key {
            "undo" => entry.undo(),
            "clear" => entry.clear(),
            "+" => entry.press(Stroke::Sum(Sum::Plus)),
            "-" => entry.press(Stroke::Sum(Sum::Minus)),
            "x" => entry.press(Stroke::Sum(Sum::Times)),
            ":" => entry.press(Stroke::Sum(Sum::Divide)),
            "(" => entry.press(Stroke::Open),
            ")" => entry.press(Stroke::Close),
            "ft" => entry.press(Stroke::Unit("ft")),
            "in" => entry.press(Stroke::Unit("in")),
            "mm" => entry.press(Stroke::Unit("mm")),
            _ => match key.split_once('/') {
                Some((above, below)) => {
                    entry.press(Stroke::Fraction(above.parse().unwrap(), below.parse().unwrap()));
                }
                None => key.chars().for_each(|digit| entry.press(Stroke::Digit(digit))),
            },
        }
    }

    #[test]
    fn what_the_keys_write_is_read_as_it_was_meant() {
        for (keys, text, inches) in [
            ("48 1/2", "48 1/2", 48.5),
            ("4 ft 0 1/2 in", "4 ft 0 1/2 in", 48.5),
            ("28 - 6 3/4", "28 - 6 3/4", 21.25),
            ("88 : 2", "88 \u{f7} 2", 44.0),
            ("( 12 1/2 + 3 ) x 2", "(12 1/2 + 3) \u{d7} 2", 31.0),
            ("1231.9 mm", "1231.9 mm", 48.5),
            (".5", ".5", 0.5),
            ("15/16", "15/16", 0.9375),
            ("- 1 1/2", "-1 1/2", -1.5),
            ("- 1/2", "-1/2", -0.5),
            ("( - 1/2 + 2 ) x 2", "(-1/2 + 2) \u{d7} 2", 3.0),
        ] {
            assert_eq!(typed(keys), text, "{keys}");
            let read = read_length(text, LengthUnit::Inch).unwrap();
            assert_eq!(read.quantised(), Length::inches(inches).quantised(), "{keys}");
        }
    }

    #[test]
    fn the_last_of_two_fractions_units_or_signs_is_the_one_that_was_meant() {
        assert_eq!(typed("48 1/2 3/8"), "48 3/8");
        assert_eq!(typed("1/2 3/8"), "3/8");
        assert_eq!(typed("48 in mm"), "48 mm");
        assert_eq!(typed("4 ft 6 in ft"), "4 ft 6 ft");
        assert_eq!(typed("( 3 ) in mm"), "(3) mm");
        assert_eq!(typed("48 + - 3"), "48 - 3");
    }

    #[test]
    fn a_key_that_makes_no_sense_writes_nothing() {
        for keys in ["in", "+", ")", "x", "( +"] {
            assert!(matches!(typed(keys).as_str(), "" | "("), "{keys}: {}", typed(keys));
        }
        assert_eq!(typed("- +"), "-");
        assert_eq!(typed("3 + in"), "3 + ");
    }

    #[test]
    fn each_key_is_undone_by_itself_and_so_is_clear() {
        assert_eq!(typed("48 1/2 undo"), "48");
        assert_eq!(typed("48 1/2 undo undo"), "4");
        assert_eq!(typed("48 3/8 1/2 undo"), "48 3/8");
        assert_eq!(typed("48 clear undo"), "48");
        assert_eq!(typed("undo"), "");
        assert_eq!(typed("3 + in undo"), "3", "a key that wrote nothing is none");
    }

    #[test]
    fn on_a_text_that_is_there_a_number_begins_anew_and_a_sign_goes_on() {
        let after = |keys: &str| {
            let mut entry = Entry::on("48 1/2 in");
            keys.split(' ').for_each(|key| press(&mut entry, key));
            entry.text().to_owned()
        };
        assert_eq!(after("50"), "50");
        assert_eq!(after("1/2"), "1/2");
        assert_eq!(after("- 6 in"), "48 1/2 in - 6 in");
        assert_eq!(after("mm"), "48 1/2 mm");
        assert_eq!(after("5 undo"), "48 1/2 in");
        assert_eq!(after("clear 5"), "5");
    }

    #[test]
    fn what_a_keyboard_wrote_is_gone_on_with_and_undone_as_one_key() {
        let mut entry = Entry::on("");
        entry.follow("48 ");
        entry.press(Stroke::Fraction(1, 2));
        assert_eq!(entry.text(), "48 1/2");
        entry.follow("48 1/2");
        entry.undo();
        entry.undo();
        assert_eq!(entry.text(), "");
        assert!(!entry.can_undo());
    }
}

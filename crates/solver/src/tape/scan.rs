//! Characters to tokens.

use super::decimal::decimal_of;
use super::error::ReadError;
use num_traits::CheckedMul;

/// An exact number.
pub(super) type Exact = num_rational::Ratio<i128>;

/// Neither part of a number goes beyond this, so that no sum or product of two can end at the far negative
/// end of `i128`, which has no positive twin.
const LARGEST: i128 = i128::MAX >> 27;

/// The number, if it is within what is worked with.
pub(super) fn held(number: Exact) -> Option<Exact> {
    let fits = number.numer().checked_abs()? <= LARGEST && *number.denom() <= LARGEST;
    fits.then_some(number)
}

/// What a token is.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Kind {
    /// Digits; `whole` if without a decimal point.
    Number {
        value: Exact,
        whole: bool,
    },
    /// A fraction in one character.
    Vulgar(Exact),
    /// A unit, in lower case: letters, letters per letters as in `lbf/in`, or one of `'`, `"`, `°`, `%`.
    Word(String),
    /// The stroke of a fraction or a quotient.
    Slash,
    /// ÷, which is never the stroke of a fraction.
    Divide,
    Times,
    Plus,
    /// What a keyboard's hyphen key types: may join, subtract or be a sign.
    Hyphen,
    /// A typographic minus or dash: subtracts or is a sign, and never joins.
    Minus,
    Open,
    Close,
}

/// A token, where it begins, and whether a space (or the text's edge) stands before and after it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Token {
    pub(super) kind: Kind,
    /// From 1, in characters.
    pub(super) column: usize,
    pub(super) space_before: bool,
    pub(super) space_after: bool,
}

impl Token {
    /// A stroke or hyphen that touches both its neighbours.
    pub(super) fn is_tight(&self) -> bool {
        !self.space_before && !self.space_after
    }
}

/// The characters of a text, one ahead.
struct Scanner<'a> {
    rest: std::iter::Peekable<std::str::Chars<'a>>,
    /// Column of the character ahead.
    column: usize,
}

/// All tokens of a text.
pub(super) fn scan(text: &str) -> Result<Vec<Token>, ReadError> {
    let mut scanner = Scanner { rest: text.chars().peekable(), column: 1 };
    let mut tokens: Vec<Token> = Vec::new();
    loop {
        let mut space = scanner.column == 1;
        while scanner.take_if(char::is_whitespace).is_some() {
            space = true;
        }
        if let Some(last) = tokens.last_mut() {
            last.space_after = space || scanner.rest.peek().is_none();
        }
        let column = scanner.column;
        let Some(&first) = scanner.rest.peek() else { return Ok(tokens) };
        let kind = scanner.token(first)?;
        tokens.push(Token { kind, column, space_before: space, space_after: true });
    }
}

impl Scanner<'_> {
    fn take_if(&mut self, wanted: impl Fn(char) -> bool) -> Option<char> {
        let taken = self.rest.next_if(|&c| wanted(c))?;
        self.column += 1;
        Some(taken)
    }

    fn token(&mut self, first: char) -> Result<Kind, ReadError> {
        if first.is_ascii_digit() || first == '.' {
            return self.number();
        }
        if first.is_alphabetic() {
            return Ok(Kind::Word(self.word()));
        }
        let column = self.column;
        self.take_if(|_| true);
        if let Some((above, below)) = vulgar(first) {
            return Ok(Kind::Vulgar(Exact::new(above, below)));
        }
        match first {
            // Typed on a keyboard, as primes, or as the quotes that a text processor makes of them.
            '\'' | '′' | '‘' | '’' | '‛' => {
                // Two foot marks are how inches are typed where the other key is out of reach.
                let twice = self.take_if(|c| matches!(c, '\'' | '′' | '‘' | '’' | '‛')).is_some();
                Ok(Kind::Word(if twice { "\"" } else { "'" }.into()))
            }
            '"' | '″' | '“' | '”' | '‟' => Ok(Kind::Word("\"".into())),
            '°' | '%' => Ok(Kind::Word(first.into())),
            stroke if is_stroke(stroke) => Ok(Kind::Slash),
            '÷' => Ok(Kind::Divide),
            '*' | '×' | '∗' => Ok(Kind::Times),
            '+' => Ok(Kind::Plus),
            '-' | '‐' | '‑' => Ok(Kind::Hyphen),
            '−' | '–' | '—' => Ok(Kind::Minus),
            '(' => Ok(Kind::Open),
            ')' => Ok(Kind::Close),
            ',' => Err(ReadError::new(column, "a comma has no place", "a decimal point, as in 48.5")),
            other => Err(ReadError::new(
                column,
                format!("the character {other:?} has no place in a quantity"),
                "numbers, fractions, units and + - * / ( ), as in 48 1/2 in",
            )),
        }
    }

    /// Letters, with the full stop of an abbreviation. A stroke between two letters is inside a unit, since
    /// nothing is ever divided by one: `205 lbf/in`, but `88 in/2`.
    fn word(&mut self) -> String {
        let mut word = String::new();
        loop {
            while let Some(letter) = self.take_if(char::is_alphabetic) {
                word.extend(letter.to_lowercase());
            }
            let letter_follows = self.rest.clone().nth(1).is_some_and(char::is_alphabetic);
            if !letter_follows || self.take_if(is_stroke).is_none() {
                break;
            }
            word.push('/');
        }
        // 4 ft.5 is left to be half an inch.
        if !self.rest.clone().nth(1).is_some_and(|c| c.is_ascii_digit()) {
            self.take_if(|c| c == '.');
        }
        word
    }

    fn digits(&mut self) -> String {
        let mut digits = String::new();
        while let Some(digit) = self.take_if(|c| c.is_ascii_digit()) {
            digits.push(digit);
        }
        digits
    }

    fn number(&mut self) -> Result<Kind, ReadError> {
        let start = self.column;
        let before = self.digits();
        let point = self.take_if(|c| c == '.').is_some();
        let after = if point { self.digits() } else { String::new() };
        if before.is_empty() && after.is_empty() {
            return Err(ReadError::new(start, "a full stop stands alone", "digits after it, as in 0.5"));
        }
        let value = decimal(&before, &after).ok_or_else(|| ReadError::too_many_digits(start))?;
        let column = self.column;
        match self.rest.peek() {
            Some(',') => Err(self.comma(column, &before, point.then_some(after.as_str()))),
            Some('.') if point => {
                Err(ReadError::new(column, "a second decimal point has no place", "one point, as in 48.5"))
            }
            Some('e' | 'E') => match self.exponent(value) {
                Some(right) => Err(ReadError::new(
                    column,
                    "exponents are not read",
                    format!("it in full, as in {right}"),
                )),
                None => {
                    Err(ReadError::new(column, "the letter e has no place", "a unit or nothing, as in 48 in"))
                }
            },
            _ => Ok(Kind::Number { value, whole: !point }),
        }
    }

    /// What to write instead of a number with a comma in it: a comma is a decimal point to some and parts the
    /// thousands to others, so it is never guessed at.
    fn comma(&mut self, column: usize, before: &str, after: Option<&str>) -> ReadError {
        let mut written = before.to_owned();
        if let Some(after) = after {
            written.push('.');
            written.push_str(after);
        }
        while let Some(c) = self.take_if(|c| c.is_ascii_digit() || matches!(c, ',' | '.')) {
            written.push(c);
        }
        let written = written.trim_end_matches([',', '.']);
        let digits = |text: &str| text.chars().filter(char::is_ascii_digit).collect::<String>();
        let marks = written.chars().filter(|c| !c.is_ascii_digit()).count();
        let right = match written.rsplit_once([',', '.']) {
            Some((units, rest)) if marks == 1 && rest.len() == 3 => {
                format!("{units}{rest}, or {units}.{rest} if it is a decimal")
            }
            // Only commas: they part thousands. Both: the last is the decimal point.
            Some(_) if marks > 1 && !written.contains('.') => digits(written),
            Some((units, rest)) => format!("{}.{rest}", digits(units)),
            None => written.to_owned(),
        };
        ReadError::new(column, "a comma in a number is not read", right)
    }

    /// The number that an exponent would give, if one follows: the text to write instead.
    fn exponent(&mut self, value: Exact) -> Option<String> {
        self.take_if(|_| true);
        let down = self.take_if(|c| matches!(c, '-' | '+' | '−')).is_some_and(|sign| sign != '+');
        let digits = self.digits();
        if digits.is_empty() {
            return None;
        }
        let shift = digits.parse::<u32>().ok().filter(|&shift| shift <= 12);
        let power = shift.map(|shift| Exact::from(10_i128.pow(shift)));
        let full = power.and_then(|power| value.checked_mul(&if down { power.recip() } else { power }));
        let millionths = full.and_then(|full| full.checked_mul(&Exact::from(1_000_000)));
        Some(match millionths.filter(num_rational::Ratio::is_integer) {
            Some(exact) => decimal_of(exact.to_integer(), 6),
            None => "1200 for 1.2 thousand".into(),
        })
    }
}

/// Digits before and after the point as an exact number; `None` if too long.
fn decimal(before: &str, after: &str) -> Option<Exact> {
    let mut all: i128 = 0;
    let mut scale: i128 = 1;
    for digit in before.bytes().chain(after.bytes()) {
        all = all.checked_mul(10)?.checked_add(i128::from(digit.checked_sub(b'0')?))?;
    }
    for _ in after.bytes() {
        scale = scale.checked_mul(10)?;
    }
    held(Exact::new(all, scale))
}

/// The stroke of a fraction, a quotient or a unit.
fn is_stroke(c: char) -> bool {
    matches!(c, '/' | '⁄' | '∕')
}

/// The fractions that have a character of their own.
fn vulgar(c: char) -> Option<(i128, i128)> {
    Some(match c {
        '½' => (1, 2),
        '⅓' => (1, 3),
        '⅔' => (2, 3),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅕' => (1, 5),
        '⅖' => (2, 5),
        '⅗' => (3, 5),
        '⅘' => (4, 5),
        '⅙' => (1, 6),
        '⅚' => (5, 6),
        '⅐' => (1, 7),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        '⅑' => (1, 9),
        '⅒' => (1, 10),
        _ => return None,
    })
}

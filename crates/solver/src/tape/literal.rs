//! One number as it is written: whole, decimal, fraction or mixed.

use super::error::ReadError;
use super::scan::{Exact, Kind, Token, held};
use num_traits::CheckedAdd;

/// How a number was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Form {
    Whole,
    Decimal,
    Vulgar,
    /// A whole number and a proper fraction.
    Mixed {
        /// Column of the hyphen that joins them, if one does.
        hyphen: Option<usize>,
    },
}

/// A number, and where it began.
pub(super) struct Literal {
    pub(super) value: Exact,
    pub(super) form: Form,
    pub(super) column: usize,
}

/// The tokens of a text and how far they have been read.
pub(super) struct Reader<'a> {
    text: &'a str,
    tokens: &'a [Token],
    at: usize,
}

impl<'a> Reader<'a> {
    pub(super) fn new(text: &'a str, tokens: &'a [Token]) -> Self {
        Self { text, tokens, at: 0 }
    }

    pub(super) fn ahead(&self, by: usize) -> Option<&'a Token> {
        self.tokens.get(self.at.saturating_add(by))
    }

    pub(super) fn skip(&mut self, count: usize) {
        self.at = self.at.saturating_add(count);
    }

    /// Column of the token ahead; one past the end after the last.
    pub(super) fn column(&self) -> usize {
        self.ahead(0).map_or_else(|| self.text.chars().count().saturating_add(1), |token| token.column)
    }

    /// A whole number so far ahead.
    fn whole(&self, by: usize) -> Option<Exact> {
        match self.ahead(by)?.kind {
            Kind::Number { value, whole: true } => Some(value),
            _ => None,
        }
    }

    /// `a/b` without spaces, so far ahead: above and below the stroke.
    fn fraction(&self, by: usize) -> Option<(Exact, Exact)> {
        let stroke = self.ahead(by + 1)?;
        let tight = stroke.kind == Kind::Slash && stroke.is_tight();
        if !tight {
            return None;
        }
        Some((self.whole(by)?, self.whole(by + 2)?))
    }

    /// The text with the hyphen at this column standing free, or an example of that for a long text.
    pub(super) fn spaced(&self, column: usize) -> String {
        let before: String = self.text.chars().take(column.saturating_sub(1)).collect();
        let after: String = self.text.chars().skip(column).collect();
        let spaced = format!("{} - {}", before.trim(), after.trim());
        if spaced.chars().count() > 40 || before.trim().is_empty() || after.trim().is_empty() {
            "28 - 6 3/4".into()
        } else {
            spaced
        }
    }

    /// Reads one number. A fraction alone is not one: it is a quotient.
    pub(super) fn literal(&mut self) -> Result<Literal, ReadError> {
        let column = self.column();
        let (value, form) = match self.ahead(0).map(|token| &token.kind) {
            Some(&Kind::Number { value, whole: true }) => {
                self.skip(1);
                let hyphen = self.ahead(0).filter(|t| t.kind == Kind::Hyphen).map(|t| t.column);
                match self.joined_fraction(value)? {
                    Some(part) => (held_sum(value, part, column)?, Form::Mixed { hyphen }),
                    None => (value, Form::Whole),
                }
            }
            Some(&Kind::Number { value, whole: false }) => {
                self.skip(1);
                (value, Form::Decimal)
            }
            Some(&Kind::Vulgar(value)) => {
                self.skip(1);
                (value, Form::Vulgar)
            }
            _ => return Err(ReadError::new(column, "a number is missing", "one here, as in 48 1/2")),
        };
        self.no_number_next(form)?;
        Ok(Literal { value, form, column })
    }

    /// After feet: a number of inches, which may be a fraction alone.
    pub(super) fn inches_after_feet(&mut self) -> Result<Literal, ReadError> {
        let column = self.column();
        if let Some((above, below)) = self.fraction(0) {
            let value = proper(column, Exact::from(0), above, below)?;
            self.skip(3);
            self.no_number_next(Form::Vulgar)?;
            return Ok(Literal { value, form: Form::Vulgar, column });
        }
        self.literal()
    }

    /// The fraction that belongs to the whole number just read, if one follows.
    fn joined_fraction(&mut self, whole: Exact) -> Result<Option<Exact>, ReadError> {
        // 48 1/2, 48½ and, with a hyphen that touches both, 48-1/2.
        let hyphen = usize::from(self.ahead(0).is_some_and(|t| t.kind == Kind::Hyphen && t.is_tight()));
        if let Some(&Kind::Vulgar(part)) = self.ahead(hyphen).map(|token| &token.kind) {
            self.skip(hyphen + 1);
            return Ok(Some(part));
        }
        let column = self.ahead(hyphen).map_or(0, |token| token.column);
        match self.fraction(hyphen) {
            Some((above, below)) if hyphen == 0 || (above < below) => {
                let part = proper(column, whole, above, below)?;
                self.skip(hyphen + 3);
                Ok(Some(part))
            }
            _ => Ok(None),
        }
    }

    /// Two numbers side by side are refused: nothing says what the second one is.
    fn no_number_next(&self, form: Form) -> Result<(), ReadError> {
        let Some(Kind::Number { .. } | Kind::Vulgar(_)) = self.ahead(0).map(|token| &token.kind) else {
            return Ok(());
        };
        let right = match (form, self.whole(0), self.whole(2), self.ahead(1).map(|token| &token.kind)) {
            (Form::Whole, Some(above), Some(below), Some(Kind::Slash)) if above < below => {
                format!("the fraction without spaces, as in {above}/{below}")
            }
            _ => "a fraction after a whole number, as in 48 1/2, or a sum, as in 48 + 3".into(),
        };
        Err(ReadError::new(self.column(), "a second number follows the first", right))
    }
}

/// A fraction after a whole number, which has to be less than one.
fn proper(column: usize, whole: Exact, above: Exact, below: Exact) -> Result<Exact, ReadError> {
    if below == Exact::from(0) {
        return Err(ReadError::new(column, "the fraction is divided by zero", "a fraction such as 1/2"));
    }
    let part = Exact::new(above.to_integer(), below.to_integer());
    if above < below {
        return Ok(part);
    }
    let all = held_sum(whole, part, column)?;
    let (units, rest) = (all.trunc(), all.fract());
    let right = if rest == Exact::from(0) { units.to_string() } else { format!("{units} {rest}") };
    Err(ReadError::new(column, format!("the fraction {above}/{below} is not less than one"), right))
}

fn held_sum(a: Exact, b: Exact, column: usize) -> Result<Exact, ReadError> {
    a.checked_add(&b).and_then(held).ok_or_else(|| ReadError::too_many_digits(column))
}

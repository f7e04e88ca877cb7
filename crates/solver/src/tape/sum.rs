//! Sums, as people type them at the wall, to exact numbers.
//!
//! A sum is products joined by + and a free-standing minus; a product is numbers and parentheses joined by
//! times and divide. A unit after a number, a quotient or parentheses belongs to all of the product so far.

use super::error::ReadError;
use super::literal::{Form, Reader};
use super::measure::{Measure, Part, Word};
use super::scan::{Exact, Kind, Token, held, scan};
use num_traits::{CheckedAdd, CheckedMul};

/// Parentheses within parentheses, at most: more is no sum that anybody types (chosen), and bounds the work.
const DEEPEST: usize = 16;

/// What a text amounts to.
pub(super) struct Total<U> {
    /// In the measure's own steps for a number with a unit, else as written.
    pub(super) value: Exact,
    /// The unit to remember; `None` for a bare number.
    pub(super) unit: Option<U>,
    /// Where its first number began.
    pub(super) column: usize,
}

/// Reads all of a text.
pub(super) fn total<U: Copy + PartialEq>(text: &str, measure: &Measure<U>) -> Result<Total<U>, ReadError> {
    let tokens = scan(text)?;
    let mut sum = Sum { reader: Reader::new(text, &tokens), measure, depth: 0 };
    if tokens.is_empty() {
        return Err(ReadError::new(
            1,
            "nothing is written",
            format!("a {}, as in {}", measure.noun, measure.example),
        ));
    }
    let total = sum.sum()?;
    match sum.reader.ahead(0) {
        None => Ok(total),
        Some(token) => Err(sum.unexpected(token)),
    }
}

struct Sum<'a, U: 'static> {
    reader: Reader<'a>,
    measure: &'a Measure<U>,
    depth: usize,
}

/// What joined the last two numbers of a product.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Joint {
    None,
    Times,
    Divide,
}

impl<'a, U: Copy + PartialEq + 'static> Sum<'a, U> {
    fn kind(&self) -> Option<&'a Kind> {
        self.reader.ahead(0).map(|token| &token.kind)
    }

    fn sum(&mut self) -> Result<Total<U>, ReadError> {
        let negative = matches!(self.kind(), Some(Kind::Hyphen | Kind::Minus));
        if negative || self.kind() == Some(&Kind::Plus) {
            self.reader.skip(1);
        }
        let mut total = self.product()?;
        if negative {
            total.value = -total.value;
        }
        while let Some(token) = self.reader.ahead(0) {
            let minus = match token.kind {
                Kind::Plus => false,
                Kind::Hyphen | Kind::Minus if token.space_before && token.space_after => true,
                Kind::Hyphen | Kind::Minus => return Err(self.unclear_hyphen(token.column)),
                _ => break,
            };
            self.reader.skip(1);
            let next = self.product()?;
            total = self.add(total, next, minus, token)?;
        }
        Ok(total)
    }

    fn add(&self, a: Total<U>, b: Total<U>, minus: bool, token: &Token) -> Result<Total<U>, ReadError> {
        let unit = match (a.unit, b.unit) {
            (Some(first), Some(second)) if first == second => Some(first),
            (None, None) => None,
            (Some(_), Some(_)) => match self.measure.mixed {
                Some(unit) => Some(unit),
                None => {
                    let right = format!("one unit throughout, as in {}", self.measure.example);
                    return Err(ReadError::new(b.column, "the units of this sum differ", right));
                }
            },
            (Some(_), None) | (None, Some(_)) => {
                let column = if a.unit.is_none() { a.column } else { b.column };
                let right = "a unit on every term or on none, as in 28 in - 6 3/4 in or (28 - 6 3/4) in";
                return Err(ReadError::new(column, "the unit of this term is missing", right));
            }
        };
        let other = if minus { -b.value } else { b.value };
        let value = a.value.checked_add(&other).and_then(held);
        let value = value.ok_or_else(|| ReadError::too_many_digits(token.column))?;
        Ok(Total { value, unit, column: a.column })
    }

    fn product(&mut self) -> Result<Total<U>, ReadError> {
        let (mut whole, form) = self.factor()?;
        let mut joint = Joint::None;
        loop {
            let Some(token) = self.reader.ahead(0) else { return Ok(whole) };
            joint = match &token.kind {
                Kind::Word(name) => {
                    let feet_form = if joint == Joint::None { form } else { None };
                    self.unit(&mut whole, token, name, joint, feet_form)?;
                    continue;
                }
                Kind::Times => Joint::Times,
                Kind::Slash | Kind::Divide => Joint::Divide,
                _ => return Ok(whole),
            };
            self.reader.skip(1);
            let (by, by_form) = self.factor()?;
            whole.value = self.joined(&whole, &by, by_form, joint, token)?;
        }
    }

    /// The product or quotient of two, the second of which bears no unit.
    fn joined(
        &self,
        whole: &Total<U>,
        by: &Total<U>,
        by_form: Option<Form>,
        joint: Joint,
        token: &Token,
    ) -> Result<Exact, ReadError> {
        if by.unit.is_some() {
            return Err(unit_on_factor(by.column));
        }
        if joint != Joint::Divide {
            let value = whole.value.checked_mul(&by.value).and_then(held);
            return value.ok_or_else(|| ReadError::too_many_digits(token.column));
        }
        if let Some(Form::Mixed { hyphen }) = by_form {
            // 3/4-1/2 means 1/4; 88/2 1/2 could be 88 over 2 1/2, or 88/2 and a half.
            return Err(match hyphen {
                Some(column) => self.unclear_hyphen(column),
                None => ReadError::new(
                    by.column,
                    "a mixed number after a stroke could mean two things",
                    "parentheses, as in 88 / (2 1/2) or (88/2) + 1/2",
                ),
            });
        }
        if by.value == Exact::from(0) {
            return Err(ReadError::new(
                by.column,
                "nothing can be divided by zero",
                "another number, as in 88/2",
            ));
        }
        // By the reciprocal, which has its sign above the stroke.
        let value = whole.value.checked_mul(&by.value.recip()).and_then(held);
        value.ok_or_else(|| ReadError::too_many_digits(token.column))
    }

    /// A number or parentheses; with the form of a number.
    fn factor(&mut self) -> Result<(Total<U>, Option<Form>), ReadError> {
        if self.kind() != Some(&Kind::Open) {
            let literal = self.reader.literal()?;
            let total = Total { value: literal.value, unit: None, column: literal.column };
            return Ok((total, Some(literal.form)));
        }
        let column = self.reader.column();
        if self.depth >= DEEPEST {
            return Err(ReadError::new(
                column,
                "too many parentheses stand in each other",
                "fewer, as in (12 + 3) * 2",
            ));
        }
        self.depth += 1;
        self.reader.skip(1);
        let inner = self.sum()?;
        self.depth -= 1;
        match self.reader.ahead(0) {
            Some(Token { kind: Kind::Close, .. }) => self.reader.skip(1),
            Some(token) => return Err(self.unexpected(token)),
            None => {
                let right = ") at the end, as in (12 1/2 + 3) * 2";
                return Err(ReadError::new(self.reader.column(), "a closing parenthesis is missing", right));
            }
        }
        Ok((Total { column, ..inner }, None))
    }

    /// Gives the product so far its unit, and joins inches to whole feet. `form` is that of a lone number.
    fn unit(
        &mut self,
        whole: &mut Total<U>,
        token: &Token,
        name: &str,
        joint: Joint,
        form: Option<Form>,
    ) -> Result<(), ReadError> {
        let word = self.measure.word(name, token.column)?;
        if joint == Joint::Times || (whole.unit.is_some() && joint == Joint::Divide) {
            return Err(unit_on_factor(token.column));
        }
        if whole.unit.is_some() {
            return Err(ReadError::new(
                token.column,
                "a second unit follows the first",
                format!("one unit, as in {}", self.measure.example),
            ));
        }
        self.reader.skip(1);
        whole.value = in_steps(whole.value, word, token.column)?;
        whole.unit = Some(word.unit);
        if word.part == Part::Foot && form.is_some() {
            self.inches(whole, form)?;
        }
        Ok(())
    }

    /// The inches after feet, if any follow: after a space, an unspaced hyphen or nothing.
    fn inches(&mut self, feet: &mut Total<U>, form: Option<Form>) -> Result<(), ReadError> {
        let hyphen =
            usize::from(self.reader.ahead(0).is_some_and(|t| t.kind == Kind::Hyphen && t.is_tight()));
        let next = self.reader.ahead(hyphen).map(|token| &token.kind);
        let Some(Kind::Number { .. } | Kind::Vulgar(_)) = next else { return Ok(()) };
        let Some(inch) = self.measure.words.iter().find(|word| word.part == Part::Inch) else {
            return Ok(());
        };
        if form != Some(Form::Whole) {
            return Err(ReadError::new(
                feet.column,
                "feet before inches are a whole number",
                "whole feet and the inches over, as in 4' 6\", or feet alone, as in 4.5 ft",
            ));
        }
        self.reader.skip(hyphen);
        let inches = self.reader.inches_after_feet()?;
        let column = inches.column;
        if let Some(token) = self.reader.ahead(0)
            && let Kind::Word(name) = &token.kind
        {
            if self.measure.word(name, token.column)?.part != Part::Inch {
                let right = "inches, as in 4' 6\", or a sum, as in 4 ft + 6 mm";
                return Err(ReadError::new(token.column, "only inches follow feet", right));
            }
            self.reader.skip(1);
        }
        if inches.value >= Exact::from(12) {
            let right = "fewer than 12 inches after feet, as in 4' 11 1/2\"";
            return Err(ReadError::new(column, "the inches after feet make another foot", right));
        }
        let more = in_steps(inches.value, inch, column)?;
        let value = feet.value.checked_add(&more).and_then(held);
        feet.value = value.ok_or_else(|| ReadError::too_many_digits(column))?;
        Ok(())
    }

    fn unclear_hyphen(&self, column: usize) -> ReadError {
        let right = format!("minus with a space on both sides, as in {}", self.reader.spaced(column));
        ReadError::new(column, "this hyphen could mean two things", right)
    }

    fn unexpected(&self, token: &Token) -> ReadError {
        match token.kind {
            Kind::Close => ReadError::new(
                token.column,
                "this parenthesis closes nothing",
                "( before it, as in (12 1/2 + 3) * 2",
            ),
            Kind::Open => ReadError::new(
                token.column,
                "nothing joins these parentheses",
                "* before them, as in 2 * (12 1/2 + 3)",
            ),
            _ => ReadError::new(
                token.column,
                "nothing joins this to what stands before it",
                "a fraction before its unit, as in 48 1/2 in, or a sum, as in 48 in + 3 in",
            ),
        }
    }
}

fn unit_on_factor(column: usize) -> ReadError {
    let right = "the unit with what is multiplied or divided, as in 48 in * 2 or 88 in / 2";
    ReadError::new(column, "what one multiplies or divides by bears no unit", right)
}

fn in_steps<U>(value: Exact, word: &Word<U>, column: usize) -> Result<Exact, ReadError> {
    let (above, below) = word.steps;
    let value = value.checked_mul(&Exact::new(above, below)).and_then(held);
    value.ok_or_else(|| ReadError::too_many_digits(column))
}

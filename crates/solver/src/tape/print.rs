//! Lengths for the eye, as a tape is read.

use super::graduation::Style;
use crate::units::{Length, LengthUnit};
use std::fmt;

/// A printed length in its parts, so that a drawing can stack the fraction. All parts are without sign.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Parts {
    /// Whether it is below zero as printed: never so for what rounds to nothing.
    pub negative: bool,
    /// Whole feet, where feet are shown.
    pub feet: Option<i64>,
    /// Whole inches (under 12 after feet) or millimetres.
    pub whole: i64,
    /// Above the line, in lowest terms; 0 for no fraction.
    pub numerator: i64,
    /// Below the line; 1 for no fraction.
    pub denominator: i64,
    /// Inches or millimetres.
    pub unit: LengthUnit,
}

impl Style {
    /// So many graduations as printed: `48 1/2"`, `3/4"`, `0"`, `7'-0 1/2"`, `1232 mm`.
    #[must_use]
    pub fn print_steps(self, steps: i64) -> String {
        self.parts_of(steps).to_string()
    }

    /// A length rounded once to the graduation and printed. A leading hyphen is the sign; there is no `-0`.
    #[must_use]
    pub fn print(self, length: Length) -> String {
        self.print_steps(self.steps(length))
    }

    /// A length rounded once to the graduation, in parts.
    #[must_use]
    pub fn fraction(self, length: Length) -> Parts {
        self.parts_of(self.steps(length))
    }

    /// So many graduations, in parts. The farthest negative counts as one graduation nearer.
    #[must_use]
    pub fn parts_of(self, steps: i64) -> Parts {
        let (per_unit, unit) = (self.graduation.steps_per_unit(), self.graduation.unit());
        let size = steps.saturating_abs();
        let (units, rest) = (size / per_unit, size % per_unit);
        let (numerator, denominator) = lowest_terms(rest, per_unit);
        // From 12 in as printed: 11 31/32 that rounds to 12 is 1'-0".
        let in_feet = self.feet_inches && unit == LengthUnit::Inch && units >= 12;
        let (feet, whole) = if in_feet { (Some(units / 12), units % 12) } else { (None, units) };
        Parts { negative: steps < 0, feet, whole, numerator, denominator, unit }
    }
}

/// Halves above and below while both are even: graduations have no other common factor.
fn lowest_terms(mut numerator: i64, mut denominator: i64) -> (i64, i64) {
    if numerator == 0 {
        return (0, 1);
    }
    while numerator % 2 == 0 && denominator % 2 == 0 {
        numerator /= 2;
        denominator /= 2;
    }
    (numerator, denominator)
}

impl fmt::Display for Parts {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.negative {
            f.write_str("-")?;
        }
        if let Some(feet) = self.feet {
            write!(f, "{feet}'-")?;
        }
        match (self.whole, self.numerator, self.feet) {
            (whole, 0, _) => write!(f, "{whole}")?,
            (0, numerator, None) => write!(f, "{numerator}/{}", self.denominator)?,
            (whole, numerator, _) => write!(f, "{whole} {numerator}/{}", self.denominator)?,
        }
        f.write_str(match self.unit {
            LengthUnit::Millimetre => " mm",
            LengthUnit::Inch => "\"",
            LengthUnit::Mil => " mil",
        })
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Graduation, read_length};
    use super::*;
    use proptest::prelude::*;

    fn style(graduation: Graduation, feet_inches: bool) -> Style {
        Style { graduation, feet_inches }
    }

    #[test]
    fn inches_are_printed_as_a_tape_is_read() {
        let plain = style(Graduation::Sixteenth, false);
        let print = |inches: f64| plain.print(Length::inches(inches));
        assert_eq!(print(48.5), "48 1/2\"");
        assert_eq!(print(0.75), "3/4\"");
        assert_eq!(print(0.0), "0\"");
        assert_eq!(print(-0.01), "0\"");
        assert_eq!(print(-0.75), "-3/4\"");
        assert_eq!(print(88.75), "88 3/4\"");
        assert_eq!(print(47.937), "47 15/16\"");
        assert_eq!(print(26.964), "26 15/16\"");
        // NIST Handbook 44, section 10.3.
        assert_eq!(print(10.0 + 1.0 / 32.0), "10\"");
        assert_eq!(style(Graduation::ThirtySecond, false).print(Length::inches(26.964)), "26 31/32\"");
        assert_eq!(style(Graduation::Millimetre, true).print(Length::millimetres(1231.9)), "1232 mm");
        assert_eq!(style(Graduation::Millimetre, false).print(Length::millimetres(-0.4)), "0 mm");
    }

    #[test]
    fn feet_are_printed_from_twelve_inches_on() {
        // The feet-inch form of drawing practice (common practice, no source).
        let feet = style(Graduation::Sixteenth, true);
        let print = |inches: f64| feet.print(Length::inches(inches));
        assert_eq!(print(88.75), "7'-4 3/4\"");
        assert_eq!(print(84.0), "7'-0\"");
        assert_eq!(print(84.5), "7'-0 1/2\"");
        assert_eq!(print(11.5), "11 1/2\"");
        assert_eq!(print(11.99), "1'-0\"");
        assert_eq!(print(-84.5), "-7'-0 1/2\"");
    }

    #[test]
    fn parts_can_be_stacked() {
        let parts = style(Graduation::Sixteenth, true).fraction(Length::inches(-88.75));
        let shown = Parts {
            negative: true,
            feet: Some(7),
            whole: 4,
            numerator: 3,
            denominator: 4,
            unit: LengthUnit::Inch,
        };
        assert_eq!(parts, shown);
        assert_eq!(style(Graduation::Millimetre, false).parts_of(i64::MIN).whole, i64::MAX);
    }

    proptest! {
        #[test]
        fn what_is_printed_is_read_back(steps in -3_000_000_i64..3_000_000, which in 0..4_usize, feet in any::<bool>()) {
            let graduation = Graduation::ALL[which];
            let style = style(graduation, feet);
            // The bare unit is the other one: what is printed names its own.
            let text = style.print_steps(steps);
            let read = read_length(&text, LengthUnit::Mil).unwrap();
            prop_assert_eq!(style.steps(read), steps, "{}", text);
            prop_assert_eq!(read, style.length_of(steps), "{}", text);
            prop_assert_eq!(read.unit(), graduation.unit());
            prop_assert_eq!(style.print(read), text);
        }
    }
}

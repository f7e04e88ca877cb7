//! The closing check: two readings of one mark, from either side, that add up to what the tape shows.

use super::graduation::Style;
use super::nanometre::{nanometres, of_nanometres};
use crate::units::Length;

/// Two readings that close, in graduations.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Closing {
    /// The first reading, rounded from its own datum. Signed, away from that datum towards the second.
    pub first: i64,
    /// The second reading, which closes on the printed span: what the tape shows from the second datum.
    pub second: i64,
    /// From the first datum to the second, as printed. Negative for a second datum on the far side of the first.
    pub span: i64,
    /// Whether the second is another graduation than its own nearest (never by more than one).
    pub differs: bool,
    /// The span less the printed span; zero where the span is on a graduation. Signed.
    pub remainder: Length,
}

/// Closes a mark that is `first` from one datum, in a span from there to the other datum.
///
/// The second reading is the printed span less the first, so it is negative where the mark lies beyond it.
#[must_use]
pub fn close(first: Length, span: Length, style: Style) -> Closing {
    let closing = close_signed(first, span, style);
    let second = closing.span.saturating_sub(closing.first);
    let own = of_nanometres(nanometres(span).saturating_sub(nanometres(first)));
    Closing { second, differs: second != style.steps(own), ..closing }
}

/// Closes a mark against a second datum that may lie on either side of it.
///
/// Both places are from the first datum along the same direction; the second reading is the distance between
/// the two as printed, never negative.
#[must_use]
pub fn close_signed(mark_from_first: Length, second_datum_from_first: Length, style: Style) -> Closing {
    let (first, span) = (style.steps(mark_from_first), style.steps(second_datum_from_first));
    let second = span.saturating_sub(first).saturating_abs();
    let datum_nm = nanometres(second_datum_from_first);
    let own_nm = datum_nm.saturating_sub(nanometres(mark_from_first)).saturating_abs();
    let remainder_nm = datum_nm.saturating_sub(nanometres(style.length_of(span)));
    Closing {
        first,
        second,
        span,
        differs: second != style.steps(of_nanometres(own_nm)),
        remainder: of_nanometres(remainder_nm).with_unit(style.graduation.unit()),
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Graduation, read_length};
    use super::*;
    use crate::units::LengthUnit;
    use proptest::prelude::*;

    const SIXTEENTHS: Style = Style { graduation: Graduation::Sixteenth, feet_inches: false };

    fn inches(text: &str) -> Length {
        read_length(text, LengthUnit::Inch).unwrap()
    }

    fn shown(closing: Closing) -> (String, String, String) {
        let text = |steps| SIXTEENTHS.print_steps(steps);
        (text(closing.first), text(closing.second), text(closing.span))
    }

    #[test]
    fn a_clear_span_halves_from_either_side() {
        // Common practice, no source.
        let closing = close(inches("88 3/4 / 2"), inches("88 3/4"), SIXTEENTHS);
        assert_eq!(shown(closing), ("44 3/8\"".into(), "44 3/8\"".into(), "88 3/4\"".into()));
        assert!(!closing.differs);
        assert_eq!(closing.remainder, Length::inches(0.0));
    }

    #[test]
    fn a_centre_closes_and_a_wrong_one_does_not() {
        // Common practice, no source: 48 1/2 wide centres at 24 1/4; 24 1/2 from both sides is 1/2 too much.
        let right = close(inches("24 1/4"), inches("48 1/2"), SIXTEENTHS);
        assert_eq!(right.first, right.second);
        let wrong = close(inches("24 1/2"), inches("48 1/2"), SIXTEENTHS);
        assert_eq!(shown(wrong).1, "24\"");
        assert_ne!(wrong.first, wrong.second);
        // 48 1/2 less 19 leaves 29 1/2.
        assert_eq!(shown(close(inches("19"), inches("48 1/2"), SIXTEENTHS)).1, "29 1/2\"");
    }

    #[test]
    fn the_second_says_when_it_is_not_its_own_nearest() {
        // 10 1/32 goes down to 10 (even), and so does 10 1/32 from the other side, in 20 1/16.
        let closing = close(inches("10 1/32"), inches("20 1/16"), SIXTEENTHS);
        assert_eq!(shown(closing), ("10\"".into(), "10 1/16\"".into(), "20 1/16\"".into()));
        assert!(closing.differs);
        assert_eq!(closing.remainder, Length::inches(0.0));
    }

    #[test]
    fn a_span_off_the_graduation_shows_its_remainder() {
        let over = close(inches("10"), inches("20.02"), SIXTEENTHS);
        assert_eq!(over.remainder, inches("0.02"));
        let under = close(inches("10"), inches("19.99"), SIXTEENTHS);
        assert_eq!(under.remainder, -inches("0.01"));
    }

    #[test]
    fn a_second_datum_on_the_same_side_closes_too() {
        // The mark 44 3/8 from the corner, a window's trim at 12: 32 3/8 between them, on the mark's far side none.
        let closing = close_signed(inches("44 3/8"), inches("12"), SIXTEENTHS);
        assert_eq!(shown(closing), ("44 3/8\"".into(), "32 3/8\"".into(), "12\"".into()));
        assert_eq!(close(inches("44 3/8"), inches("12"), SIXTEENTHS).second, -closing.second);
        let behind = close_signed(inches("44 3/8"), inches("-12"), SIXTEENTHS);
        assert_eq!(shown(behind).1, "56 3/8\"");
    }

    proptest! {
        #[test]
        fn two_readings_add_up_to_the_printed_span(
            span_nm in 0_i64..12_000_000_000, share in 0.0..=1.0_f64, which in 0..4_usize,
        ) {
            let graduation = Graduation::ALL[which];
            let style = Style { graduation, feet_inches: false };
            let span = of_nanometres(i128::from(span_nm));
            let first = (span * share).quantised();
            let closing = close(first, span, style);
            prop_assert_eq!(closing.first + closing.second, style.steps(span));
            prop_assert_eq!(closing.first, style.steps(first));
            let own = style.steps((span - first).quantised());
            prop_assert!((closing.second - own).abs() <= 1);
            prop_assert_eq!(closing.differs, closing.second != own);
            prop_assert_eq!((style.length_of(closing.span) + closing.remainder).quantised(), span);
            if closing.second >= 0 {
                prop_assert_eq!(close_signed(first, span, style), closing);
            }
        }
    }
}

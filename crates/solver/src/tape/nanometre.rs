//! Lengths as whole nanometres, in which 1/64 in (396 875 nm) and every graduation are whole numbers.

use crate::units::Length;

/// An inch in nanometres, exactly (international inch, NIST Handbook 44, Appendix C).
pub(super) const INCH: i128 = 25_400_000;

/// The nearest whole nanometre. Infinite lengths saturate and what is not a number is 0.
pub(super) fn nanometres(length: Length) -> i128 {
    (length.mm() * 1e6).round() as i128
}

/// The length of so many nanometres; exact to the last bit below 2^53 nm (9000 km).
pub(super) fn of_nanometres(nanometres: i128) -> Length {
    Length::millimetres(nanometres as f64 / 1e6)
}

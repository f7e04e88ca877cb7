//! How far off a tape may be.

use crate::handbook::Row;
use crate::handbook::measuring::{CLASS_III, TapeClass, US_TAPE};
use crate::ledger::{Given, Label};
use crate::units::Length;

/// What a tape of a class may be off over a length. `from_surface` where one end is a hook, or an end that is butted.
/// Less than nothing counts as nothing: no tape is better than its class without length.
#[must_use]
pub fn by_class(class: Row<TapeClass>, length: Length, from_surface: bool) -> Given<Length> {
    let metres = (length.mm().max(0.0) / 1000.0).ceil();
    let TapeClass { a_mm, b_mm, c_mm } = class.value;
    let surface = if from_surface { c_mm } else { 0.0 };
    class.with(Length::millimetres(a_mm + b_mm * metres + surface)).given()
}

/// The same of a tape whose class nobody said: the worst of them.
#[must_use]
pub fn of_unknown_class(length: Length, from_surface: bool) -> Given<Length> {
    let Given { value, .. } = by_class(CLASS_III, length, from_surface);
    Given::new(value, Label::Chosen).because("the worst class of tape, as nobody said which it is")
}

/// What a tape sold by the table of the United States may be off over a length from its zero. Past the table's end each
/// further 100 ft adds as much again.
#[must_use]
pub fn by_table(length: Length) -> Given<Length> {
    let feet = length.in_inches().max(0.0) / 12.0;
    let [.., (longest, most)] = US_TAPE.value;
    let whole = (feet / longest).floor();
    let rest = feet - whole * longest;
    let found = US_TAPE.value.iter().find(|(up_to, _)| rest <= *up_to).map_or(most, |(_, off)| *off);
    let rest_off = if rest > 0.0 || whole == 0.0 { found } else { 0.0 };
    US_TAPE.with(Length::inches(whole * most + rest_off)).given()
}

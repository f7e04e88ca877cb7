//! How far off tapes, levels and lines may be.

use super::Row;

/// The maximum permissible error of a class of tape, in millimetres: `a + b L` between two marks, L in metres rounded
/// up to the next whole one, and `c` more where one end is a surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TapeClass {
    /// Without length.
    pub a_mm: f64,
    /// For each metre.
    pub b_mm: f64,
    /// For a hook or an end.
    pub c_mm: f64,
}

const MID: &str = "Directive 2014/32/EU, Annex X (MI-008), table 1";

/// A tape of class I.
pub const CLASS_I: Row<TapeClass> = Row::read(TapeClass { a_mm: 0.1, b_mm: 0.1, c_mm: 0.1 }, MID);
/// A tape of class II.
pub const CLASS_II: Row<TapeClass> = Row::read(TapeClass { a_mm: 0.3, b_mm: 0.2, c_mm: 0.2 }, MID);
/// A tape of class III.
pub const CLASS_III: Row<TapeClass> = Row::read(TapeClass { a_mm: 0.6, b_mm: 0.4, c_mm: 0.3 }, MID);

/// What a metal tape may be off from zero: up to so many feet, so many inches.
pub const US_TAPE: Row<[(f64, f64); 5]> = Row::second_hand(
    [(6.0, 1.0 / 32.0), (30.0, 1.0 / 16.0), (55.0, 1.0 / 8.0), (80.0, 3.0 / 16.0), (100.0, 1.0 / 4.0)],
    "NIST Handbook 44 section 5.52, second-hand",
);

/// A spirit level of construction grade, millimetres in a metre: the worse of the two that are sold.
pub const SPIRIT_LEVEL_MM_PER_M: Row<f64> =
    Row::second_hand(1.0, "construction levels as their makers print it, second-hand");
/// A line laser, millimetres in a metre.
pub const LINE_LASER_MM_PER_M: Row<f64> =
    Row::read(0.3, "a laser maker's manual, its check between two walls");
/// The width of a pencil line: 1 mm, the wider of what is usual.
pub const PENCIL_MM: Row<f64> = Row::memory(1.0, "a pencil line is 0.5 to 1 mm wide");

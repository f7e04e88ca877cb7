//! Cables of low voltage: how far from power, how bent, how long, what they pass through.

use super::Row;

/// From the conductors of power, in inches. Inspectors differ where the power runs in a sheathed cable: told, never a
/// stop.
pub const FROM_POWER_IN: Row<f64> =
    Row::read(2.0, "NEC 800.133(A)(2) by its older text 800.52(A)(2), as quoted");
/// Least radius of a bend of four-pair cable, in outside diameters.
pub const BEND_NETWORK: Row<f64> = Row::second_hand(4.0, "TIA-568.0-D, second-hand");
/// Least radius of a bend of fibre cable, in outside diameters.
pub const BEND_FIBRE: Row<f64> = Row::second_hand(10.0, "a broadcast engineering glossary, second-hand");
/// Least radius of a bend of any other cable, in outside diameters.
pub const BEND_OTHER: Row<f64> =
    Row::chosen(10.0, "no standard gives one for picture leads; as fibre, the largest read");
/// Left over at each end, in inches.
pub const SLACK_IN: Row<f64> = Row::second_hand(12.0, "two installation guides, second-hand");
/// How far a passive picture lead carries, in metres: its specification sets no length.
pub const PASSIVE_PICTURE_M: Row<f64> = Row::second_hand(5.0, "its licensing body's guidance, second-hand");
/// The width of the widest usual plug, in inches.
pub const WIDEST_PLUG_IN: Row<f64> =
    Row::second_hand(0.84, "a guide to tubes for picture leads, second-hand");
/// The outside diameter of a cable that nobody measured, in inches.
pub const USUAL_DIAMETER_IN: Row<f64> = Row::chosen(0.3, "larger than four-pair cable of 1/4 in");
/// How hard four-pair cable may be pulled, in newtons.
pub const PULL_N: Row<f64> = Row::second_hand(110.0, "a maker's cabling practice, second-hand");

//! What published rules ask of things that stand out of a wall, of what hands reach, of what is near a fire, and of
//! what is pulled at.

use super::Row;

/// What sticks out into a way: between these heights in inches, by no more than so many inches.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Projecting {
    /// Edges higher than this are not met by a cane.
    pub above_in: f64,
    /// Edges higher than this are walked under.
    pub to_in: f64,
    /// The most that sticks out between the two.
    pub most_in: f64,
}

/// What sticks out into a way that people walk.
pub const PROJECTING: Row<Projecting> =
    Row::read(Projecting { above_in: 27.0, to_in: 80.0, most_in: 4.0 }, "2010 ADA Standards 307.2");

/// What everyone reaches, unobstructed, in inches above the floor: the lowest and the highest.
pub const REACHED_IN: Row<(f64, f64)> = Row::second_hand((15.0, 48.0), "2010 ADA Standards 308, second-hand");

/// Where outlets and switches of a new dwelling are, in millimetres above the floor: the lowest and the highest middle.
pub const NEW_DWELLING_MM: Row<(f64, f64)> =
    Row::second_hand((450.0, 1200.0), "Approved Document M, volume 1, paragraph 1.18, second-hand");

/// Combustible trim at a masonry fireplace: none so near to its opening, in inches.
pub const TRIM_NONE_IN: Row<f64> = Row::read(6.0, "IRC R1001.11 exception 4 (2018), as quoted");
/// Farther off than this it is free, in inches.
pub const TRIM_FREE_IN: Row<f64> = Row::read(12.0, "IRC R1001.11 exception 4 (2018), as quoted");
/// Between the two it may stand out so much for each inch of distance, in inches.
pub const TRIM_PER_IN: Row<f64> = Row::read(1.0 / 8.0, "IRC R1001.11 exception 4 (2018), as quoted");

/// The share of its weight that a standing display is pushed with, and the most, in newtons.
pub const STEADY: Row<(f64, f64)> =
    Row::second_hand((0.20, 250.0), "IEC 62368-1:2018 clause 8.6.5, second-hand");

//! Specific gravity of lumber by species, oven-dry weight and volume.

use super::Row;

/// A species combination and its specific gravity.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Species {
    /// Its name in the grading rules.
    pub name: &'static str,
    /// Its specific gravity.
    pub gravity: Row<f64>,
}

const SOURCE: &str = "NDS 2018 Table 12.3.3A, p. 87, second-hand";

const fn species(name: &'static str, gravity: f64) -> Species {
    Species { name, gravity: Row::second_hand(gravity, SOURCE) }
}

/// The species that a stud in a house may be of.
pub const SPECIES: [Species; 14] = [
    species("Spruce-Pine-Fir", 0.42),
    species("Spruce-Pine-Fir (South)", 0.36),
    species("Hem-Fir", 0.43),
    species("Hem-Fir (North)", 0.46),
    species("Douglas Fir-Larch", 0.50),
    species("Douglas Fir-Larch (North)", 0.49),
    species("Douglas Fir-South", 0.46),
    species("Southern Pine", 0.55),
    species("Mixed Southern Pine", 0.51),
    species("Eastern Softwoods", 0.36),
    species("Western Woods", 0.36),
    species("Northern Species", 0.35),
    species("Northern White Cedar", 0.31),
    species("Red Oak", 0.67),
];

/// The specific gravity of a stud that nobody identified.
pub const UNIDENTIFIED: Row<f64> = Row::chosen(
    0.36,
    "a low value of the usual softwoods of studs; nothing in a stud's looks tells its species",
);

/// The least and the most specific gravity that the equations are valid for.
pub const VALID: Row<(f64, f64)> =
    Row::second_hand((0.31, 0.73), "NDS 2018 section 12.2, range of its tables, second-hand");

//! The screws between a bracket and a piece. Nothing here has a part in a verdict.

use super::Row;

/// How far a screw is turned into a piece whose maker says nothing, millimetres.
pub const TURN_IN_MM: Row<f64> = Row::chosen(8.0, "common practice, no source");

/// The lengths under the head that shops keep, millimetres: the preferred ones.
pub const LENGTHS_MM: Row<[f64; 17]> = Row::memory(
    [8.0, 10.0, 12.0, 16.0, 20.0, 25.0, 30.0, 35.0, 40.0, 45.0, 50.0, 55.0, 60.0, 65.0, 70.0, 80.0, 90.0],
    "nominal lengths of ISO 888",
);

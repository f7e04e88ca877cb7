//! Lead holes in wood.

use super::Row;

/// A wood screw's thread part in shear, wood up to G 0.6, and its shank part: share of root and of shank.
pub const SCREW_LIGHT: Row<f64> =
    Row::read(7.0 / 8.0, "an engineering handbook's page on wood screws, lateral load");
/// The same in wood over G 0.6: about the root itself.
pub const SCREW_DENSE: Row<f64> =
    Row::read(1.0, "an engineering handbook's page on wood screws, lateral load");
/// The most for a wood screw pulled straight out, 0.5 < G up to 0.6: share of the root.
pub const SCREW_PULLED_MEDIUM: Row<f64> =
    Row::read(0.70, "an engineering handbook's page on wood screws, withdrawal");
/// The most for a wood screw pulled straight out, G over 0.6: share of the root.
pub const SCREW_PULLED_DENSE: Row<f64> =
    Row::read(0.90, "an engineering handbook's page on wood screws, withdrawal");
/// The least that splits nothing, where no least is published: share of the root.
pub const SCREW_LEAST: Row<f64> =
    Row::chosen(0.60, "no least is published; under this a screw tends to split or break");

/// A lag's thread part in the lightest class of wood: share of D. The range itself was read.
pub const LAG_LIGHT: Row<(f64, f64)> = Row::second_hand((0.40, 0.70), "NDS 2018 section 12.1.4, second-hand");
/// In the middle class.
pub const LAG_MEDIUM: Row<(f64, f64)> =
    Row::second_hand((0.60, 0.75), "NDS 2018 section 12.1.4, second-hand");
/// In the densest class.
pub const LAG_DENSE: Row<(f64, f64)> = Row::second_hand((0.65, 0.85), "NDS 2018 section 12.1.4, second-hand");
/// Up to the first is light, over the second dense.
pub const CLASSES: Row<(f64, f64)> = Row::memory((0.5, 0.6), "NDS 2018 section 12.1.4, from memory");

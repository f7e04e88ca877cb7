//! The revised lifting equation of a public institute of occupational safety: its constants, in kilograms and
//! centimetres.

use super::Row;

const SOURCE: &str = "revised NIOSH lifting equation, second-hand";

/// What may be lifted under the best conditions, kilograms.
pub const CONSTANT_KG: Row<f64> = Row::second_hand(23.0, SOURCE);
/// The hands' distance from the ankles that needs no allowance, centimetres.
pub const NEAR_CM: Row<f64> = Row::second_hand(25.0, SOURCE);
/// Farther off than this nothing is lifted, centimetres.
pub const FAR_CM: Row<f64> = Row::second_hand(63.0, SOURCE);
/// The hands' best height, centimetres.
pub const BEST_HEIGHT_CM: Row<f64> = Row::second_hand(75.0, SOURCE);
/// What each centimetre above or below that takes off.
pub const PER_HEIGHT_CM: Row<f64> = Row::second_hand(0.003, SOURCE);
/// Higher than this nothing is lifted, centimetres.
pub const HIGHEST_CM: Row<f64> = Row::second_hand(178.0, SOURCE);
/// What a lift over some height keeps at least, and what it loses by, centimetres.
pub const OVER_CM: Row<(f64, f64)> = Row::second_hand((0.82, 4.5), SOURCE);
/// What each degree of twist takes off.
pub const PER_TWIST_DEG: Row<f64> =
    Row::memory(0.0032, "revised NIOSH lifting equation: it gives the values of the published table");

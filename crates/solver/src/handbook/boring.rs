//! How large a hole or notch a wood stud may have, and when a cable in it is covered with a plate.

use super::Row;

/// Largest bored hole in a bearing or outside wall, as a share of the stud's depth. The rule lets a doubled stud lose
/// as much as one that does not bear; nobody sees through a wall whether two studs are one, so it is not used.
pub const BORE_BEARING: Row<f64> = Row::read(0.40, "IRC 2018 section R602.6, item 2");
/// The same where the wall is known not to bear.
pub const BORE_NOT_BEARING: Row<f64> = Row::read(0.60, "IRC 2018 section R602.6, item 2");
/// Largest notch in a bearing or outside wall, as a share of the stud's depth.
pub const NOTCH_BEARING: Row<f64> =
    Row::second_hand(0.25, "IRC section R602.6, item 1, older wording and a state rule, second-hand");
/// The same where the wall is known not to bear.
pub const NOTCH_NOT_BEARING: Row<f64> =
    Row::second_hand(0.40, "IRC section R602.6, item 1, older wording and a state rule, second-hand");
/// From the edge of a bored hole to the stud's edge, at least, in inches. One printing says "not more than"; all other
/// texts, and safety, say not less.
pub const BORE_EDGE_IN: Row<f64> = Row::read(0.625, "IRC section R602.6, older wording and a state rule");
/// From the edge of a bored hole, or from a cable along framing, to the wood's face: nearer than this, in inches, a
/// steel plate covers it. Written for power wiring.
pub const PLATE_WITHIN_IN: Row<f64> = Row::read(1.25, "NEC 300.4(A)(1), as quoted");
/// The same from cables along framing, or behind the face, to where fasteners are likely.
pub const FASTENER_WITHIN_IN: Row<f64> = Row::second_hand(1.25, "NEC 300.4(D), second-hand");
/// How thick that plate is, at least, in inches.
pub const PLATE_IN: Row<f64> = Row::read(0.0625, "NEC 300.4(A)(1), as quoted");
/// How high a bay may be without a fire block, in feet.
pub const FIRE_BLOCK_FT: Row<f64> = Row::read(10.0, "IRC section R302.11, item 1, as quoted");
/// What stands beside an opening in the wall, at least, in inches: a full stud and a trimmer.
pub const BESIDE_OPENING_IN: Row<f64> = Row::derived(3.0, "two dressed 2x studs, PS 20 sizes");

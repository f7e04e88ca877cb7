//! What sticks out into a way that people walk.

use crate::handbook::clearances::PROJECTING;
use crate::units::Length;

/// Whether an edge so high above the floor may stand out so far.
#[must_use]
pub fn may_stand_out(edge_above_floor: Length, out: Length) -> bool {
    let rule = PROJECTING.value;
    let height = edge_above_floor.in_inches();
    let is_met = rule.above_in < height && height <= rule.to_in;
    !is_met || out.in_inches() <= rule.most_in
}

//! What sticks out into a way that people walk.

use crate::handbook::clearances::PROJECTING;
use crate::units::Length;

/// Whether an edge so high above the floor may stand out so far.
#[must_use]
pub fn may_stand_out(edge_above_floor: Length, out: Length) -> bool {
    let rule = PROJECTING.value;
    let [above, to, most] = [rule.above_in, rule.to_in, rule.most_in].map(Length::inches);
    let is_met = above < edge_above_floor && edge_above_floor <= to;
    !is_met || out <= most
}

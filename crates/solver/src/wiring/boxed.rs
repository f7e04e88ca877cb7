//! How deep a wall is behind its face.

use crate::ledger::{Given, Ledger, Put, Step};
use crate::units::Length;

/// From the wall's face to the back board: what stands in front of the framing, and the framing.
#[must_use]
pub fn depth_behind<L: Ledger>(ledger: &mut L, front: Given<Length>, stud: Given<Length>) -> Given<Length> {
    let depth = front.value + stud.value;
    let label = front.label.weaker(stud.label).worked_out();
    ledger.write(|| Step {
        name: "from the face to the back board",
        formula: "c = t + h",
        put: vec![Put::given("t", front), Put::given("h", stud)],
        result: depth.into(),
        source: "geometry",
        label,
    });
    Given::new(depth, label)
}

/// What a box leaves of the depth behind the face; below zero it does not go in.
#[must_use]
pub fn to_spare<L: Ledger>(ledger: &mut L, room: Given<Length>, deep: Given<Length>) -> Given<Length> {
    let spare = room.value - deep.value;
    let label = room.label.weaker(deep.label).worked_out();
    ledger.write(|| Step {
        name: "to spare behind the box",
        formula: "s = c - b",
        put: vec![Put::given("c", room), Put::given("b", deep)],
        result: spare.into(),
        source: "geometry",
        label,
    });
    Given::new(spare, label)
}

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

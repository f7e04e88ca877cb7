//! Holes and notches in wood studs (IRC section R602.6), and the plate over them (NEC 300.4(A)(1)).

use crate::handbook::boring;
use crate::ledger::{Given, Label, Ledger, Put, Step};
use crate::units::Length;

/// What a stud that is bored has to do.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Bears {
    /// It bears, stands in an outside wall, or nobody knows.
    Bearing,
    /// It is known not to bear.
    Not,
}

/// The hole that cables are drawn through one after another: the widest plug beside all others' cables, at least their
/// tube as it is outside. Each cable is its larger plug and its outside diameter; none want nothing.
#[must_use]
pub fn needed<L: Ledger>(
    ledger: &mut L,
    cables: &[(Given<Length>, Given<Length>)],
    tube: Option<Given<Length>>,
) -> Given<Length> {
    let none = Given::measured(Length::default());
    let outside = cables.iter().fold(Length::default(), |sum, (_, outside)| sum + outside.value);
    let beside =
        |(plug, outside): &(Given<Length>, Given<Length>)| plug.value.max(outside.value) - outside.value;
    let more = cables.iter().map(beside).fold(Length::default(), Length::max);
    let tube = tube.unwrap_or(none);
    let needed = (outside + more).max(tube.value);
    let labels = cables.iter().flat_map(|(plug, outside)| [plug.label, outside.label]);
    let label = labels.fold(tube.label, Label::weaker).worked_out();
    ledger.write(|| Step {
        name: "hole that the cables need",
        formula: "d = max(sum D + p, B)",
        put: cables
            .iter()
            .map(|(_, outside)| Put::given("D", *outside))
            .chain([Put::new("p", more, label).because("what the widest plug is wider than its cable")])
            .chain([Put::given("B", tube)])
            .collect(),
        result: needed.into(),
        source: "geometry: side by side in a row",
        label,
    });
    Given::new(needed, label)
}

/// The largest hole that a stud so deep may have, both of its edges kept.
///
/// A depth of nothing gives nothing.
#[must_use]
pub fn largest_bore<L: Ledger>(ledger: &mut L, depth: Given<Length>, bears: Bears) -> Given<Length> {
    let row = match bears {
        Bears::Bearing => boring::BORE_BEARING,
        Bears::Not => boring::BORE_NOT_BEARING,
    };
    let edges = Length::inches(2.0 * boring::BORE_EDGE_IN.value);
    let largest = (depth.value * row.value).min(depth.value - edges).max(Length::default());
    let label = depth.label.weaker(row.label).weaker(boring::BORE_EDGE_IN.label).worked_out();
    ledger.write(|| Step {
        name: "largest bored hole",
        formula: "d = min(share h, h - 2 e)",
        put: vec![
            Put::new("share", crate::ledger::Amount::bare(row.value), row.label),
            Put::given("h", depth),
            Put::new("e", Length::inches(boring::BORE_EDGE_IN.value), boring::BORE_EDGE_IN.label),
        ],
        result: largest.into(),
        source: row.source,
        label,
    });
    Given::new(largest, label)
}

/// The deepest notch.
#[must_use]
pub fn deepest_notch<L: Ledger>(ledger: &mut L, depth: Given<Length>, bears: Bears) -> Given<Length> {
    let row = match bears {
        Bears::Bearing => boring::NOTCH_BEARING,
        Bears::Not => boring::NOTCH_NOT_BEARING,
    };
    let deepest = depth.value * row.value;
    let label = depth.label.weaker(row.label).worked_out();
    ledger.write(|| Step {
        name: "deepest notch",
        formula: "n = share h",
        put: vec![
            Put::new("share", crate::ledger::Amount::bare(row.value), row.label),
            Put::given("h", depth),
        ],
        result: deepest.into(),
        source: row.source,
        label,
    });
    Given::new(deepest, label)
}

/// From the edge of a hole in the middle of a stud to the stud's edge; negative for a hole wider than the stud.
#[must_use]
pub fn edge_left<L: Ledger>(ledger: &mut L, depth: Given<Length>, hole: Given<Length>) -> Given<Length> {
    let left = (depth.value - hole.value) / 2.0;
    let label = depth.label.weaker(hole.label).worked_out();
    ledger.write(|| Step {
        name: "from the hole's edge to the stud's",
        formula: "e = (h - d) / 2",
        put: vec![Put::given("h", depth), Put::given("d", hole)],
        result: left.into(),
        source: "geometry",
        label,
    });
    Given::new(left, label)
}

/// Whether a hole in the middle of a stud wants a steel plate over it.
#[must_use]
pub fn wants_plate<L: Ledger>(ledger: &mut L, depth: Given<Length>, hole: Given<Length>) -> bool {
    edge_left(ledger, depth, hole).value.in_inches() < boring::PLATE_WITHIN_IN.value - 1e-9
}

/// The largest hole in the middle of a stud that wants no plate; nothing in a stud too shallow for one.
#[must_use]
pub fn largest_without_plate<L: Ledger>(ledger: &mut L, depth: Given<Length>) -> Given<Length> {
    let clear = Length::inches(boring::PLATE_WITHIN_IN.value);
    let largest = (depth.value - clear * 2.0).max(Length::default());
    let label = depth.label.weaker(boring::PLATE_WITHIN_IN.label).worked_out();
    ledger.write(|| Step {
        name: "largest hole without a plate",
        formula: "d = h - 2 c",
        put: vec![Put::given("h", depth), Put::new("c", clear, boring::PLATE_WITHIN_IN.label)],
        result: largest.into(),
        source: boring::PLATE_WITHIN_IN.source,
        label,
    });
    Given::new(largest, label)
}

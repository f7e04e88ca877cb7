//! Lead holes in a stud: how wide, with which of the bits at hand, and how deep.

use super::bite::Bite;
use super::screw::{Screw, ScrewKind};
use super::why::Known;
use super::withdrawal::valid_gravity;
use crate::handbook::Row;
use crate::handbook::lead_hole as book;
use crate::ledger::{Given, Label, Ledger, Put, Step};
use crate::units::{Length, Ratio};

/// A lead hole, as the rules have it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LeadHole {
    /// The least diameter of the part for the thread.
    pub least: Length,
    /// The most.
    pub most: Length,
    /// The diameter of the part for the smooth shank, and how deep that part is in wood; none where all of what
    /// is in wood is thread.
    pub shank: Option<(Length, Length)>,
    /// How deep in wood, tip included.
    pub depth: Given<Length>,
    /// Where the range is from: the classes of wood for lags are from memory.
    pub label: Label,
}

/// The lead hole of a fastener in wood of a specific gravity.
///
/// A screw on a plate is both pulled and sheared: its hole is no wider than either rule allows.
///
/// # Errors
/// Not known where G is outside of its table.
pub fn lead_hole<L: Ledger>(
    ledger: &mut L,
    screw: &Screw,
    wood: Given<Ratio>,
    bite: &Bite,
) -> Known<LeadHole> {
    let g = valid_gravity(wood)?;
    let (light, dense) = book::CLASSES.value;
    let by_class = |three: [Row<f64>; 3]| {
        let [soft, middle, hard] = three;
        if g <= light {
            soft
        } else if g <= dense {
            middle
        } else {
            hard
        }
    };
    let own_shank = Row { value: 1.0, ..book::SCREW_DENSE };
    let (of, least, most, shank, label) = match screw.kind {
        ScrewKind::Lag => {
            let rows = [book::LAG_LIGHT, book::LAG_MEDIUM, book::LAG_DENSE];
            let least = by_class(rows.map(|row| row.with(row.value.0)));
            let most = by_class(rows.map(|row| row.with(row.value.1)));
            (screw.diameter, least, most, own_shank, least.label.weaker(book::CLASSES.label))
        }
        ScrewKind::WoodScrew | ScrewKind::Structural => {
            let most = by_class([book::SCREW_LIGHT, book::SCREW_PULLED_MEDIUM, book::SCREW_PULLED_DENSE]);
            let shank = by_class([book::SCREW_LIGHT, book::SCREW_LIGHT, book::SCREW_DENSE]);
            let label = book::SCREW_LEAST.label.weaker(screw.root.label);
            (screw.root, book::SCREW_LEAST, most, shank, label)
        }
    };
    let is_lag = screw.kind == ScrewKind::Lag;
    let width = |ledger: &mut L, name, formula, row: Row<f64>| {
        let width = of.value * row.value;
        ledger.write(|| {
            let mut put =
                vec![Put::given("k", row.given()), Put::given(if is_lag { "D" } else { "D_r" }, of)];
            put.push(Put::given("G", wood));
            Step { name, formula, put, result: width.into(), source: row.source, label }
        });
        width
    };
    let told = if is_lag { ["d_least = k D", "d_most = k D"] } else { ["d_least = k D_r", "d_most = k D_r"] };
    let [least_told, most_told] = told;
    let least = width(ledger, "least width of the lead hole", least_told, least);
    let most = width(ledger, "most width of the lead hole", most_told, most);
    let smooth = bite.depth.value - screw.thread.value;
    let shank_width = screw.diameter.value * shank.value;
    let shank = (smooth.mm() > crate::tolerance::SAME_PLACE_MM).then_some((shank_width, smooth));
    Ok(LeadHole { least, most, shank, depth: bite.depth, label })
}

/// The bits at hand.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bits<'a> {
    /// Those of the kit, as wide as they were measured or as is printed on them.
    Kit(&'a [Length]),
    /// Those that any set has (chosen).
    AnySet(&'a [Length]),
}

/// The bit to take of those at hand: the one nearest the middle of the range, the thinner of two as near.
/// `None` where none is in the range.
#[must_use]
pub fn bit<L: Ledger>(ledger: &mut L, hole: &LeadHole, bits: Bits<'_>) -> Option<Length> {
    let (bits, source) = match bits {
        Bits::Kit(bits) => (
            bits,
            "of the kit's bits that are long enough the nearest to the middle of the range, of two as near the thinner \
             (chosen)",
        ),
        Bits::AnySet(bits) => (
            bits,
            "of the bits of any set the nearest to the middle of the range, of two as near the thinner (chosen)",
        ),
    };
    let middle = (hole.least + hole.most) / 2.0;
    let off = |bit: &Length| (*bit - middle).mm().abs();
    let fits = |bit: &&Length| **bit >= hole.least && **bit <= hole.most;
    let bit = bits
        .iter()
        .filter(fits)
        .copied()
        .min_by(|a, b| off(a).total_cmp(&off(b)).then(a.mm().total_cmp(&b.mm())))?;
    ledger.write(|| Step {
        name: "bit of the lead hole",
        formula: "d = nearest((d_least + d_most) / 2)",
        put: vec![
            Put::result("d_least", hole.least, hole.label),
            Put::result("d_most", hole.most, hole.label),
        ],
        result: bit.into(),
        source,
        label: hole.label.weaker(Label::Chosen),
    });
    Some(bit)
}

/// How deep a lead hole is from the wall's face: its depth in wood, and what stands in front of that.
#[must_use]
pub fn from_face<L: Ledger>(ledger: &mut L, hole: &LeadHole, front: Given<Length>) -> Length {
    let depth = hole.depth.value + front.value;
    ledger.write(|| Step {
        name: "depth of the lead hole from the wall's face",
        formula: "d_p = p + gap",
        put: vec![Put::result("p", hole.depth.value, hole.depth.label), Put::given("gap", front)],
        result: depth.into(),
        source: "geometry: as deep as the fastener, its tip included",
        label: hole.depth.label.weaker(front.label).worked_out(),
    });
    depth
}

/// How deep a hole is from the wall's face where no rule of wood tells: as far as the fastener comes through the plate,
/// and in concrete the room for its dust.
#[must_use]
pub fn from_face_with_room<L: Ledger>(
    ledger: &mut L,
    length: Given<Length>,
    washer: Given<Length>,
    sheet: Given<Length>,
    room: Option<Given<Length>>,
) -> Length {
    let depth = length.value - washer.value - sheet.value + room.map_or(Length::default(), |room| room.value);
    ledger.write(|| {
        let mut put = vec![Put::given("L", length), Put::given("t_w", washer), Put::given("t_s", sheet)];
        put.extend(room.map(|room| Put::given("r", room)));
        let label = put.iter().map(|put| put.label).fold(Label::Derived, Label::weaker);
        let (formula, source) = match room {
            Some(_) => (
                "d_p = L - t_w - t_s + r",
                "geometry: as far as the fastener comes through the plate, and room for the dust of concrete (chosen)",
            ),
            None => ("d_p = L - t_w - t_s", "geometry: as far as the fastener comes through the plate"),
        };
        let name = "depth of the hole from the wall's face";
        Step { name, formula, put, result: depth.into(), source, label }
    });
    depth
}

//! How near to edges, ends and one another fasteners may stand, and which way they then carry.

use super::screw::{Screw, ScrewKind};
use super::why::{Input, Known, Why, above_zero, zero_or_more};
use crate::handbook::Row;
use crate::handbook::placing as book;
use crate::ledger::{Blank, Given, Label, Ledger, Put, Step};
use crate::tolerance::SAME_PLACE_MM;
use crate::units::Length;

/// Which way a fastener carries shear in its stud.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Carries {
    /// Along the stud only: a lag in a single 2x face.
    Along,
    /// Along and across.
    Both,
}

/// Where a fastener stands in a stud's face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct InFace {
    /// The width of the face.
    pub face: Given<Length>,
    /// How far from the middle of the face it stands, either way.
    pub drift: Given<Length>,
    /// How far the stud may be from where it is thought to be, either way.
    pub doubt: Given<Length>,
}

/// What a fastener needs beside it, load along the grain or straight out; and across the grain.
#[must_use]
pub fn edge_needs(screw: &Screw) -> (Length, Length) {
    let d = screw.diameter.value;
    let large = (d * book::LAG_EDGE.value, d * book::LAG_LOADED_EDGE.value);
    let small = d * book::SCREW_EDGE.value;
    match (&screw.report, screw.is_large()) {
        (Some(report), true) => (report.least_edge.max(large.0), report.least_edge.max(large.1)),
        (Some(report), false) => (report.least_edge.max(small), report.least_edge.max(small)),
        (None, true) => large,
        (None, false) => (small, small),
    }
}

/// Which way a fastener carries where it stands in its stud's face.
///
/// # Errors
/// Refused where it is too near an edge of the face after drift and doubt.
pub fn carries<L: Ledger>(ledger: &mut L, screw: &Screw, at: &InFace) -> Known<Carries> {
    let face = above_zero(at.face.value, Input::Face)?;
    let has = left_beside(face, at)?;
    let (needs, across) = edge_needs(screw);
    let own = if screw.report.is_some() { Label::Stated } else { Label::Read };
    write_edge(
        ledger,
        at,
        has,
        (needs, across, own),
        match screw.is_large() {
            true => book::LAG_EDGE.source,
            false => book::SCREW_EDGE.source,
        },
    );
    if has.mm() < needs.mm() - SAME_PLACE_MM {
        Err(Why::Edge { has, needs })
    } else if has.mm() < across.mm() - SAME_PLACE_MM {
        Ok(Carries::Along)
    } else {
        Ok(Carries::Both)
    }
}

/// Writes down what is left beside it, and what it needs there.
fn write_edge<L: Ledger>(
    ledger: &mut L,
    at: &InFace,
    has: Length,
    (needs, across, own): (Length, Length, Label),
    source: &'static str,
) {
    ledger.write(|| Step {
        name: "left to the edge of the stud's face",
        formula: "a = face/2 - drift - doubt",
        put: vec![
            Put::given("face", at.face),
            Put::given("drift", at.drift),
            Put::given("doubt", at.doubt),
            Put::new("needed, load along the stud", needs, own),
            Put::new("needed, load across it", across, own),
        ],
        result: has.into(),
        source,
        label: [at.drift.label, at.doubt.label, own]
            .into_iter()
            .fold(at.face.label.worked_out(), Label::weaker),
    });
}

/// What is left beside it to the nearer edge.
fn left_beside(face: Length, at: &InFace) -> Known<Length> {
    let drift = zero_or_more(at.drift.value.abs(), Input::Face)?;
    let doubt = zero_or_more(at.doubt.value.abs(), Input::Face)?;
    Ok(face / 2.0 - drift - doubt)
}

/// So many diameters, written down.
fn diameters<L: Ledger>(
    ledger: &mut L,
    (name, formula): (&'static str, &'static str),
    diameter: Given<Length>,
    row: &Row<f64>,
) -> Length {
    let needs = diameter.value * row.value;
    ledger.write(|| Step {
        name,
        formula,
        put: vec![Put::given("k", row.given()), Put::given("D", diameter)],
        result: needs.into(),
        source: row.source,
        label: row.label.weaker(diameter.label).worked_out(),
    });
    needs
}

const APART: (&str, &str) = ("least distance from one to the next", "s_least = k D");

/// Two fasteners of one stud must be at least this far apart along it. `lead` says whether lead holes are drilled.
#[must_use]
pub fn apart_in_stud<L: Ledger>(ledger: &mut L, screw: &Screw, lead: bool) -> Length {
    let (with, without) = book::SCREW_SPACING.value;
    let small = book::SCREW_SPACING.with(if lead { with } else { without });
    let row = match screw.kind {
        ScrewKind::Lag => book::LAG_SPACING,
        // A report's own spacing is not typed in: the larger of both tables.
        ScrewKind::Structural => book::LAG_SPACING.larger(small),
        ScrewKind::WoodScrew => small,
    };
    diameters(ledger, APART, screw.diameter, &row)
}

/// Whether two fasteners of one stud stand too near each other: so many millimetres apart across it and along it.
///
/// What they are apart along the stud counts. Side by side is never enough in a single 2x face, and elsewhere
/// only where they are as far apart across as they would have to be along (chosen: no spacing across the grain
/// was read for lags).
#[must_use]
pub fn too_near_in_stud(screw: &Screw, lead: bool, face: Length, across_mm: f64, along_mm: f64) -> bool {
    let needs_mm = apart_in_stud(&mut Blank, screw, lead).mm() - SAME_PLACE_MM;
    let single = face.in_inches() <= book::SINGLE_FACE_IN + 1e-9;
    let beside = !single && across_mm.abs() >= needs_mm;
    // Written so that what is not a number is too near.
    !(along_mm.abs() >= needs_mm || beside)
}

/// From a fastener to the end of its stud, at least. `toward` says whether load points to that end.
#[must_use]
pub fn to_end<L: Ledger>(ledger: &mut L, screw: &Screw, lead: bool, toward: bool) -> Length {
    let large = if toward { book::LAG_LOADED_END } else { book::LAG_END };
    let (with, without) = book::SCREW_END.value;
    let small = large.larger(book::SCREW_END.with(if lead { with } else { without }));
    let told = if toward {
        ("least distance to a stud's end that load may point to", "e_least = k D")
    } else {
        ("least distance to a stud's other end", "e_least = k D")
    };
    diameters(ledger, told, screw.diameter, if screw.kind == ScrewKind::Lag { &large } else { &small })
}

/// From one to the next in sheet steel, at least; in any direction.
#[must_use]
pub fn apart_in_steel<L: Ledger>(ledger: &mut L, diameter: Length) -> Length {
    diameters(ledger, APART, Given::measured(diameter), &book::STEEL_SPACING)
}

/// From one to the next in concrete, at least; in any direction.
#[must_use]
pub fn apart_in_concrete<L: Ledger>(ledger: &mut L, diameter: Length) -> Length {
    diameters(ledger, APART, Given::measured(diameter), &book::CONCRETE_SPACING)
}

/// From a screw to the edge of concrete, at least.
#[must_use]
pub fn edge_in_concrete<L: Ledger>(ledger: &mut L, diameter: Length) -> Length {
    let told = ("least distance to an edge of the concrete", "e_least = k D");
    diameters(ledger, told, Given::measured(diameter), &book::CONCRETE_EDGE)
}

/// From a screw to the edge of a steel stud's face, at least.
///
/// # Errors
/// Refused where less is left after drift and doubt.
pub fn edge_in_steel<L: Ledger>(ledger: &mut L, diameter: Length, at: &InFace) -> Known<()> {
    let diameter = above_zero(diameter, Input::Diameter)?;
    let face = above_zero(at.face.value, Input::Face)?;
    let has = left_beside(face, at)?;
    let needs = diameter * book::STEEL_EDGE.value;
    write_edge(ledger, at, has, (needs, needs, book::STEEL_EDGE.label), book::STEEL_EDGE.source);
    if has.mm() < needs.mm() - SAME_PLACE_MM { Err(Why::Edge { has, needs }) } else { Ok(()) }
}

//! Fasteners that are not on the truck: more of a size that is, and other lengths of it.

use super::trying::Trying;
use super::{Change, Gives, MendPlan};
use crate::job::Job;
use crate::job::kit::{FastenerKind, FastenerStock};
use crate::subject::Id;
use crate::tolerance::same;
use crate::units::{Length, LengthUnit};

/// Of so many sizes of the kit other lengths are tried (chosen).
const SIZES: usize = 2;

/// What helps.
pub(super) fn mends(trying: &Trying<'_>) -> Vec<MendPlan> {
    let more = trying.job.kit.fasteners.iter().filter_map(|stock| more(trying, stock));
    let mut mends: Vec<MendPlan> = more.collect();
    mends.extend(sizes(trying).iter().filter_map(|stock| other_length(trying, stock)));
    mends
}

/// As many of a size as the plate takes.
fn more(trying: &Trying<'_>, stock: &FastenerStock) -> Option<MendPlan> {
    let has = stock.count?;
    let holes = trying.mounted()?.holes.len();
    if usize::try_from(has).is_ok_and(|has| has >= holes) {
        return None;
    }
    let counted = |job: &mut Job, count: Option<u32>| {
        if let Some(own) = job.kit.fasteners.iter_mut().find(|own| own.id == stock.id) {
            own.count = count;
        }
    };
    let gives = trying.gives(&|job| counted(job, None))?;
    let needs = u32::try_from(gives.fasteners).ok().filter(|needs| *needs > has)?;
    let (kind, diameter, length) = (stock.kind, stock.diameter, stock.length);
    let change = Change::More { kind, diameter, length, more: needs - has };
    Some(trying.mend(change, gives, Some(&|job| counted(job, Some(needs)))))
}

/// The sizes of which other lengths are tried: that in use, else the first of the kit.
fn sizes(trying: &Trying<'_>) -> Vec<FastenerStock> {
    let used: Vec<&Id> = trying
        .mounted()
        .into_iter()
        .flat_map(|mounted| &mounted.fastening.fasteners)
        .map(|fastener| &fastener.stock)
        .collect();
    let stocks = trying.job.kit.fasteners.iter();
    // What goes by a report is what that says, at its own length; an anchor counts for nothing.
    let is_made_in_lengths = |stock: &&FastenerStock| match stock.kind {
        FastenerKind::Lag => stock.to_standard != Some(false),
        FastenerKind::WoodScrew | FastenerKind::SheetMetalScrew | FastenerKind::ConcreteScrew => true,
        FastenerKind::StructuralScrew
        | FastenerKind::Fixing
        | FastenerKind::Anchor
        | FastenerKind::DrywallScrew => false,
    };
    let such = stocks.filter(is_made_in_lengths);
    such.filter(|stock| used.is_empty() || used.contains(&&stock.id)).take(SIZES).cloned().collect()
}

/// The length nearest to that of a size which helps.
fn other_length(trying: &Trying<'_>, stock: &FastenerStock) -> Option<MendPlan> {
    let (diameter, now) = (stock.diameter?, stock.length?);
    let is_there = |length: Length| {
        trying.job.kit.fasteners.iter().any(|own| {
            own.kind == stock.kind
                && own.diameter.is_some_and(|own| same(own, diameter))
                && own.length.is_some_and(|own| same(own, length))
        })
    };
    let mut lengths: Vec<Length> = made(now.unit()).into_iter().filter(|length| !is_there(*length)).collect();
    lengths.sort_by(|a, b| (*a - now).mm().abs().total_cmp(&(*b - now).mm().abs()));
    let with = |job: &mut Job, length: Length| {
        let id = job.give_id("fastener");
        let other = FastenerStock { id, length: Some(length), count: None, ..stock.clone() };
        job.kit.fasteners.push(other);
    };
    let (length, gives): (Length, Gives) =
        lengths.into_iter().find_map(|length| Some((length, trying.gives(&|job| with(job, length))?)))?;
    let change = Change::Length { kind: stock.kind, diameter, length };
    Some(trying.mend(change, gives, Some(&|job| with(job, length))))
}

/// The lengths that fasteners are made in: each half inch from 1 in to 6 in, or each 10 mm from 30 mm to 150 mm
/// (chosen: of those in use; whether a shop has one is for the reader to see).
fn made(unit: LengthUnit) -> Vec<Length> {
    match unit {
        LengthUnit::Millimetre => {
            (3_u8..=15).map(|tens| Length::millimetres(f64::from(tens) * 10.0)).collect()
        }
        LengthUnit::Inch | LengthUnit::Mil => {
            (2_u8..=12).map(|halves| Length::inches(f64::from(halves) / 2.0).quantised()).collect()
        }
    }
}

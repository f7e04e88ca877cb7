//! The errors between the struck lines and the piece: the plate on its fasteners, the piece on its plate.

use super::chain::Chain;
use super::{Error, ErrorFrom};
use crate::handbook::measuring::PENCIL_MM;
use crate::job::Job;
use crate::ledger::{Given, Label};
use crate::plan::Plan;
use crate::plan::piece::MountedPlan;
use crate::tolerance::PLATE_SHIFT_MM;
use crate::units::Length;

/// Sideways: the plate's shift, and the piece set to its tick.
pub(super) fn sideways(job: &Job, plan: &Plan, mounted: &MountedPlan) -> Vec<Error> {
    let half_line = PENCIL_MM.with(Length::millimetres(PENCIL_MM.value / 2.0)).given();
    vec![
        Error { from: ErrorFrom::Plate, given: shift(job, mounted) },
        Error { from: ErrorFrom::Graduation, given: half_step(plan) },
        Error { from: ErrorFrom::Pencil, given: half_line },
    ]
}

/// Up and down: the plate's shift, and the drop from the piece's top to its plate as it was measured on the bench.
pub(super) fn up(chain: &Chain<'_>, mounted: &MountedPlan) -> Vec<Error> {
    let (job, plan) = (chain.job, chain.plan);
    let mut errors = vec![Error { from: ErrorFrom::Plate, given: shift(job, mounted) }];
    if let Some(drop) = job.mount(&mounted.id).and_then(|mount| mount.drop) {
        errors.push(Error { from: ErrorFrom::Drop, given: chain.tape(drop, true) });
        errors.push(Error { from: ErrorFrom::Drop, given: half_step(plan) });
    }
    errors
}

/// Turned: one end of the plate shifted up, the other down, over the distance of its outermost fasteners.
pub(super) fn turned(job: &Job, mounted: &MountedPlan) -> Vec<(Error, Length)> {
    let used = mounted.fastening.fasteners.iter();
    let places = used.filter_map(|one| mounted.holes.iter().find(|hole| hole.id == one.hole));
    let xs: Vec<Length> = places.map(|hole| hole.place.x).collect();
    let spread = xs.iter().copied().reduce(Length::max).zip(xs.iter().copied().reduce(Length::min));
    // In one column it turns about what the level holds: over its own width.
    let over = spread.map(|(most, least)| most - least).filter(|over| over.mm() > 1.0);
    let over = over.unwrap_or(mounted.plate.width());
    let given = shift(job, mounted);
    let both = Given { value: given.value * 2.0, ..given };
    vec![(Error { from: ErrorFrom::Plate, given: both }, over)]
}

fn half_step(plan: &Plan) -> Given<Length> {
    Given::new(plan.style.length_of(1) / 2.0, Label::Derived).because("to the nearest graduation")
}

/// How far the plate shifts to either side on its fasteners: as far as the tightest of its holes in use lets it.
fn shift(job: &Job, mounted: &MountedPlan) -> Given<Length> {
    let plate = job.mount(&mounted.id).and_then(|mount| mount.plate.as_ref());
    let clearances = mounted.fastening.fasteners.iter().filter_map(|one| {
        let hole = plate?.holes.iter().find(|hole| hole.id == one.hole)?;
        Some(((hole.diameter? - one.diameter) / 2.0).max(Length::default()))
    });
    match clearances.reduce(Length::min) {
        Some(tightest) => Given::measured(tightest).because("the tightest hole in use, round its fastener"),
        None => Given::new(Length::millimetres(PLATE_SHIFT_MM), Label::Chosen)
            .because("holes that nobody measured, round their fasteners"),
    }
}

//! What stays in the wall, and what drills and turns it in.

use super::{Asks, Carried, CarryLine, short};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::kit::FastenerKind;
use crate::plan::Plan;
use crate::plan::verdict::FastenerPlan;
use crate::subject::Id;
use crate::units::Length;

/// One to spare for so many, and one at least (chosen: one drops, one spins).
const SPARE_IN: usize = 4;

/// A hole so near to a side wall is drilled and driven at a right angle (chosen: a drill and its battery).
const TIGHT_MM: f64 = 200.0;

/// What stands out less than this leaves a drill room beside it (chosen: half of a drill).
const TIGHT_PROUD_MM: f64 = 40.0;

/// A bit in its chuck reaches so deep where the kit does not say (chosen: a usual twist bit).
const BIT_REACH_MM: f64 = 90.0;

pub(super) fn fasteners(job: &Job, plans: &[Plan]) -> Vec<CarryLine> {
    let used: Vec<&FastenerPlan> = plans
        .iter()
        .flat_map(|plan| &plan.pieces)
        .filter_map(|piece| piece.mount.as_ref())
        .flat_map(|mount| &mount.fastening.fasteners)
        .collect();
    let mut lines = Vec::new();
    let mut stocks: Vec<&Id> = Vec::new();
    for one in &used {
        if !stocks.contains(&&one.stock) {
            stocks.push(&one.stock);
        }
    }
    for stock in stocks {
        let alike: Vec<_> = used.iter().filter(|one| one.stock == *stock).collect();
        let Some(first) = alike.first() else { continue };
        let spares = alike.len().div_ceil(SPARE_IN);
        let needed = alike.len() + spares;
        let of_kit = job.kit.fasteners.iter().find(|one| one.id == *stock);
        lines.push(CarryLine {
            what: Carried::Fasteners {
                kind: first.kind,
                diameter: first.diameter,
                length: first.length,
                spares,
            },
            count: Some(needed),
            why: Asks::Holes(alike.len()),
            short_by: of_kit.and_then(|one| short(needed, one.count)),
        });
        let washer = of_kit.and_then(|one| one.washer).filter(|washer| washer.mm() > 0.0);
        if let Some(washer) = washer {
            let why = Asks::Holes(alike.len());
            lines.push(CarryLine {
                what: Carried::Washers(washer),
                count: Some(needed),
                why,
                short_by: None,
            });
        }
    }
    lines.extend(bits(job, &used));
    lines.extend(drivers(plans, &used));
    lines
}

fn bits(job: &Job, used: &[&FastenerPlan]) -> Vec<CarryLine> {
    let mut sizes: Vec<(Length, bool, usize)> = Vec::new();
    let drilled = used.iter().flat_map(|one| {
        let masonry = one.kind == FastenerKind::ConcreteScrew;
        one.lead.into_iter().chain(one.shank.map(|(wide, _)| wide)).map(move |wide| (wide, masonry))
    });
    for (diameter, masonry) in drilled {
        match sizes.iter_mut().find(|(size, of, _)| *size == diameter && *of == masonry) {
            Some((_, _, count)) => *count += 1,
            None => sizes.push((diameter, masonry, 1)),
        }
    }
    let has_masonry = sizes.iter().any(|(_, masonry, _)| *masonry);
    let mut lines: Vec<CarryLine> = sizes
        .into_iter()
        .map(|(diameter, masonry, count)| {
            let stocked = job.kit.bits.iter().any(|bit| bit.diameter == Some(diameter));
            CarryLine {
                what: Carried::Bit { diameter, masonry },
                count: Some(1),
                why: Asks::LeadHoles(count),
                // A kit that tells of no bits does not count them.
                short_by: (!stocked && !job.kit.bits.is_empty()).then_some(1),
            }
        })
        .collect();
    if has_masonry {
        let count = used.iter().filter(|one| one.kind == FastenerKind::ConcreteScrew).count();
        lines.push(CarryLine {
            what: Carried::HammerDrill,
            count: None,
            why: Asks::LeadHoles(count),
            short_by: None,
        });
    }
    let deepest = used.iter().filter_map(|one| one.depth).reduce(Length::max);
    let reach = job.kit.bits.iter().filter_map(|bit| bit.length).reduce(Length::max);
    let reach = reach.unwrap_or(Length::millimetres(BIT_REACH_MM));
    if let Some(deepest) = deepest.filter(|deepest| *deepest > reach) {
        let why = Asks::Deep(deepest);
        lines.push(CarryLine { what: Carried::BitExtension, count: Some(1), why, short_by: None });
    }
    lines
}

fn drivers(plans: &[Plan], used: &[&FastenerPlan]) -> Vec<CarryLine> {
    let mut lines = Vec::new();
    let hex = |kind: FastenerKind| matches!(kind, FastenerKind::Lag | FastenerKind::ConcreteScrew);
    let (hexes, slotted) =
        (used.iter().filter(|one| hex(one.kind)).count(), used.iter().filter(|one| !hex(one.kind)).count());
    for (what, count) in [(Carried::Socket, hexes), (Carried::DriverBits, slotted)] {
        if count > 0 {
            lines.push(CarryLine { what, count: None, why: Asks::Holes(count), short_by: None });
        }
    }
    let tight = plans.iter().map(tight).sum::<usize>();
    if tight > 0 {
        let why = Asks::Tight(tight);
        lines.push(CarryLine { what: Carried::RightAngleDriver, count: None, why, short_by: None });
    }
    lines
}

/// How many holes in use are near a side wall, or what stands out.
fn tight(plan: &Plan) -> usize {
    use crate::job::wall::End;
    let survey = &plan.survey;
    let mounts = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref());
    let holes = mounts.flat_map(|mount| {
        let is_used = |id: &Id| mount.fastening.fasteners.iter().any(|one| one.hole == *id);
        mount.holes.iter().filter(move |hole| is_used(&hole.id))
    });
    let near = |end: End, off: Length| end == End::InsideCorner && off.mm() < TIGHT_MM;
    // Beside, under or over what stands out farther than a drill is wide.
    let out = survey
        .features
        .iter()
        .filter(|one| one.proud.mm() > TIGHT_PROUD_MM && one.kind != FeatureKind::ChimneyBreast);
    let out: Vec<_> = out.map(|one| one.rect.grown(Length::millimetres(TIGHT_MM))).collect();
    let is_under = |place| out.iter().any(|rect| rect.holds(place));
    holes
        .filter(|hole| {
            near(survey.left_end, hole.place.x - survey.outline.left)
                || near(survey.right_end, survey.outline.right - hole.place.x)
                || is_under(hole.place)
        })
        .count()
}

//! A better choice of holes than the plan's, where there is one. Beside `solve`, not in it: asked with the hand off, as
//! a pure function of the job and its plan.
//!
//! The plan tries every set of up to eight usable holes at the few places of the plate that lead, and above that
//! searches by single holes. Here every set of up to twelve is tried at every place, with every position of a slot that
//! stands on a stud's centre or at the slot's ends, as far as those sets can be counted. What is found is offered as
//! holes chosen by hand; the plan of the job with them is made before it is offered, so that what is promised is what
//! the plan will say.

use crate::job::Job;
use crate::job::option::{ByHand, Wanted};
use crate::plan::Plan;
use crate::plan::piece::{MountedPlan, PiecePlan};
use crate::plan::verdict::Fastening;
use crate::solve::{hanging_mut, solve, with_exact_holes};
use crate::subject::Id;
use crate::tape::Offset;
use crate::tolerance::SAME_PLACE_MM;

/// A better choice of holes.
#[derive(Clone, Debug, PartialEq)]
pub struct BetterHoles {
    /// The piece.
    pub piece: Id,
    /// Every hole of its plate, chosen by hand.
    pub holes: Vec<ByHand>,
    /// What the plan says now.
    pub now: Fastening,
    /// What it will say.
    pub then: Fastening,
    /// Whether long slots made more sets than are looked at, so that this is the best of those that were.
    pub searched: bool,
}

/// A better choice for a piece of the plan; `None` where every other is as good or worse, where more than twelve holes
/// are usable, or where the option is only assumed. The plan is the job's own.
#[must_use]
pub fn better_holes(job: &Job, plan: &Plan, piece: &Id) -> Option<BetterHoles> {
    let option = plan.option.as_ref()?;
    let now = mounted(plan, piece)?;
    let exact = with_exact_holes(job, &plan.wall, Some(option), piece);
    let found = mounted(&exact, piece)?;
    if is_same(now, found) {
        return None;
    }
    let holes = by_hand(job, now, found);
    let mut taken = job.clone();
    hanging_mut(&mut taken, plan, of(plan, piece)?)?.holes.clone_from(&holes);
    let then = solve(&taken, &plan.wall, Some(option));
    let then = &mounted(&then, piece)?.fastening;
    // What is promised is what the plan will say.
    let is_kept = fasteners(then) == fasteners(&found.fastening);
    is_kept.then(|| BetterHoles {
        piece: piece.clone(),
        holes,
        now: now.fastening.clone(),
        then: then.clone(),
        searched: found.fastening.verdict.searched,
    })
}

/// The job with a better choice taken. The plan is the job's own.
#[must_use]
pub fn taken(job: &Job, plan: &Plan, better: &BetterHoles) -> Job {
    let mut after = job.clone();
    if let Some(hanging) = of(plan, &better.piece).and_then(|piece| hanging_mut(&mut after, plan, piece)) {
        hanging.holes.clone_from(&better.holes);
    }
    after
}

fn mounted<'a>(plan: &'a Plan, piece: &Id) -> Option<&'a MountedPlan> {
    of(plan, piece)?.mount.as_ref()
}

fn of<'a>(plan: &'a Plan, piece: &Id) -> Option<&'a PiecePlan> {
    plan.pieces.iter().find(|one| one.id == *piece)
}

/// Which fastener goes into which hole.
fn fasteners(fastening: &Fastening) -> Vec<(&Id, &Id)> {
    fastening.fasteners.iter().map(|one| (&one.hole, &one.stock)).collect()
}

/// Whether the same fasteners go into the same places.
fn is_same(a: &MountedPlan, b: &MountedPlan) -> bool {
    let near = |a: &MountedPlan, b: &MountedPlan| {
        a.holes.iter().zip(&b.holes).all(|(a, b)| {
            (a.in_plate.x - b.in_plate.x).mm().abs() <= SAME_PLACE_MM
                && (a.in_plate.y - b.in_plate.y).mm().abs() <= SAME_PLACE_MM
        })
    };
    (a.offset - b.offset).mm().abs() <= SAME_PLACE_MM
        && fasteners(&a.fastening) == fasteners(&b.fastening)
        && near(a, b)
}

/// What was found, written as choices by hand, each slot in use with its place in it.
fn by_hand(job: &Job, now: &MountedPlan, found: &MountedPlan) -> Vec<ByHand> {
    let slots = job.mount(&now.id).and_then(|mount| mount.plate.as_ref()).map(|plate| plate.slots.as_slice());
    let each = found.holes.iter().map(|hole| {
        let used = found.fastening.fasteners.iter().find(|one| one.hole == hole.id);
        let slot = slots.unwrap_or_default().iter().find(|slot| slot.id == hole.id);
        let along = slot.filter(|_| used.is_some()).map(|slot| {
            let along = if slot.upright {
                hole.in_plate.y + slot.down
            } else {
                hole.in_plate.x - slot.right.length()
            };
            Offset(along.quantised())
        });
        ByHand {
            hole: hole.id.clone(),
            wanted: used.map_or(Wanted::Empty, |used| Wanted::UsedWith(used.stock.clone())),
            along,
        }
    });
    each.collect()
}

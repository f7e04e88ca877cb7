//! Which of one's own mounts suit a wished place: each is solved there in the place of the piece's mount. Beside
//! `solve`, not in it: asked when the hand is off, as a pure function of the job.

use crate::capacity::group::Word;
use crate::finding::What;
use crate::job::Job;
use crate::job::mount::{Mount, MountKind};
use crate::plan::Plan;
use crate::plan::piece::{Meets, MountedPlan};
use crate::solve::{hanging_mut, solve, write_down};
use crate::subject::Id;
use crate::units::Length;
use std::cmp::Ordering;

/// So many mounts are tried (chosen: more than any bench holds of what is worth a look).
pub const MOST: usize = 60;

/// A mount that the piece may hang on, as it would be at the wished place.
#[derive(Clone, Debug, PartialEq)]
pub struct Suits {
    /// Its place in the list that was asked about.
    pub mount: usize,
    /// What it is.
    pub kind: MountKind,
    /// What it is called; empty where it has no name.
    pub name: String,
    /// The verdict on its plate.
    pub word: Word,
    /// The same if every stud in use is met.
    pub if_probed: Word,
    /// How much of what its fasteners may carry is used; `None` where that is not known.
    pub used: Option<f64>,
    /// How much of its play is used: how far right of the plate's middle the piece is.
    pub offset: Length,
    /// How many studs its holes meet.
    pub studs: usize,
    /// How many of its holes meet a stud.
    pub holes: usize,
    /// Whether its holes go into studs at all, and not into masonry.
    pub on_studs: bool,
    /// Whether its holes are those of a usual plate, not of its own.
    pub is_assumed: bool,
}

/// Which of one's own mounts suit a place, and what became of the others.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OfMine {
    /// Those that its maker allows there, the best first.
    pub suits: Vec<Suits>,
    /// How many are beyond their rating or pattern.
    pub refused: usize,
    /// How many were not tried: more than [`MOST`] are not.
    pub not_tried: usize,
}

/// Which of these mounts suit a piece of a wall and an option where it is: those within their rating and of its
/// pattern, as far as both are known, the best first: by the verdict, the play used, the studs met, then as they were
/// given.
///
/// What was done at the piece's marks stays done: a hole that is stripped is stripped for every mount.
#[must_use]
pub fn which_of_mine(job: &Job, wall: &Id, option: Option<&Id>, piece: &Id, mounts: &[Mount]) -> OfMine {
    let mut base = job.clone();
    // So that a new id is new; what stands twice was refused when the job was read.
    let _ = base.complete_ids();
    if base.wall(wall).is_some_and(|wall| wall.options.is_empty()) {
        // Before the other walls go: what is assumed hangs on what hangs there.
        let _ = write_down(&mut base, wall);
    }
    base.walls.retain(|one| one.id == *wall);
    let id = base.give_id("mount");
    base.mounts.push(Mount { id: id.clone(), ..Mount::default() });
    let shown = solve(&base, wall, option);
    let at = shown.pieces.iter().find(|one| one.id == *piece);
    let Some(hanging) = at.and_then(|at| hanging_mut(&mut base, &shown, at)) else {
        return OfMine::default();
    };
    hanging.hang_on(Some(id.clone()));
    let mut of = OfMine { not_tried: mounts.len().saturating_sub(MOST), ..OfMine::default() };
    for (place, mount) in mounts.iter().enumerate().take(MOST) {
        if let Some(own) = base.mounts.last_mut() {
            *own = strange(mount, &id);
        }
        let plan = solve(&base, wall, shown.option.as_ref());
        if is_refused(&plan, piece) {
            of.refused += 1;
        } else {
            of.suits.extend(suit(&plan, piece, place, mount));
        }
    }
    // Stable: of equals as they were given.
    of.suits.sort_by(against);
    of
}

/// A mount of the shelf under an id of the job, with ids for its holes that no mark of the job has: what was drilled
/// for another plate's hole 3 is not drilled for its own.
fn strange(mount: &Mount, id: &Id) -> Mount {
    let mut mount = Mount { id: id.clone(), ..mount.clone() };
    let own = |hole: &Id| Id::new(&format!("{id}-{hole}"));
    if let Some(plate) = &mut mount.plate {
        plate.holes.iter_mut().for_each(|hole| hole.id = own(&hole.id));
        plate.slots.iter_mut().for_each(|slot| slot.id = own(&slot.id));
    }
    if let Some(required) = &mut mount.required {
        required.holes.iter_mut().for_each(|hole| *hole = own(hole));
    }
    mount
}

/// Whether its maker does not allow a mount there.
fn is_refused(plan: &Plan, piece: &Id) -> bool {
    plan.findings.iter().any(|finding| {
        finding.subject.id == *piece
            && matches!(finding.what, What::OverRating { .. } | What::PatternOutside { .. })
    })
}

/// A mount as it would be.
fn suit(plan: &Plan, piece: &Id, place: usize, mount: &Mount) -> Option<Suits> {
    let piece = plan.pieces.iter().find(|one| one.id == *piece)?;
    let at: &MountedPlan = piece.mount.as_ref()?;
    let verdict = &at.fastening.verdict;
    let meets = |wanted: Meets| at.holes.iter().filter(|hole| hole.meets == wanted).count();
    Some(Suits {
        mount: place,
        kind: mount.kind,
        name: mount.name.clone().unwrap_or_default(),
        word: verdict.word,
        if_probed: verdict.if_probed,
        used: verdict.governing.as_ref().map(|governing| governing.used),
        offset: at.offset,
        studs: at.studs_met(),
        holes: meets(Meets::Stud),
        on_studs: meets(Meets::Masonry) == 0,
        is_assumed: at.holes_assumed,
    })
}

fn against(a: &Suits, b: &Suits) -> Ordering {
    a.if_probed
        .cmp(&b.if_probed)
        .then(a.word.cmp(&b.word))
        .then(a.offset.mm().abs().total_cmp(&b.offset.mm().abs()))
        .then(b.studs.cmp(&a.studs))
}

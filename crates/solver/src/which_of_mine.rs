//! Which of one's own mounts suit a wished place: each is solved there in the place of the piece's mount. Beside `solve`,
//! not in it: asked when the hand is off, as a pure function of the job.

use crate::capacity::group::Word;
use crate::finding::What;
use crate::job::Job;
use crate::job::mount::{Mount, MountKind};
use crate::plan::Plan;
use crate::plan::piece::{Meets, MountedPlan};
use crate::solve::{assumed_option, solve};
use crate::subject::Id;
use crate::units::Length;
use std::cmp::Ordering;

/// So many mounts are tried (chosen: more than any bench holds of what is worth a look).
const MOST: usize = 60;

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

/// Which of these mounts suit a piece of a wall and an option where it is: those within their rating and of its pattern,
/// as far as both are known, the best first: by the verdict, the play used, the studs met, then as they were given.
#[must_use]
pub fn which_of_mine(job: &Job, wall: &Id, option: Option<&Id>, piece: &Id, mounts: &[Mount]) -> Vec<Suits> {
    let mut base = job.clone();
    // So that a new id is new; what stands twice was refused when the job was read.
    let _ = base.complete_ids();
    base.walls.retain(|one| one.id == *wall);
    let named = base.walls.first().filter(|wall| wall.options.is_empty()).map(|wall| wall.id.clone());
    if let Some(wall) = named {
        let mut assumed = assumed_option(&base, &wall);
        assumed.id = base.give_id("option");
        base.walls.iter_mut().for_each(|one| one.options.push(assumed.clone()));
    }
    let id = base.give_id("mount");
    base.mounts.push(Mount { id: id.clone(), ..Mount::default() });
    let shown = solve(&base, wall, option).option;
    let hanging = base
        .walls
        .iter_mut()
        .flat_map(|wall| &mut wall.options)
        .filter(|one| Some(&one.id) == shown.as_ref())
        .flat_map(|option| &mut option.hangings)
        .find(|hanging| hanging.piece == *piece);
    let Some(hanging) = hanging else { return Vec::new() };
    hanging.mount = Some(id.clone());
    // What was chosen of another plate's holes, or drilled through them, says nothing of this one's.
    hanging.holes.clear();
    for wall in &mut base.walls {
        wall.facts.retain(|fact| fact.mark.subject().id != *piece);
    }
    let mut suits: Vec<Suits> = Vec::new();
    for (place, mount) in mounts.iter().enumerate().take(MOST) {
        if let Some(own) = base.mounts.last_mut() {
            *own = Mount { id: id.clone(), ..mount.clone() };
        }
        let plan = solve(&base, wall, shown.as_ref());
        suits.extend(suit(&plan, piece, place, mount));
    }
    // Stable: of equals as they were given.
    suits.sort_by(against);
    suits
}

/// A mount as it would be; `None` where its maker does not allow it.
fn suit(plan: &Plan, piece: &Id, place: usize, mount: &Mount) -> Option<Suits> {
    let is_refused = plan.findings.iter().any(|finding| {
        finding.subject.id == *piece
            && matches!(finding.what, What::OverRating { .. } | What::PatternOutside { .. })
    });
    if is_refused {
        return None;
    }
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

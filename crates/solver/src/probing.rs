//! The next probe: the one place on the wall whose answer settles most about the holes in use. Beside `solve`, not in
//! it: asked when the hand is off, as a pure function of the job and its plan.
//!
//! Places are first sifted by what is believed of the uprights; the best few are then tried by solving the job with
//! each answer entered, so that what an answer is said to mean is what the plan will say.

mod answers;
mod steel;
mod wanted;

use crate::geometry::Point;
use crate::job::Job;
use crate::job::hit::HitKind;
use crate::numeric::ln;
use crate::plan::Plan;
use crate::plan::mark::{Mark, NEXT_PROBE};
use crate::plan::piece::{Meets, PiecePlan};
use crate::solve::probe_mark;
use crate::subject::{Id, Subject};
use answers::{Entered, answer};
use wanted::{Wanted, wanted};

/// A probe that settles less than this is not worth its hole in the wall, in nats (chosen).
const WORTH_A_PROBE: f64 = 0.01;

/// Where no one probe settles a hole, as in a doubled stud whose seam may lie anywhere, one whose answer is less sure
/// than nineteen in twenty still halves the places it may have; in nats (derived from 0.95).
const LEARNS: f64 = 0.198_515;

/// What a slip of the hand is taken to be as likely as (chosen).
const SLIP: f64 = 0.03;

/// So many of the likeliest places are tried in full (chosen: two solves each stay far under 50 ms).
const TRIED_IN_FULL: usize = 8;

/// Two places nearer than this are tried as one, in millimetres (chosen: a quarter of a face to a side).
const APART_MM: f64 = 4.0;

/// The next probe and what its answers would mean.
#[derive(Clone, Debug, PartialEq)]
pub struct NextProbe {
    /// The piece whose holes it settles.
    pub piece: Id,
    /// The hole it is for most.
    pub hole: Subject,
    /// Where.
    pub place: Point,
    /// The mark, of the stage probe, read like any other.
    pub mark: Mark,
    /// Helping marks that its readings need, to be struck before it; mostly none.
    pub helps: Vec<Mark>,
    /// What each answer would mean, the hoped for first.
    pub answers: Vec<Answer>,
}

/// What an answer would mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// The answer.
    pub said: Said,
    /// How likely it is, 0 to 1.
    pub probability: f64,
    /// The chance of solid wood that the least sure of the holes there would then have.
    pub chance: f64,
    /// Whether all holes there would then be met.
    pub met: bool,
    /// Whether a hole there would then be in no stud.
    pub lost: bool,
}

/// An answer to a probe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Said {
    /// Wood at full depth.
    Wood,
    /// Air.
    Air,
    /// Metal, asked for on steel only.
    Metal,
    /// A magnet holds, asked for on steel only.
    Holds,
    /// No magnet holds: nothing to be entered.
    HoldsNot,
}

impl Said {
    /// The hit to be entered for it; `None` where there is nothing to enter.
    #[must_use]
    pub fn hit(self) -> Option<HitKind> {
        match self {
            Self::Wood => Some(HitKind::Wood),
            Self::Air => Some(HitKind::Air),
            Self::Metal => Some(HitKind::Metal),
            Self::Holds => Some(HitKind::Magnet),
            Self::HoldsNot => None,
        }
    }
}

/// Why there is no next probe.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Done {
    /// Every hole in a stud is met.
    Met,
    /// No hole is where a stud can be: the piece is to be moved, or the wall is not framed, or not swept.
    NoStud,
    /// Some are not met, but no probe would change that.
    Settled,
}

/// Why there is no next probe, for a plan that has none.
#[must_use]
pub fn done(plan: &Plan) -> Done {
    let holes = || plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
    if !holes().any(|hole| hole.meets == Meets::Stud) {
        Done::NoStud
    } else if holes().all(|hole| hole.stud.is_none() || hole.met) {
        Done::Met
    } else {
        Done::Settled
    }
}

/// The next probe; `None` when nothing more would change the plan: see [`done`].
#[must_use]
pub fn next_probe(job: &Job, plan: &Plan) -> Option<NextProbe> {
    let wanted = wanted(job, plan);
    in_wood(job, plan, &wanted).or_else(|| steel::next(job, plan, &wanted))
}

/// A place to be tried.
struct Tried {
    gained: f64,
    /// Which of the wanted it is for.
    of: usize,
    place: Point,
    /// How likely it meets wood.
    wood: f64,
}

/// The best place on wood.
fn in_wood(job: &Job, plan: &Plan, wanted: &[Wanted<'_>]) -> Option<NextProbe> {
    let mut sifted: Vec<Tried> = Vec::new();
    for (of, one) in wanted.iter().enumerate().filter(|(_, one)| !one.steel) {
        sifted.extend(one.tried(plan, of));
    }
    sifted.sort_by(|a, b| b.gained.total_cmp(&a.gained));
    let mut tried: Vec<&Tried> = Vec::new();
    for one in &sifted {
        let near = |other: &Tried| {
            other.of == one.of
                && other.place.y == one.place.y
                && (other.place.x - one.place.x).mm().abs() < APART_MM
        };
        if one.gained > 0.0 && tried.len() < TRIED_IN_FULL && !tried.iter().any(|other| near(other)) {
            tried.push(one);
        }
    }
    let entered =
        |one: &Tried| [HitKind::Wood, HitKind::Air].map(|kind| Entered::of(job, plan, one.place, Some(kind)));
    let now: f64 = wanted.iter().map(|one| one.doubt_left(plan)).sum();
    let mut best: Option<(f64, &Tried, [Entered; 2])> = None;
    for one in &tried {
        let both = entered(one);
        let [wood, air] = &both;
        let left = |entered: &Entered| wanted.iter().map(|one| one.doubt_left(&entered.plan)).sum::<f64>();
        // An answer rarer than a slip of the hand promises nothing.
        let share = match one.wood {
            rare if rare < SLIP => 0.0,
            sure if sure > 1.0 - SLIP => 1.0,
            share => share,
        };
        let gained = now - share * left(wood) - (1.0 - share) * left(air);
        if gained > WORTH_A_PROBE && best.as_ref().is_none_or(|(most, ..)| gained > *most + 1e-9) {
            best = Some((gained, one, both));
        }
    }
    let learns = || {
        let most = sifted.iter().max_by(|a, b| entropy(a.wood).total_cmp(&entropy(b.wood)));
        most.filter(|one| entropy(one.wood) > LEARNS).map(|one| (one, entered(one)))
    };
    let (best, [wood, air]) = best.map(|(_, one, entered)| (one, entered)).or_else(learns)?;
    let of = wanted.get(best.of)?;
    let answers =
        vec![answer(Said::Wood, best.wood, of, &wood), answer(Said::Air, 1.0 - best.wood, of, &air)];
    told(job, plan, of, best.place, answers)
}

/// The probe with its mark.
fn told(job: &Job, plan: &Plan, of: &Wanted<'_>, place: Point, answers: Vec<Answer>) -> Option<NextProbe> {
    let piece: &PiecePlan = of.piece;
    let hole = of.nearest_hole(place)?;
    let mut marks = probe_mark(job, plan, piece, hole, place, NEXT_PROBE);
    let mark = marks.pop()?;
    Some(NextProbe {
        piece: piece.id.clone(),
        hole: hole.subject.clone(),
        place,
        mark,
        helps: marks,
        answers,
    })
}

/// The doubt of a yes or no, in nats.
fn entropy(chance: f64) -> f64 {
    let part = |share: f64| if share > 0.0 { -share * ln(share) } else { 0.0 };
    part(chance) + part(1.0 - chance)
}

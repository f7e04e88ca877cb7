//! The next probe: the one place on the wall whose answer settles most about the holes in use. Beside `solve`, not in
//! it: asked when the hand is off, as a pure function of the job and its plan.

use crate::geometry::{Direction, Point};
use crate::job::Job;
use crate::job::framing::WallFraming;
use crate::numeric::ln;
use crate::plan::Plan;
use crate::plan::framing::{Belief, Stud};
use crate::plan::mark::{How, MarkWhat, Reading, ReadingDatum};
use crate::plan::piece::{HolePlan, PiecePlan};
use crate::subject::{Id, Subject};
use crate::tolerance::{EDGE_NEED_MM, PROBED_WITHIN_MM};
use crate::units::Length;

/// How far to either side of a stud's middle a probe is tried, in faces (chosen: past it lies the next stud's).
const FACES_TRIED: f64 = 1.5;

/// How many places are tried in a face (chosen: about 1/16 in apart).
const PLACES_IN_FACE: u32 = 24;

/// What a hole that no probe has met counts, beside the doubt of its chance, in nats (chosen: so that the place likely
/// to be met goes before one that only sharpens a chance).
const UNPROBED: f64 = 0.3;

/// A probe that settles less than this is not worth its hole in the wall, in nats (chosen).
const WORTH_A_PROBE: f64 = 0.01;

/// How often a probe misleads: a block taken for a stud, a knot hole for air (chosen, as in the framing).
const MISLED: f64 = 0.01;

/// The next probe and what its answers would mean.
#[derive(Clone, Debug, PartialEq)]
pub struct NextProbe {
    /// The piece whose holes it settles.
    pub piece: Id,
    /// The hole it is for most.
    pub hole: Subject,
    /// Where.
    pub place: Point,
    /// How it is found, from the level line and the centre line.
    pub readings: Vec<Reading>,
    /// The stop on the bit; `None` where the plan has no depth.
    pub depth: Option<Length>,
    /// Should it meet wood.
    pub wood: Answer,
    /// Should it meet air.
    pub air: Answer,
}

/// What an answer would mean.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Answer {
    /// How likely it is, 0 to 1.
    pub probability: f64,
    /// The chance of solid wood that this stud's least sure hole would have, where its fastener may move to the stud's
    /// middle as far as its slot or the plate's play lets it.
    pub chance: f64,
    /// Whether the stud's holes would then be met.
    pub met: bool,
}

/// A stud in use, and what is to be settled about it.
struct Wanted<'a> {
    piece: &'a PiecePlan,
    stud: &'a Stud,
    belief: Vec<&'a Belief>,
    holes: Vec<&'a HolePlan>,
    /// How far its fasteners can move to either side.
    reach_mm: f64,
    /// Whether each hole has a probe near that met wood in this stud.
    probed: Vec<bool>,
}

/// The next probe; `None` when nothing more would change the plan: every hole in use is met, or none is in a stud, or
/// the studs are of steel, where a probe has to meet metal at two heights and a magnet tells.
#[must_use]
pub fn next_probe(job: &Job, plan: &Plan) -> Option<NextProbe> {
    let level = job.settings.chance().value();
    let mut best: Option<(f64, NextProbe)> = None;
    for wanted in wanted(job, plan) {
        let now = wanted.doubt(&wanted.cells(&|_| 1.0, 1.0), false, 0.0);
        for y in wanted.heights() {
            for x_mm in wanted.places() {
                let (gained, probe) = wanted.tried(plan, x_mm, y, now, level);
                if gained > WORTH_A_PROBE && best.as_ref().is_none_or(|(most, _)| gained > *most + 1e-9) {
                    best = Some((gained, probe));
                }
            }
        }
    }
    best.map(|(_, probe)| probe)
}

/// The studs in use whose holes are not met.
fn wanted<'a>(job: &'a Job, plan: &'a Plan) -> Vec<Wanted<'a>> {
    let wall = job.wall(&plan.wall);
    let mut found = Vec::new();
    for piece in &plan.pieces {
        let Some(mounted) = &piece.mount else { continue };
        let mount = job.mount(&mounted.id);
        let play_mm = mount.map_or(0.0, |mount| {
            let (least, most) = mount.offsets();
            (most - least).mm()
        });
        for (index, stud) in plan.framing.studs.iter().enumerate() {
            let steel = wall.and_then(|wall| wall.framing_on(stud.on.as_ref()));
            if matches!(steel, Some(WallFraming::Steel(_))) {
                continue;
            }
            let holes: Vec<&HolePlan> =
                mounted.holes.iter().filter(|hole| hole.stud == Some(index)).collect();
            if holes.iter().all(|hole| hole.met) {
                continue;
            }
            let travel = |hole: &&HolePlan| {
                let slots = mount.and_then(|mount| mount.plate.as_ref()).map(|plate| &plate.slots);
                let slot = slots.and_then(|slots| slots.iter().find(|slot| slot.id == hole.id));
                slot.filter(|slot| !slot.upright).map_or(0.0, |slot| slot.travel.mm() / 2.0)
            };
            let least = holes.iter().map(travel).fold(f64::INFINITY, f64::min);
            let probed = |hole: &&HolePlan| {
                plan.survey.hits.iter().any(|hit| {
                    hit.kind == crate::job::hit::HitKind::Wood
                        && stud.hits.contains(&hit.id)
                        && hit.y.is_some_and(|y| near(y, hole.place.y))
                })
            };
            let face_mm = (stud.right - stud.left).mm();
            let about = |belief: &&Belief| {
                let from = belief.from.mm() - face_mm;
                let cells = f64::from(u32::try_from(belief.uprights.len()).unwrap_or(u32::MAX));
                let to = belief.from.mm() + belief.step.mm() * cells + face_mm;
                (from..=to).contains(&stud.centre.mm())
            };
            let planes = plan.framing.planes.iter().filter(|plane| plane.on == stud.on);
            found.push(Wanted {
                piece,
                stud,
                belief: planes.flat_map(|plane| &plane.beliefs).filter(about).collect(),
                probed: holes.iter().map(probed).collect(),
                holes,
                reach_mm: least.max(play_mm).clamp(0.0, face_mm),
            });
        }
    }
    found
}

/// Whether a probe at one height tells of a fastener at another.
fn near(a: Length, b: Length) -> bool {
    (a - b).mm().abs() <= PROBED_WITHIN_MM
}

/// Where the upright's middle may be: places, and how likely; the rest is none at all.
struct Cells {
    at: Vec<(f64, f64)>,
    none: f64,
}

impl Wanted<'_> {
    fn half_mm(&self) -> f64 {
        (self.stud.right - self.stud.left).mm() / 2.0
    }

    /// The heights worth probing at: one that tells of all holes, else each hole's own.
    fn heights(&self) -> Vec<Length> {
        let ys = || self.holes.iter().map(|hole| hole.place.y);
        let (Some(low), Some(high)) = (ys().reduce(Length::min), ys().reduce(Length::max)) else {
            return Vec::new();
        };
        let middle = low + (high - low) / 2.0;
        if near(low, middle) {
            return vec![middle];
        }
        self.holes.iter().filter(|hole| !hole.met).map(|hole| hole.place.y).collect()
    }

    /// Places to try, from the stud's middle outward, the right one of two as far first.
    fn places(&self) -> Vec<f64> {
        let step = self.half_mm() * 2.0 / f64::from(PLACES_IN_FACE);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "36")]
        let steps = (FACES_TRIED * f64::from(PLACES_IN_FACE)) as u32;
        let centre = self.stud.centre.mm();
        let both = (1..=steps).flat_map(|at| [1.0, -1.0].map(|side| centre + side * f64::from(at) * step));
        std::iter::once(centre).chain(both).collect()
    }

    /// What is believed, weighed by an answer's likelihood for a middle and for none; not made whole again.
    fn cells(&self, likelihood: &dyn Fn(f64) -> f64, without: f64) -> Cells {
        let half = self.half_mm();
        let (mut at, mut sum) = (Vec::new(), 0.0);
        for belief in &self.belief {
            let mut left_mm = belief.from.mm();
            for pair in belief.uprights.windows(2) {
                let middle = left_mm + belief.step.mm() / 2.0;
                left_mm += belief.step.mm();
                let [a, b] = pair else { continue };
                // The ply that this stud is: those beyond three quarters of a face are others.
                if b - a > 1e-7 && (middle - self.stud.centre.mm()).abs() <= 1.5 * half {
                    sum += b - a;
                    at.push((middle, (b - a) * likelihood(middle)));
                }
            }
        }
        Cells { at, none: (1.0 - sum).max(0.0) * without }
    }

    /// The best chance of a hole, its fastener moved as far as it can be, and the doubt left over all holes, in nats.
    fn chances(&self, cells: &Cells) -> Vec<f64> {
        let whole = cells.at.iter().map(|(_, mass)| mass).sum::<f64>() + cells.none;
        let room = self.half_mm() - EDGE_NEED_MM;
        let chance = |x: f64| {
            let inside = cells.at.iter().filter(|(middle, _)| (middle - x).abs() <= room);
            inside.map(|(_, mass)| mass).sum::<f64>() / whole.max(1e-12)
        };
        let steps = if self.reach_mm > 0.0 { 8 } else { 0 };
        let best = |hole: &&HolePlan| {
            (-steps..=steps)
                .map(|step| chance(hole.place.x.mm() + self.reach_mm * f64::from(step) / 8.0))
                .fold(0.0, f64::max)
        };
        self.holes.iter().map(best).collect()
    }

    /// The doubt left over all holes.
    fn doubt(&self, cells: &Cells, wood: bool, y_mm: f64) -> f64 {
        let each = self.chances(cells).into_iter().zip(&self.probed).zip(&self.holes);
        each.map(|((chance, probed), hole)| {
            let now = *probed || (wood && (hole.place.y.mm() - y_mm).abs() <= PROBED_WITHIN_MM);
            entropy(chance) + if now { 0.0 } else { UNPROBED }
        })
        .sum()
    }

    /// What a probe at a place would settle, in nats, and the probe.
    fn tried(&self, plan: &Plan, x_mm: f64, y: Length, now: f64, level: f64) -> (f64, NextProbe) {
        let half = self.half_mm();
        let in_wood = |middle: f64| if (middle - x_mm).abs() <= half { 1.0 - MISLED } else { MISLED };
        let wood = self.cells(&in_wood, MISLED);
        let air = self.cells(&|middle| 1.0 - in_wood(middle), 1.0 - MISLED);
        let mass = |cells: &Cells| cells.at.iter().map(|(_, mass)| mass).sum::<f64>() + cells.none;
        let (with, without) = (mass(&wood), mass(&air));
        let share = with / (with + without).max(1e-12);
        let left = share * self.doubt(&wood, true, y.mm()) + (1.0 - share) * self.doubt(&air, false, y.mm());
        let answer = |cells: &Cells, probability: f64, is_wood: bool| {
            let chances = self.chances(cells);
            let chance = chances.iter().copied().fold(1.0, f64::min);
            let probed = self.probed.iter().zip(&self.holes);
            let probed = probed.map(|(probed, hole)| *probed || (is_wood && near(hole.place.y, y)));
            Answer { probability, chance, met: chance >= level && probed.into_iter().all(|one| one) }
        };
        let place = Point::new(Length::millimetres(x_mm), y);
        let probe = NextProbe {
            piece: self.piece.id.clone(),
            hole: self.holes.first().map_or_else(|| self.piece.id.whole(), |hole| hole.subject.clone()),
            place,
            readings: readings(plan, self.piece, place),
            depth: plan.marks.iter().find_map(|mark| match mark.what {
                MarkWhat::Probe { depth, .. } => depth,
                _ => None,
            }),
            wood: answer(&wood, share, true),
            air: answer(&air, 1.0 - share, false),
        };
        (now - left, probe)
    }
}

/// The doubt of a yes or no, in nats.
fn entropy(chance: f64) -> f64 {
    let part = |share: f64| if share > 0.0 { -share * ln(share) } else { 0.0 };
    part(chance) + part(1.0 - chance)
}

/// From the level line and from the centre line, as holes are read.
fn readings(plan: &Plan, piece: &PiecePlan, place: Point) -> Vec<Reading> {
    let Some(mount) = &piece.mount else { return Vec::new() };
    let back = crate::geometry::Frame { origin: Point::default(), roll: -mount.frame.roll };
    let origin = mount.frame.origin;
    let in_plate = back.to_wall(place.x - origin.x, place.y - origin.y);
    let nothing = Length::default();
    let one = |line: &str, direction: Direction, at: Length, value: Length| Reading {
        from: ReadingDatum::Struck(piece.id.part(line)),
        how: How::Line,
        direction,
        at,
        value: value.abs(),
        steps: plan.style.steps(value.abs()),
        taut_over: None,
        close: None,
    };
    let upright = if nothing < in_plate.y { Direction::Up } else { Direction::Down };
    let across = if in_plate.x < nothing { Direction::Left } else { Direction::Right };
    vec![one("level_line", upright, place.x, in_plate.y), one("centre_line", across, place.y, in_plate.x)]
}

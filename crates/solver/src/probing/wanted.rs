//! The holes that a probe could settle, in groups that one upright serves, and what is believed there.

use super::{Tried, entropy};
use crate::geometry::{Frame, Point, Span};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::framing::WallFraming;
use crate::job::hit::HitKind;
use crate::plan::Plan;
use crate::plan::framing::{Framing, Stud};
use crate::plan::piece::{HolePlan, Meets, PiecePlan};
use crate::subject::Id;
use crate::tolerance::{EDGE_NEED_MM, PROBED_WITHIN_MM};
use crate::units::Length;

/// How far beyond a hole's reach a probe is tried, in faces (chosen: past the far end of a doubled upright of which it
/// could use the near ply).
const FACES_BEYOND: f64 = 2.5;

/// How many places are tried in a face (chosen: about 1/16 in apart).
const PLACES_IN_FACE: f64 = 24.0;

/// The most places tried for one group (chosen: a slot of any length costs no more).
const MOST_PLACES: f64 = 400.0;

/// What a hole that no probe has met counts, beside the doubt of its chance, in nats (chosen: as much as evens, ln 2,
/// since it has to be met whatever its chance).
const UNPROBED: f64 = std::f64::consts::LN_2;

/// A hole within whose reach an upright is less likely than this is given up (chosen: one in twenty, as a hole is met
/// at nineteen).
const HOPE: f64 = 0.05;

/// How often a probe misleads: a block taken for a stud, a knot hole for air (chosen, as in the framing).
const MISLED: f64 = 0.005;

/// How near a probe may come to a hidden thing or an opening (chosen: a bit's width and a slip of the hand).
const CLEAR_MM: f64 = 10.0;

/// Holes of one plate that one upright serves.
pub(super) struct Wanted<'a> {
    pub(super) piece: &'a PiecePlan,
    /// The stud they are in; `None` where they are in none yet.
    pub(super) stud: Option<&'a Stud>,
    pub(super) steel: bool,
    pub(super) on: Option<Id>,
    pub(super) half_mm: f64,
    holes: Vec<Reach<'a>>,
}

/// A hole and where its fastener may go.
#[derive(Clone, Copy)]
struct Reach<'a> {
    hole: &'a HolePlan,
    span: Span,
}

/// The holes that are not met and may be.
pub(super) fn wanted<'a>(job: &'a Job, plan: &'a Plan) -> Vec<Wanted<'a>> {
    let Some(wall) = job.wall(&plan.wall) else { return Vec::new() };
    let mut found: Vec<Wanted<'a>> = Vec::new();
    for piece in &plan.pieces {
        let Some(mounted) = &piece.mount else { continue };
        let plate = job.mount(&mounted.id).and_then(|mount| mount.plate.as_ref());
        for hole in &mounted.holes {
            let on = plan.survey.breast_at(hole.place.x, Some(hole.place.y)).map(|breast| &breast.id);
            let framing = wall.framing_on(on).unwrap_or(&WallFraming::NotKnown);
            let open = matches!(hole.meets, Meets::Stud | Meets::StudEdge | Meets::Board);
            let Some(face) = framing.face().filter(|_| open) else { continue };
            let slot = plate.and_then(|plate| plate.slots.iter().find(|slot| slot.id == hole.id));
            let span = match slot.filter(|slot| !slot.upright) {
                Some(slot) => {
                    Span::about(in_wall(mounted.frame, slot.right.length(), -slot.down), slot.travel)
                }
                None => Span::about(hole.place.x, Length::default()),
            };
            let half_mm = face.mm() / 2.0;
            let reach = Reach { hole, span };
            let stud = hole.stud.and_then(|stud| plan.framing.studs.get(stud));
            if stud.is_none() && reach.hope(&plan.framing, on, half_mm) < HOPE {
                continue;
            }
            let with = |other: &&mut Wanted<'a>| {
                let same_stud = stud.is_some() && stud == other.stud;
                let same_place = stud.is_none()
                    && other.stud.is_none()
                    && other.holes.iter().any(|one| (one.span.from - span.from).mm().abs() < 1.0);
                other.piece.id == piece.id && other.on.as_ref() == on && (same_stud || same_place)
            };
            match found.iter_mut().find(with) {
                Some(group) => group.holes.push(reach),
                None => found.push(Wanted {
                    piece,
                    stud,
                    steel: matches!(framing, WallFraming::Steel(_)),
                    on: on.cloned(),
                    half_mm,
                    holes: vec![reach],
                }),
            }
        }
    }
    found.retain(|group| !group.holes.iter().all(|one| one.hole.met));
    found
}

fn in_wall(frame: Frame, right: Length, up: Length) -> Length {
    frame.to_wall(right, up).x
}

impl Reach<'_> {
    /// How many uprights are expected that it could use.
    fn hope(&self, framing: &Framing, on: Option<&Id>, half_mm: f64) -> f64 {
        let room = Length::millimetres((half_mm - EDGE_NEED_MM).max(0.0));
        framing.middles(on, self.span.from - room, self.span.to + room, self.hole.place.y)
    }

    /// Where along its reach its fastener is tried.
    fn places(&self) -> impl Iterator<Item = Length> {
        let length = self.span.length();
        let steps = if length.mm() > 0.0 { 16 } else { 0 };
        let from = self.span.from;
        (0..=steps).map(move |step| from + length * (f64::from(step) / f64::from(steps.max(1))))
    }
}

/// Whether a probe at one height tells of a fastener at another.
fn near(a: Length, b: Length) -> bool {
    (a - b).mm().abs() <= PROBED_WITHIN_MM
}

/// Where an upright's middle may be: places, and how likely; the rest is none at all.
struct Cells {
    at: Vec<(f64, f64)>,
    none: f64,
}

impl Wanted<'_> {
    /// Its holes as another plan of the same job has them.
    pub(super) fn holes_in<'b>(&self, plan: &'b Plan) -> Vec<&'b HolePlan> {
        let mounts = plan.pieces.iter().filter(|piece| piece.id == self.piece.id);
        let holes = mounts.filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
        holes.filter(|hole| self.holes.iter().any(|one| one.hole.id == hole.id)).collect()
    }

    /// The hole nearest to a place, of those that are not met.
    pub(super) fn nearest_hole(&self, place: Point) -> Option<&HolePlan> {
        let off = |hole: &HolePlan| (hole.place.x - place.x).mm().abs() + (hole.place.y - place.y).mm().abs();
        let open = self.holes.iter().map(|one| one.hole).filter(|hole| !hole.met);
        open.min_by(|a, b| off(a).total_cmp(&off(b)))
    }

    /// The doubt that a plan of the same job leaves over its holes, in nats.
    pub(super) fn doubt_left(&self, plan: &Plan) -> f64 {
        let of = |hole: &HolePlan| {
            let Some(reach) = self.holes.iter().find(|one| one.hole.id == hole.id) else { return 0.0 };
            if hole.met {
                return 0.0;
            }
            let need = Length::millimetres(EDGE_NEED_MM);
            let on = self.on.as_ref();
            let at = |x: Length| plan.framing.chance(on, x, hole.place.y, need);
            let chance = reach.places().map(at).fold(hole.chance.unwrap_or_default(), f64::max);
            let reach = Reach { hole, span: reach.span };
            if hole.stud.is_none() && reach.hope(&plan.framing, on, self.half_mm) < HOPE {
                return 0.0;
            }
            let stud = hole.stud.and_then(|stud| plan.framing.studs.get(stud));
            let probed = stud.is_some_and(|stud| probed(plan, stud, hole));
            entropy(chance) + if probed { 0.0 } else { UNPROBED }
        };
        self.holes_in(plan).into_iter().map(of).sum()
    }

    /// The heights worth probing at: one that tells of all holes, else each hole's own.
    fn heights(&self) -> Vec<Length> {
        let ys = || self.holes.iter().map(|one| one.hole.place.y);
        let (Some(low), Some(high)) = (ys().reduce(Length::min), ys().reduce(Length::max)) else {
            return Vec::new();
        };
        let middle = low + (high - low) / 2.0;
        if near(low, middle) {
            return vec![middle];
        }
        self.holes.iter().filter(|one| !one.hole.met).map(|one| one.hole.place.y).collect()
    }

    /// Where uprights are looked for: the reach of all holes and what lies beyond.
    fn around(&self) -> (f64, f64) {
        let beyond = FACES_BEYOND * 2.0 * self.half_mm;
        let from = self.holes.iter().map(|one| one.span.from.mm()).fold(f64::INFINITY, f64::min);
        let to = self.holes.iter().map(|one| one.span.to.mm()).fold(f64::NEG_INFINITY, f64::max);
        (from - beyond, to + beyond)
    }

    /// Places to try, from the stud's middle outward, the right one of two as far first.
    fn places(&self) -> Vec<f64> {
        let (from, to) = self.around();
        let middle = self.stud.map_or((from + to) / 2.0, |stud| stud.centre.mm()).clamp(from, to);
        let far = (middle - from).max(to - middle);
        let step = (2.0 * self.half_mm / PLACES_IN_FACE).max(2.0 * far / MOST_PLACES);
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "at most MOST_PLACES")]
        let steps = (far / step).min(MOST_PLACES) as u32;
        let both = (1..=steps).flat_map(|at| [1.0, -1.0].map(|side| middle + side * f64::from(at) * step));
        std::iter::once(middle).chain(both).filter(|x| (from..=to).contains(x)).collect()
    }

    /// Every place worth a probe, with what it would settle by what is believed now.
    pub(super) fn tried(&self, plan: &Plan, of: usize) -> Vec<Tried> {
        let believed = self.believed(plan);
        let whole: Vec<f64> = believed.at.iter().map(|_| 1.0).collect();
        let now = self.doubt(&believed, &whole, 1.0, None);
        let mut tried = Vec::new();
        for y in self.heights() {
            for x_mm in self.places() {
                let place = Point::new(Length::millimetres(x_mm), y);
                if !clear(plan, place) {
                    continue;
                }
                let wood: Vec<f64> = believed
                    .at
                    .iter()
                    .map(
                        |(middle, _)| {
                            if (middle - x_mm).abs() <= self.half_mm { 1.0 - MISLED } else { MISLED }
                        },
                    )
                    .collect();
                let air: Vec<f64> = wood.iter().map(|one| 1.0 - one).collect();
                // The plies of an upright exclude each other at a place, not elsewhere.
                let covers = believed.at.iter().filter(|(middle, _)| (middle - x_mm).abs() <= self.half_mm);
                let covered = covers.map(|(_, mass)| mass).sum::<f64>().min(1.0);
                let share = covered * (1.0 - MISLED) + (1.0 - covered) * MISLED;
                let left = share * self.doubt(&believed, &wood, MISLED, Some(y))
                    + (1.0 - share) * self.doubt(&believed, &air, 1.0 - MISLED, None);
                tried.push(Tried { gained: now - left, of, place, wood: share });
            }
        }
        tried
    }

    /// What is believed of the upright that serves these holes.
    fn believed(&self, plan: &Plan) -> Cells {
        let (from, to) = self.around();
        let planes = plan.framing.planes.iter().filter(|plane| plane.on == self.on);
        let (mut at, mut sum) = (Vec::new(), 0.0);
        for belief in planes.flat_map(|plane| &plane.beliefs) {
            let y = self.holes.first().map_or(belief.height, |one| one.hole.place.y);
            let lean_mm = (y - belief.height).mm() * belief.lean;
            let mut left_mm = belief.from.mm() + lean_mm;
            for pair in belief.uprights.windows(2) {
                let middle = left_mm + belief.step.mm() / 2.0;
                left_mm += belief.step.mm();
                let [a, b] = pair else { continue };
                if b - a > 1e-7 && (from..=to).contains(&middle) {
                    sum += b - a;
                    at.push((middle, b - a));
                }
            }
        }
        Cells { at, none: (1.0 - sum).max(0.0) }
    }

    /// The doubt left over all holes, where each middle is weighed by an answer's likelihood and none by `none`; a
    /// probe that met wood at a height tells of the holes near it.
    fn doubt(&self, cells: &Cells, by: &[f64], none: f64, wood_at: Option<Length>) -> f64 {
        let weighed: Vec<(f64, f64)> =
            cells.at.iter().zip(by).map(|((middle, mass), by)| (*middle, mass * by)).collect();
        let whole = weighed.iter().map(|(_, mass)| mass).sum::<f64>() + cells.none * none;
        let room = self.half_mm - EDGE_NEED_MM;
        let chance = |x: Length| {
            let inside = weighed.iter().filter(|(middle, _)| (middle - x.mm()).abs() <= room);
            inside.map(|(_, mass)| mass).sum::<f64>() / whole.max(1e-12)
        };
        let of = |one: &Reach<'_>| {
            let best = one.places().map(chance).fold(0.0, f64::max);
            let probed = wood_at.is_some_and(|y| near(one.hole.place.y, y));
            entropy(best.min(1.0)) + if probed { 0.0 } else { UNPROBED }
        };
        self.holes.iter().map(of).sum()
    }
}

/// Whether a probe met wood in a stud near a hole's height.
fn probed(plan: &Plan, stud: &Stud, hole: &HolePlan) -> bool {
    plan.survey.hits.iter().any(|hit| {
        hit.kind == HitKind::Wood
            && stud.hits.contains(&hit.id)
            && hit.y.is_some_and(|y| near(y, hole.place.y))
    })
}

/// Whether a bit may go in there: on the wall, clear of hidden things, openings and devices.
pub(super) fn clear(plan: &Plan, place: Point) -> bool {
    let survey = &plan.survey;
    let clear = Length::millimetres(CLEAR_MM);
    let solid = |kind: FeatureKind| matches!(kind, FeatureKind::ChimneyBreast | FeatureKind::Panelling);
    survey.outline.holds(place)
        && !survey.hidden.iter().any(|hidden| hidden.rect.grown(clear).holds(place))
        && !survey.features.iter().any(|one| !solid(one.kind) && one.rect.grown(clear).holds(place))
}

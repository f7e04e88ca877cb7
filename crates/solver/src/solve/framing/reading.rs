//! What one hit says of an upright: its likelihood, kind by kind.

use super::model::{AIR_IN_STUD, Model, PLACE_BLUR_MM, WOOD_BUT_NO_STUD, WRONG_SENSED};
use crate::job::hit::HitKind;
use crate::numeric::normal;
use crate::plan::survey::PlacedHit;
use crate::tolerance::BOARD_SCREW_EDGE_MM;

/// Heights are told apart up to so much (chosen: no room is higher, and a slip of the hand moves no grid).
const FARTHEST_UP_MM: f64 = 20_000.0;

/// How an upright of the pattern stands: alone, or with a second ply at one side.
pub(super) const PLIES: usize = 3;

/// A hit that tells of uprights.
#[derive(Clone, Copy)]
pub(super) struct Reading<'a> {
    pub(super) hit: &'a PlacedHit,
    pub(super) says: Says,
}

/// What a hit tells of.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Says {
    Left,
    Right,
    Centre,
    Magnet,
    /// A probe met an upright, or something like it.
    Solid,
    /// On steel: metal, which a pipe is too.
    Metal,
    /// A probe met no upright.
    Empty,
}

/// A hit's likelihood is `gain * fit + miss`, where `fit` is how well an upright explains it.
#[derive(Clone, Copy)]
pub(super) struct Weights {
    pub(super) gain: f64,
    pub(super) miss: f64,
}

impl<'a> Reading<'a> {
    /// What a hit says; `None` where it says nothing of uprights: metal on a wall not of steel is a stop and no more.
    pub(super) fn of(hit: &'a PlacedHit, steel: bool) -> Option<Self> {
        let says = match hit.kind {
            HitKind::LeftEdge => Says::Left,
            HitKind::RightEdge => Says::Right,
            HitKind::Centre => Says::Centre,
            HitKind::Magnet => Says::Magnet,
            HitKind::Wood => Says::Solid,
            HitKind::Metal if steel => Says::Metal,
            HitKind::Air | HitKind::ShallowWood => Says::Empty,
            HitKind::Metal => return None,
        };
        hit.x.is_finite().then_some(Self { hit, says })
    }

    /// Whether a sensor told it, swept along the wall; a probe is put where it is.
    pub(super) fn sensed(&self) -> bool {
        !matches!(self.says, Says::Solid | Says::Empty)
    }

    pub(super) fn x_mm(&self) -> f64 {
        self.hit.x.mm()
    }

    /// How far above a height it was taken; 0 where that was not noted.
    pub(super) fn up_mm(&self, height_mm: f64) -> f64 {
        let up = self.hit.y.map_or(0.0, |y| y.mm() - height_mm);
        if up.is_finite() { up.clamp(-FARTHEST_UP_MM, FARTHEST_UP_MM) } else { 0.0 }
    }

    /// Its weights where uprights are `spacing_mm` apart: a sensor tells of any upright alike, the fewer there are the
    /// oftener of this one.
    pub(super) fn weights(&self, spacing_mm: f64) -> Weights {
        match self.says {
            Says::Left | Says::Right | Says::Centre | Says::Magnet | Says::Metal => {
                Weights { gain: (1.0 - WRONG_SENSED) * spacing_mm, miss: WRONG_SENSED }
            }
            Says::Solid => Weights { gain: 1.0 - AIR_IN_STUD - WOOD_BUT_NO_STUD, miss: WOOD_BUT_NO_STUD },
            Says::Empty => {
                Weights { gain: AIR_IN_STUD - 1.0 + WOOD_BUT_NO_STUD, miss: 1.0 - WOOD_BUT_NO_STUD }
            }
        }
    }

    /// How likely the hit is of no upright, or misnoted, where an upright fits it so well.
    pub(super) fn wrong(&self, fit: f64, weights: Weights) -> f64 {
        let all = weights.gain * fit + weights.miss;
        let wrong = match self.says {
            Says::Empty => AIR_IN_STUD * fit,
            Says::Solid => WOOD_BUT_NO_STUD * (1.0 - fit),
            _ => weights.miss,
        };
        if all > 0.0 { wrong / all } else { 1.0 }
    }

    /// The same where there is no upright.
    pub(super) fn wrong_without(&self) -> f64 {
        if self.says == Says::Empty { 0.0 } else { 1.0 }
    }

    /// How well an upright with its middle at `centre_mm` fits: of a sensed thing the density in x per millimetre, of a
    /// probe the share of its place that is solid. Alone, with a ply to the right, with one to the left.
    /// `lean_mm` is one standard deviation of what a lean leaves in doubt at its height.
    pub(super) fn fits(&self, centre_mm: f64, lean_mm: f64, model: &Model) -> [f64; PLIES] {
        let (x, half) = (self.x_mm(), model.face_mm / 2.0);
        let sd = (model.sensed_sd_mm * model.sensed_sd_mm + lean_mm * lean_mm).sqrt();
        let blur = (PLACE_BLUR_MM * PLACE_BLUR_MM + lean_mm * lean_mm).sqrt();
        let off = x - centre_mm;
        match self.says {
            Says::Left => {
                let near = normal(off + half, sd);
                [near, near, normal(off + 3.0 * half, sd)]
            }
            Says::Right => {
                let near = normal(off - half, sd);
                [near, normal(off - 3.0 * half, sd), near]
            }
            Says::Centre => [normal(off, sd), normal(off - half, sd), normal(off + half, sd)],
            Says::Magnet => {
                let room = (half - BOARD_SCREW_EDGE_MM).max(half / 4.0);
                let screw = |off: f64| within(off, room, blur) / (2.0 * room);
                let (own, right, left) = (screw(off), screw(off - 2.0 * half), screw(off + 2.0 * half));
                [own, (own + right) / 2.0, (own + left) / 2.0]
            }
            Says::Metal => {
                let flange = |off: f64| within(off, half, blur) / (2.0 * half);
                let (own, right, left) = (flange(off), flange(off - 2.0 * half), flange(off + 2.0 * half));
                [own, (own + right) / 2.0, (own + left) / 2.0]
            }
            Says::Solid | Says::Empty => [
                within(off, half, blur),
                within(off - half, 2.0 * half, blur),
                within(off + half, 2.0 * half, blur),
            ],
        }
    }
}

/// How much of a blurred place is within so much of the middle.
fn within(off: f64, half: f64, blur: f64) -> f64 {
    (0.5 + (half - off.abs()) / (2.0 * blur)).clamp(0.0, 1.0)
}

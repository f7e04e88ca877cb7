//! Walls that are made up, so that the truth is known: uprights, openings, and hits by sensors that are off.

use crate::chance::Chance;
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::{Feature, FeatureKind};
use strikeline_solver::job::framing::{WallFraming, WoodStuds};
use strikeline_solver::job::hit::{Hit, HitKind};
use strikeline_solver::job::place::{AcrossExtent, AcrossReading, UprightExtent, UprightReading};
use strikeline_solver::job::wall::{End, Wall};
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// The spacings that walls are made with, in millimetres.
pub(crate) const SPACINGS_MM: [f64; 6] = [406.4, 609.6, 487.68, 400.0, 450.0, 600.0];

/// An upright's face, in millimetres.
pub(crate) const FACE_MM: f64 = 38.1;

/// The height of the hits, in millimetres.
pub(crate) const HEIGHT_MM: f64 = 1400.0;

/// How walls and sensors are off.
#[derive(Clone, Copy)]
pub(crate) struct Noise {
    /// How far an upright is off its place: one standard deviation.
    pub(crate) layout_mm: f64,
    /// How far a sensed centre or edge is: one standard deviation.
    pub(crate) sensed_mm: f64,
    /// How often a sensor is off by `wild` times as much.
    pub(crate) wild_share: f64,
    pub(crate) wild: f64,
    /// How often a hit is of something else.
    pub(crate) elsewhere: f64,
    /// How often an upright of the pattern is doubled.
    pub(crate) doubled: f64,
    /// How often an upright of the pattern is missing.
    pub(crate) missing: f64,
    /// How uprights lean: one standard deviation of run over rise.
    pub(crate) lean: f64,
    /// How far above or below `HEIGHT_MM` hits are taken.
    pub(crate) heights_mm: f64,
    /// How often a wall is of plaster, on which sensors are off by half as much again.
    pub(crate) plaster: f64,
    /// How often a probe meets a block that is no upright.
    pub(crate) blocks: f64,
}

/// What the bounds are held against: an upright off by 1/8 in, a sensed centre within 1/4 in (90 % bound), one hit in
/// ten elsewhere.
pub(crate) const PLAIN: Noise = Noise {
    layout_mm: 3.175,
    sensed_mm: 6.35 / 1.645,
    wild_share: 0.0,
    wild: 1.0,
    elsewhere: 0.1,
    doubled: 0.08,
    missing: 0.0,
    lean: 0.0,
    heights_mm: 0.0,
    plaster: 0.0,
    blocks: 0.0,
};

/// Other noise, only reported: heavier tails, leaning and missing uprights, plaster.
pub(crate) const HEAVY: Noise = Noise {
    layout_mm: 4.0,
    sensed_mm: 6.35 / 1.645,
    wild_share: 0.15,
    wild: 2.5,
    elsewhere: 0.12,
    doubled: 0.08,
    missing: 0.06,
    lean: 0.004,
    heights_mm: 250.0,
    plaster: 0.25,
    blocks: 0.02,
};

/// Plies that touch, as one band of solid wood.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Band {
    /// The middle of its leftmost ply at `HEIGHT_MM`.
    pub(crate) first_mm: f64,
    pub(crate) plies: u32,
    /// Whether one of its plies stands at a place of the pattern.
    pub(crate) regular: bool,
    pub(crate) lean: f64,
}

impl Band {
    pub(crate) fn left_mm(&self) -> f64 {
        self.first_mm - FACE_MM / 2.0
    }

    pub(crate) fn right_mm(&self) -> f64 {
        self.left_mm() + f64::from(self.plies) * FACE_MM
    }

    /// The middles of its plies.
    pub(crate) fn middles(self) -> impl Iterator<Item = f64> {
        (0..self.plies).map(move |ply| self.first_mm + f64::from(ply) * FACE_MM)
    }
}

/// A hit and what it truly is of.
#[derive(Clone, Copy, Debug)]
pub(crate) struct MadeHit {
    pub(crate) kind: HitKind,
    pub(crate) x_mm: f64,
    pub(crate) y_mm: f64,
    /// The band it is of; `None`: it is of something else, or air.
    pub(crate) of: Option<usize>,
    /// Whether it is of something else.
    pub(crate) wrong: bool,
}

/// A wall whose truth is known.
pub(crate) struct Made {
    pub(crate) width_mm: f64,
    /// `None`: its uprights follow no pattern.
    pub(crate) spacing_mm: Option<f64>,
    pub(crate) bands: Vec<Band>,
    /// A window's or door's left and right edge.
    pub(crate) opening: Option<(f64, f64)>,
    pub(crate) hits: Vec<MadeHit>,
}

impl Made {
    /// A wall of 3 to 6 m with so many hits.
    pub(crate) fn of(chance: &mut Chance, noise: &Noise, hits: usize, patterned: bool) -> Self {
        let width_mm = chance.between(3000.0, 6000.0);
        let spacing_mm = if patterned { chance.one_of(&SPACINGS_MM) } else { None };
        let mut places: Vec<f64> = Vec::new();
        let mut at = chance.between(0.0, spacing_mm.unwrap_or(450.0));
        while at < width_mm - FACE_MM {
            if at > FACE_MM {
                places.push(at);
            }
            at += spacing_mm.unwrap_or_else(|| chance.between(200.0, 700.0));
        }
        let opening = chance.happens(0.5).then(|| {
            let wide = chance.between(700.0, 1500.0);
            let left = chance.between(300.0, width_mm - wide - 300.0);
            (left, left + wide)
        });
        let mut bands = Self::extras(chance, width_mm, opening);
        for place in places {
            let first_mm = place + chance.normal(noise.layout_mm);
            if chance.happens(noise.missing) {
                continue;
            }
            let plies = if chance.happens(noise.doubled) { 2 } else { 1 };
            let first_mm = if plies == 2 && chance.happens(0.5) { first_mm - FACE_MM } else { first_mm };
            let one = Band { first_mm, plies, regular: true, lean: chance.normal(noise.lean) };
            let clear = |other: &Band| {
                one.right_mm() + 20.0 < other.left_mm() || other.right_mm() + 20.0 < one.left_mm()
            };
            let open = opening.is_none_or(|(left, right)| one.right_mm() < left || one.left_mm() > right);
            if open && bands.iter().all(clear) {
                bands.push(one);
            }
        }
        bands.sort_by(|a, b| a.first_mm.total_cmp(&b.first_mm));
        let mut made = Self { width_mm, spacing_mm, bands, opening, hits: Vec::new() };
        let plaster = chance.happens(noise.plaster);
        for _ in 0..hits {
            let one = made.hit(chance, noise, plaster);
            made.hits.push(one);
        }
        made
    }

    /// The uprights at the ends and beside the opening: a king and a jack stud each.
    fn extras(chance: &mut Chance, width_mm: f64, opening: Option<(f64, f64)>) -> Vec<Band> {
        let end = FACE_MM / 2.0;
        let mut middles = vec![(end, 1), (width_mm - end, 1)];
        if let Some((left, right)) = opening {
            let gap = chance.between(5.0, 20.0);
            middles.push((left - gap - 1.5 * FACE_MM, 2));
            middles.push((right + gap + 0.5 * FACE_MM, 2));
        }
        let band = |(first_mm, plies)| Band { first_mm, plies, regular: false, lean: 0.0 };
        middles.into_iter().map(band).collect()
    }

    fn hit(&self, chance: &mut Chance, noise: &Noise, plaster: bool) -> MadeHit {
        let y_mm = HEIGHT_MM + chance.between(-1.0, 1.0) * noise.heights_mm;
        let sensors =
            [HitKind::Centre, HitKind::Centre, HitKind::LeftEdge, HitKind::RightEdge, HitKind::Magnet];
        let of_sensor = |hit: &&MadeHit| !matches!(hit.kind, HitKind::Wood | HitKind::Air);
        let sensed: Vec<MadeHit> = self.hits.iter().filter(of_sensor).copied().collect();
        if chance.happens(0.15)
            && let Some(before) = chance.one_of(&sensed)
        {
            // A probe where a sensor told of an upright; what it meets is the truth.
            let half = match before.kind {
                HitKind::LeftEdge => FACE_MM / 2.0,
                HitKind::RightEdge => -FACE_MM / 2.0,
                _ => 0.0,
            };
            let x_mm = before.x_mm + half + chance.normal(6.0);
            return self.probe(chance, noise, x_mm, y_mm);
        }
        let kind = chance.one_of(&sensors).unwrap_or(HitKind::Centre);
        if chance.happens(noise.elsewhere) {
            let x_mm = loop {
                let x = chance.between(0.0, self.width_mm);
                if self.opening.is_none_or(|(left, right)| x < left || right < x) {
                    break x;
                }
            };
            return MadeHit { kind, x_mm, y_mm, of: None, wrong: true };
        }
        // No sensor gets at the upright in a corner.
        let places: Vec<usize> = (1..self.bands.len().saturating_sub(1)).collect();
        let at = chance.one_of(&places).unwrap_or_default();
        let Some(band) = self.bands.get(at) else {
            return MadeHit { kind, x_mm: 0.0, y_mm, of: None, wrong: true };
        };
        let lean = band.lean * (y_mm - HEIGHT_MM);
        let wild = if chance.happens(noise.wild_share) { noise.wild } else { 1.0 };
        let sd = noise.sensed_mm * wild * if plaster { 1.5 } else { 1.0 };
        let plies: Vec<f64> = band.middles().collect();
        let x_mm = lean
            + match kind {
                HitKind::LeftEdge => band.left_mm() + chance.normal(sd),
                HitKind::RightEdge => band.right_mm() + chance.normal(sd),
                HitKind::Magnet => {
                    chance.one_of(&plies).unwrap_or_default()
                        + chance.between(-1.0, 1.0) * (FACE_MM / 2.0 - 9.525)
                }
                _ => f64::midpoint(band.left_mm(), band.right_mm()) + chance.normal(sd),
            };
        MadeHit { kind, x_mm, y_mm, of: Some(at), wrong: false }
    }

    /// What a probe meets.
    pub(crate) fn probe(&self, chance: &mut Chance, noise: &Noise, x_mm: f64, y_mm: f64) -> MadeHit {
        let inside = |band: &Band| {
            let lean = band.lean * (y_mm - HEIGHT_MM);
            (band.left_mm() + lean..=band.right_mm() + lean).contains(&x_mm)
        };
        let of = self.bands.iter().position(inside);
        let block = of.is_none() && chance.happens(noise.blocks);
        let kind = if of.is_some() || block { HitKind::Wood } else { HitKind::Air };
        MadeHit { kind, x_mm, y_mm, of, wrong: block }
    }

    /// Whether a fastener at a place has its edge need in one ply.
    pub(crate) fn solid(&self, x_mm: f64, y_mm: f64, edge_need_mm: f64) -> bool {
        self.bands.iter().any(|band| {
            let lean = band.lean * (y_mm - HEIGHT_MM);
            band.middles().any(|middle| (middle + lean - x_mm).abs() <= FACE_MM / 2.0 - edge_need_mm)
        })
    }

    /// The job with this wall and its first so many hits: `hit-1` and on.
    pub(crate) fn job(&self, hits: usize) -> Job {
        let mm = |mm: f64| Length::millimetres(mm).quantised();
        let across = |x: f64| AcrossReading::from_left(mm(x));
        let up = |y: f64| UprightReading::from_floor(mm(y));
        let features = self.opening.map(|(left, right)| Feature {
            front: None,
            id: Id::new("window-1"),
            kind: FeatureKind::Window,
            name: None,
            across: AcrossExtent {
                left: Some(across(left)),
                right: Some(across(right)),
                ..AcrossExtent::default()
            },
            upright: UprightExtent {
                bottom: Some(up(900.0)),
                top: Some(up(2000.0)),
                ..UprightExtent::default()
            },
            proud: None,
            framing: None,
            notes: None,
        });
        let hit = |(at, hit): (usize, &MadeHit)| Hit {
            id: Id::new(&format!("hit-{}", at + 1)),
            kind: hit.kind,
            x: across(hit.x_mm),
            y: Some(up(hit.y_mm)),
        };
        let wall = Wall {
            id: Id::new("wall-1"),
            width: Some(mm(self.width_mm)),
            height: Some(mm(2438.4)),
            left_end: Some(End::InsideCorner),
            right_end: Some(End::InsideCorner),
            framing: Some(WallFraming::Wood(WoodStuds::default())),
            features: features.into_iter().collect(),
            hits: self.hits.iter().take(hits).enumerate().map(hit).collect(),
            ..Wall::default()
        };
        Job { walls: vec![wall], ..Job::default() }
    }
}

//! Random plates on random walls, the same every time.

use crate::rooms::{self, Install, Into, room};
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::{FastenerKind, FastenerStock};
use strikeline_solver::job::plate::PlateSlot;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// A plain generator.
pub(crate) struct Random(pub(crate) u64);

impl Random {
    pub(crate) fn next(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        #[expect(clippy::cast_precision_loss, reason = "53 bits")]
        let share = (self.0 >> 11) as f64 / (1_u64 << 53) as f64;
        share
    }

    pub(crate) fn within(&mut self, low: f64, high: f64) -> f64 {
        low + (high - low) * self.next()
    }

    pub(crate) fn one_of(&mut self, of: &[f64]) -> f64 {
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "an index")]
        let index = (self.next() * of.len() as f64) as usize;
        of[index.min(of.len() - 1)]
    }
}

fn mm(value: f64) -> Length {
    Length::millimetres(value)
}

/// A plate over two studs or on concrete, some holes off the stud, some too near one another, some slots, mostly some
/// play, one to three sizes in the kit.
pub(crate) fn random_job(random: &mut Random, holes: usize) -> (Job, Install) {
    let into = match random.next() {
        wood if wood < 0.6 => Into::Lags { gap: random.one_of(&[0.5, 0.625, 0.875]) },
        steel if steel < 0.8 => Into::Steel { mil: 18.0, gap: random.one_of(&[0.5, 0.625]) },
        _ => Into::Concrete { gap: 0.0 },
    };
    let is_wood = matches!(into, Into::Lags { .. });
    let install = Install {
        name: String::new(),
        kg: random.within(3.0, 60.0),
        width: random.within(700.0, 1900.0),
        height: random.within(450.0, 1100.0),
        reach: (random.next() < if is_wood { 0.25 } else { 0.1 }).then(|| random.within(150.0, 600.0)),
        into,
        columns: Vec::new(),
        rows: vec![130.0, 0.0, -130.0],
        expected: Vec::new(),
    };
    let mut job = room(&install);
    let pattern = rooms::plate(&mut job).holes[0].clone();
    let place = |random: &mut Random| {
        let drift = random.one_of(&[0.0, 0.0, 4.0, -6.0, 60.0]);
        let up = (random.within(-150.0, 150.0) / 10.0).round() * 10.0;
        (random.one_of(&[-203.0, 203.0]) + drift, 170.0 - up)
    };
    let slots = (0..holes).filter(|_| random.next() < 0.12).count().min(2);
    rooms::plate(&mut job).holes = (0..holes - slots)
        .map(|index| {
            let (right, down) = place(random);
            let mut hole = pattern.clone();
            hole.id = rooms::id(&format!("hole-{}", index + 1));
            (hole.right, hole.down) = (Offset(mm(right)), mm(down));
            hole
        })
        .collect();
    rooms::plate(&mut job).slots = (0..slots)
        .map(|index| {
            let (right, down) = place(random);
            PlateSlot {
                id: rooms::id(&format!("slot-{}", index + 1)),
                right: Offset(mm(right)),
                down: mm(down.clamp(45.0, 295.0)),
                travel: mm(random.within(10.0, 80.0).round()),
                upright: random.next() < 0.5,
                width: Some(Length::inches(0.375)),
            }
        })
        .collect();
    if random.next() < 0.5 {
        job.mounts[0].play_left = Some(mm(random.within(0.0, 70.0).round()));
        job.mounts[0].play_right = Some(mm(random.within(0.0, 70.0).round()));
    }
    job.kit.fasteners = kit(random, &job.kit.fasteners[0]);
    (job, install)
}

/// One to three sizes for the wall that the first is for.
fn kit(random: &mut Random, first: &FastenerStock) -> Vec<FastenerStock> {
    let sizes: &[(FastenerKind, f64, f64)] = match first.kind {
        FastenerKind::Lag => &[
            (FastenerKind::Lag, 0.3125, 3.0),
            (FastenerKind::WoodScrew, 0.242, 3.0),
            (FastenerKind::Lag, 0.25, 2.5),
            (FastenerKind::Lag, 0.3125, 3.5),
        ],
        FastenerKind::SheetMetalScrew => {
            &[(FastenerKind::SheetMetalScrew, 0.19, 1.25), (FastenerKind::SheetMetalScrew, 0.19, 1.5)]
        }
        _ => &[
            (FastenerKind::ConcreteScrew, 0.25, 2.25),
            (FastenerKind::ConcreteScrew, 0.1875, 2.25),
            (FastenerKind::ConcreteScrew, 0.25, 2.75),
        ],
    };
    let share = random.one_of(&[0.3, 0.3, 0.6]);
    let mut kit: Vec<FastenerStock> = Vec::new();
    for (kind, diameter, length) in sizes {
        if random.next() < share && kit.len() < 3 {
            kit.push(FastenerStock {
                id: rooms::id(&format!("fastener-{}", kit.len() + 1)),
                kind: *kind,
                diameter: Some(Length::inches(*diameter)),
                length: Some(Length::inches(*length)),
                ..first.clone()
            });
        }
    }
    if kit.is_empty() { vec![first.clone()] } else { kit }
}

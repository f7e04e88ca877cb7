//! How many probes it takes until every hole of a plate is sure: by the next probe told, and in the usual way.

use super::made::{FACE_MM, HEIGHT_MM, Made, Noise, PLAIN};
use super::measure::{Share, count};
use crate::chance::Chance;
use crate::demo::median;
use std::time::Instant;
use strikeline_solver::job::Job;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::{CableWay, Hanging, Nudge, WallOption};
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::place::{AcrossDatum, UprightDatum};
use strikeline_solver::job::plate::{Plate, PlateSlot, Solid};
use strikeline_solver::job::rule::{AcrossRule, PieceHeight, UprightRule};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::HolePlan;
use strikeline_solver::probing::next_probe;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::tolerance::EDGE_NEED_MM;
use strikeline_solver::units::Length;

/// The display's width, in millimetres.
const DISPLAY_MM: f64 = 1100.0;
/// How far a slot lets its fastener move, in millimetres.
const TRAVEL_MM: f64 = 80.0;
/// The upper row of slots above the lower, in millimetres.
const ROWS_MM: f64 = 100.0;
/// A plate that so many probes do not make sure is let go.
const MOST_PROBES: usize = 30;
/// A ply is within a slot's reach with so much to spare, an eighth of an inch: no edge is told nearer by a handful of
/// probes.
const SPARE_MM: f64 = 3.175;
/// The usual way steps by half an inch.
const STEP_MM: f64 = 12.7;

/// What was counted over many plates.
#[derive(Default)]
pub(crate) struct Probing {
    told: usize,
    usual: usize,
    /// Plates with wood within reach of every hole whose holes were all met in the end.
    pub(crate) sure: Share,
    /// Plates with a hole that reaches no wood: those whose holes were not all called met.
    pub(crate) said_so: Share,
    /// Holes called met that truly have their edge need in solid wood.
    pub(crate) right: Share,
}

impl Probing {
    /// A plate on each of so many walls of a seed that tell of two neighbouring studs.
    pub(crate) fn of(walls: usize, seed: u64) -> Self {
        let mut counted = Self::default();
        let mut chance = Chance::of(seed ^ 0x5eed);
        for wall in 0..walls {
            let mut made = Made::of(&mut chance, &PLAIN, 5 + wall % 4, true);
            counted.plate(&mut made, &mut chance, &PLAIN);
        }
        counted
    }

    /// Probes told to those of the usual way.
    pub(crate) fn share(&self) -> f64 {
        count(self.told) / count(self.usual).max(1.0)
    }

    fn plate(&mut self, made: &mut Made, chance: &mut Chance, noise: &Noise) {
        let first = super::measure::plan(made);
        let room = DISPLAY_MM / 2.0..made.width_mm - DISPLAY_MM / 2.0;
        let pairs = first.framing.studs.windows(2).filter_map(|pair| match pair {
            [a, b] => Some((a.centre.mm(), b.centre.mm())),
            _ => None,
        });
        let fits = |(a, b): &(f64, f64)| (300.0..700.0).contains(&(b - a)) && room.contains(&((a + b) / 2.0));
        let Some((left, right)) = pairs.into_iter().find(fits) else { return };

        for said in [left, right] {
            self.usual += usual_way(made, chance, noise, said);
        }
        for _ in 0..MOST_PROBES {
            let job = hung(made, left, right, 2);
            let plan = solve(&job, &Id::new("wall-1"), None);
            let Some(probe) = next_probe(&job, &plan) else { break };
            self.told += 1;
            let hit = made.probe(chance, noise, probe.place.x.mm(), probe.place.y.mm());
            made.hits.push(hit);
        }
        let plan = solve(&hung(made, left, right, 2), &Id::new("wall-1"), None);
        let holes = holes(&plan);
        let met = holes.len() == 4 && holes.iter().all(|hole| hole.met);
        if [left, right].iter().all(|x| wood_in_reach(made, *x, SPARE_MM)) {
            self.sure.add(met);
        } else if ![left, right].iter().all(|x| wood_in_reach(made, *x, 0.0)) {
            self.said_so.add(!met);
        }
        for hole in holes.iter().filter(|hole| hole.met) {
            self.right.add(made.solid(hole.place.x.mm(), hole.place.y.mm(), EDGE_NEED_MM));
        }
    }
}

/// Whether a slot whose middle is at a place reaches a ply with room to its edges and so much to spare.
fn wood_in_reach(made: &Made, middle_mm: f64, spare_mm: f64) -> bool {
    let reach = TRAVEL_MM / 2.0 + FACE_MM / 2.0 - EDGE_NEED_MM - spare_mm;
    made.bands.iter().flat_map(|band| band.middles()).any(|ply| (ply - middle_mm).abs() <= reach)
}

fn holes(plan: &Plan) -> Vec<HolePlan> {
    plan.pieces
        .iter()
        .filter_map(|piece| piece.mount.as_ref())
        .flat_map(|mount| mount.holes.clone())
        .collect()
}

/// How many probes until both edges are found: where the sensor said, then by half an inch to either side.
fn usual_way(made: &Made, chance: &mut Chance, noise: &Noise, said_mm: f64) -> usize {
    let mut probes = 0;
    let mut wood = |x: f64| {
        probes += 1;
        made.probe(chance, noise, x, HEIGHT_MM).kind == HitKind::Wood
    };
    let mut inside = Some(said_mm).filter(|x| wood(*x));
    for step in 1..=4 {
        for side in [1.0, -1.0] {
            let x = said_mm + side * f64::from(step) * STEP_MM;
            if inside.is_none() && wood(x) {
                inside = Some(x);
            }
        }
    }
    if let Some(inside) = inside {
        for side in [1.0, -1.0] {
            // Past two faces it is something else.
            let _edge = (1..=6).find(|step| !wood(inside + side * f64::from(*step) * STEP_MM));
        }
    }
    probes
}

/// How long the next probe takes at 10 hits and 8 slots, and on the walls of a job: the slowest of many, as medians.
pub(crate) fn next_probe_ms(job: &Job) -> f64 {
    let mut chance = Chance::of(1);
    let mut hard = Vec::new();
    while hard.len() < 8 {
        let made = Made::of(&mut chance, &PLAIN, 10, true);
        let plan = super::measure::plan(&made);
        let studs: Vec<f64> = plan.framing.studs.iter().map(|stud| stud.centre.mm()).collect();
        let inside = DISPLAY_MM / 2.0..made.width_mm - DISPLAY_MM / 2.0;
        let fits = |pair: &&[f64]| {
            matches!(pair, [a, b] if (300.0..700.0).contains(&(b - a))
            && inside.contains(&f64::midpoint(*a, *b)))
        };
        if let Some([left, right]) = studs.windows(2).find(fits) {
            hard.push(hung(&made, *left, *right, 4));
        }
    }
    let one_ms = |job: &Job| {
        let plans: Vec<Plan> = job.walls.iter().map(|wall| solve(job, &wall.id, None)).collect();
        let run = |_| {
            let start = Instant::now();
            for plan in &plans {
                std::hint::black_box(next_probe(job, plan));
            }
            start.elapsed().as_secs_f64() * 1000.0
        };
        median((0..9).map(run).collect())
    };
    hard.iter().chain([job]).map(one_ms).fold(0.0, f64::max)
}

/// The wall with all its hits, and a display on a plate with so many slots a stud, one above the other.
fn hung(made: &Made, left_mm: f64, right_mm: f64, rows: u32) -> Job {
    let mm = |mm: f64| Length::millimetres(mm).quantised();
    let apart = right_mm - left_mm;
    let half = apart / 2.0;
    let slots = (0..rows).flat_map(|row| {
        [(-half, 2 * row + 1), (half, 2 * row + 2)].map(|(right, number)| PlateSlot {
            id: Id::new(&format!("slot-{number}")),
            right: Offset(mm(right)),
            down: mm(30.0 + ROWS_MM * f64::from(row)),
            travel: mm(TRAVEL_MM),
            upright: false,
            width: None,
        })
    });
    let plate = Plate {
        bearing: None,
        solids: vec![Solid {
            id: Id::new("solid-1"),
            left: Offset(mm(-half - 60.0)),
            right: Offset(mm(half + 60.0)),
            down: mm(0.0),
            height: mm(60.0 + ROWS_MM * f64::from(rows - 1)),
        }],
        thickness: None,
        holes: Vec::new(),
        slots: slots.collect(),
    };
    let mut job = made.job(made.hits.len());
    job.pieces.push(Piece {
        id: Id::new("display-1"),
        width: Some(mm(DISPLAY_MM)),
        height: Some(mm(650.0)),
        ..Piece::default()
    });
    job.mounts.push(Mount {
        id: Id::new("mount-1"),
        plate: Some(plate),
        drop: Some(mm(200.0)),
        play_left: Some(mm(0.0)),
        play_right: Some(mm(0.0)),
        ..Mount::default()
    });
    let hanging = Hanging {
        id: Id::new("hanging-1"),
        piece: Id::new("display-1"),
        mount: Some(Id::new("mount-1")),
        hung_on: None,
        across: AcrossRule::Beside {
            from: AcrossDatum::LeftEnd,
            toward: None,
            by: mm(f64::midpoint(left_mm, right_mm) - DISPLAY_MM / 2.0),
        },
        // The middle between the first two rows is at the height of the hits.
        upright: UprightRule::Height {
            of: PieceHeight::Top,
            from: UprightDatum::Floor,
            toward: None,
            by: mm(HEIGHT_MM + 200.0 + 30.0 + ROWS_MM / 2.0),
        },
        nudge: Nudge::default(),
        holes: Vec::new(),
        cables: Vec::new(),
        way: CableWay::default(),
    };
    for wall in &mut job.walls {
        let option =
            WallOption { id: Id::new("option-1"), hangings: vec![hanging.clone()], ..WallOption::default() };
        wall.options.push(option);
    }
    job
}

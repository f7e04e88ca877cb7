//! How many probes it takes until every hole of a plate is sure: by the next probe told, and in the usual way.

use super::made::{HEIGHT_MM, Made, Noise, PLAIN};
use super::measure::{Share, count};
use crate::chance::Chance;
use strikeline_solver::job::Job;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::{Hanging, Nudge, WallOption};
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
/// The usual way steps by half an inch.
const STEP_MM: f64 = 12.7;

/// What was counted over many plates.
#[derive(Default)]
pub(crate) struct Probing {
    told: usize,
    usual: usize,
    /// Plates whose holes were all met in the end.
    pub(crate) sure: Share,
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
            let job = hung(made, left, right);
            let plan = solve(&job, &Id::new("wall-1"), None);
            let Some(probe) = next_probe(&job, &plan) else { break };
            self.told += 1;
            let hit = made.probe(chance, noise, probe.place.x.mm(), probe.place.y.mm());
            made.hits.push(hit);
        }
        let plan = solve(&hung(made, left, right), &Id::new("wall-1"), None);
        let holes = holes(&plan);
        self.sure.add(holes.len() == 4 && holes.iter().all(|hole| hole.met));
        for hole in holes.iter().filter(|hole| hole.met) {
            self.right.add(made.solid(hole.place.x.mm(), hole.place.y.mm(), EDGE_NEED_MM));
        }
    }
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

/// The wall with all its hits, and a display on a plate with two slots a stud.
fn hung(made: &Made, left_mm: f64, right_mm: f64) -> Job {
    let mm = |mm: f64| Length::millimetres(mm).quantised();
    let apart = right_mm - left_mm;
    let slot = |id: &str, right: f64, down: f64| PlateSlot {
        id: Id::new(id),
        right: Offset(mm(right)),
        down: mm(down),
        travel: mm(TRAVEL_MM),
        upright: false,
        width: None,
    };
    let (half, low) = (apart / 2.0, 30.0 + ROWS_MM);
    let plate = Plate {
        solids: vec![Solid {
            id: Id::new("solid-1"),
            left: Offset(mm(-half - 60.0)),
            right: Offset(mm(half + 60.0)),
            down: mm(0.0),
            height: mm(160.0),
        }],
        thickness: None,
        holes: Vec::new(),
        slots: vec![
            slot("slot-1", -half, 30.0),
            slot("slot-2", half, 30.0),
            slot("slot-3", -half, low),
            slot("slot-4", half, low),
        ],
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
        // The middle between the two rows is at the height of the hits.
        upright: UprightRule::Height {
            of: PieceHeight::Top,
            from: UprightDatum::Floor,
            toward: None,
            by: mm(HEIGHT_MM + 200.0 + 30.0 + ROWS_MM / 2.0),
        },
        nudge: Nudge::default(),
        cables: Vec::new(),
    };
    for wall in &mut job.walls {
        let option =
            WallOption { id: Id::new("option-1"), hangings: vec![hanging.clone()], ..WallOption::default() };
        wall.options.push(option);
    }
    job
}

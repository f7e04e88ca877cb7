//! What the choice of fasteners costs: a solve with the kit beside one with none, on the busiest demo, on the busiest
//! in which fasteners are chosen, on every other demo, and on an arm's plate of more and more holes in two studs.
//!
//! Beside each stands how many fasteners the plan has: without any no set was weighed, and no bound says anything.

use crate::demo::{busiest, contents, demos, machine, median, verdict};
use std::process::ExitCode;
use std::time::Instant;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::{Arm, Tilt};
use strikeline_solver::job::plate::PlateHole;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::{Angle, Length};

/// On the busiest demo, at most, and on the busiest in which fasteners are chosen.
const BOUND_MS: f64 = 0.5;

/// Prints the table and says whether the bound held.
pub(crate) fn report() -> ExitCode {
    let (path, job) = match busiest() {
        Ok(found) => found,
        Err(why) => {
            eprintln!("{why}");
            return ExitCode::from(2);
        }
    };
    println!("fasteners: {} ({})", job.title, machine());
    println!("{:>44} {:>10} {:>12} {:>12} {:>10}", "job", "fasteners", "without ms", "more ms", "bound ms");
    let mut short = Vec::new();
    let mut bounded = |name: &str, job: &Job| {
        if row(name, job, Some(BOUND_MS)) > BOUND_MS {
            short.push(name.to_owned());
        }
    };
    bounded(&job.title, &job);
    let mut others = demos(&path);
    // The busiest first: the one before all is there already.
    others.sort_by_key(|other| std::cmp::Reverse(contents(other)));
    let first = std::iter::once(&job).chain(&others).find(|one| chosen(one) > 0);
    let Some(choosing) = first.cloned() else {
        eprintln!("no fastener is chosen in any demo job");
        return ExitCode::from(2);
    };
    for other in &others {
        if other.title == choosing.title {
            bounded(&other.title, other);
        } else {
            row(&other.title, other, None);
        }
    }
    for holes in [2, 4, 6, 8, 10, 12] {
        row(&format!("an arm's plate of {holes} holes"), &arm(&choosing, holes), None);
    }
    verdict("fasteners", &short)
}

/// How many fasteners the plans of a job's walls have.
fn chosen(job: &Job) -> usize {
    let plans = job.walls.iter().map(|wall| solve(job, &wall.id, None));
    plans.flat_map(|plan| plan.pieces).filter_map(|piece| Some(piece.mount?.fastening.fasteners.len())).sum()
}

/// Prints one job, and tells what its fasteners cost.
fn row(name: &str, job: &Job, bound_ms: Option<f64>) -> f64 {
    let mut without = job.clone();
    without.kit.fasteners.clear();
    // In turn, so that a slow moment of the machine meets both.
    let pairs: Vec<(f64, f64)> = (0..101).map(|_| (solve_ms(&without), solve_ms(job))).collect();
    let bare = median(pairs.iter().map(|(bare, _)| *bare).collect());
    let more = median(pairs.iter().map(|(bare, full)| full - bare).collect());
    let bound = bound_ms.map_or_else(|| "-".to_owned(), |bound| format!("{bound:.1}"));
    let fasteners = chosen(job);
    println!("{name:>44} {fasteners:>10} {bare:>12.3} {more:>12.3} {bound:>10}");
    more
}

fn solve_ms(job: &Job) -> f64 {
    let start = Instant::now();
    for wall in &job.walls {
        std::hint::black_box(solve(job, &wall.id, None));
    }
    start.elapsed().as_secs_f64() * 1000.0
}

/// The job with the mount of its first plate as an arm whose plate has so many holes, in two columns that stand on the
/// two studs that its plan uses now.
fn arm(job: &Job, holes: usize) -> Job {
    let mut job = job.clone();
    let mounted = job
        .walls
        .iter()
        .flat_map(|wall| solve(&job, &wall.id, None).pieces)
        .filter_map(|piece| piece.mount)
        .find(|mounted| !mounted.fastening.fasteners.is_empty());
    let Some(mounted) = mounted else { return job };
    let in_studs = mounted.holes.iter().filter(|hole| hole.stud.is_some()).map(|hole| hole.in_plate.x);
    let (left, right) =
        in_studs.fold((Length::default(), Length::default()), |(left, right), x| (left.min(x), right.max(x)));
    let Some(mount) = job.mounts.iter_mut().find(|mount| mount.id == mounted.id) else { return job };
    let none = Some(Angle::degrees(0.0));
    mount.tilt = Some(Tilt { down: none, up: none, pivot_down: None });
    mount.arm = Some(Arm { reach: Some(Length::millimetres(400.0)), ..Arm::default() });
    if let Some(plate) = &mut mount.plate {
        let widths = plate.holes.iter().map(|hole| hole.diameter);
        let width = widths.chain(plate.slots.iter().map(|slot| slot.width)).flatten().next();
        plate.slots.clear();
        plate.holes = (0..holes)
            .map(|index| {
                #[expect(clippy::cast_precision_loss, reason = "a dozen")]
                let down = 20.0 + 40.0 * (index / 2) as f64;
                PlateHole {
                    id: Id::new(&format!("hole-{}", index + 1)),
                    right: Offset(if index % 2 == 0 { left } else { right }),
                    down: Length::millimetres(down),
                    diameter: width,
                }
            })
            .collect();
    }
    job
}

//! What the choice of fasteners costs: a solve with the kit beside one with none, on the busiest demo, on every demo,
//! and on an arm's plate of more and more holes in two studs.

use crate::demo::{busiest, demos, machine, median, verdict};
use std::process::ExitCode;
use std::time::Instant;
use strikeline_solver::job::Job;
use strikeline_solver::job::plate::PlateHole;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// On the busiest demo, at most.
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
    println!("{:>44} {:>12} {:>12} {:>10}", "job", "without ms", "more ms", "bound ms");
    let mut short = Vec::new();
    let more = row(&job.title, &job, Some(BOUND_MS));
    if more > BOUND_MS {
        short.push("the busiest demo".to_owned());
    }
    for other in demos(&path) {
        row(&other.title, &other, None);
    }
    let growing = [2, 4, 6, 8, 10, 12].map(|holes| (holes, arm(&job, holes)));
    for (holes, job) in &growing {
        row(&format!("an arm's plate of {holes} holes"), job, None);
    }
    verdict("fasteners", &short)
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
    println!("{name:>44} {bare:>12.3} {more:>12.3} {bound:>10}");
    more
}

fn solve_ms(job: &Job) -> f64 {
    let start = Instant::now();
    for wall in &job.walls {
        std::hint::black_box(solve(job, &wall.id, None));
    }
    start.elapsed().as_secs_f64() * 1000.0
}

/// The job with its first mount as an arm whose plate has so many holes, in two columns 16 in apart.
fn arm(job: &Job, holes: usize) -> Job {
    let mut job = job.clone();
    let Some(mount) = job.mounts.first_mut() else { return job };
    mount.arm = Some(strikeline_solver::job::mount::Arm {
        reach: Some(Length::millimetres(400.0)),
        ..strikeline_solver::job::mount::Arm::default()
    });
    if let Some(plate) = &mut mount.plate {
        plate.slots.clear();
        plate.holes = (0..holes)
            .map(|index| {
                let side = if index % 2 == 0 { -203.2 } else { 203.2 };
                #[expect(clippy::cast_precision_loss, reason = "a dozen")]
                let down = 20.0 + 40.0 * (index / 2) as f64;
                PlateHole {
                    id: Id::new(&format!("hole-{}", index + 1)),
                    right: Offset(Length::millimetres(side)),
                    down: Length::millimetres(down),
                    diameter: Some(Length::inches(0.375)),
                }
            })
            .collect();
    }
    job
}

//! What it costs to look at every place to either side of a piece, and to solve each of them in full, on each demo.

use crate::demo::{demos, machine, median, on_busiest, verdict};
use std::path::Path;
use std::process::ExitCode;
use std::time::Instant;
use strikeline_solver::geometry::Axis;
use strikeline_solver::job::Job;
use strikeline_solver::solve::solve;
use strikeline_solver::sweep::{Reach, Sweep};

/// A look at all places of a piece of the busiest demo, at most.
const LOOKS_MS: f64 = 15.0;
/// All of them in full, at most.
const FULL_MS: f64 = 400.0;
/// What is hoped for.
const PRIZE_MS: f64 = 150.0;
/// Each is done so often.
const TIMES: usize = 5;

/// Prints the table and says whether the bounds held.
pub(crate) fn report() -> ExitCode {
    on_busiest(told)
}

fn told(path: &Path, job: &Job) -> ExitCode {
    println!("sweep: {} ({}), the median of {TIMES}", job.title, machine());
    println!(
        "{:>24} {:>12} {:>7} {:>9} {:>9} {:>9}",
        "job", "piece", "places", "solve ms", "looks ms", "full ms"
    );
    let (looks, full) = rows(job);
    println!("{:>24} {:>12} {:>7} {:>9} {LOOKS_MS:>9.1} {FULL_MS:>9.1}", "bound", "", "", "-");
    for other in demos(path) {
        rows(&other);
    }
    println!("the prize, {PRIZE_MS:.0} ms: {}", if full <= PRIZE_MS { "won" } else { "not won" });
    let mut short = Vec::new();
    for (name, is_held) in [("looks", looks <= LOOKS_MS), ("full", full <= FULL_MS)] {
        if !is_held {
            short.push(name.to_owned());
        }
    }
    verdict("sweep", &short)
}

/// Prints a row for each piece of a job; the most that looks and full places of one took.
fn rows(job: &Job) -> (f64, f64) {
    let mut most = (0.0_f64, 0.0_f64);
    for wall in &job.walls {
        let plan = solve(job, &wall.id, None);
        let solves = (0..TIMES).map(|_| {
            let start = Instant::now();
            std::hint::black_box(solve(job, &wall.id, None));
            ms(start)
        });
        let one = median(solves.collect());
        for piece in &plan.pieces {
            let sweep = || Sweep::of(job, &plan, &piece.id, Axis::Across, Reach::Bay);
            let Some(places) = sweep().map(|sweep| sweep.line().len()) else { continue };
            let timed = (0..TIMES).filter_map(|_| {
                // What is shared by all places is part of the looks.
                let start = Instant::now();
                let mut sweep = sweep()?;
                std::hint::black_box(sweep.by_ref().take(places).count());
                let looks = ms(start);
                let start = Instant::now();
                std::hint::black_box(sweep.count());
                Some((looks, ms(start)))
            });
            let timed: Vec<(f64, f64)> = timed.collect();
            let looks = median(timed.iter().map(|(looks, _)| *looks).collect());
            let full = median(timed.iter().map(|(_, full)| *full).collect());
            println!(
                "{:>24} {:>12} {places:>7} {one:>9.3} {looks:>9.2} {full:>9.1}",
                job.title,
                piece.id.to_string()
            );
            most = (most.0.max(looks), most.1.max(full));
        }
    }
    most
}

fn ms(since: Instant) -> f64 {
    since.elapsed().as_secs_f64() * 1000.0
}

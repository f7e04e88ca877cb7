//! What the cables' way costs: a solve with ports beside one without, on every demo; and the
//! search beside a general-purpose one, petgraph's, over a fine grid of the same random walls.

mod grid;

use crate::demo::{busiest, demos, machine, median, verdict};
use grid::{Dice, by_petgraph, wall};
use std::process::ExitCode;
use std::time::Instant;
use strikeline_solver::job::Job;
use strikeline_solver::route::cheapest;
use strikeline_solver::solve::solve;

/// On the busiest demo, at most.
const BOUND_MS: f64 = 0.5;
/// Which walls, and how many.
const SEED: u64 = 88;
const WALLS: usize = 100;

/// Prints the tables and says whether the bound held.
pub(crate) fn report() -> ExitCode {
    let (path, job) = match busiest() {
        Ok(found) => found,
        Err(why) => {
            eprintln!("{why}");
            return ExitCode::from(2);
        }
    };
    println!("cable: {} ({})", job.title, machine());
    println!("{:>44} {:>12} {:>12} {:>10}", "job", "without ms", "more ms", "bound ms");
    let mut short = Vec::new();
    if row(&job, Some(BOUND_MS)) > BOUND_MS {
        short.push("the busiest demo".to_owned());
    }
    // The busiest has little to do for its cables; what others cost is told beside it.
    for other in demos(&path) {
        row(&other, None);
    }
    against_petgraph(&mut short);
    verdict("cable", &short)
}

/// Prints one job, and tells what its cables cost.
fn row(job: &Job, bound_ms: Option<f64>) -> f64 {
    let mut without = job.clone();
    without.pieces.iter_mut().for_each(|piece| piece.ports.clear());
    for hanging in
        without.walls.iter_mut().flat_map(|wall| &mut wall.options).flat_map(|one| &mut one.hangings)
    {
        hanging.cables.clear();
    }
    // In turn, so that a slow moment of the machine meets both.
    let pairs: Vec<(f64, f64)> = (0..101).map(|_| (solve_ms(&without), solve_ms(job))).collect();
    let bare = median(pairs.iter().map(|(bare, _)| *bare).collect());
    let more = median(pairs.iter().map(|(bare, full)| full - bare).collect());
    let bound = bound_ms.map_or_else(|| "-".to_owned(), |bound| format!("{bound:.1}"));
    println!("{:>44} {bare:>12.3} {more:>12.3} {bound:>10}", job.title);
    more
}

fn solve_ms(job: &Job) -> f64 {
    let start = Instant::now();
    for wall in &job.walls {
        std::hint::black_box(solve(job, &wall.id, None));
    }
    start.elapsed().as_secs_f64() * 1000.0
}

/// Prints how much faster the search on candidate lines is, and that both find the same.
fn against_petgraph(short: &mut Vec<String>) {
    let mut dice = Dice(SEED);
    let fields: Vec<_> = (0..WALLS).map(|_| wall(&mut dice)).collect();
    let mut times = Vec::new();
    let mut differ = 0;
    for field in &fields {
        let start = Instant::now();
        let own = cheapest(field).map(|found| found.cost);
        let own_ms = start.elapsed().as_secs_f64() * 1000.0;
        let start = Instant::now();
        let general = by_petgraph(field);
        let general_ms = start.elapsed().as_secs_f64() * 1000.0;
        differ += usize::from(own != general);
        times.push((own_ms, general_ms));
    }
    let own = median(times.iter().map(|(own, _)| *own).collect());
    let general = median(times.iter().map(|(_, general)| *general).collect());
    println!("{WALLS} random walls, seed {SEED}, the general search on a grid of 25 mm:");
    println!("{:>44} {own:>12.3}", "candidate lines, ms");
    println!("{:>44} {general:>12.3}", "petgraph, its graph made and searched, ms");
    println!("{:>44} {:>12.1}", "ratio", general / own);
    println!("{:>44} {differ:>12}", "walls on which they differ");
    if differ > 0 {
        short.push("both searches find the same".to_owned());
    }
}

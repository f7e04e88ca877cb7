//! How long a full solve takes on the busiest demo, and how that grows with hits and features.

use crate::demo::{busiest, machine, median, verdict};
use crate::framing;
use std::process::ExitCode;
use std::time::Instant;
use strikeline_solver::job::Job;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;

/// A frame at 60 Hz.
const FRAME_MS: f64 = 1000.0 / 60.0;
/// A full solve of the busiest demo, at most.
const BOUND_MS: f64 = 2.0;
/// The same with a hundred times its contents.
const BOUND_AT_100_MS: f64 = 1000.0;

/// Prints the table and says whether the bounds held.
pub(crate) fn report() -> ExitCode {
    let (_, busiest) = match busiest() {
        Ok(found) => found,
        Err(why) => {
            eprintln!("{why}");
            return ExitCode::from(2);
        }
    };
    println!("solve: {} ({})", busiest.title, machine());
    println!("{:>9} {:>12} {:>12} {:>10}", "contents", "median ms", "of a frame", "bound ms");
    let mut short = Vec::new();
    for (times, bound_ms) in [(1, Some(BOUND_MS)), (10, None), (100, Some(BOUND_AT_100_MS))] {
        let median_ms = median_ms(&grown(&busiest, times), if times == 100 { 9 } else { 101 });
        let share = median_ms / FRAME_MS * 100.0;
        let bound = bound_ms.map_or_else(|| "-".to_owned(), |bound| format!("{bound:.1}"));
        println!("{times:>8}x {median_ms:>12.3} {share:>11.2}% {bound:>10}");
        if bound_ms.is_some_and(|bound_ms| median_ms > bound_ms) {
            short.push(format!("{times}x"));
        }
    }
    println!("{:>9} {:>12} {:>23}", "hits", "inference ms", "bound ms");
    for (hits, bound_ms) in [(10, Some(framing::BOUND_MS)), (20, None), (100, None), (200, None)] {
        let median_ms = framing::inference_ms(hits);
        let bound = bound_ms.map_or_else(|| "-".to_owned(), |bound| format!("{bound:.1}"));
        println!("{hits:>9} {median_ms:>12.3} {bound:>23}");
        if bound_ms.is_some_and(|bound_ms| median_ms > bound_ms) {
            short.push(format!("inference from {hits} hits"));
        }
    }
    verdict("solve", &short)
}

/// The median of so many solves of all walls, in milliseconds.
fn median_ms(job: &Job, runs: usize) -> f64 {
    let one_ms = |_| {
        let start = Instant::now();
        for wall in &job.walls {
            std::hint::black_box(solve(job, &wall.id, None));
        }
        start.elapsed().as_secs_f64() * 1000.0
    };
    median((0..runs).map(one_ms).collect())
}

/// The job with its hits, features and hidden things so many times over, each copy with ids of its own.
fn grown(job: &Job, times: usize) -> Job {
    let mut grown = job.clone();
    for (wall, one) in grown.walls.iter_mut().zip(&job.walls) {
        for copy in 1..times {
            let own = |id: &Id| Id::new(&format!("{id}-x{copy}"));
            wall.hits.extend(one.hits.iter().cloned().map(|mut hit| {
                hit.id = own(&hit.id);
                hit
            }));
            wall.features.extend(one.features.iter().cloned().map(|mut feature| {
                feature.id = own(&feature.id);
                feature
            }));
            wall.hidden.extend(one.hidden.iter().cloned().map(|mut hidden| {
                hidden.id = own(&hidden.id);
                hidden
            }));
        }
    }
    grown
}

//! What is asked for beside a plan when the hand is off: on each option of each demo the limits of its fasteners, what
//! would clear its findings, the dearest finding by itself, and which of twelve mounts suit.

use crate::demo::{busiest, machine, median, verdict};
use std::process::ExitCode;
use std::time::Instant;
use strikeline::files::job_file::read_job;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::limits::limits;
use strikeline_solver::mend::for_finding;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::which_of_mine::which_of_mine;

/// Of each, at most.
const BOUND_MS: f64 = 50.0;
/// So many mounts are asked about.
const MOUNTS: usize = 12;

/// Prints the table and says whether the bound held.
pub(crate) fn report() -> ExitCode {
    let folder = match busiest() {
        Ok((path, _)) => path.parent().map(std::path::Path::to_path_buf),
        Err(why) => {
            eprintln!("{why}");
            return ExitCode::from(2);
        }
    };
    let entries = folder.map(std::fs::read_dir);
    let Some(Ok(entries)) = entries else { return ExitCode::from(2) };
    let mut paths: Vec<_> = entries.flatten().map(|entry| entry.path()).collect();
    paths.sort();
    println!("mends: every demo ({}), bound of each {BOUND_MS:.0} ms", machine());
    println!(
        "{:>44} {:>11} {:>16} {:>9} {:>8}",
        "option", "limits ms", "dearest find. ms", "mends", "mine ms"
    );
    let mut short = Vec::new();
    for job in paths.iter().filter_map(|path| Some(read_job(path).ok()?.job)) {
        for wall in &job.walls {
            for option in &wall.options {
                let plan = solve(&job, &wall.id, Some(&option.id));
                let name = format!("{}, {}", job.title, option.id);
                let figures = figures(&job, &plan);
                println!(
                    "{name:>44} {:>11.3} {:>16.3} {:>9} {:>8.3}",
                    figures.limits_ms, figures.dearest_ms, figures.mends, figures.mine_ms
                );
                let most = figures.limits_ms.max(figures.dearest_ms).max(figures.mine_ms);
                if most > BOUND_MS {
                    short.push(name);
                }
            }
        }
    }
    verdict("mends", &short)
}

struct Figures {
    limits_ms: f64,
    dearest_ms: f64,
    mends: usize,
    mine_ms: f64,
}

fn figures(job: &Job, plan: &Plan) -> Figures {
    let limits_ms = of(|| {
        for piece in &plan.pieces {
            std::hint::black_box(limits(job, plan, &piece.id));
        }
    });
    let mut mends = 0;
    let mut dearest_ms: f64 = 0.0;
    for finding in &plan.findings {
        let ask = || for_finding(job, &plan.wall, plan.option.as_ref(), finding);
        mends += ask().len();
        dearest_ms = dearest_ms.max(of(|| {
            std::hint::black_box(ask());
        }));
    }
    let mounts: Vec<Mount> = job.mounts.iter().cycle().take(MOUNTS).cloned().collect();
    let mine_ms = of(|| {
        for piece in plan.pieces.iter().take(1) {
            std::hint::black_box(which_of_mine(job, &plan.wall, plan.option.as_ref(), &piece.id, &mounts));
        }
    });
    Figures { limits_ms, dearest_ms, mends, mine_ms }
}

/// The middle one of nine times, in milliseconds.
fn of(ask: impl Fn()) -> f64 {
    let times = (0..9).map(|_| {
        let start = Instant::now();
        ask();
        start.elapsed().as_secs_f64() * 1000.0
    });
    median(times.collect())
}

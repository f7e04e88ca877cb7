//! The busiest of the demo jobs, and what every report says of itself.

use std::path::{Path, PathBuf};
use std::process::ExitCode;
use strikeline::files::job_file::read_job;
use strikeline_solver::job::Job;
use strikeline_solver::job::wall::Wall;

/// The demo job with the most hits, features and hidden things, and its path.
pub(crate) fn busiest() -> Result<(PathBuf, Job), String> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    let entries =
        std::fs::read_dir(&folder).map_err(|why| format!("no demo jobs: {why}: {}", folder.display()))?;
    let read = entries.flatten().filter_map(|entry| {
        let path = entry.path();
        let job = read_job(&path).ok()?.job;
        Some((path, job))
    });
    read.max_by_key(|(path, job)| (contents(job), path.clone()))
        .ok_or_else(|| format!("no demo job can be read: {}", folder.display()))
}

/// How many hits, features and hidden things a job has.
pub(crate) fn contents(job: &Job) -> usize {
    let of = |wall: &Wall| wall.hits.len() + wall.features.len() + wall.hidden.len();
    job.walls.iter().map(of).sum()
}

/// The other demos.
pub(crate) fn demos(busiest: &Path) -> Vec<Job> {
    let folder = busiest.parent().map(std::fs::read_dir);
    let Some(Ok(entries)) = folder else { return Vec::new() };
    let mut paths: Vec<_> =
        entries.flatten().map(|entry| entry.path()).filter(|path| path != busiest).collect();
    paths.sort();
    paths.iter().filter_map(|path| Some(read_job(path).ok()?.job)).collect()
}

/// A report on the busiest demo; where there is none it says why.
pub(crate) fn on_busiest(report: impl FnOnce(&Path, &Job) -> ExitCode) -> ExitCode {
    match busiest() {
        Ok((path, job)) => report(&path, &job),
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

/// The machine, for the head of a table.
pub(crate) fn machine() -> String {
    format!("{} {}", std::env::consts::OS, std::env::consts::ARCH)
}

/// The middle one of some figures; 0 of none.
pub(crate) fn median(mut figures: Vec<f64>) -> f64 {
    figures.sort_by(f64::total_cmp);
    figures.get(figures.len() / 2).copied().unwrap_or_default()
}

/// The last line of a report, and its exit code.
pub(crate) fn verdict(name: &str, short: &[String]) -> ExitCode {
    if short.is_empty() {
        println!("{name}: all bounds held");
        return ExitCode::SUCCESS;
    }
    println!("{name}: short: {}", short.join(", "));
    ExitCode::from(1)
}

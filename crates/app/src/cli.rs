//! The command line: `strikeline`, `plan`, `check`, `sheet`.

mod json;
mod options;

use crate::files::job_file::{Opened, read_job};
use clap::{Parser, Subcommand};
use options::chosen_options;
use std::ffi::OsString;
use std::io::Write;
use std::path::{Path, PathBuf};
use strikeline_solver::finding::Level;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// Plan a display on a wall before the first hole. It plans; it does not certify.
#[derive(Parser)]
#[command(name = "strikeline", version, args_conflicts_with_subcommands = true)]
struct Arguments {
    #[command(subcommand)]
    command: Option<Command>,
    /// The job to open in the window; none begins a new one.
    job: Option<PathBuf>,
}

#[derive(Subcommand)]
enum Command {
    /// Print the mark-out.
    Plan {
        /// The job.
        job: PathBuf,
        /// Print it for a program.
        #[arg(long)]
        json: bool,
        /// The option to plan; may be given once a wall.
        #[arg(long = "option")]
        options: Vec<String>,
    },
    /// Read and solve each job and print a line each; exits with the worst.
    Check {
        /// The jobs.
        #[arg(required = true)]
        jobs: Vec<PathBuf>,
    },
    /// Draw the elevation to scale.
    Sheet {
        /// The job.
        job: PathBuf,
        /// The file to write, ending in .svg.
        #[arg(long)]
        out: PathBuf,
        /// The option to draw; may be given once a wall.
        #[arg(long = "option")]
        options: Vec<String>,
    },
}

/// Nothing stops the job.
const WELL: u8 = 0;
/// A finding stops the job.
const STOPPED: u8 = 1;
/// The input cannot be used.
const UNUSABLE: u8 = 2;

/// Runs the program with its arguments (the first is its own name), writing to the given outputs; gives the
/// exit code: 0 well, 1 findings that stop the job, 2 unusable input.
pub fn run<A: Into<OsString> + Clone>(
    arguments: impl IntoIterator<Item = A>,
    out: &mut dyn Write,
    err: &mut dyn Write,
) -> u8 {
    let arguments = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => arguments,
        Err(why) if why.use_stderr() => return say(err, &why.to_string(), UNUSABLE),
        Err(help) => return say(out, &help.to_string(), WELL),
    };
    let done = match arguments.command {
        None => window(arguments.job),
        Some(Command::Plan { job, json, options }) => plan(&job, json, &options, out),
        Some(Command::Check { jobs }) => Ok(check(&jobs, out)),
        Some(Command::Sheet { job, out: file, options }) => sheet(&job, &file, &options, out),
    };
    done.unwrap_or_else(|why| say(err, &format!("strikeline: {why}\n"), UNUSABLE))
}

/// Writes and gives the code; a closed pipe is nobody's fault.
fn say(out: &mut dyn Write, text: &str, code: u8) -> u8 {
    match out.write_all(text.as_bytes()).and_then(|()| out.flush()) {
        Ok(()) | Err(_) => code,
    }
}

fn window(job: Option<PathBuf>) -> Result<u8, String> {
    let shows = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    if cfg!(target_os = "linux") && !shows("DISPLAY") && !shows("WAYLAND_DISPLAY") {
        return Err(no_display("no display is attached"));
    }
    crate::app::run(job).map_err(|why| no_display(&why))?;
    Ok(WELL)
}

/// What to do without a window.
fn no_display(why: &str) -> String {
    format!(
        "the window cannot open: {why}.\n\
         Without a display, print the plan with: strikeline plan JOB.ron\n\
         and draw the sheet with: strikeline sheet JOB.ron --out FILE.svg"
    )
}

/// The plans of all walls, each with the option asked for.
fn plans(job: &Job, options: &[String]) -> Result<Vec<Plan>, String> {
    let chosen = chosen_options(job, options)?;
    Ok(chosen.into_iter().map(|(wall, option)| strikeline_solver::solve::solve(job, wall, option)).collect())
}

fn code_of(plans: &[Plan]) -> u8 {
    let stops = plans.iter().flat_map(|plan| &plan.findings).any(|finding| finding.level == Level::Stop);
    if stops { STOPPED } else { WELL }
}

fn open(path: &Path) -> Result<Opened, String> {
    read_job(path).map_err(|why| why.to_string())
}

fn plan(path: &Path, as_json: bool, options: &[String], out: &mut dyn Write) -> Result<u8, String> {
    let opened = open(path)?;
    let plans = plans(&opened.job, options)?;
    let text = if as_json {
        json::text(&opened.job, &plans)
    } else {
        plans.iter().map(|plan| words::plan_text(&opened.job, plan)).collect::<Vec<_>>().join("\n")
    };
    Ok(say(out, &text, code_of(&plans)))
}

fn check(paths: &[PathBuf], out: &mut dyn Write) -> u8 {
    let mut worst = WELL;
    for path in paths {
        let (line, code) = match open(path).and_then(|opened| plans(&opened.job, &[])) {
            Ok(plans) => {
                let count =
                    |level| plans.iter().flat_map(|plan| &plan.findings).filter(|f| f.level == level).count();
                let (stops, cautions) = (count(Level::Stop), count(Level::Caution));
                let marks: usize = plans.iter().map(|plan| plan.marks.len()).sum();
                let line =
                    format!("{}: {marks} marks, stops: {stops}, cautions: {cautions}\n", path.display());
                (line, code_of(&plans))
            }
            Err(why) => (format!("{}: {why}\n", path.display()), UNUSABLE),
        };
        worst = worst.max(say(out, &line, code));
    }
    worst
}

fn sheet(path: &Path, file: &Path, options: &[String], out: &mut dyn Write) -> Result<u8, String> {
    let svg = file.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("svg"));
    if !svg {
        return Err(format!("the sheet is written as SVG: end the name in .svg: {}", file.display()));
    }
    let opened = open(path)?;
    let plans = plans(&opened.job, options)?;
    if plans.is_empty() {
        return Err(format!("the job has no wall to draw; add one: {}", path.display()));
    }
    for (index, plan) in plans.iter().enumerate() {
        let file = numbered(file, index);
        let scene = strikeline_drawing::sheet::bare_elevation(&opened.job, plan);
        std::fs::write(&file, strikeline_drawing::svg::svg(&scene)).map_err(|why| {
            format!("cannot write the sheet ({why}); choose another place: {}", file.display())
        })?;
        say(out, &format!("{}\n", file.display()), WELL);
    }
    Ok(code_of(&plans))
}

/// The first sheet has the name given, the others `-2`, `-3`.
fn numbered(file: &Path, index: usize) -> PathBuf {
    if index == 0 {
        return file.to_owned();
    }
    let stem = file.file_stem().unwrap_or_default().to_string_lossy();
    file.with_file_name(format!("{stem}-{}.svg", index + 1))
}

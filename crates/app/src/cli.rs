//! The command line: `strikeline`, `plan`, `check`, `sheet`.

mod json;
mod options;
mod output;
mod sheet;
mod window;

use crate::files::job_file::read_job;
use clap::{Parser, Subcommand};
use options::chosen_options;
use std::ffi::OsString;
use std::io::Write;
use std::path::{Path, PathBuf};
use strikeline_solver::beside::Beside;
use strikeline_solver::carry::carry;
use strikeline_solver::explain::explain;
use strikeline_solver::finding::Level;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
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
        /// After each plan print the working of every verdict as a hand calculation; as text only, not with --json.
        #[arg(long, conflicts_with = "json")]
        working: bool,
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
    /// Draw sheets to take to the wall.
    Sheet(sheet::SheetArguments),
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
    let done = match Arguments::try_parse_from(arguments) {
        Ok(arguments) => perform(arguments, out),
        Err(why) if why.use_stderr() => Err(why.to_string()),
        Err(help) => output::write(out, &help.to_string()).map(|()| WELL).map_err(told),
    };
    done.unwrap_or_else(|why| {
        // Where even this cannot be written, the exit code still tells.
        output::write(err, &why).map_or(UNUSABLE, |()| UNUSABLE)
    })
}

/// What went wrong, as it is told: by whom, and on a line of its own.
fn told(why: String) -> String {
    format!("strikeline: {why}\n")
}

fn perform(arguments: Arguments, out: &mut dyn Write) -> Result<u8, String> {
    let done = match arguments.command {
        None => window::open(arguments.job).map(|()| WELL),
        Some(Command::Plan { job, json, working, options }) => {
            plan(&job, if json { Form::Json } else { Form::Text { working } }, &options, out)
        }
        Some(Command::Check { jobs }) => check(&jobs, out),
        Some(Command::Sheet(asked)) => sheet::sheet(&asked, out),
    };
    done.map_err(told)
}

/// A job and the plans of all its walls, each with the option asked for.
struct Planned {
    job: Job,
    plans: Vec<Plan>,
}

impl Planned {
    fn read(path: &Path, options: &[String]) -> Result<Self, String> {
        let job = read_job(path).map_err(|why| why.to_string())?.job;
        if job.walls.is_empty() {
            return Err(format!("the job has no wall to plan; add one: {}", path.display()));
        }
        let chosen = chosen_options(&job, options)?;
        let plans = chosen.into_iter().map(|(wall, option)| solve(&job, wall, option)).collect();
        Ok(Self { job, plans })
    }

    fn count(&self, level: Level) -> usize {
        self.plans.iter().flat_map(|plan| &plan.findings).filter(|finding| finding.level == level).count()
    }

    fn code(&self) -> u8 {
        if self.count(Level::Stop) > 0 { STOPPED } else { WELL }
    }
}

/// What a plan is printed as.
enum Form {
    Json,
    Text { working: bool },
}

fn plan(path: &Path, form: Form, options: &[String], out: &mut dyn Write) -> Result<u8, String> {
    let planned = Planned::read(path, options)?;
    let Planned { job, plans } = &planned;
    let text = match form {
        Form::Json => json::text(job, plans),
        Form::Text { working } => {
            let told = plans.iter().map(|plan| {
                let text = words::plan_text(job, plan, &Beside::of(job, plan));
                if working { [vec![text], workings(job, plan)].concat().join("\n") } else { text }
            });
            let planned: Vec<&Plan> = plans.iter().collect();
            let bring = words::carry_text(job, &planned, &carry(job, &planned));
            let texts = told.chain(Some(bring).filter(|text| !text.is_empty()));
            texts.collect::<Vec<_>>().join("\n")
        }
    };
    output::write(out, &text)?;
    Ok(planned.code())
}

/// The working of each piece's verdict, in the order of the plan.
fn workings(job: &Job, plan: &Plan) -> Vec<String> {
    let explained =
        plan.pieces.iter().filter_map(|piece| explain(job, &plan.wall, plan.option.as_ref(), &piece.id));
    explained.map(|explained| words::working_text(&words::working(plan, &explained))).collect()
}

fn check(paths: &[PathBuf], out: &mut dyn Write) -> Result<u8, String> {
    let mut worst = WELL;
    for path in paths {
        let (line, code) = match Planned::read(path, &[]) {
            Ok(planned) => (summary(&planned, path), planned.code()),
            Err(why) => (format!("unusable: {why}\n"), UNUSABLE),
        };
        output::write(out, &line)?;
        worst = worst.max(code);
    }
    Ok(worst)
}

/// A job in one line.
fn summary(planned: &Planned, path: &Path) -> String {
    let verdict = if planned.code() == WELL { "well" } else { "stopped" };
    let marks: usize = planned.plans.iter().map(|plan| plan.marks.len()).sum();
    let (stops, cautions) = (planned.count(Level::Stop), planned.count(Level::Caution));
    format!("{verdict}: marks {marks}, stops {stops}, cautions {cautions}: {}\n", path.display())
}

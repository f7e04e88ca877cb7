//! A case as its file holds it. What is left out is not compared.

use serde::Deserialize;
use serde::de::DeserializeOwned;
use std::path::{Path, PathBuf};
use strikeline_solver::job::Job;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// A job and what must come out of it.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct Case {
    /// What it shows.
    pub(crate) title: String,
    /// Where the rule comes from.
    pub(crate) source: String,
    /// The sum on paper, line by line.
    pub(crate) sum: Vec<String>,
    /// How far a place may be off its sum, where it hangs on studs that are inferred: their hits are never quite sure.
    #[serde(default)]
    pub(crate) within: Option<Length>,
    /// The job.
    pub(crate) job: Job,
    /// Marks.
    #[serde(default)]
    pub(crate) expect: Vec<ExpectedMark>,
    /// Pieces and their plates.
    #[serde(default)]
    pub(crate) pieces: Vec<ExpectedPiece>,
    /// Holes and slots.
    #[serde(default)]
    pub(crate) holes: Vec<ExpectedHole>,
    /// Ports.
    #[serde(default)]
    pub(crate) ports: Vec<ExpectedPort>,
    /// Cables' ways.
    #[serde(default)]
    pub(crate) cables: Vec<ExpectedCable>,
    /// Rules whose findings must be there.
    #[serde(default)]
    pub(crate) findings: Vec<String>,
    /// Rules whose findings must not be there.
    #[serde(default)]
    pub(crate) no_findings: Vec<String>,
}

/// A mark and how it is read.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectedMark {
    pub(crate) mark: String,
    #[serde(default)]
    pub(crate) x: Option<Length>,
    #[serde(default)]
    pub(crate) y: Option<Length>,
    /// What was done there.
    #[serde(default)]
    pub(crate) state: Option<String>,
    /// Where the plan would have it now.
    #[serde(default)]
    pub(crate) planned_x: Option<Length>,
    #[serde(default)]
    pub(crate) planned_y: Option<Length>,
    /// The x of a line's other end.
    #[serde(default)]
    pub(crate) x_right: Option<Length>,
    /// The y of a line's other end.
    #[serde(default)]
    pub(crate) y_right: Option<Length>,
    /// How many readings it has.
    #[serde(default)]
    pub(crate) readings_in_all: Option<usize>,
    #[serde(default)]
    pub(crate) readings: Vec<ExpectedReading>,
}

/// A reading, by its texts.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectedReading {
    pub(crate) from: String,
    pub(crate) how: String,
    pub(crate) direction: String,
    pub(crate) shown: String,
    /// Where it is taken on the other axis.
    #[serde(default)]
    pub(crate) at: Option<Length>,
    #[serde(default)]
    pub(crate) closes_from: Option<String>,
    #[serde(default)]
    pub(crate) closes_shown: Option<String>,
    /// Whether the second closing reading is another than its own nearest.
    #[serde(default)]
    pub(crate) closes_differs: Option<bool>,
    /// That there is nothing to close on.
    #[serde(default)]
    pub(crate) no_close: bool,
    /// What the blade is kept taut over; an empty text for nothing.
    #[serde(default)]
    pub(crate) taut_over: Option<String>,
}

/// A piece's outline, its plate and its gaps.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectedPiece {
    pub(crate) piece: String,
    #[serde(default)]
    pub(crate) left: Option<Length>,
    #[serde(default)]
    pub(crate) right: Option<Length>,
    #[serde(default)]
    pub(crate) bottom: Option<Length>,
    #[serde(default)]
    pub(crate) top: Option<Length>,
    #[serde(default)]
    pub(crate) plate_left: Option<Length>,
    #[serde(default)]
    pub(crate) plate_right: Option<Length>,
    #[serde(default)]
    pub(crate) plate_bottom: Option<Length>,
    #[serde(default)]
    pub(crate) plate_top: Option<Length>,
    /// How far right of the plate's middle the piece's is.
    #[serde(default)]
    pub(crate) offset: Option<Offset>,
    #[serde(default)]
    pub(crate) studs_met: Option<usize>,
}

/// What a hole meets.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectedHole {
    pub(crate) hole: String,
    #[serde(default)]
    pub(crate) x: Option<Length>,
    #[serde(default)]
    pub(crate) y: Option<Length>,
    #[serde(default)]
    pub(crate) meets: Option<String>,
}

/// Where a port is.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectedPort {
    pub(crate) port: String,
    pub(crate) x: Length,
    pub(crate) y: Length,
}

/// The way of a piece's cables.
#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
pub(crate) struct ExpectedCable {
    pub(crate) piece: String,
    /// `in_wall` or `on_face`; nothing where there is no way.
    #[serde(default)]
    pub(crate) by: Option<String>,
    #[serde(default)]
    pub(crate) allowed: Option<String>,
    #[serde(default)]
    pub(crate) entry_x: Option<Length>,
    #[serde(default)]
    pub(crate) entry_y: Option<Length>,
    #[serde(default)]
    pub(crate) exit_x: Option<Length>,
    #[serde(default)]
    pub(crate) exit_y: Option<Length>,
    /// Not allowed, studs bored, patches, blocks, turns.
    #[serde(default)]
    pub(crate) counts: Option<(u32, u32, u32, u32, u32)>,
    #[serde(default)]
    pub(crate) visible: Option<Length>,
    #[serde(default)]
    pub(crate) length: Option<Length>,
    /// The way of the first cable.
    #[serde(default)]
    pub(crate) lead: Option<Length>,
    /// The length to cut of the first cable.
    #[serde(default)]
    pub(crate) cut: Option<Length>,
    #[serde(default)]
    pub(crate) before_lift: Option<bool>,
    #[serde(default)]
    pub(crate) in_the_way: Option<String>,
    /// Ids of what is passed, `stud` for a stud.
    #[serde(default)]
    pub(crate) crosses: Option<Vec<String>>,
    /// How many other ways there are, at least.
    #[serde(default)]
    pub(crate) others: Option<usize>,
}

fn cases() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("cases")
}

/// The names of all job or case files of a folder, without their ending.
fn names_in(folder: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).unwrap_or_else(|why| panic!("{}: {why}", folder.display()));
    let paths = entries.filter_map(|entry| entry.ok().map(|entry| entry.path()));
    let files = paths.filter(|path| path.extension().is_some_and(|ending| ending == "ron"));
    files.filter_map(|path| path.file_stem().map(|stem| stem.to_string_lossy().into_owned())).collect()
}

fn read<T: DeserializeOwned>(file: &Path) -> T {
    let text = std::fs::read_to_string(file).unwrap_or_else(|why| panic!("{}: {why}", file.display()));
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    options.from_str(&text).unwrap_or_else(|why| panic!("{}: {why}", file.display()))
}

/// Every demo job by its name.
pub(crate) fn demo_jobs() -> Vec<(String, Job)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    let job_of = |name: String| {
        let mut job: Job = read(&folder.join(format!("{name}.ron")));
        job.complete_ids().unwrap_or_else(|why| panic!("{name}: {why:?}"));
        (name, job)
    };
    names_in(&folder).into_iter().map(job_of).collect()
}

impl Case {
    /// Reads the case of this name.
    pub(crate) fn load(name: &str) -> Self {
        let mut case: Self = read(&cases().join(format!("{name}.ron")));
        case.job.complete_ids().unwrap_or_else(|why| panic!("{name}: {why:?}"));
        case
    }

    /// The names of all cases.
    pub(crate) fn names() -> Vec<String> {
        names_in(&cases())
    }
}

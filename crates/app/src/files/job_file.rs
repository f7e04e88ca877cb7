//! The text of a job: read strictly, written canonically.

use super::error::FileError;
use ron::extensions::Extensions;
use serde::Deserialize;
use std::io::Read as _;
use std::path::Path;
use strikeline_solver::job::{FORMAT, Job};

/// The largest file read: a thousand times any room (chosen).
const LIMIT_MB: u64 = 4;

/// The deepest nesting read: a job has less than a quarter of it (chosen).
const DEEPEST: usize = 64;

/// A job as it was read.
#[derive(Clone, Debug)]
pub struct Opened {
    /// The job, every entry with its id.
    pub job: Job,
    /// The file's text, to notice a change on the disk before it is replaced.
    pub text: String,
    /// Whether the program would write the same text: a hand-written file changes at its first save.
    pub canonical: bool,
}

/// The first field of every format.
#[derive(Deserialize)]
struct Version {
    format: u32,
}

/// Reads a job from the disk.
///
/// # Errors
/// What is wrong, where, and what to do.
pub fn read_job(path: &Path) -> Result<Opened, FileError> {
    let unreadable =
        |why: std::io::Error| FileError::Unreadable { why: why.to_string(), path: path.to_owned() };
    let file = std::fs::File::open(path).map_err(unreadable)?;
    let limit = LIMIT_MB * 1024 * 1024;
    let mut bytes = Vec::new();
    file.take(limit + 1).read_to_end(&mut bytes).map_err(unreadable)?;
    if bytes.len() as u64 > limit {
        return Err(FileError::TooLarge { limit_mb: LIMIT_MB, path: path.to_owned() });
    }
    let text = String::from_utf8(bytes).map_err(|_| FileError::NotText { path: path.to_owned() })?;
    read_job_text(&text, path)
}

/// Reads a job from its text; the path is for messages.
///
/// # Errors
/// What is wrong, where, and what to do.
pub fn read_job_text(text: &str, path: &Path) -> Result<Opened, FileError> {
    let malformed = |error: ron::error::SpannedError| FileError::Malformed {
        line: error.span.start.line,
        column: error.span.start.col,
        what: error.code.to_string(),
        path: path.to_owned(),
    };
    if text.trim().is_empty() {
        return Err(FileError::Malformed {
            line: 1,
            column: 1,
            what: format!("the file is empty: a job begins with (format: {FORMAT}"),
            path: path.to_owned(),
        });
    }
    let options = ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    let options = options.with_recursion_limit(DEEPEST);
    // A newer format may hold anything else, so it is asked first; what is no job at all fails below.
    if let Ok(version) = options.from_str::<Version>(text)
        && version.format > FORMAT
    {
        return Err(FileError::NewerFormat { found: version.format, known: FORMAT, path: path.to_owned() });
    }
    let mut job: Job = options.from_str(text).map_err(malformed)?;
    if job.format != FORMAT {
        let what = format!("format {} is none: write format: {FORMAT}", job.format);
        return Err(FileError::Malformed { line: 1, column: 1, what, path: path.to_owned() });
    }
    job.complete_ids().map_err(|double| {
        let wanted = format!("id: \"{}\"", double.id);
        let mut lines = text.lines().enumerate().filter(|(_, line)| line.contains(&wanted));
        let mut line = || lines.next().map_or(0, |(index, _)| index + 1);
        let (first, second) = (line(), line());
        let second = if second == 0 { first } else { second };
        FileError::DoubleId { id: double.id.to_string(), first, second, path: path.to_owned() }
    })?;
    let canonical = write_job_text(&job).is_ok_and(|written| written == text);
    Ok(Opened { job, text: text.to_owned(), canonical })
}

/// The canonical text of a job; a file the program wrote is written again byte for byte.
///
/// # Errors
/// A value that a file cannot hold, such as a negative width.
pub fn write_job_text(job: &Job) -> Result<String, String> {
    let options = ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    let pretty = ron::ser::PrettyConfig::new().indentor("  ").new_line("\n");
    let mut text = options.to_string_pretty(job, pretty).map_err(|why| why.to_string())?;
    text.push('\n');
    Ok(text)
}

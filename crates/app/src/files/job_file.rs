//! The text of a job: read strictly, written canonically.

use super::error::FileError;
use super::place::{self, Place};
use ron::extensions::Extensions;
use serde::Deserialize;
use std::io::Read as _;
use std::path::Path;
use strikeline_solver::job::{FORMAT, Job};

/// The largest file read: a thousand times any room (chosen).
const LIMIT_MB: u64 = 4;

/// The deepest nesting read: a job has less than a quarter of it (chosen).
const DEEPEST: usize = 64;

/// The longest word on what is wrong, in characters: it may quote a value as large as the file (chosen; the
/// longest list of expected fields is half of it).
const LONGEST: usize = 800;

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
    #[serde(default)]
    format: Option<u64>,
}

/// Reads a job from the disk.
///
/// # Errors
/// What is wrong, where, and what to do.
pub fn read_job(path: &Path) -> Result<Opened, FileError> {
    let unreadable =
        |why: std::io::Error| FileError::Unreadable { why: why.to_string(), path: path.to_owned() };
    let too_large = || FileError::TooLarge { limit_mb: LIMIT_MB, path: path.to_owned() };
    // Asked before it is opened: opening a pipe waits for somebody to write.
    let about = std::fs::metadata(path).map_err(unreadable)?;
    if !about.is_file() {
        return Err(FileError::NotAFile { path: path.to_owned() });
    }
    if about.len() > limit() {
        return Err(too_large());
    }
    let file = std::fs::File::open(path).map_err(unreadable)?;
    let mut bytes = Vec::new();
    // Bounded again, since it may have grown since.
    file.take(limit() + 1).read_to_end(&mut bytes).map_err(unreadable)?;
    if bytes.len() as u64 > limit() {
        return Err(too_large());
    }
    let text = String::from_utf8(bytes).map_err(|_| FileError::NotText { path: path.to_owned() })?;
    read_job_text(&text, path)
}

/// The largest file read, in bytes.
const fn limit() -> u64 {
    LIMIT_MB * 1024 * 1024
}

/// Reads a job from its text; the path is for messages.
///
/// # Errors
/// What is wrong, where, and what to do.
pub fn read_job_text(text: &str, path: &Path) -> Result<Opened, FileError> {
    let malformed = |place: Place, what: String| FileError::Malformed {
        line: place.line,
        column: place.column,
        what,
        path: path.to_owned(),
    };
    // Some editors begin a text file with a byte order mark.
    let content = text.strip_prefix('\u{feff}').unwrap_or(text);
    if content.trim().is_empty() {
        let what = format!("the file is empty: a job begins with (format: {FORMAT},");
        return Err(malformed(Place::START, what));
    }
    let options = ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    let options = options.with_recursion_limit(DEEPEST);
    // Asked before all else, since a newer format may hold anything; what is no job at all fails below.
    if let Ok(version) = options.from_str::<Version>(content) {
        match version.format {
            Some(found) if found == u64::from(FORMAT) => {}
            Some(found) if found > u64::from(FORMAT) => {
                return Err(FileError::NewerFormat { found, known: FORMAT, path: path.to_owned() });
            }
            Some(found) => {
                let what = format!("there is no format {found}: write format: {FORMAT}");
                return Err(malformed(place::of_format(content), what));
            }
            None => {
                let what = format!("the format is missing: begin the job with (format: {FORMAT},");
                return Err(malformed(place::of_format(content), what));
            }
        }
    }
    let mut job: Job = options.from_str(content).map_err(|error: ron::error::SpannedError| {
        let place = Place { line: error.span.start.line, column: error.span.start.col };
        malformed(place, shortened(&told(&error.code)))
    })?;
    job.complete_ids().map_err(|double| {
        let id = double.id.to_string();
        let places = match place::of_id(content, &id).as_slice() {
            [first, second, ..] => format!("at {first} and at {second}"),
            _ => format!("at a {} and at a {}", double.first, double.second),
        };
        FileError::DoubleId { id, places, path: path.to_owned() }
    })?;
    let canonical = write_job_text(&job).is_ok_and(|written| written == text);
    Ok(Opened { job, text: text.to_owned(), canonical })
}

/// What is wrong and what was expected, where the reader's own words would not say both.
fn told(error: &ron::Error) -> String {
    match error {
        ron::Error::Eof => "the file ends here, before its last bracket is closed".to_owned(),
        ron::Error::TrailingCharacters => "the job ended before this: nothing may follow it".to_owned(),
        ron::Error::MissingStructField { field, outer } => {
            let of = outer.as_ref().map(|outer| format!(" of `{outer}`")).unwrap_or_default();
            format!("the field `{field}`{of} is missing: write {field}: and its value before this")
        }
        other => other.to_string(),
    }
}

/// Both ends of what is too long: it begins with the value and ends with what is wrong with it.
fn shortened(what: &str) -> String {
    let length = what.chars().count();
    if length <= LONGEST {
        return what.to_owned();
    }
    let head: String = what.chars().take(LONGEST / 4).collect();
    let tail: String = what.chars().skip(length - LONGEST / 2).collect();
    format!("{head} ... {tail}")
}

/// The canonical text of a job; a file the program wrote is written again byte for byte.
///
/// # Errors
/// Why it would not be read again: a value that a file cannot hold, such as a negative width, or a job too
/// large for any.
pub fn write_job_text(job: &Job) -> Result<String, String> {
    let options = ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    let pretty = ron::ser::PrettyConfig::new().indentor("  ").new_line("\n");
    let mut text = options.to_string_pretty(job, pretty).map_err(|why| why.to_string())?;
    text.push('\n');
    if text.len() as u64 > limit() {
        return Err(format!("it would be over {LIMIT_MB} MB"));
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::job::wall::Wall;
    use strikeline_solver::subject::Id;
    use strikeline_solver::units::Length;

    fn read(text: &str) -> Result<Opened, String> {
        read_job_text(text, Path::new("room.ron")).map_err(|why| why.to_string())
    }

    fn job() -> Job {
        let wall = Wall { id: Id::new("wall-1"), width: Some(Length::inches(140.5)), ..Wall::default() };
        let notes = Some("\"Some\" (format: 2)\r\n\té \\ /* \u{1b} \u{feff}".to_owned());
        Job { title: "Room".into(), notes, last_id: 1, walls: vec![wall], ..Job::new() }
    }

    #[test]
    fn what_was_written_is_read_and_written_again_to_the_byte() {
        let text = write_job_text(&job()).unwrap();
        let opened = read(&text).unwrap();
        assert_eq!(opened.job, job());
        assert!(opened.canonical);
        assert_eq!(write_job_text(&opened.job).unwrap(), text);
        assert!(text.starts_with("(\n  format: 1,\n"), "{text}");
        assert!(text.contains("width: \"140 1/2 in\""), "without Some: {text}");
    }

    #[test]
    fn what_a_maker_states_is_kept_with_its_document() {
        let text = "(\n  format: 1,\n  last_id: 1,\n  title: \"\",\n  kit: (\n    fasteners: [\n      (\n        \
                    id: \"screw-1\",\n        kind: structural_screw,\n        report: (\n          \
                    document: \"Evaluation report 12\",\n          date: \"2024-05\",\n          \
                    withdrawal: \"205 lbf/in\",\n          gravity: \"0.42\",\n        ),\n      ),\n    ],\n  ),\n)\n";
        let opened = read(text).unwrap();
        assert_eq!(write_job_text(&opened.job).unwrap(), text);
        assert!(opened.canonical);
    }

    #[test]
    fn a_hand_written_file_is_told_from_a_written_one() {
        let text = write_job_text(&job()).unwrap();
        let by_hand =
            [format!("// mine\n{text}"), text.replace('\n', "\r\n"), format!("\u{feff}{text}"), text + "\n"];
        for text in by_hand {
            let opened = read(&text).unwrap();
            assert_eq!(opened.job, job(), "{text}");
            assert!(!opened.canonical, "{text}");
            assert_eq!(opened.text, text, "kept as it was, to compare it with the disk");
        }
    }

    #[test]
    fn the_format_is_asked_first() {
        for (text, said) in [
            ("(title: \"x\")", "line 1, column 1: the format is missing: begin the job with (format: 1,"),
            ("(\n title: \"x\", format: 0)", "line 2, column 22: there is no format 0: write format: 1"),
            ("(format: 2, walls: \"round\")", "the job has format 2, this program reads format 1"),
            ("(format: 99999999999)", "the job has format 99999999999, this program reads format 1"),
            ("(format: \"1\")", "line 1, column 9: "),
            ("(format: -1)", "line 1, column "),
        ] {
            let why = read(text).unwrap_err();
            assert!(why.starts_with(said), "{text}: {why}");
            assert!(why.ends_with(": room.ron"), "the path comes last: {why}");
        }
    }

    #[test]
    fn a_double_id_is_told_at_both_places() {
        let text = "(format: 1, notes: \"id: \\\"a\\\"\", // id: \"a\"\n walls: [(id: \"a\"), (id:\"a\")])";
        let why = read(text).unwrap_err();
        assert!(why.contains("\"a\" stands twice, at line 2, column 15 and at line 2, column 25;"), "{why}");
        let why = read("(format: 1, walls: [(id: \"\\u{61}\"), (id: \"a\")])").unwrap_err();
        assert!(why.contains("at a wall and at a wall"), "{why}");
    }

    #[test]
    fn what_is_wrong_is_told_with_what_was_expected() {
        for (text, said) in [
            ("(format: 1,\n walls: [(id: \"w\", features: [(id: \"f\")])])", "the field `kind` of `Feature`"),
            ("(format: 1,\n purpose: palace)", "expected one of `home`, `workplace`, or `public`"),
            ("(format: 1,\n) more", "nothing may follow it"),
            ("(format: 1,\n walls: [(width: \"48 3/2 in\")])", "write 49 1/2"),
            (
                "(format: 1,\n kit: (fasteners: [(kind: lag, report: (document: \"a\"))]))",
                "the field `date` of `Report`",
            ),
            (
                "(format: 1, kit: (fasteners: [(kind: structural_screw, report: (document: \"a\", date: \"b\",\n\
                 withdrawal: \"205 lbf\"))]))",
                "write lbf/in, N/mm, as in 205 lbf/in",
            ),
        ] {
            let why = read(text).unwrap_err();
            assert!(why.starts_with("line 2, ") && why.contains(said), "{text}: {why}");
        }
    }

    #[test]
    fn a_message_is_no_longer_than_can_be_read() {
        let why =
            read(&format!("(format: 1, walls: [(width: \"{} in\")])", "9".repeat(100_000))).unwrap_err();
        assert!(why.len() < 2 * LONGEST, "{} bytes", why.len());
        assert!(why.contains("At column 1"), "the end tells what is wrong: {why}");
    }

    #[test]
    fn what_could_not_be_read_back_is_not_written() {
        for mm in [-1.0, f64::NAN, f64::INFINITY] {
            let mut job = job();
            job.walls[0].width = Some(Length::millimetres(mm));
            assert!(write_job_text(&job).is_err(), "{mm}");
        }
        let large = Job { notes: Some("a".repeat(5_000_000)), ..job() };
        assert!(write_job_text(&large).unwrap_err().contains("4 MB"));
    }
}

//! The text of a job: read strictly, written canonically.

use super::error::FileError;
use super::fault::Fault;
use super::place;
use super::text::{self, NoText};
use std::path::Path;
use strikeline_solver::job::{FORMAT, Job};

/// The largest file read: a thousand times any room (chosen).
const LIMIT_MB: u64 = 4;

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

/// Reads a job from the disk.
///
/// # Errors
/// What is wrong, where, and what to do.
pub fn read_job(path: &Path) -> Result<Opened, FileError> {
    let text = text::read_text(path, limit()).map_err(|why| match why {
        NoText::Unreadable(why) => FileError::Unreadable { why, path: path.to_owned() },
        NoText::NotAFile => FileError::NotAFile { path: path.to_owned() },
        NoText::TooLarge => FileError::TooLarge { limit_mb: LIMIT_MB, path: path.to_owned() },
        NoText::NotText => FileError::NotText { path: path.to_owned() },
    })?;
    read_job_text(&text, path)
}

/// The largest file read, in bytes.
pub(super) const fn limit() -> u64 {
    LIMIT_MB * 1024 * 1024
}

/// Reads a job from its text; the path is for messages.
///
/// # Errors
/// What is wrong, where, and what to do.
pub fn read_job_text(text: &str, path: &Path) -> Result<Opened, FileError> {
    let mut job: Job = text::from_ron(text, "job", FORMAT).map_err(|fault| match fault {
        Fault::Newer { found } => FileError::NewerFormat { found, known: FORMAT, path: path.to_owned() },
        Fault::Foreign { what } => FileError::NotAJob { what, path: path.to_owned() },
        Fault::Malformed { place, what } => {
            FileError::Malformed { line: place.line, column: place.column, what, path: path.to_owned() }
        }
    })?;
    job.complete_ids().map_err(|double| {
        let id = double.id.to_string();
        let places = match place::of_id(text::content(text), &id).as_slice() {
            [first, second, ..] => format!("at {first} and at {second}"),
            _ => format!("at a {} and at a {}", double.first, double.second),
        };
        FileError::DoubleId { id, places, path: path.to_owned() }
    })?;
    job.name_ends();
    let canonical = write_job_text(&job).is_ok_and(|written| written == text);
    Ok(Opened { job, text: text.to_owned(), canonical })
}

/// The canonical text of a job; a file the program wrote is written again byte for byte.
///
/// # Errors
/// Why it would not be read again: a value that a file cannot hold, such as a negative width, or a job too
/// large for any.
pub fn write_job_text(job: &Job) -> Result<String, String> {
    let text = text::to_ron(job)?;
    if text.len() as u64 > limit() {
        return Err(format!("it would be over {LIMIT_MB} MB"));
    }
    Ok(text)
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::job::place::AcrossDatum;
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
    fn a_walls_own_edge_written_by_hand_is_its_end() {
        let text = "(format: 1, walls: [(id: \"north\", hits: [(x: (from: \"north.right\", by: \"16 in\"), kind: centre)])])";
        let opened = read(text).unwrap();
        assert_eq!(opened.job.walls[0].hits[0].x.from, AcrossDatum::RightEnd);
        assert!(!opened.canonical);
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
    fn a_file_of_something_else_is_told_in_plain_words() {
        for (text, begins) in [
            ("rubbish", "rubbish"),
            ("// a note\nGIF89a, and more", "GIF89a"),
            ("{\"format\": 1}", "{"),
            ("[1, 2]", "["),
            ("\"a text\"", "a text"),
            ("<?xml version=\"1.0\"?>", "<"),
        ] {
            let why = read(text).unwrap_err();
            let said =
                format!("this file is no job (it begins with `{begins}`, and a job begins with (format: 1,)");
            assert!(why.starts_with(&said), "{text}: {why}");
            assert!(why.ends_with("; choose a job file (.ron): room.ron"), "{text}: {why}");
        }
    }

    #[test]
    fn what_is_wrong_is_told_without_the_words_of_the_reader() {
        for text in [
            "Wall(format: 1)",
            "(format: 1, walls: (id: \"w\"))",
            "(format: 1, walls: [7])",
            "(format: 1, title: 7)",
            "(format: 1, title: \"never closed)",
            "(format: 1, title: \"a\" notes: \"b\")",
            "(format: 1, title \"a\")",
            "(format: 1, title: \"a\", title: \"b\")",
            "(format: 1, colour: red)",
            "(format: 1, walls: [(bearing: maybe)])",
            "(format: 1, pieces: [(lines: \"many\")])",
            "(format: 1, pieces: [(lines: 99999999999999)])",
            "(format: 1, walls: [(width: 48)])",
            "(format: 1, walls: [Wall(id: \"w\")], pieces: rubbish)",
            "(format: 1, pieces: [rubbish])",
            "(format: 1, /* never closed",
            "(format: 1, purpose: palace)",
            "(format: 1, {)",
            "(format: one)",
            "(format: 1, walls: [(framing: wood(7))])",
        ] {
            let why = read(text).unwrap_err();
            assert!(
                why.starts_with("line 1, column ") && why.ends_with("; mend it there: room.ron"),
                "{text}: {why}"
            );
            for jargon in
                ["struct", "enum", "variant", "identifier", "RON", "Unexpected", "Expected", "usize", "u32"]
            {
                assert!(!why.contains(jargon), "{text}: {why}");
            }
        }
    }

    #[test]
    fn a_message_is_no_longer_than_can_be_read() {
        let why =
            read(&format!("(format: 1, walls: [(width: \"{} in\")])", "9".repeat(100_000))).unwrap_err();
        assert!(why.len() < 1600, "{} bytes", why.len());
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

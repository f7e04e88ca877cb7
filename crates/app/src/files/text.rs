//! What all files of the program share: a bounded text, RON read strictly, the format asked first.

use super::fault::{self, Fault};
use super::place::{self, Place};
use ron::extensions::Extensions;
use serde::de::DeserializeOwned;
use serde::{Deserialize, Serialize};
use std::io::Read as _;
use std::path::Path;

/// The deepest nesting read: a job has less than a quarter of it (chosen).
const DEEPEST: usize = 64;

/// Why the text of a file is not to be had.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum NoText {
    /// The system's word.
    Unreadable(String),
    /// It is a folder, a pipe or a device, which may have no end.
    NotAFile,
    /// It is larger than was asked for.
    TooLarge,
    /// It is no text.
    NotText,
}

/// The first field of every format.
#[derive(Deserialize)]
struct Version {
    #[serde(default)]
    format: Option<u64>,
}

/// The text of a plain file of at most so many bytes.
pub(super) fn read_text(path: &Path, limit: u64) -> Result<String, NoText> {
    let unreadable = |why: std::io::Error| NoText::Unreadable(why.to_string());
    // Asked before it is opened: opening a pipe waits for somebody to write.
    let about = std::fs::metadata(path).map_err(unreadable)?;
    if !about.is_file() {
        return Err(NoText::NotAFile);
    }
    if about.len() > limit {
        return Err(NoText::TooLarge);
    }
    let file = std::fs::File::open(path).map_err(unreadable)?;
    let mut bytes = Vec::new();
    // Bounded again, since it may have grown since.
    file.take(limit + 1).read_to_end(&mut bytes).map_err(unreadable)?;
    if bytes.len() as u64 > limit {
        return Err(NoText::TooLarge);
    }
    String::from_utf8(bytes).map_err(|_| NoText::NotText)
}

/// The text without the byte order mark with which some editors begin a file.
pub(super) fn content(text: &str) -> &str {
    text.strip_prefix('\u{feff}').unwrap_or(text)
}

/// Reads a text of this format; `noun` is what it should hold, such as `job`.
pub(super) fn from_ron<T: DeserializeOwned>(text: &str, noun: &str, format: u32) -> Result<T, Fault> {
    let malformed = |place: Place, what: String| Fault::Malformed { place, what };
    let content = content(text);
    if content.trim().is_empty() {
        let what = format!("the file is empty: a {noun} begins with (format: {format},");
        return Err(malformed(Place::START, what));
    }
    if let Some(begins) = place::foreign(content) {
        return Err(fault::foreign(&begins, noun, format));
    }
    let options = ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    let options = options.with_recursion_limit(DEEPEST);
    // Asked before all else, since a newer format may hold anything; what is none at all fails below.
    if let Ok(version) = options.from_str::<Version>(content) {
        match version.format {
            Some(found) if found == u64::from(format) => {}
            Some(found) if found > u64::from(format) => return Err(Fault::Newer { found }),
            Some(found) => {
                let what = format!("there is no format {found}: write format: {format}");
                return Err(malformed(place::of_format(content), what));
            }
            None => {
                let what = format!("the format is missing: begin the {noun} with (format: {format},");
                return Err(malformed(place::of_format(content), what));
            }
        }
    }
    options.from_str(content).map_err(|error: ron::error::SpannedError| {
        let place = Place { line: error.span.start.line, column: error.span.start.col };
        malformed(place, fault::told(&error.code, noun))
    })
}

/// The text of a value, as a person would write it; `None` is absent and a text is on one line.
pub(super) fn to_ron<T: Serialize>(value: &T) -> Result<String, String> {
    let options = ron::Options::default().with_default_extension(Extensions::IMPLICIT_SOME);
    let pretty = ron::ser::PrettyConfig::new().indentor("  ").new_line("\n");
    let mut text = options.to_string_pretty(value, pretty).map_err(|why| why.to_string())?;
    text.push('\n');
    Ok(text)
}

//! My shelf: what somebody measured once on the bench, a plain file for each thing, to be mended by hand.

pub mod entry;
pub mod keep;
mod pairs;
pub mod put;

use super::fault::Fault;
use super::place::{self, Place};
use super::save::{replace, written_beside};
use super::text::{self, NoText};
use entry::{Entry, FORMAT};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

/// The longest file read, in MB: a job may be four times as long (chosen).
const LIMIT_MB: u64 = 1;
/// The most files looked at (chosen: more than any bench holds).
const MOST: usize = 1000;
/// The longest name of a file, in characters, without what tells it from others (chosen).
const LONGEST_NAME: usize = 40;

/// What is on a shelf.
#[derive(Debug, Default)]
pub struct Shelf {
    /// What can be put into a job, by kind and name.
    pub things: Vec<OnShelf>,
    /// What cannot, and why.
    pub troubles: Vec<ShelfError>,
}

/// A thing on the shelf.
#[derive(Clone, Debug, PartialEq)]
pub struct OnShelf {
    /// Its file.
    pub path: PathBuf,
    /// The thing.
    pub entry: Entry,
}

/// What can go wrong with the shelf: what failed, what to do, the path last.
#[derive(Debug, PartialEq, Eq, thiserror::Error)]
pub enum ShelfError {
    /// It could not be read.
    #[error("cannot read this of the shelf ({why}); check that you may read it: {}", path.display())]
    Unreadable {
        /// Why.
        why: String,
        /// The file or folder.
        path: PathBuf,
    },
    /// It has a newer format.
    #[error("this has format {found}, this program reads format {FORMAT}; use a newer program: {}", path.display())]
    NewerFormat {
        /// The file's format.
        found: u64,
        /// The file.
        path: PathBuf,
    },
    /// Something in it is wrong.
    #[error("line {line}, column {column}: {what}; mend it there: {}", path.display())]
    Malformed {
        /// The line, from 1.
        line: usize,
        /// The column, from 1.
        column: usize,
        /// What is wrong and what was expected.
        what: String,
        /// The file.
        path: PathBuf,
    },
    /// It could not be written.
    #[error("cannot keep this on the shelf ({why}); the job holds it still: {}", path.display())]
    NotWritten {
        /// Why.
        why: String,
        /// The file or folder.
        path: PathBuf,
    },
    /// It could not be removed.
    #[error("cannot take this off the shelf ({why}); it is still there: {}", path.display())]
    NotRemoved {
        /// Why.
        why: String,
        /// The file.
        path: PathBuf,
    },
}

/// All that is in a shelf's folder; nothing where there is no such folder.
#[must_use]
pub fn list(folder: &Path) -> Shelf {
    let mut shelf = Shelf::default();
    let files = match std::fs::read_dir(folder) {
        Ok(files) => files,
        Err(why) if why.kind() == ErrorKind::NotFound => return shelf,
        Err(why) => {
            shelf.troubles.push(ShelfError::Unreadable { why: why.to_string(), path: folder.to_owned() });
            return shelf;
        }
    };
    let files = files.take(MOST).flatten().map(|file| file.path());
    let mut files: Vec<PathBuf> =
        files.filter(|path| path.extension().is_some_and(|its| its.eq_ignore_ascii_case("ron"))).collect();
    files.sort();
    for path in files {
        match read(&path) {
            Ok(entry) => shelf.things.push(OnShelf { path, entry }),
            Err(why) => shelf.troubles.push(why),
        }
    }
    shelf.things.sort_by_cached_key(|one| (one.entry.thing.kind(), one.entry.name.to_lowercase()));
    shelf
}

/// Reads a thing of the shelf.
///
/// # Errors
/// What is wrong, where, and what to do.
pub fn read(path: &Path) -> Result<Entry, ShelfError> {
    let unreadable = |why: String| ShelfError::Unreadable { why, path: path.to_owned() };
    let text = text::read_text(path, LIMIT_MB * 1024 * 1024).map_err(|why| match why {
        NoText::Unreadable(why) => unreadable(why),
        NoText::NotAFile => unreadable("it is no plain file".to_owned()),
        NoText::TooLarge => unreadable(format!("it is over {LIMIT_MB} MB")),
        NoText::NotText => unreadable("it is no text".to_owned()),
    })?;
    let malformed = |place: Place, what: String| ShelfError::Malformed {
        line: place.line,
        column: place.column,
        what,
        path: path.to_owned(),
    };
    let entry = Entry::read(&text).map_err(|fault| match fault {
        Fault::Newer { found } => ShelfError::NewerFormat { found, path: path.to_owned() },
        Fault::Foreign { what } => malformed(Place::START, what),
        Fault::Malformed { place, what } => malformed(place, what),
    })?;
    match entry.wrong() {
        None => Ok(entry),
        Some(wrong) => Err(malformed(place::of_field(text::content(&text), wrong.field), wrong.what)),
    }
}

/// Keeps a thing: in the file given, in place of what that holds, or in a new file named after it. Where it is
/// then.
///
/// # Errors
/// Why it cannot be kept; the shelf is then as it was.
pub fn write(folder: &Path, entry: &Entry, over: Option<&Path>) -> Result<PathBuf, ShelfError> {
    let not_written = |why: String| ShelfError::NotWritten { why, path: over.unwrap_or(folder).to_owned() };
    let told = |why: std::io::Error| not_written(why.to_string());
    if let Some(wrong) = entry.wrong() {
        return Err(not_written(wrong.what));
    }
    let text = entry.text().map_err(not_written)?;
    // A good file is never replaced by one that cannot be read.
    if Entry::read(&text).as_ref() != Ok(entry) {
        return Err(not_written("it could not be read again".to_owned()));
    }
    std::fs::create_dir_all(folder).map_err(told)?;
    if let Some(over) = over {
        replace(over, text.as_bytes(), None).map_err(told)?;
        return Ok(over.to_owned());
    }
    let name = file_name(entry);
    let mut path = folder.join(format!("{name}.ron"));
    let mut beside = written_beside(&path, text.as_bytes(), None).map_err(told)?;
    for number in 2.. {
        match beside.persist_noclobber(&path) {
            Ok(_) => break,
            Err(taken) if taken.error.kind() == ErrorKind::AlreadyExists => beside = taken.file,
            Err(why) => return Err(told(why.error)),
        }
        path = folder.join(format!("{name}-{number}.ron"));
    }
    Ok(path)
}

/// Takes a thing off the shelf.
///
/// # Errors
/// Why it is still there.
pub fn remove(path: &Path) -> Result<(), ShelfError> {
    std::fs::remove_file(path)
        .map_err(|why| ShelfError::NotRemoved { why: why.to_string(), path: path.to_owned() })
}

/// A name for a file that any system takes: what it is, and what it is called.
fn file_name(entry: &Entry) -> String {
    let words = entry.name.split(|c: char| !c.is_alphanumeric()).filter(|word| !word.is_empty());
    let name: String =
        words.collect::<Vec<_>>().join("-").to_lowercase().chars().take(LONGEST_NAME).collect();
    let kind = entry.thing.kind().word();
    if name.is_empty() { kind.to_owned() } else { format!("{kind}-{name}") }
}

#[cfg(test)]
mod tests;

//! What can go wrong with a job file: what failed, what to do, the path last.

use std::path::PathBuf;

/// What can go wrong with a job file.
#[derive(Debug, thiserror::Error)]
pub enum FileError {
    /// It could not be read.
    #[error("cannot read the job ({why}); check the path and that you may read it: {}", path.display())]
    Unreadable {
        /// The system's word.
        why: String,
        /// The file.
        path: PathBuf,
    },
    /// It is a folder, a pipe or a device, which may have no end.
    #[error("this is no plain file and no job; choose a job file (.ron): {}", path.display())]
    NotAFile {
        /// What was named.
        path: PathBuf,
    },
    /// It is larger than any job.
    #[error("this file is over {limit_mb} MB and no job; choose a job file (.ron): {}", path.display())]
    TooLarge {
        /// The largest read, in MB.
        limit_mb: u64,
        /// The file.
        path: PathBuf,
    },
    /// It is no text.
    #[error("this file is not text and no job; choose a job file (.ron): {}", path.display())]
    NotText {
        /// The file.
        path: PathBuf,
    },
    /// It is the file of something else.
    #[error("this file is no job ({what}); choose a job file (.ron): {}", path.display())]
    NotAJob {
        /// What it begins with, and how a job begins.
        what: String,
        /// The file.
        path: PathBuf,
    },
    /// It has a newer format.
    #[error("the job has format {found}, this program reads format {known}; open it with a newer program: {}", path.display())]
    NewerFormat {
        /// The file's format.
        found: u64,
        /// The newest format read.
        known: u32,
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
    /// An id stands twice.
    #[error("the id \"{id}\" stands twice, {places}; give one of them another: {}", path.display())]
    DoubleId {
        /// The id.
        id: String,
        /// Both places: their lines and columns, or what the two entries are.
        places: String,
        /// The file.
        path: PathBuf,
    },
    /// The job holds what could not be read back.
    #[error("the job cannot be written so that it is read again ({why}); undo the last change and save again: {}", path.display())]
    Unwritable {
        /// Which.
        why: String,
        /// The file.
        path: PathBuf,
    },
    /// The file may not be written.
    #[error("the file is marked read-only; save under another name, or lift the mark: {}", path.display())]
    ReadOnly {
        /// The file.
        path: PathBuf,
    },
    /// The file changed on the disk since it was read.
    #[error("the file changed on the disk since it was opened; save under another name, or replace it knowingly: {}", path.display())]
    ChangedOnDisk {
        /// The file.
        path: PathBuf,
    },
    /// It could not be written.
    #[error("cannot save ({why}); nothing was lost, save in another place: {}", path.display())]
    NotSaved {
        /// The system's word.
        why: String,
        /// The file.
        path: PathBuf,
    },
}

//! One entry of the journal as text: an unsaved job, whose it is, and when it was kept.

use crate::files::error::FileError;
use crate::files::fault::Fault;
use crate::files::job_file::{self, read_job_text, write_job_text};
use crate::files::text::{self, NoText};
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};
use std::time::{Duration, SystemTime};
use strikeline_solver::job::Job;

/// The format of an entry.
const FORMAT: u32 = 1;

/// An unsaved job.
#[derive(Clone, Debug, PartialEq)]
pub struct Unsaved {
    /// The job.
    pub job: Job,
    /// The file it belongs to, with all its folders; `None` for a job never saved. A path that is no text
    /// (none a person typed) is not kept.
    pub path: Option<PathBuf>,
    /// The text of that file as it was read or last saved.
    pub as_read: Option<String>,
    /// When it was kept, to the second.
    pub when: SystemTime,
}

/// Why an entry cannot be taken up again.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Unusable {
    /// A newer program wrote it, and will read it again.
    Newer,
    /// It is damaged; how.
    Damaged(String),
}

/// An entry as it is written. The job and the file's text are texts in it, to be copied out by hand where all
/// else fails.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    format: u32,
    /// In seconds since the beginning of 1970.
    when_s: u64,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    path: Option<String>,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    as_read: Option<String>,
    job: String,
}

impl Unsaved {
    /// The text of the entry.
    pub(super) fn text(&self) -> Result<String, String> {
        let when = self.when.duration_since(SystemTime::UNIX_EPOCH).unwrap_or_default();
        text::to_ron(&Written {
            format: FORMAT,
            when_s: when.as_secs(),
            path: self.path.as_deref().and_then(Path::to_str).map(ToOwned::to_owned),
            as_read: self.as_read.clone(),
            job: write_job_text(&self.job)?,
        })
    }

    /// Reads an entry.
    pub(super) fn read(entry: &Path) -> Result<Self, Unusable> {
        // Two jobs, each perhaps twice as long with what is escaped in it.
        let text = text::read_text(entry, 4 * job_file::limit()).map_err(|why| {
            Unusable::Damaged(match why {
                NoText::Unreadable(why) => why,
                NoText::NotAFile => "it is no plain file".to_owned(),
                NoText::TooLarge => "it is larger than any".to_owned(),
                NoText::NotText => "it is no text".to_owned(),
            })
        })?;
        let written: Written = text::from_ron(&text, "journal", FORMAT).map_err(|fault| match fault {
            Fault::Newer { .. } => Unusable::Newer,
            Fault::Foreign { what } => Unusable::Damaged(what),
            Fault::Malformed { place, what } => Unusable::Damaged(format!("{place}: {what}")),
        })?;
        let opened = read_job_text(&written.job, entry).map_err(|why| match why {
            FileError::NewerFormat { .. } => Unusable::Newer,
            FileError::Malformed { line, column, what, .. } => {
                Unusable::Damaged(format!("line {line}, column {column} of the job: {what}"))
            }
            why => Unusable::Damaged(why.to_string()),
        })?;
        let when = SystemTime::UNIX_EPOCH.checked_add(Duration::from_secs(written.when_s));
        Ok(Self {
            job: opened.job,
            path: written.path.map(PathBuf::from),
            as_read: written.as_read,
            when: when.unwrap_or(SystemTime::UNIX_EPOCH),
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_entry_is_read_as_it_was_written() {
        let folder = tempfile::tempdir().unwrap();
        let entry = folder.path().join("entry.ron");
        for as_read in [None, Some("\u{feff}// mine \"# \\n\r\n\t(format: 1, title: \"\u{1b}é\")\n")] {
            let unsaved = Unsaved {
                job: Job { title: "\"Room\" #\r\n".into(), ..Job::new() },
                path: as_read.map(|_| PathBuf::from("/rooms/den \"1\".ron")),
                as_read: as_read.map(ToOwned::to_owned),
                when: SystemTime::UNIX_EPOCH + Duration::from_secs(1_700_000_000),
            };
            std::fs::write(&entry, unsaved.text().unwrap()).unwrap();
            assert_eq!(Unsaved::read(&entry), Ok(unsaved));
        }
    }

    #[test]
    fn what_is_torn_is_damaged_and_what_is_newer_is_not() {
        let folder = tempfile::tempdir().unwrap();
        let entry = folder.path().join("entry.ron");
        let unsaved = Unsaved { job: Job::new(), path: None, as_read: None, when: SystemTime::UNIX_EPOCH };
        let text = unsaved.text().unwrap();
        for end in 0..text.trim_end().len() {
            std::fs::write(&entry, text.get(..end).unwrap()).unwrap();
            let read = Unsaved::read(&entry);
            assert!(matches!(read, Err(Unusable::Damaged(_))), "{end} bytes: {read:?}");
        }
        for newer in ["(format: 2)".to_owned(), text.replace("(\\n  format: 1", "(\\n  format: 2")] {
            std::fs::write(&entry, newer).unwrap();
            assert_eq!(Unsaved::read(&entry), Err(Unusable::Newer));
        }
    }
}

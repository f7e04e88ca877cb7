//! The files of one session's journal: its entry, and the lock that tells a live session from one that is
//! gone. The lock is made first and goes last.
//!
//! Limitation: on a disk that knows no locks a live session counts as gone.

use super::entry::{Unsaved, Unusable};
use std::fs::{File, OpenOptions, TryLockError};
use std::io::ErrorKind;
use std::path::{Path, PathBuf};

/// The ending of entries.
const ENTRY: &str = "ron";
/// The ending of an entry that is being written.
const BESIDE: &str = "new";
/// The ending of locks.
const LOCK: &str = "lock";
/// The ending of what a crash left and nobody can read.
const DAMAGED: &str = "damaged";

/// One session's journal, held by this program for as long as this lives.
#[derive(Debug)]
pub(super) struct Slot {
    entry: PathBuf,
    /// Held, not read.
    _lock: File,
}

impl Slot {
    /// A new one in a folder, which is made where it is not there.
    pub(super) fn make(folder: &Path) -> std::io::Result<Self> {
        std::fs::create_dir_all(folder)?;
        // It is locked before it has the name of a lock, so that nobody takes it for one of a session gone.
        let beside = tempfile::Builder::new().prefix("session-").tempfile_in(folder)?;
        let entry = beside.path().with_extension(ENTRY);
        // Without locks it is a journal still.
        let _ = beside.as_file().try_lock();
        let lock = beside.persist_noclobber(entry.with_extension(LOCK)).map_err(|error| error.error)?;
        Ok(Self { entry, _lock: lock })
    }

    /// Takes the journal of a session that is gone; `None` where the session lives.
    fn claim(entry: &Path) -> std::io::Result<Option<Self>> {
        let path = entry.with_extension(LOCK);
        let lock = OpenOptions::new().create(true).truncate(false).write(true).open(path)?;
        match lock.try_lock() {
            Err(TryLockError::WouldBlock) => Ok(None),
            Ok(()) | Err(TryLockError::Error(_)) => Ok(Some(Self { entry: entry.to_owned(), _lock: lock })),
        }
    }

    /// Where its entry is.
    pub(super) fn entry(&self) -> &Path {
        &self.entry
    }

    /// Writes the entry: beside, then renamed, so that it is the old one or the new one at any moment. It is
    /// not synced: what outlives a program need not be on the disk yet.
    pub(super) fn write(&self, text: &str) -> std::io::Result<()> {
        let beside = self.entry.with_extension(BESIDE);
        std::fs::write(&beside, text)?;
        std::fs::rename(beside, &self.entry)
    }

    /// Removes the entry, where there is one.
    pub(super) fn clear(&self) -> std::io::Result<()> {
        gone(std::fs::remove_file(self.entry.with_extension(BESIDE)))?;
        gone(std::fs::remove_file(&self.entry))
    }

    /// Removes all of it.
    pub(super) fn remove(self) -> std::io::Result<()> {
        self.clear()?;
        gone(std::fs::remove_file(self.entry.with_extension(LOCK)))
    }

    /// Gives the entry an ending under which it is not read again; where it is then.
    fn set_aside(self) -> std::io::Result<PathBuf> {
        let aside = self.entry.with_extension(DAMAGED);
        std::fs::rename(&self.entry, &aside)?;
        self.remove()?;
        Ok(aside)
    }
}

/// What is not there need not be removed.
fn gone(removed: std::io::Result<()>) -> std::io::Result<()> {
    match removed {
        Err(why) if why.kind() != ErrorKind::NotFound => Err(why),
        _ => Ok(()),
    }
}

/// What sessions that are gone left in a folder.
#[derive(Debug, Default)]
pub(super) struct Found {
    /// What can be taken up again, the latest first.
    pub(super) unsaved: Vec<(Slot, Unsaved)>,
    /// What went wrong, in words.
    pub(super) troubles: Vec<String>,
}

/// Looks through a folder. What is damaged is kept aside, what only lies about is removed.
pub(super) fn look_through(folder: &Path) -> Found {
    let mut found = Found::default();
    let files = match std::fs::read_dir(folder) {
        Ok(files) => files,
        Err(why) => {
            if why.kind() != ErrorKind::NotFound {
                let folder = folder.display();
                found.troubles.push(format!(
                    "Whether a crash left unsaved work cannot be seen ({why}); check that you may read: {folder}"
                ));
            }
            return found;
        }
    };
    let with = |ending: &str| {
        let ending = ending.to_owned();
        move |path: &PathBuf| path.extension().is_some_and(|its| *its == *ending)
    };
    let files: Vec<PathBuf> = files.flatten().map(|file| file.path()).collect();
    for entry in files.iter().filter(|path| with(ENTRY)(path)) {
        if let Err(why) = look_at(entry, &mut found) {
            found.troubles.push(format!("Unsaved work is left alone ({why}): {}", entry.display()));
        }
    }
    for lock in files.iter().filter(|path| with(LOCK)(path)) {
        let entry = lock.with_extension(ENTRY);
        // A lock without an entry of a session that is gone: nothing was unsaved.
        if !entry.exists()
            && let Ok(Some(slot)) = Slot::claim(&entry)
            && !entry.exists()
        {
            let _ = slot.remove();
        }
    }
    found.unsaved.sort_by_key(|(_, unsaved)| std::cmp::Reverse(unsaved.when));
    found
}

fn look_at(entry: &Path, found: &mut Found) -> std::io::Result<()> {
    let Some(slot) = Slot::claim(entry)? else { return Ok(()) };
    if !entry.exists() {
        // Another session has just been done with it.
        return slot.remove();
    }
    match Unsaved::read(entry) {
        Ok(unsaved) => found.unsaved.push((slot, unsaved)),
        Err(Unusable::Newer) => {}
        Err(Unusable::Damaged(why)) => {
            let aside = slot.set_aside()?;
            found.troubles.push(format!(
                "Unsaved work that a crash left cannot be read ({why}); it is kept aside: {}",
                aside.display()
            ));
        }
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::time::SystemTime;
    use strikeline_solver::job::Job;

    fn text(title: &str) -> String {
        let job = Job { title: title.into(), ..Job::new() };
        Unsaved { job, path: None, as_read: None, when: SystemTime::now() }.text().unwrap()
    }

    fn titles(found: &Found) -> Vec<&str> {
        found.unsaved.iter().map(|(_, unsaved)| unsaved.job.title.as_str()).collect()
    }

    fn count(folder: &Path) -> usize {
        std::fs::read_dir(folder).unwrap().count()
    }

    #[test]
    fn a_live_session_is_left_alone_and_one_that_is_gone_is_found_once() {
        let folder = tempfile::tempdir().unwrap();
        let slot = Slot::make(folder.path()).unwrap();
        slot.write(&text("mine")).unwrap();
        assert!(titles(&look_through(folder.path())).is_empty(), "it lives");
        drop(slot);
        let found = look_through(folder.path());
        assert_eq!(titles(&found), ["mine"]);
        assert!(titles(&look_through(folder.path())).is_empty(), "it is held by who found it");
        for (slot, _) in found.unsaved {
            slot.remove().unwrap();
        }
        assert_eq!(count(folder.path()), 0);
    }

    #[test]
    fn what_only_lies_about_is_removed() {
        let folder = tempfile::tempdir().unwrap();
        drop(Slot::make(folder.path()).unwrap());
        let live = Slot::make(folder.path()).unwrap();
        assert_eq!(count(folder.path()), 2);
        assert!(look_through(folder.path()).unsaved.is_empty());
        assert_eq!(count(folder.path()), 1, "the lock of the live one stays");
        drop(live);
    }

    #[test]
    fn what_is_damaged_is_told_once_and_kept_aside_and_what_is_newer_stays() {
        let folder = tempfile::tempdir().unwrap();
        for (name, text) in [("a.ron", "torn ("), ("b.ron", "(format: 9, all: \"new\")")] {
            std::fs::write(folder.path().join(name), text).unwrap();
        }
        let found = look_through(folder.path());
        assert!(found.unsaved.is_empty());
        assert_eq!(found.troubles.len(), 1, "{:?}", found.troubles);
        assert_eq!(std::fs::read_to_string(folder.path().join("a.damaged")).unwrap(), "torn (");
        assert!(folder.path().join("b.ron").exists());
        assert!(look_through(folder.path()).troubles.is_empty(), "told once");
    }

    #[test]
    fn a_folder_that_cannot_be_looked_through_is_told() {
        let folder = tempfile::tempdir().unwrap();
        let file = folder.path().join("file");
        std::fs::write(&file, "").unwrap();
        assert_eq!(look_through(&file).troubles.len(), 1);
        assert!(look_through(&folder.path().join("none")).troubles.is_empty());
    }
}

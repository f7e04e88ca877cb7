//! Saving: written beside, synced, renamed over; one backup; never over a change somebody else made.

use super::error::FileError;
use super::job_file::{read_job_text, write_job_text};
use std::fs::Permissions;
use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};
use strikeline_solver::job::Job;
use tempfile::NamedTempFile;

/// Saves a job and gives back the text that is on the disk now.
///
/// `as_read` is the text the file had when it was opened or last saved: where the disk holds another, nothing
/// is written. `None` writes whatever is there. What was there before stays as `NAME.bak`. A link stays one:
/// the file it leads to is saved.
///
/// # Errors
/// What is wrong and what to do; the file on the disk is then as it was.
pub fn save_job(job: &Job, path: &Path, as_read: Option<&str>) -> Result<String, FileError> {
    let unwritable = |why: String| FileError::Unwritable { why, path: path.to_owned() };
    let text = write_job_text(job).map_err(unwritable)?;
    // A good file is never replaced by one that cannot be opened.
    read_job_text(&text, path).map_err(|why| unwritable(why.to_string()))?;
    let not_saved = |why: std::io::Error| FileError::NotSaved { why: why.to_string(), path: path.to_owned() };
    let before = match std::fs::metadata(path) {
        Ok(about) => Some(about),
        Err(why) if why.kind() == ErrorKind::NotFound => None,
        Err(why) => return Err(not_saved(why)),
    };
    let Some(before) = before else {
        replace(path, text.as_bytes(), None).map_err(not_saved)?;
        return Ok(text);
    };
    if !before.is_file() {
        return Err(FileError::NotAFile { path: path.to_owned() });
    }
    let on_disk = std::fs::read(path).map_err(not_saved)?;
    if as_read.is_some_and(|as_read| as_read.as_bytes() != on_disk) {
        return Err(FileError::ChangedOnDisk { path: path.to_owned() });
    }
    // A renamed file takes the place of another without asking whether that may be written.
    if before.permissions().readonly() {
        return Err(FileError::ReadOnly { path: path.to_owned() });
    }
    let target = std::fs::canonicalize(path).map_err(not_saved)?;
    replace(&backup_of(&target), &on_disk, Some(before.permissions())).map_err(not_saved)?;
    replace(&target, text.as_bytes(), Some(before.permissions())).map_err(not_saved)?;
    Ok(text)
}

/// Where the one backup of a job is kept.
#[must_use]
pub fn backup_of(path: &Path) -> PathBuf {
    let mut name = path.file_name().unwrap_or_default().to_owned();
    name.push(".bak");
    path.with_file_name(name)
}

/// Replaces a file at once: the new one is whole on the disk before it takes the name.
///
/// It may be read and written by whom `permissions` says, else by whom any new file may.
pub(super) fn replace(path: &Path, bytes: &[u8], permissions: Option<Permissions>) -> std::io::Result<()> {
    written_beside(path, bytes, permissions)?.persist(path).map_err(|error| error.error)?;
    Ok(())
}

/// A new file beside one, whole on the disk, to take its name.
pub(super) fn written_beside(
    path: &Path,
    bytes: &[u8],
    permissions: Option<Permissions>,
) -> std::io::Result<NamedTempFile> {
    let folder = match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    // Where the program is killed just now it stays: its name tells of which file it is.
    let mut name = std::ffi::OsString::from(".");
    name.push(path.file_name().unwrap_or_default());
    name.push(".");
    let mut builder = tempfile::Builder::new();
    builder.prefix(&name).suffix(".new");
    #[cfg(unix)]
    {
        use std::os::unix::fs::PermissionsExt as _;
        // What the system takes off this is what it takes off any new file.
        builder.permissions(Permissions::from_mode(0o666));
    }
    let mut beside = builder.tempfile_in(folder)?;
    beside.write_all(bytes)?;
    if let Some(permissions) = permissions {
        beside.as_file().set_permissions(permissions)?;
    }
    beside.as_file().sync_all()?;
    Ok(beside)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::job_file::read_job;
    use strikeline_solver::units::Length;

    fn titled(title: &str) -> Job {
        Job { title: title.into(), ..Job::new() }
    }

    fn names(folder: &Path) -> Vec<String> {
        let entries = std::fs::read_dir(folder).unwrap();
        let mut names: Vec<String> =
            entries.map(|entry| entry.unwrap().file_name().into_string().unwrap()).collect();
        names.sort();
        names
    }

    #[test]
    fn one_backup_is_kept_and_nothing_else_left() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("room.ron");
        let first = save_job(&titled("One"), &path, None).unwrap();
        assert_eq!(names(folder.path()), ["room.ron"]);
        let second = save_job(&titled("Two"), &path, Some(&first)).unwrap();
        let third = save_job(&titled("Three"), &path, Some(&second)).unwrap();
        assert_eq!(names(folder.path()), ["room.ron", "room.ron.bak"]);
        assert_eq!(std::fs::read_to_string(&path).unwrap(), third);
        assert_eq!(std::fs::read_to_string(backup_of(&path)).unwrap(), second);
        assert!(read_job(&path).unwrap().canonical);
    }

    #[test]
    fn a_change_on_the_disk_is_replaced_only_knowingly() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("room.ron");
        let text = save_job(&titled("One"), &path, None).unwrap();
        std::fs::write(&path, "mine").unwrap();
        let why = save_job(&titled("Two"), &path, Some(&text)).unwrap_err();
        assert!(matches!(why, FileError::ChangedOnDisk { .. }), "{why}");
        assert_eq!(names(folder.path()), ["room.ron"]);
        assert_eq!(std::fs::read_to_string(&path).unwrap(), "mine");
        save_job(&titled("Two"), &path, None).unwrap();
        assert_eq!(std::fs::read_to_string(backup_of(&path)).unwrap(), "mine");
    }

    #[test]
    fn what_cannot_be_saved_leaves_the_disk_as_it_was() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("room.ron");
        save_job(&titled("One"), &path, None).unwrap();
        let mut bad = titled("Bad");
        bad.walls.push(strikeline_solver::job::wall::Wall {
            width: Some(Length::millimetres(-1.0)),
            ..Default::default()
        });
        assert!(matches!(save_job(&bad, &path, None).unwrap_err(), FileError::Unwritable { .. }));
        let mut double = titled("Double");
        for _ in 0..2 {
            let id = strikeline_solver::subject::Id::new("w");
            double.walls.push(strikeline_solver::job::wall::Wall { id, ..Default::default() });
        }
        assert!(matches!(save_job(&double, &path, None).unwrap_err(), FileError::Unwritable { .. }));
        let mut permissions = std::fs::metadata(&path).unwrap().permissions();
        permissions.set_readonly(true);
        std::fs::set_permissions(&path, permissions).unwrap();
        assert!(matches!(save_job(&titled("Two"), &path, None).unwrap_err(), FileError::ReadOnly { .. }));
        assert_eq!(names(folder.path()), ["room.ron"]);
        assert_eq!(read_job(&path).unwrap().job.title, "One");

        let gone = folder.path().join("gone").join("room.ron");
        let why = save_job(&titled("Two"), &gone, None).unwrap_err();
        assert!(matches!(why, FileError::NotSaved { .. }), "{why}");
        assert!(why.to_string().ends_with(&gone.display().to_string()), "{why}");
        let why = save_job(&titled("Two"), folder.path(), None).unwrap_err();
        assert!(matches!(why, FileError::NotAFile { .. }), "{why}");
    }

    #[cfg(unix)]
    #[test]
    fn a_saved_file_keeps_its_readers_and_a_link_stays_one() {
        use std::os::unix::fs::PermissionsExt as _;
        let folder = tempfile::tempdir().unwrap();
        let (path, link) = (folder.path().join("room.ron"), folder.path().join("link.ron"));
        let text = save_job(&titled("One"), &path, None).unwrap();
        std::fs::set_permissions(&path, Permissions::from_mode(0o664)).unwrap();
        std::os::unix::fs::symlink("room.ron", &link).unwrap();
        save_job(&titled("Two"), &link, Some(&text)).unwrap();
        assert!(std::fs::symlink_metadata(&link).unwrap().is_symlink());
        assert_eq!(read_job(&path).unwrap().job.title, "Two");
        for file in [&path, &backup_of(&path)] {
            assert_eq!(std::fs::metadata(file).unwrap().permissions().mode() & 0o777, 0o664);
        }
    }
}

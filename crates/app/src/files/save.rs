//! Saving: written beside, synced, renamed over; one backup; never over a change somebody else made.

use super::error::FileError;
use super::job_file::write_job_text;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use strikeline_solver::job::Job;

/// Saves a job and gives back the text that is on the disk now.
///
/// `as_read` is the text the file had when it was opened or last saved: where the disk holds another, nothing
/// is written. `None` writes whatever is there. What was there before stays as `NAME.bak`.
///
/// # Errors
/// What is wrong and what to do; the file on the disk is then as it was.
pub fn save_job(job: &Job, path: &Path, as_read: Option<&str>) -> Result<String, FileError> {
    let text = write_job_text(job).map_err(|why| FileError::Unwritable { why, path: path.to_owned() })?;
    let not_saved = |why: std::io::Error| FileError::NotSaved { why: why.to_string(), path: path.to_owned() };
    let on_disk = match std::fs::read(path) {
        Ok(bytes) => Some(bytes),
        Err(why) if why.kind() == std::io::ErrorKind::NotFound => None,
        Err(why) => return Err(not_saved(why)),
    };
    if let (Some(as_read), Some(on_disk)) = (as_read, &on_disk)
        && on_disk != as_read.as_bytes()
    {
        return Err(FileError::ChangedOnDisk { path: path.to_owned() });
    }
    if let Some(before) = on_disk {
        replace(&backup_of(path), &before).map_err(not_saved)?;
    }
    replace(path, text.as_bytes()).map_err(not_saved)?;
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
fn replace(path: &Path, bytes: &[u8]) -> std::io::Result<()> {
    let folder = match path.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    let mut beside = tempfile::NamedTempFile::new_in(folder)?;
    beside.write_all(bytes)?;
    beside.as_file().sync_all()?;
    beside.persist(path).map_err(|error| error.error)?;
    Ok(())
}

//! The jobs that were open lately. Kept in the program's home; a convenience that no work hangs on.

use super::save::replace;
use super::text::{from_ron, read_text, to_ron};
use serde::{Deserialize, Serialize};
use std::path::{Path, PathBuf};

/// The format of the list.
const FORMAT: u32 = 1;
/// As many as are found at a glance (chosen).
pub const MOST: usize = 12;
/// The longest list read, in bytes: any system's paths fit twelve times (chosen).
const LIMIT: u64 = 1024 * 1024;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    format: u32,
    jobs: Vec<String>,
}

/// The jobs that were open lately, the latest first, whether they are still there or not. A list that cannot
/// be read counts as empty.
#[must_use]
pub fn recent(list: &Path) -> Vec<PathBuf> {
    let text = read_text(list, LIMIT).unwrap_or_default();
    let jobs = from_ron::<Written>(&text, "list", FORMAT).map(|written| written.jobs).unwrap_or_default();
    jobs.into_iter().map(PathBuf::from).take(MOST).collect()
}

/// Puts a job first. A path that is no text is not kept.
///
/// # Errors
/// What the system says where the list cannot be written; it is then as it was.
pub fn note(list: &Path, job: &Path) -> std::io::Result<()> {
    let job = std::path::absolute(job)?;
    let mut jobs = recent(list);
    jobs.retain(|one| *one != job);
    jobs.insert(0, job);
    write(list, &jobs)
}

/// Takes a job off the list.
///
/// # Errors
/// What the system says where the list cannot be written; it is then as it was.
pub fn forget(list: &Path, job: &Path) -> std::io::Result<()> {
    let mut jobs = recent(list);
    jobs.retain(|one| one != job);
    write(list, &jobs)
}

fn write(list: &Path, jobs: &[PathBuf]) -> std::io::Result<()> {
    let jobs = jobs.iter().filter_map(|job| job.to_str()).take(MOST).map(ToOwned::to_owned).collect();
    let text = to_ron(&Written { format: FORMAT, jobs }).map_err(std::io::Error::other)?;
    if let Some(folder) = list.parent() {
        std::fs::create_dir_all(folder)?;
    }
    replace(list, text.as_bytes(), None)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_latest_come_first_each_once_and_no_more_than_twelve() {
        let folder = tempfile::tempdir().unwrap();
        let list = folder.path().join("home").join("recent.ron");
        let job = |number: usize| folder.path().join(format!("\"{number}\".ron"));
        assert!(recent(&list).is_empty());
        for number in (0..20).chain([10]) {
            note(&list, &job(number)).unwrap();
        }
        let expected: Vec<_> = [10, 19, 18, 17, 16, 15, 14, 13, 12, 11, 9, 8].map(job).into();
        assert_eq!(recent(&list), expected);
        forget(&list, &job(19)).unwrap();
        assert_eq!(recent(&list).len(), 11, "none comes back");
        note(&list, Path::new("here.ron")).unwrap();
        assert!(recent(&list)[0].is_absolute(), "it is found from anywhere");
    }

    #[test]
    fn a_list_that_cannot_be_read_is_begun_anew_and_one_that_cannot_be_written_is_told() {
        let folder = tempfile::tempdir().unwrap();
        let list = folder.path().join("recent.ron");
        std::fs::write(&list, "(format: 1, jobs: [").unwrap();
        assert!(recent(&list).is_empty());
        note(&list, Path::new("/a.ron")).unwrap();
        assert_eq!(recent(&list).len(), 1);
        assert!(note(&list.join("in a file"), Path::new("/a.ron")).is_err());
    }
}

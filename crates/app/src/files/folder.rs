//! The jobs of a folder.

use super::job_file::read_job;
use std::path::{Path, PathBuf};
use strikeline_solver::job::Job;

/// The most files shown of a folder (chosen: more are not looked through by eye).
pub const MOST_FILES: usize = 200;
/// The most entries of a folder looked at, of whatever kind (chosen: a moment's work on a slow disk).
const MOST_ENTRIES: usize = 10_000;

/// The job files of a folder, by name.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct JobFiles {
    /// The files, whether they can be read or not.
    pub files: Vec<PathBuf>,
    /// Whether there may be more.
    pub are_more: bool,
}

/// What a file holds.
#[derive(Clone, Debug)]
pub struct Found {
    /// The file.
    pub path: PathBuf,
    /// The job, or why there is none to read.
    pub job: Result<Job, String>,
}

/// Looks for job files (`.ron`) in a folder, not in those below it.
///
/// # Errors
/// Why it cannot be looked through, in words.
pub fn job_files(folder: &Path) -> Result<JobFiles, String> {
    let entries = std::fs::read_dir(folder)
        .map_err(|why| format!("the folder cannot be looked through ({why}): {}", folder.display()))?;
    let mut seen = 0;
    let mut files: Vec<PathBuf> = entries
        .take(MOST_ENTRIES)
        .inspect(|_| seen += 1)
        .flatten()
        .map(|entry| entry.path())
        .filter(|path| {
            path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("ron")) && path.is_file()
        })
        .collect();
    files.sort_by_cached_key(|path| {
        let name = path.file_name().unwrap_or_default();
        (name.to_string_lossy().to_lowercase(), name.to_owned())
    });
    let are_more = seen == MOST_ENTRIES || files.len() > MOST_FILES;
    files.truncate(MOST_FILES);
    Ok(JobFiles { files, are_more })
}

/// Reads what a file holds.
#[must_use]
pub fn look_at(path: PathBuf) -> Found {
    let job = match path.try_exists() {
        Ok(false) => Err("It is gone.".to_owned()),
        _ => read_job(&path).map(|opened| opened.job).map_err(|why| why.to_string()),
    };
    Found { path, job }
}

impl Found {
    /// What the job is called; the file's name where it has no title or cannot be read.
    #[must_use]
    pub fn title(&self) -> String {
        match &self.job {
            Ok(job) if !job.title.is_empty() => job.title.clone(),
            _ => self.path.file_stem().unwrap_or_default().to_string_lossy().into_owned(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::files::save::save_job;

    #[test]
    fn the_jobs_of_a_folder_are_found_by_name_with_what_is_wrong() {
        let folder = tempfile::tempdir().unwrap();
        let at = |name: &str| folder.path().join(name);
        for (name, title) in [("b.ron", "Bath"), ("A.RON", ""), ("b.ron", "Bath again")] {
            save_job(&Job { title: title.into(), ..Job::new() }, &at(name), None).unwrap();
        }
        std::fs::write(at("c.ron"), "(format: 1,\n walls: 3)").unwrap();
        std::fs::create_dir(at("d.ron")).unwrap();
        let found = job_files(folder.path()).unwrap();
        assert_eq!(found, JobFiles { files: vec![at("A.RON"), at("b.ron"), at("c.ron")], are_more: false });
        let looked: Vec<Found> = found.files.into_iter().chain([at("e.ron")]).map(look_at).collect();
        let titles: Vec<String> = looked.iter().map(Found::title).collect();
        assert_eq!(titles, ["A", "Bath again", "c", "e"], "no backup, no folder");
        assert!(looked[2].job.as_ref().unwrap_err().starts_with("line 2, column "));
        assert_eq!(looked[3].job.as_ref().unwrap_err(), "It is gone.");
        assert!(job_files(&at("none")).unwrap_err().starts_with("the folder cannot be looked through ("));
    }

    #[test]
    fn no_more_than_a_bound_are_shown_and_it_is_said() {
        let folder = tempfile::tempdir().unwrap();
        for number in 0..=MOST_FILES {
            std::fs::write(folder.path().join(format!("{number:03}.ron")), "").unwrap();
        }
        let found = job_files(folder.path()).unwrap();
        assert!(found.are_more);
        assert_eq!(found.files.len(), MOST_FILES);
        assert!(found.files[0].ends_with("000.ron"));
    }
}

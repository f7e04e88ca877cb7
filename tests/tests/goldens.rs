//! What every demo job's plan says, as text and as JSON, kept in `tests/goldens`: a change shows as a diff, and
//! its commit says why each number moved. `UPDATE_EXPECT=1 cargo test -p strikeline-tests --test goldens` writes
//! them anew.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a failure here is a failed test"
)]

use expect_test::expect_file;
use std::collections::BTreeSet;
use std::path::{Path, PathBuf};
use strikeline::files::job_file::read_job;

fn demo_jobs() -> Vec<PathBuf> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    let mut jobs: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    jobs.sort();
    jobs
}

/// A golden's path, beside this file's own folder.
fn golden(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("goldens").join(name)
}

/// What the command line prints.
fn told(arguments: &[&str]) -> String {
    let (mut out, mut err) = (Vec::new(), Vec::new());
    let code = strikeline::cli::run(["strikeline"].iter().chain(arguments), &mut out, &mut err);
    assert!(code < 2, "{}", String::from_utf8_lossy(&err));
    String::from_utf8(out).unwrap()
}

#[test]
fn every_option_of_every_demo_is_told_as_before() {
    let mut names = BTreeSet::new();
    for path in demo_jobs() {
        let (job, stem) = (path.to_str().unwrap(), path.file_stem().unwrap().to_str().unwrap());
        names.insert(format!("{stem}.json"));
        expect_file![golden(&format!("{stem}.json"))].assert_eq(&told(&["plan", "--json", job]));
        for wall in &read_job(&path).unwrap().job.walls {
            for option in &wall.options {
                let name = format!("{stem}.{}.txt", option.id);
                expect_file![golden(&name)].assert_eq(&told(&["plan", job, "--option", option.id.as_str()]));
                names.insert(name);
            }
        }
    }
    assert!(names.len() > 12, "six demos, each with an option at least");
    let kept: BTreeSet<String> = std::fs::read_dir(golden(""))
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .collect();
    assert_eq!(kept, names, "no golden is left of what is no more");
}

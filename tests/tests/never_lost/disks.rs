//! Disks that will not take a job: clear words, and nothing lost.

use super::window::*;
use egui::Key;
use strikeline::files::home::Home;
use strikeline::files::job_file::read_job;
use strikeline_solver::units::Length;

#[test]
fn a_folder_that_is_gone_is_told_and_another_place_takes_the_job() {
    let place = Place::new();
    let folder = place.folder().join("stick");
    std::fs::create_dir(&folder).unwrap();
    let path = folder.join("den.ron");
    std::fs::rename(place.job(), &path).unwrap();
    let mut harness = place.window(Some(path.clone()));
    edit(&mut harness, 140.0);
    std::fs::remove_dir_all(&folder).unwrap();
    keys(&mut harness, Key::S);
    assert!(shows(&harness, "Not saved: cannot save ("));
    assert!(shows(&harness, "nothing was lost, save in another place"));
    press(&mut harness, "Close");
    assert!(harness.state().session().is_changed());
    place.wait_for_entries(1);
    save_as(&mut harness);
    type_over(&mut harness, place.job().to_str().unwrap());
    press(&mut harness, "Save");
    assert_eq!(read_job(&place.job()).unwrap().job.walls[0].width, Some(Length::inches(140.0)));
}

#[test]
fn a_file_changed_on_the_disk_is_replaced_only_knowingly() {
    let place = Place::new();
    let mut harness = place.window(Some(place.job()));
    edit(&mut harness, 140.0);
    std::fs::write(place.job(), "theirs").unwrap();
    keys(&mut harness, Key::S);
    assert!(shows(&harness, "The file on disk is not what was read."));
    press(&mut harness, "Cancel");
    assert_eq!(std::fs::read_to_string(place.job()).unwrap(), "theirs");
    assert!(harness.state().session().is_changed());
    keys(&mut harness, Key::S);
    press(&mut harness, "Replace it");
    assert!(!harness.state().session().is_changed());
    assert_eq!(std::fs::read_to_string(place.folder().join("den.ron.bak")).unwrap(), "theirs");
}

#[test]
fn a_home_that_cannot_be_written_is_told_once_and_the_session_goes_on() {
    let place = Place::new();
    // A file where the folder should be: also whoever may write anywhere cannot make it.
    std::fs::write(place.folder().join("home"), "").unwrap();
    let mut harness = place.window(Some(place.job()));
    let said = "Unsaved work cannot be kept for the case of a crash";
    let start = std::time::Instant::now();
    if shows(&harness, "Whether a crash left unsaved work cannot be seen") {
        press(&mut harness, "Close");
    }
    edit(&mut harness, 140.0);
    while !shows(&harness, said) {
        assert!(start.elapsed() < std::time::Duration::from_secs(5));
        std::thread::sleep(std::time::Duration::from_millis(5));
        harness.run();
    }
    press(&mut harness, "Close");
    edit(&mut harness, 150.0);
    std::thread::sleep(std::time::Duration::from_millis(700));
    harness.run();
    assert!(!shows(&harness, said), "told once");
    keys(&mut harness, Key::S);
    assert_eq!(read_job(&place.job()).unwrap().job.walls[0].width, Some(Length::inches(150.0)));
}

#[test]
fn closing_with_changes_asks_and_cancel_keeps_them() {
    let place = Place::new();
    let mut harness = place.window(Some(place.job()));
    assert!(closes(&mut harness), "nothing to ask");
    edit(&mut harness, 140.0);
    assert!(!closes(&mut harness));
    press(&mut harness, "Cancel");
    assert_eq!(width(&harness), Some(Length::inches(140.0)));
    assert!(harness.state().session().is_changed());
    place.wait_for_entries(1);
}

/// Runs this test again in a process whose files may not grow beyond so many blocks of 512 bytes: a full disk, by
/// the system's own means. Gives what it said; `None` where there is no such shell.
#[cfg(unix)]
fn again_on_a_full_disk(test: &str, place: &Place, blocks: u32) -> std::process::Output {
    let this = std::env::current_exe().unwrap();
    // The signal that tells of it is ignored, as where a disk is full: only the write fails.
    let line = format!("trap '' XFSZ; ulimit -f {blocks}; exec \"$0\" --exact --nocapture {test}");
    std::process::Command::new("sh")
        .args(["-c", &line])
        .arg(this)
        .env("FULL_DISK", place.folder())
        .output()
        .unwrap()
}

#[cfg(unix)]
#[test]
fn a_full_disk_is_told_and_the_old_file_stays() {
    let large = || {
        let mut job = room("Den");
        job.notes = Some("a".repeat(200_000));
        job
    };
    if let Some(folder) = std::env::var_os("FULL_DISK") {
        // In the process whose disk is full.
        let path = std::path::Path::new(&folder).join("den.ron");
        let why = strikeline::files::save::save_job(&large(), &path, None).unwrap_err().to_string();
        assert!(why.starts_with("cannot save (") && why.contains("nothing was lost"), "{why}");
        let home = Home::at(&std::path::Path::new(&folder).join("home"));
        let (wake, woken) = std::sync::mpsc::channel();
        let mut journal = strikeline::files::journal::Journal::begin(home.journal(), move || {
            let _ = wake.send(());
        });
        journal.keep(&room("Small enough"), None, None);
        std::thread::sleep(std::time::Duration::from_millis(100));
        journal.keep(&large(), None, None);
        woken.recv_timeout(std::time::Duration::from_secs(5)).unwrap();
        assert!(journal.trouble().unwrap().contains("Nothing is lost"));
        return;
    }
    let place = Place::new();
    let before = std::fs::read_to_string(place.job()).unwrap();
    let said = again_on_a_full_disk("disks::a_full_disk_is_told_and_the_old_file_stays", &place, 64);
    assert!(
        said.status.success(),
        "{}{}",
        String::from_utf8_lossy(&said.stdout),
        String::from_utf8_lossy(&said.stderr)
    );
    assert!(String::from_utf8_lossy(&said.stdout).contains("1 passed"), "it ran");
    assert_eq!(std::fs::read_to_string(place.job()).unwrap(), before);
    let left = strikeline::files::journal::left_overs(&place.home().journal());
    assert_eq!(left.unsaved.len(), 1, "{:?}", left.troubles);
    assert_eq!(left.unsaved[0].unsaved.job.title, "Small enough", "the last that could be written");
    let names: Vec<_> =
        std::fs::read_dir(place.folder()).unwrap().map(|file| file.unwrap().file_name()).collect();
    assert!(!names.iter().any(|name| name.to_string_lossy().ends_with(".new")), "{names:?}");
}

#[cfg(unix)]
#[test]
fn a_folder_that_may_not_be_written_is_told() {
    use std::os::unix::fs::PermissionsExt as _;
    let place = Place::new();
    let mut harness = place.window(Some(place.job()));
    edit(&mut harness, 140.0);
    let may = |mode| std::fs::set_permissions(place.folder(), std::fs::Permissions::from_mode(mode)).unwrap();
    let before = std::fs::read_to_string(place.job()).unwrap();
    place.wait_for_entries(1);
    may(0o555);
    // Whoever may write anywhere, as in many a build machine, is not held up by it.
    let holds = std::fs::write(place.folder().join("probe"), "").is_err();
    if holds {
        keys(&mut harness, Key::S);
        assert!(shows(&harness, "Not saved: cannot save ("));
        assert!(harness.state().session().is_changed());
        assert_eq!(std::fs::read_to_string(place.job()).unwrap(), before);
    }
    may(0o755);
}

#[cfg(target_os = "linux")]
#[test]
fn a_disk_that_takes_no_files_is_told_and_another_place_takes_the_job() {
    let place = Place::new();
    let mut harness = place.window(None);
    edit(&mut harness, 140.0);
    save_as(&mut harness);
    // The system's own tree: nobody makes a file there, whoever they are.
    type_over(&mut harness, "/sys/den.ron");
    press(&mut harness, "Save");
    assert!(shows(&harness, "Not saved: cannot save ("));
    press(&mut harness, "Close");
    assert!(harness.state().session().is_changed());
    assert_eq!(harness.state().session().path, None, "it does not count as its file");
    place.wait_for_entries(1);
}

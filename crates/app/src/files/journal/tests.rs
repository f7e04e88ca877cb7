use super::*;

fn titled(title: &str) -> Job {
    Job { title: title.into(), ..Job::new() }
}

fn entries(folder: &Path) -> Vec<PathBuf> {
    let files = std::fs::read_dir(folder).into_iter().flatten().flatten().map(|file| file.path());
    files.filter(|path| path.extension().is_some_and(|its| its == "ron")).collect()
}

/// Waits until something holds, which it has to within two seconds.
fn wait_until(what: &str, mut holds: impl FnMut() -> bool) -> Duration {
    let start = Instant::now();
    while !holds() {
        assert!(start.elapsed() < Duration::from_secs(2), "{what}: not within two seconds");
        std::thread::sleep(Duration::from_millis(5));
    }
    start.elapsed()
}

fn kept(folder: &Path) -> Option<String> {
    let entry = entries(folder).pop()?;
    Some(Unsaved::read(&entry).unwrap().job.title)
}

#[test]
fn the_latest_edit_is_kept_and_what_is_saved_is_not() {
    let folder = tempfile::tempdir().unwrap();
    let mut journal = Journal::begin(folder.path().join("journal"), || ());
    let place = folder.path().join("journal");
    assert!(!place.exists(), "nothing is made before it is needed");
    journal.keep(&titled("one"), None, None);
    journal.keep(&titled("two"), None, None);
    wait_until("kept", || kept(&place).as_deref() == Some("two"));
    journal.clear();
    wait_until("cleared", || entries(&place).is_empty());
    journal.keep(&titled("three"), None, None);
    drop(journal);
    assert_eq!(kept(&place).as_deref(), Some("three"), "what is unsaved at the end stays");
    assert_eq!(left_overs(&place).unsaved.len(), 1);
}

#[test]
fn a_long_drag_is_written_on_the_way() {
    let folder = tempfile::tempdir().unwrap();
    let mut journal = Journal::begin(folder.path().to_owned(), || ());
    let start = Instant::now();
    let mut seen = std::collections::BTreeSet::new();
    for edit in 0.. {
        journal.keep(&titled(&edit.to_string()), None, None);
        seen.extend(kept(folder.path()));
        if start.elapsed() > Duration::from_millis(1800) {
            break;
        }
        std::thread::sleep(Duration::from_millis(4));
    }
    // At 0, 0.5, 1 and 1.5 s; a slow machine may miss one, none writes at every edit.
    assert!((2..=5).contains(&seen.len()), "{} writes", seen.len());
}

#[test]
fn closed_in_order_nothing_is_left() {
    let folder = tempfile::tempdir().unwrap();
    let mut journal = Journal::begin(folder.path().to_owned(), || ());
    journal.keep(&titled("one"), None, None);
    wait_until("kept", || kept(folder.path()).is_some());
    journal.keep(&titled("two"), None, None);
    journal.clear();
    drop(journal);
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0, "neither entry nor lock");
}

#[test]
fn what_was_left_is_taken_up_where_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    let mut journal = Journal::begin(folder.path().to_owned(), || ());
    journal.keep(&titled("left"), Some(&path), Some("as read"));
    drop(journal);

    let mut found = left_overs(folder.path());
    assert!(found.troubles.is_empty(), "{:?}", found.troubles);
    let left_over = found.unsaved.pop().unwrap();
    assert_eq!(left_over.unsaved.path.as_deref(), Some(path.as_path()));
    assert_eq!(left_over.unsaved.as_read.as_deref(), Some("as read"));
    let mut journal = Journal::begin(folder.path().to_owned(), || ());
    journal.take_up(left_over);
    journal.keep(&titled("left"), Some(&path), Some("as read"));
    drop(journal);
    assert_eq!(kept(folder.path()).as_deref(), Some("left"), "not lost while nothing more is edited");

    let mut journal = Journal::begin(folder.path().to_owned(), || ());
    journal.take_up(left_overs(folder.path()).unsaved.pop().unwrap());
    journal.keep(&titled("more"), None, None);
    drop(journal);
    assert_eq!(entries(folder.path()).len(), 1);
    let mut journal = Journal::begin(folder.path().to_owned(), || ());
    let left_over = left_overs(folder.path()).unsaved.pop().unwrap();
    assert_eq!(left_over.unsaved.job.title, "more");
    journal.take_up(left_over);
    journal.clear();
    drop(journal);
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn what_was_saved_after_all_is_not_offered() {
    let folder = tempfile::tempdir().unwrap();
    let (path, place) = (folder.path().join("room.ron"), folder.path().join("journal"));
    let mut journal = Journal::begin(place.clone(), || ());
    journal.keep(&titled("saved"), Some(&path), None);
    drop(journal);
    // Killed after the save and before the entry was removed.
    crate::files::save::save_job(&titled("saved"), &path, None).unwrap();
    assert!(left_overs(&place).unsaved.is_empty());
    assert_eq!(std::fs::read_dir(&place).unwrap().count(), 0);
}

#[test]
fn what_was_left_can_be_thrown_away() {
    let folder = tempfile::tempdir().unwrap();
    let mut journal = Journal::begin(folder.path().to_owned(), || ());
    journal.keep(&titled("left"), None, None);
    drop(journal);
    left_overs(folder.path()).unsaved.pop().unwrap().throw_away().unwrap();
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 0);
}

#[test]
fn where_nothing_can_be_written_it_is_told_once_and_tried_again() {
    let folder = tempfile::tempdir().unwrap();
    let place = folder.path().join("journal");
    std::fs::write(&place, "in the way").unwrap();
    let (wake, woken) = std::sync::mpsc::channel();
    let mut journal = Journal::begin(place.clone(), move || {
        let _ = wake.send(());
    });
    journal.keep(&titled("one"), None, None);
    woken.recv_timeout(Duration::from_secs(2)).unwrap();
    let trouble = journal.trouble().unwrap();
    assert!(trouble.starts_with("Unsaved work cannot be kept for the case of a crash ("), "{trouble}");
    assert!(trouble.contains(&place.display().to_string()), "{trouble}");
    assert_eq!(journal.trouble(), None);
    std::fs::remove_file(&place).unwrap();
    journal.keep(&titled("two"), None, None);
    drop(journal);
    assert_eq!(kept(&place).as_deref(), Some("two"));
}

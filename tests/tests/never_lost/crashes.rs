//! What a crash left.

use super::window::*;
use egui::Key;
use strikeline::files::job_file::read_job;
use strikeline::files::save::save_job;
use strikeline_solver::units::Length;

/// A window that was changed and is gone without a word.
fn crashed(place: &Place, path: Option<std::path::PathBuf>) {
    let mut harness = place.window(path);
    edit(&mut harness, 140.0);
    place.wait_for_entries(1);
    killed(harness);
    place.wait_for_entries(1);
}

#[test]
fn what_a_crash_left_is_taken_up_unsaved_on_its_own_file() {
    let place = Place::new();
    crashed(&place, Some(place.job()));
    let mut harness = place.window(None);
    assert!(shows(&harness, "The program ended before this was saved."));
    harness_shows_all(&harness, &["Den", "den.ron", "less than a minute ago"]);
    press(&mut harness, "Take it up again");
    assert_eq!(width(&harness), Some(Length::inches(140.0)));
    assert!(harness.state().session().is_changed());
    keys(&mut harness, Key::Z);
    assert_eq!(width(&harness), Some(Length::inches(120.0)), "undone to the file");
    keys(&mut harness, Key::Y);
    keys(&mut harness, Key::S);
    assert!(!harness.state().session().is_changed());
    assert_eq!(read_job(&place.job()).unwrap().job.walls[0].width, Some(Length::inches(140.0)));
    place.wait_for_entries(0);
}

fn harness_shows_all(harness: &egui_kittest::Harness<'_, strikeline::app::App>, parts: &[&str]) {
    for part in parts {
        assert!(shows(harness, part), "{part}");
    }
}

#[test]
fn a_job_never_saved_is_taken_up_too() {
    let place = Place::new();
    crashed(&place, None);
    let mut harness = place.window(None);
    harness_shows_all(&harness, &["Untitled job", "Never saved to a file"]);
    press(&mut harness, "Take it up again");
    assert_eq!(width(&harness), Some(Length::inches(140.0)));
    assert!(harness.state().session().is_changed() && harness.state().session().path.is_none());
    killed(harness);
    assert_eq!(place.entries().len(), 1, "it is as safe as before");
}

#[test]
fn a_file_changed_since_the_crash_is_not_replaced_unasked() {
    let place = Place::new();
    crashed(&place, Some(place.job()));
    let text = save_job(&room("Theirs"), &place.job(), None).unwrap();
    let mut harness = place.window(None);
    press(&mut harness, "Take it up again");
    keys(&mut harness, Key::S);
    assert!(shows(&harness, "The file on disk is not what was read."));
    assert_eq!(std::fs::read_to_string(place.job()).unwrap(), text);
}

#[test]
fn later_offers_it_again_and_thrown_away_it_is_gone() {
    let place = Place::new();
    crashed(&place, None);
    let mut harness = place.window(None);
    press(&mut harness, "Later");
    assert!(!shows(&harness, "The program ended"));
    keys(&mut harness, Key::O);
    press(&mut harness, "1 job is kept that never got saved\u{2026}");
    assert!(shows(&harness, "Never saved to a file"));
    press(&mut harness, "Later");
    killed(harness);
    let mut harness = place.window(None);
    press(&mut harness, "Throw away");
    assert_eq!(place.entries().len(), 1, "asked once more");
    press(&mut harness, "Throw it away for good");
    assert_eq!(place.entries().len(), 0);
    assert!(!shows(&harness, "The program ended"));
}

#[test]
fn of_several_one_is_thrown_away_while_the_others_are_offered() {
    let place = Place::new();
    crashed(&place, None);
    // The one that stands beside the first, which this window holds.
    {
        let mut harness = place.window(Some(place.job()));
        press(&mut harness, "Later");
        edit(&mut harness, 150.0);
        place.wait_for_entries(2);
    }
    let mut harness = place.window(None);
    press(&mut harness, "Throw away");
    press(&mut harness, "Throw it away for good");
    assert_eq!(place.entries().len(), 1);
    assert!(shows(&harness, "The program ended before this was saved."));
}

#[test]
fn a_live_window_is_not_offered_to_another() {
    let place = Place::new();
    let mut first = place.window(None);
    edit(&mut first, 140.0);
    place.wait_for_entries(1);
    let second = place.window(None);
    assert!(!shows(&second, "The program ended"));
}

#[test]
fn saved_undone_or_discarded_nothing_is_kept() {
    let place = Place::new();
    let mut harness = place.window(Some(place.job()));
    edit(&mut harness, 130.0);
    place.wait_for_entries(1);
    keys(&mut harness, Key::S);
    place.wait_for_entries(0);
    edit(&mut harness, 131.0);
    place.wait_for_entries(1);
    keys(&mut harness, Key::Z);
    place.wait_for_entries(0);
    edit(&mut harness, 132.0);
    place.wait_for_entries(1);
    assert!(!closes(&mut harness), "asked first");
    press(&mut harness, "Discard the changes");
    place.wait_for_entries(0);
    assert!(closes(&mut harness));
}

#[test]
fn a_damaged_entry_is_told_and_kept_aside() {
    let place = Place::new();
    std::fs::create_dir_all(place.home().journal()).unwrap();
    let entry = place.home().journal().join("session-1.ron");
    std::fs::write(&entry, "(format: 1, job: \"(for").unwrap();
    let mut harness = place.window(None);
    assert!(shows(&harness, "Unsaved work that a crash left cannot be read"));
    press(&mut harness, "Close");
    assert!(entry.with_extension("damaged").exists() && !entry.exists());
}

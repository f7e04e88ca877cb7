//! The question which job to open.

use super::window::*;
use egui::Key;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use std::time::{Duration, Instant};
use strikeline::app::App;
use strikeline::files::recent::recent;
use strikeline::files::save::save_job;

/// Runs until something is shown: jobs are read beside the window.
fn wait_for(harness: &mut Harness<'_, App>, part: &str) {
    wait_for_all(harness, part, 1);
}

/// Runs until something is shown so many times.
fn wait_for_all(harness: &mut Harness<'_, App>, part: &str, count: usize) {
    let start = Instant::now();
    while harness.query_all_by_label_contains(part).count() < count {
        assert!(start.elapsed() < Duration::from_secs(20), "{part} is not shown {count} times");
        std::thread::sleep(Duration::from_millis(5));
        harness.run();
    }
}

fn click(harness: &mut Harness<'_, App>, part: &str) {
    harness.get_all_by_label_contains(part).next().unwrap().click();
    harness.run();
}

#[test]
fn a_job_beside_the_open_one_is_opened_by_one_tap_and_stands_first_then() {
    let place = Place::new();
    let attic = place.folder().join("attic.ron");
    save_job(&room("Attic"), &attic, None).unwrap();
    std::fs::write(place.folder().join("broken.ron"), "(format: 1, walls: 3)").unwrap();
    let mut harness = place.window(Some(place.job()));
    keys(&mut harness, Key::O);
    // Open lately, and in its folder.
    wait_for(&mut harness, "Den, den.ron, 1 wall");
    wait_for_all(&mut harness, "den.ron, 1 wall", 2);
    wait_for(&mut harness, "broken, broken.ron, line 1, column");
    for row in harness.get_all_by_label_contains(".ron, 1 wall") {
        assert!(row.rect().height() >= 30.0, "a finger finds it");
    }
    click(&mut harness, "Attic, attic.ron, 1 wall");
    assert_eq!(harness.state().session().job.title, "Attic");
    assert_eq!(recent(&place.home().recent()), [attic, place.job()]);
}

#[test]
fn another_typed_folder_shows_its_jobs() {
    let place = Place::new();
    let other = place.folder().join("other");
    std::fs::create_dir(&other).unwrap();
    save_job(&room("Loft"), &other.join("loft.ron"), None).unwrap();
    let mut harness = place.window(None);
    keys(&mut harness, Key::O);
    type_over(&mut harness, &format!("{}/", other.display()));
    wait_for(&mut harness, "Loft, loft.ron");
    type_over(&mut harness, &place.folder().join("none").join("x").display().to_string());
    wait_for(&mut harness, "the folder cannot be looked through");
    assert!(!shows(&harness, "Loft"));
}

#[test]
fn a_recent_job_that_is_gone_is_said_so_and_stays_until_taken_off() {
    let place = Place::new();
    drop(place.window(Some(place.job())));
    let moved = place.folder().join("moved");
    std::fs::rename(place.job(), &moved).unwrap();
    let mut harness = place.window(None);
    for _ in 0..2 {
        keys(&mut harness, Key::O);
        wait_for(&mut harness, "den.ron, It is gone.");
        press(&mut harness, "Cancel");
    }
    keys(&mut harness, Key::O);
    wait_for(&mut harness, "It is gone.");
    press(&mut harness, "Take off the list");
    assert!(!shows(&harness, "It is gone."));
    assert!(recent(&place.home().recent()).is_empty());
}

#[test]
fn saved_under_another_name_that_one_is_recent() {
    let place = Place::new();
    let mut harness = place.window(Some(place.job()));
    save_as(&mut harness);
    let other = place.folder().join("other.ron");
    type_over(&mut harness, other.to_str().unwrap());
    press(&mut harness, "Save");
    assert_eq!(recent(&place.home().recent()), [other, place.job()]);
}

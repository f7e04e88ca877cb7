//! Files, and the questions about them.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::files::job_file::{read_job, write_job_text};
use strikeline::moves::HandleKind;
use strikeline::session::Session;

#[test]
fn a_typed_path_is_opened_changed_and_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    std::fs::write(&path, write_job_text(&room()).unwrap()).unwrap();
    let mut harness = window_on(Session::fresh());
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::O);
    harness.run();
    harness.event(Event::Text(path.display().to_string()));
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Open").click();
    harness.run();
    assert_eq!(job(&harness), room());
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    assert!(harness.state().session().is_changed());
    harness.key_press_modifiers(Modifiers::COMMAND, Key::S);
    harness.run();
    assert!(!harness.state().session().is_changed());
    assert_eq!(read_job(&path).unwrap().job, job(&harness));
}

#[test]
fn a_file_written_by_hand_is_not_replaced_before_it_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    std::fs::write(&path, ROOM).unwrap();
    let opened = path.clone();
    let mut harness = Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .with_step_dt(1.0 / 60.0)
        .build_eframe(|created| App::new(&created.egui_ctx, Some(opened)));
    harness.run();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::S);
    harness.run();
    assert_eq!(std::fs::read_to_string(&path).unwrap(), ROOM);
    harness.get_by_label("This file was written or changed by hand.");
    let in_dialog = |harness: &Harness<'_, App>| {
        harness.get_all_by_role_and_label(Role::Button, "Save").last().expect("a button").click();
    };
    in_dialog(&harness);
    harness.run();
    assert_eq!(read_job(&path).unwrap().job, job(&harness));
    assert!(!harness.state().session().is_changed());
}

#[test]
fn unsaved_changes_are_asked_about_before_they_are_lost() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    let moved = job(&harness);
    let ask = |harness: &mut Harness<'_, App>| {
        harness.key_press_modifiers(Modifiers::COMMAND, Key::N);
        harness.run();
        harness.get_by_label("This job has changes that are not saved.");
    };
    ask(&mut harness);
    harness.get_by_role_and_label(Role::Button, "Cancel").click();
    harness.run();
    assert_eq!(job(&harness), moved);
    ask(&mut harness);
    harness.get_by_role_and_label(Role::Button, "Discard the changes").click();
    harness.run();
    assert_eq!(job(&harness).title, "", "a fresh job");
    assert!(!harness.state().session().is_changed());
}

#[test]
fn a_file_that_cannot_be_read_is_told_of() {
    let mut harness = Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .build_eframe(|created| App::new(&created.egui_ctx, Some("/not/there.ron".into())));
    harness.run();
    harness.get_by_label_contains("Not opened: cannot read the job");
}

#[test]
fn a_file_of_something_else_is_told_of_and_the_job_stays() {
    let folder = tempfile::tempdir().unwrap();
    let other = folder.path().join("letter.ron");
    std::fs::write(&other, "rubbish").unwrap();
    let mut harness = window();
    let before = job(&harness);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::O);
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(egui::Event::Text(other.display().to_string()));
    harness.run();
    harness.get_all_by_role_and_label(Role::Button, "Open").last().expect("a button").click();
    harness.run();
    harness.get_by_label_contains("Not opened: this file is no job (it begins with `rubbish`");
    assert_eq!(job(&harness), before);
    assert_eq!(std::fs::read_to_string(&other).unwrap(), "rubbish");
}

#[test]
fn what_was_discarded_once_is_asked_about_again_after_another_change() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::O);
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Discard the changes").click();
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Cancel").click();
    harness.run();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(0.0, 60.0));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::N);
    harness.run();
    harness.get_by_label("This job has changes that are not saved.");
}

/// A window on a job without a path that was changed, asked to begin a new one.
fn changed_and_asked_for_a_new_one() -> Harness<'static, App> {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::N);
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Save first").click();
    harness.run();
    harness.get_by_label("Save the job");
    harness
}

/// Answers the question for a path.
fn save_to(harness: &mut Harness<'_, App>, path: &std::path::Path) {
    harness.event(Event::Text(path.display().to_string()));
    harness.run();
    harness.get_all_by_role_and_label(Role::Button, "Save").last().expect("a button").click();
    harness.run();
}

#[test]
fn save_first_goes_on_to_what_was_asked_once_the_job_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    let mut harness = changed_and_asked_for_a_new_one();
    let moved = job(&harness);
    save_to(&mut harness, &path);
    assert_eq!(read_job(&path).unwrap().job, moved);
    assert_eq!(job(&harness).title, "", "a fresh job");
    assert_eq!(harness.state().session().path, None, "which has no file");
}

#[test]
fn save_first_goes_on_after_a_file_there_was_replaced() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    std::fs::write(&path, "something else").unwrap();
    let mut harness = changed_and_asked_for_a_new_one();
    let moved = job(&harness);
    save_to(&mut harness, &path);
    assert_eq!(job(&harness), moved, "it is asked first");
    harness.get_by_role_and_label(Role::Button, "Replace it").click();
    harness.run();
    assert_eq!(read_job(&path).unwrap().job, moved);
    assert_eq!(job(&harness).title, "", "a fresh job");
}

#[test]
fn a_save_that_fails_or_is_cancelled_leaves_the_job_and_forgets_what_was_asked() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    for fails in [true, false] {
        let mut harness = changed_and_asked_for_a_new_one();
        let moved = job(&harness);
        if fails {
            save_to(&mut harness, &folder.path().join("no such folder").join("room.ron"));
            harness.get_by_label_contains("Not saved");
            harness.get_by_role_and_label(Role::Button, "Close").click();
        } else {
            harness.get_by_role_and_label(Role::Button, "Cancel").click();
        }
        harness.run();
        assert_eq!(job(&harness), moved, "fails: {fails}");
        // A later save is a save and nothing more.
        harness.key_press_modifiers(Modifiers::COMMAND, Key::S);
        harness.run();
        save_to(&mut harness, &path);
        assert_eq!(job(&harness), moved, "fails: {fails}");
        assert!(!harness.state().session().is_changed());
        std::fs::remove_file(&path).unwrap();
    }
}

#[test]
fn asked_to_close_and_save_first_the_window_closes_when_the_job_is_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    let commands = |harness: &Harness<'_, App>| {
        let output = harness.output().viewport_output.values();
        output.flat_map(|viewport| viewport.commands.clone()).collect::<Vec<_>>()
    };
    let root = harness.input_mut().viewports.entry(egui::ViewportId::ROOT).or_default();
    root.events.push(egui::ViewportEvent::Close);
    harness.step();
    assert!(commands(&harness).contains(&egui::ViewportCommand::CancelClose), "{:?}", commands(&harness));
    harness.input_mut().viewports.entry(egui::ViewportId::ROOT).or_default().events.clear();
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Save first").click();
    harness.run();
    harness.event(Event::Text(path.display().to_string()));
    harness.run();
    harness.get_all_by_role_and_label(Role::Button, "Save").last().expect("a button").click();
    let mut closes = false;
    for _ in 0..6 {
        harness.step();
        closes |= commands(&harness).contains(&egui::ViewportCommand::Close);
    }
    assert!(path.exists() && closes);
}

#[test]
fn what_was_half_typed_stays_with_its_own_job() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    std::fs::write(&path, write_job_text(&room()).unwrap()).unwrap();
    // Unchanged, so that it may be left: what was typed is not understood, and never came into the job.
    let mut harness = window();
    let typed = |harness: &Harness<'_, App>| {
        harness.get_all_by_role_and_label(Role::TextInput, "Width").next().unwrap().value()
    };
    assert_eq!(typed(&harness).as_deref(), Some("48 in"));
    harness.get_all_by_role_and_label(Role::TextInput, "Width").next().unwrap().focus();
    harness.run();
    harness.event(Event::Text(" and a bit".to_owned()));
    harness.run();
    assert_ne!(typed(&harness).as_deref(), Some("48 in"));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::O);
    harness.run();
    harness.event(Event::Text(path.display().to_string()));
    harness.run();
    harness.get_by_role_and_label(Role::Button, "Open").click();
    harness.run();
    assert_eq!(harness.state().session().path.as_deref(), Some(path.as_path()));
    assert_eq!(typed(&harness).as_deref(), Some("48 in"), "the other job has a display of the same id");
}

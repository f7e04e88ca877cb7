//! The sheets looked at and saved.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use std::path::{Path, PathBuf};
use strikeline::app::App;
use strikeline::files::viewer::Viewer;
use strikeline::session::Session;
use strikeline_drawing::sheet::{About, PaperSize, SheetKind, document};
use strikeline_solver::job::Job;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::words::on_paper;

/// The window with the sheets shown, asked for by their keys.
fn shown(job: Job, path: Option<PathBuf>) -> Harness<'static, App> {
    viewed(job, path, None)
}

/// The same with a viewer that stands in for the system's.
fn viewed(job: Job, path: Option<PathBuf>, viewer: Option<Viewer>) -> Harness<'static, App> {
    let mut harness = window_on(Session::new(job, path));
    if let Some(viewer) = viewer {
        harness.state_mut().set_viewer(viewer);
    }
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::P);
    harness.run();
    harness
}

/// How many pages the command line would make of it.
fn pages(job: &Job, kind: SheetKind, paper: PaperSize) -> usize {
    let plan = solve(job, &job.walls[0].id, None);
    let about = About { file: "room.ron", date: "2026-03-14 UTC" };
    document(job, &[&plan], &[kind], paper, about).unwrap().pages.len()
}

fn is_told(harness: &Harness<'_, App>, part: &str) -> bool {
    harness.query_all_by_label_contains(part).next().is_some()
}

fn press(harness: &mut Harness<'_, App>, name: &str) {
    harness.get_by_role_and_label(Role::Button, name).click();
    harness.run();
}

/// Types a path in the question for the file, in the place of the one that is there.
fn save_as(harness: &mut Harness<'_, App>, path: &Path) {
    press(harness, "Save as\u{2026}");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(Event::Text(path.display().to_string()));
    harness.run();
    harness.get_all_by_role_and_label(Role::Button, "Save").last().expect("a button").click();
    harness.run();
}

#[test]
fn each_kind_tells_its_pages_and_escape_goes_back() {
    let mut harness = shown(room(), None);
    for kind in [SheetKind::Elevation, SheetKind::Template, SheetKind::MarkOut] {
        press(&mut harness, kind.name());
        harness.run();
        let told = on_paper::pages(pages(&room(), kind, PaperSize::Letter), "Letter");
        assert!(is_told(&harness, &told), "{told}");
    }
    harness.key_press(Key::Escape);
    harness.run();
    assert!(harness.query_by_label("Back to the drawing").is_none());
    harness.get_by_label("On paper");
}

#[test]
fn the_whole_set_is_of_every_wall_as_the_command_line_makes_it() {
    let mut job = room();
    let mut other = job.walls[0].clone();
    other.id = Id::new("wall-2");
    job.walls.push(other);
    let plans = job.walls.iter().map(|wall| solve(&job, &wall.id, None)).collect::<Vec<_>>();
    let planned = plans.iter().collect::<Vec<_>>();
    let about = About { file: "room.ron", date: "2026-03-14 UTC" };
    let made = document(&job, &planned, &SheetKind::WHOLE_SET, PaperSize::Letter, about).unwrap();
    let alone = document(&job, &planned[..1], &SheetKind::WHOLE_SET, PaperSize::Letter, about).unwrap();
    assert!(made.pages.len() > alone.pages.len());
    let mut harness = shown(job, None);
    press(&mut harness, on_paper::ALL);
    harness.run();
    let told = on_paper::pages(made.pages.len(), "Letter");
    assert!(is_told(&harness, &told), "{told}");
}

#[test]
fn the_pages_are_saved_by_the_ending_and_nothing_is_replaced_unasked() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = shown(room(), Some(folder.path().join("room.ron")));
    press(&mut harness, SheetKind::Elevation.name());
    for (name, begins) in [("a.pdf", &b"%PDF-"[..]), ("a.svg", b"<?xml"), ("a.png", b"\x89PNG")] {
        let path = folder.path().join(name);
        save_as(&mut harness, &path);
        assert!(std::fs::read(&path).unwrap().starts_with(begins), "{name}");
        assert!(is_told(&harness, &format!("Saved as {}", path.display())));
    }
    let path = folder.path().join("a.pdf");
    std::fs::write(&path, "mine").unwrap();
    save_as(&mut harness, &path);
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "mine");
    press(&mut harness, "Cancel");
    assert_eq!(std::fs::read_to_string(&path).unwrap(), "mine");
    save_as(&mut harness, &path);
    press(&mut harness, "Replace them");
    assert!(std::fs::read(&path).unwrap().starts_with(b"%PDF-"));
}

#[test]
fn the_question_begins_with_a_name_beside_the_job() {
    let folder = tempfile::tempdir().unwrap();
    let mut harness = shown(room(), Some(folder.path().join("den.ron")));
    press(&mut harness, "Save as\u{2026}");
    harness.get_all_by_role_and_label(Role::Button, "Save").last().expect("a button").click();
    harness.run();
    assert!(folder.path().join("den-mark-out.pdf").exists());
}

/// What the viewer was asked to show.
static SHOWN: std::sync::Mutex<Vec<PathBuf>> = std::sync::Mutex::new(Vec::new());

fn shows(path: &Path) -> std::io::Result<()> {
    SHOWN.lock().unwrap().push(path.to_owned());
    Ok(())
}

fn shows_nothing(_: &Path) -> std::io::Result<()> {
    Err(std::io::ErrorKind::NotFound.into())
}

#[test]
fn what_is_printed_is_saved_as_a_pdf_and_opened_and_the_next_step_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let print = |viewer: Viewer, name: &str| {
        let mut harness = viewed(room(), Some(folder.path().join(name)), Some(viewer));
        press(&mut harness, "Print\u{2026}");
        harness.get_all_by_role_and_label(Role::Button, "Save").last().expect("a button").click();
        harness.run();
        harness
    };
    let harness = print(shows, "den.ron");
    let pdf = folder.path().join("den-mark-out.pdf");
    assert!(std::fs::read(&pdf).unwrap().starts_with(b"%PDF-"));
    assert_eq!(*SHOWN.lock().unwrap(), [pdf]);
    assert!(is_told(&harness, "print at 100 % (actual size)"));
    let harness = print(shows_nothing, "attic.ron");
    assert!(folder.path().join("attic-mark-out.pdf").exists());
    assert!(is_told(&harness, "No viewer could be opened") && is_told(&harness, "open the file yourself"));
}

#[test]
fn a_name_that_cannot_be_set_is_told_in_the_place_of_the_pages() {
    let mut job = room();
    job.title = "Cafex\u{301}".to_owned();
    let harness = shown(job, None);
    assert!(is_told(&harness, "U+0301"));
    assert!(harness.get_by_label("Save as\u{2026}").accesskit_node().is_disabled());
}

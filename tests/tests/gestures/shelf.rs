//! My shelf: kept once, put into any job by one tap, taken off again. Each window has a home of its own.

use super::room::*;
use super::touch::finger_on;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use std::path::{Path, PathBuf};
use strikeline::app::App;
use strikeline::files::home::Home;
use strikeline::session::Session;
use strikeline_solver::job::kit::{Kit, Measure, MeasureKind};
use strikeline_solver::job::wall::Wall;
use strikeline_solver::job::{Job, Units};
use strikeline_solver::plan::mark::Stage;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Graduation;
use strikeline_solver::units::Length;

fn window_at(home: &Path, session: Session) -> Harness<'static, App> {
    let home = Home::at(home);
    // What would clear the findings comes a finding a frame.
    let mut harness = Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .with_max_steps(64)
        .with_step_dt(1.0 / 60.0)
        .build_eframe(|created| {
            strikeline::app::install(&created.egui_ctx);
            App::on(session).at_home(&created.egui_ctx, &home)
        });
    harness.run();
    harness
}

/// A window on the small room, with a home in a folder.
pub(super) fn at_home(home: &Path) -> Harness<'static, App> {
    window_at(home, Session::new(room(), None))
}

pub(super) fn open_shelf(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::B);
    harness.run();
    assert!(is_open(harness));
}

fn is_open(harness: &Harness<'_, App>) -> bool {
    harness.query_by_label("Close the shelf").is_some()
}

/// What is called so, brought into view and tapped.
pub(super) fn tap_on(harness: &mut Harness<'_, App>, name: &str) {
    harness.get_by_role_and_label(Role::Button, name).scroll_to_me();
    harness.run();
    finger_on(harness, name);
}

/// Keeps what stands under a label by the name that is typed.
pub(super) fn keep(harness: &mut Harness<'_, App>, what: &str, name: &str) {
    tap_on(harness, &format!("Keep as mine: {what}"));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(Event::Text(name.to_owned()));
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
}

/// The files on the shelf.
pub(super) fn files(home: &Path) -> Vec<PathBuf> {
    let files = std::fs::read_dir(Home::at(home).shelf()).into_iter().flatten().flatten();
    let mut files: Vec<PathBuf> = files.map(|file| file.path()).collect();
    files.sort();
    files
}

pub(super) fn undo(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
}

fn begin_new(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::N);
    harness.run();
    if harness.query_by_label("Discard the changes").is_some() {
        finger_on(harness, "Discard the changes");
    }
    assert!(harness.state().session().short_form);
}

#[test]
fn a_plate_measured_once_is_put_into_a_new_job_by_one_tap_and_its_holes_are_no_longer_assumed() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = at_home(home.path());
    open_shelf(&mut harness);
    harness.get_by_label("Nothing is on it yet");
    keep(&mut harness, "Mount", "Bench plate");
    assert_eq!(files(home.path()).len(), 1);
    harness.get_by_label_contains("Bench plate is kept");
    assert_eq!(job(&harness), room(), "keeping changes no job");

    begin_new(&mut harness);
    assert!(!is_open(&harness));
    for typed in ["48", "28", "18 kg", "400", "400", "8 1/2", "120", "8 ft", "60"] {
        harness.event(Event::Text(typed.to_owned()));
        harness.run();
        harness.key_press(Key::Enter);
        harness.run();
    }
    tap_on(&mut harness, "Plate, as usual: Narrow rail");
    let holes = |harness: &mut Harness<'_, App>| {
        let plan = plan(harness);
        let marks: Vec<bool> =
            plan.marks.iter().filter(|mark| mark.stage == Stage::Fix).map(|mark| mark.assumed).collect();
        (plan.pieces[0].mount.as_ref().unwrap().holes.len(), marks)
    };
    let (_, marks) = holes(&mut harness);
    assert!(marks.iter().all(|assumed| *assumed), "a usual plate's holes are not to be struck: {marks:?}");
    let before = job(&harness);
    tap_on(&mut harness, "Mount from my shelf: Bench plate");
    let after = job(&harness);
    assert_eq!(after.mounts.len(), 1, "in the place of the new job's");
    assert_eq!(after.mounts[0].plate.as_ref().unwrap().holes.len(), 2);
    assert_eq!(after.mounts[0].drop, before.mounts[0].drop, "typed in this job");
    let (count, marks) = holes(&mut harness);
    assert_eq!(count, 2);
    assert!(!marks.is_empty() && marks.iter().all(|assumed| !assumed), "{marks:?}");
    undo(&mut harness);
    assert_eq!(job(&harness), before, "one step");
}

#[test]
fn changing_the_shelf_changes_no_job_and_what_is_taken_off_is_asked_about_once() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = at_home(home.path());
    open_shelf(&mut harness);
    keep(&mut harness, "Display", "Lobby screen");
    begin_new(&mut harness);
    tap_on(&mut harness, "Display from my shelf: Lobby screen");
    let with_it = job(&harness);
    assert_eq!(with_it.pieces[0].width, room().pieces[0].width);
    assert_eq!(with_it.pieces[0].name.as_deref(), Some("Lobby screen"));

    let path = files(home.path()).pop().unwrap();
    let text = std::fs::read_to_string(&path).unwrap();
    std::fs::write(&path, text.replace("48 in", "50 in")).unwrap();
    open_shelf(&mut harness);
    harness.get_by_label_contains("50\" \u{d7} 28\"");
    assert_eq!(job(&harness), with_it);
    tap_on(&mut harness, "Put in: Lobby screen");
    assert_eq!(
        job(&harness).pieces[0].width,
        Some(Length::inches(50.0).quantised()),
        "put in again, it is new"
    );

    let with_it = job(&harness);
    tap_on(&mut harness, "Take off: Lobby screen");
    assert_eq!(files(home.path()).len(), 1, "asked first");
    tap_on(&mut harness, "Leave it there");
    tap_on(&mut harness, "Take off: Lobby screen");
    tap_on(&mut harness, "Take it off");
    assert_eq!(files(home.path()), Vec::<PathBuf>::new());
    harness.get_by_label("Nothing is on it yet");
    assert_eq!(job(&harness), with_it);
}

#[test]
fn later_a_tap_adds_beside_unless_it_is_said_to_go_in_the_place_of_what_is_shown() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = at_home(home.path());
    open_shelf(&mut harness);
    keep(&mut harness, "Display", "Second screen");
    keep(&mut harness, "Mount", "Second mount");
    let hung = |harness: &mut Harness<'_, App>| {
        let plan = plan(harness);
        let of = |piece: &strikeline_solver::plan::piece::PiecePlan| {
            (piece.id.clone(), piece.mount.as_ref().map(|mount| mount.id.clone()))
        };
        plan.pieces.iter().map(of).collect::<Vec<_>>()
    };
    let before = hung(&mut harness);
    tap_on(&mut harness, "Put in: Second mount");
    let with_mount = hung(&mut harness);
    assert_eq!((with_mount.len(), job(&harness).mounts.len()), (1, 2), "the old mount stays in the job");
    assert_ne!(with_mount[0].1, before[0].1, "the display hangs on the new one");
    undo(&mut harness);
    assert_eq!(job(&harness), room());

    tap_on(&mut harness, "Put in: Second screen");
    let both = hung(&mut harness);
    assert_eq!(both.len(), 2);
    assert_eq!(both[0], before[0], "the first stays where it is");
    assert_eq!(harness.state().session().selected.as_ref().map(|it| it.id.clone()), Some(both[1].0.clone()));
    undo(&mut harness);
    assert_eq!(job(&harness), room(), "one step");

    tap_on(&mut harness, "Shown: Screen. A tap puts it: In its place");
    tap_on(&mut harness, "Put in: Second screen");
    assert_eq!(hung(&mut harness), before, "it has the id and the mount of the other");
    assert_eq!(job(&harness).pieces[0].name.as_deref(), Some("Second screen"));
    harness.get_by_label_contains("The drop was measured with that: measure it again.");
    assert_eq!(job(&harness).mounts[0].drop, None);
}

#[test]
fn a_wall_is_what_the_shown_one_is_built_of_or_another() {
    let home = tempfile::tempdir().unwrap();
    let mut built = room();
    built.walls[0].insulated = Some(true);
    let mut harness = window_at(home.path(), Session::new(built, None));
    open_shelf(&mut harness);
    keep(&mut harness, "Wall", "Filled bays");
    harness.state_mut().session_mut().job.walls[0].insulated = None;
    harness.run();
    tap_on(&mut harness, "Put in: Filled bays");
    let walls = job(&harness).walls;
    assert_eq!((walls.len(), walls[0].insulated, walls[0].width), (1, Some(true), room().walls[0].width));
    tap_on(&mut harness, "Shown: the wall. A tap puts it: Another wall");
    tap_on(&mut harness, "Put in: Filled bays");
    let walls = job(&harness).walls;
    assert_eq!((walls.len(), walls[1].insulated, walls[1].width), (2, Some(true), None));
    assert_eq!(harness.state().session().wall, walls[1].id, "it is the one that is shown");
    undo(&mut harness);
    assert_eq!(job(&harness).walls.len(), 1);
    assert_eq!(plan(&mut harness).wall, walls[0].id, "undone, the first is shown again");
}

#[test]
fn a_new_job_begins_with_the_kit_and_the_settings_that_are_kept() {
    let home = tempfile::tempdir().unwrap();
    let (id, kind) = (Id::new("tape-1"), MeasureKind::Tape);
    let tape = Measure { id, kind, doubt: None, class: None, length: None };
    let mine = Job {
        units: Some(Units::Millimetres),
        graduation: Some(Graduation::Eighth),
        kit: Kit { measures: vec![tape], ..Kit::default() },
        ..room()
    };
    let mut harness = window_at(home.path(), Session::new(mine.clone(), None));
    open_shelf(&mut harness);
    keep(&mut harness, "Kit", "Van");
    keep(&mut harness, "Units and settings", "Metric");
    begin_new(&mut harness);
    let holds = |harness: &Harness<'_, App>| {
        let new = job(harness);
        assert_eq!((new.units, new.graduation), (mine.units, mine.graduation));
        assert_eq!((new.kit.measures.len(), new.walls[0].width), (1, None));
        assert!(!harness.state().session().is_changed() && !harness.state().session().can_undo());
    };
    holds(&harness);
    // The first job after a start too.
    holds(&window_at(home.path(), Session::fresh()));
    // A job that is opened has its own.
    assert_eq!(job(&at_home(home.path())), room());
}

#[test]
fn one_name_stands_twice_only_where_that_is_said() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = at_home(home.path());
    open_shelf(&mut harness);
    keep(&mut harness, "Display", "Screen");
    keep(&mut harness, "Display", "screen");
    harness.get_by_label("One of this name is there.");
    assert_eq!(files(home.path()).len(), 1, "Enter does not choose");
    harness.state_mut().session_mut().job.pieces[0].width = Some(Length::inches(50.0));
    harness.run();
    finger_on(&mut harness, "Keep in its place");
    assert_eq!(files(home.path()).len(), 1);
    harness.get_by_label_contains("50\" \u{d7} 28\"");
    keep(&mut harness, "Display", "Screen");
    finger_on(&mut harness, "Keep beside it");
    assert_eq!(files(home.path()).len(), 2);
    keep(&mut harness, "Display", "   ");
    assert_eq!(files(home.path()).len(), 2, "a name is asked for");
}

#[test]
fn a_broken_file_is_told_with_its_place_and_the_others_are_there() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = at_home(home.path());
    open_shelf(&mut harness);
    keep(&mut harness, "Display", "Screen");
    let broken = Home::at(home.path()).shelf().join("broken.ron");
    std::fs::write(&broken, "(format: 1,\n name: \"x\",\n thing: mount((kind: rope)))").unwrap();
    open_shelf(&mut harness);
    harness.get_by_role_and_label(Role::Button, "Take off: Screen");
    harness.get_by(|node| {
        let label = node.value().unwrap_or_default();
        label.starts_with("line 3, column 22") && label.ends_with(&broken.display().to_string())
    });
    // Broken since it was listed: nothing changes, and it is said.
    let path = files(home.path()).into_iter().find(|path| *path != broken).unwrap();
    std::fs::write(&path, "(format: 1").unwrap();
    tap_on(&mut harness, "Put in: Screen");
    harness.get_by_label_contains("Not put in: line 1");
    assert_eq!(job(&harness), room());
}

#[test]
fn where_nothing_can_be_written_the_name_that_was_typed_stays() {
    let home = tempfile::tempdir().unwrap();
    std::fs::write(home.path().join("shelf"), "a file in the place of the folder").unwrap();
    let mut harness = at_home(home.path());
    open_shelf(&mut harness);
    keep(&mut harness, "Display", "Screen of the lobby");
    harness.get_by_label_contains("Not kept: cannot keep this on the shelf");
    harness.get_by_role_and_label(Role::Button, "Close").click();
    harness.run();
    let field = harness.get_by_role_and_label(Role::TextInput, "Name on the shelf");
    assert_eq!(field.value().as_deref(), Some("Screen of the lobby"));
}

#[test]
fn a_window_without_a_home_says_so() {
    let mut harness = window();
    open_shelf(&mut harness);
    harness.get_by_label_contains("The system knows no folder of yours");
    tap_on(&mut harness, "Close the shelf");
    assert!(!is_open(&harness));
    let walls: Vec<Wall> = job(&harness).walls;
    assert_eq!(walls, room().walls);
}

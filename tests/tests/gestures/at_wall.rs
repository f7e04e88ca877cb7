//! At the wall: one mark after the other by a finger alone, what was done noted and taken back.

use super::room::*;
use super::touch::{finger, finger_on};
use egui::accesskit::Role;
use egui::{Key, Modifiers};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use std::path::Path;
use strikeline::app::App;
use strikeline::files::job_file::read_job_text;
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::FactState;
use strikeline_solver::job::hidden::HiddenKind;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::plan::Next;
use strikeline_solver::plan::mark::{Mark, MarkWhat};
use strikeline_solver::plan::verdict::EmptyWhy;
use strikeline_solver::subject::Subject;
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// A window at the wall of a demo, its first mark shown.
fn at_the_wall() -> Harness<'static, App> {
    let demo = include_str!("../../../demo-jobs/breakfast_room.ron");
    let job = read_job_text(demo, Path::new("room")).unwrap().job;
    at_the_wall_of(job)
}

/// A window at the wall of a job, on the mark to be taken next.
pub(super) fn at_the_wall_of(job: Job) -> Harness<'static, App> {
    let mut harness = window_on(Session::new(job, None));
    harness.run();
    finger_on(&mut harness, "At the wall");
    harness.run();
    harness
}

/// Taps on or back until such a mark is shown.
pub(super) fn go_to(harness: &mut Harness<'_, App>, is_it: impl Fn(&Mark) -> bool) {
    let plan = plan(harness);
    let place = |id: &Subject| plan.marks.iter().position(|mark| mark.id == *id);
    let to = plan.marks.iter().position(&is_it).expect("there is one");
    for _ in 0..plan.marks.len() + 2 {
        let shown = harness.state().session().selected.clone().expect("a mark is shown");
        // The next probe comes after the others.
        let last = plan.marks.iter().rposition(|mark| matches!(mark.what, MarkWhat::Probe { .. }));
        let at = place(&shown).or(last).unwrap();
        if shown == plan.marks[to].id {
            harness.get_by_label(&words::mark_name(&plan, &plan.marks[to]));
            return;
        }
        let forth = at < to || at == to && place(&shown).is_some();
        finger_on(harness, if forth { "Next" } else { "Back" });
    }
    unreachable!("every mark comes");
}

fn facts(harness: &Harness<'_, App>) -> Vec<FactState> {
    job(harness).walls[0].facts.iter().map(|fact| fact.state).collect()
}

#[test]
fn every_mark_comes_by_taps_and_by_keys_and_the_drawing_is_had_again() {
    let mut harness = at_the_wall();
    let marks = plan(&mut harness).marks;
    let next = plan(&mut harness).next;
    assert!(matches!(next, Some(Next::Take(id)) if Some(&id) == harness.state().session().selected.as_ref()));
    let first = marks[0].id.clone();
    go_to(&mut harness, |mark| mark.id == first);
    harness.key_press(Key::ArrowRight);
    harness.run();
    harness.key_press(Key::Space);
    harness.run();
    assert_eq!(harness.state().session().selected.as_ref(), Some(&marks[2].id));
    harness.key_press(Key::ArrowLeft);
    harness.run();
    finger_on(&mut harness, "Back");
    assert_eq!(harness.state().session().selected.as_ref(), Some(&marks[0].id));
    let before = job(&harness);
    finger_on(&mut harness, "Back to the drawing");
    canvas_rect(&harness);
    finger_on(&mut harness, "At the wall");
    harness.get_by_label("Back to the drawing");
    harness.key_press(Key::Escape);
    harness.run();
    assert!(harness.query_by_label("Back to the drawing").is_none());
    assert_eq!(job(&harness), before, "looking changes nothing");
}

#[test]
fn what_is_struck_is_noted_by_a_tap_and_taken_back_by_another() {
    let mut harness = at_the_wall();
    go_to(&mut harness, |mark| mark.what == MarkWhat::LevelLine);
    finger_on(&mut harness, "Struck");
    assert_eq!(facts(&harness), [FactState::Struck]);
    finger_on(&mut harness, "Struck");
    assert_eq!(facts(&harness), []);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(facts(&harness), [FactState::Struck], "undo works here too");
    go_to(&mut harness, |mark| matches!(mark.what, MarkWhat::Hole { .. }));
    finger_on(&mut harness, "Drilled");
    let fixing = |plan: &strikeline_solver::plan::Plan, id: &strikeline_solver::subject::Subject| {
        plan.marks.iter().find(|mark| mark.id == *id).map(|mark| mark.stage)
    };
    let stage = fixing(&plan(&mut harness), harness.state().session().selected.as_ref().unwrap());
    finger_on(&mut harness, "Stripped: it spins");
    let shown = harness.state().session().selected.clone().unwrap();
    assert_eq!(fixing(&plan(&mut harness), &shown), stage, "the view stays at this stage");
    harness.get_by_label_contains("no fastener counts there");
    assert_eq!(facts(&harness), [FactState::Struck, FactState::Stripped]);
    let stripped = job(&harness).walls[0].facts[1].mark.subject().clone();
    let plan = plan(&mut harness);
    let fastening = &plan.pieces[0].mount.as_ref().unwrap().fastening;
    let hole = fastening.left_empty.iter().find(|empty| stripped.part_str().starts_with(empty.hole.as_str()));
    assert_eq!(hole.expect("it takes no fastener any more").why, EmptyWhy::Stripped);
}

#[test]
fn what_a_probe_met_is_a_hit_or_something_in_the_wall() {
    let mut harness = at_the_wall();
    go_to(&mut harness, |mark| matches!(mark.what, MarkWhat::Probe { .. }));
    let before = job(&harness).walls[0].clone();
    let at = harness.get_by_role_and_label(Role::Button, "Air").rect().center();
    finger(&mut harness, at);
    let wall = job(&harness).walls[0].clone();
    assert_eq!(wall.hits.len(), before.hits.len() + 1);
    assert_eq!(wall.hits.last().unwrap().kind, HitKind::Air);
    finger_on(&mut harness, "Pipe seen");
    assert_eq!(job(&harness).walls[0].hidden.len(), before.hidden.len() + 1);
}

/// Writes over what a field holds, and leaves it.
fn write(harness: &mut Harness<'_, App>, field: egui::Id, text: &str) {
    harness.ctx.memory_mut(|memory| memory.request_focus(field));
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.run();
    harness.event(egui::Event::Text(text.to_owned()));
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
}

#[test]
fn where_a_line_really_went_is_typed_as_the_tape_shows_it_and_the_plan_follows() {
    let mut harness = at_the_wall();
    go_to(&mut harness, |mark| mark.what == MarkWhat::LevelLine);
    let before = plan(&mut harness);
    finger_on(&mut harness, "Struck");
    harness.get_by_label_contains("Nothing to rub out or strike anew");
    finger_on(&mut harness, "It went elsewhere");
    // It was to be struck 48 5/16 above the bench.
    write(&mut harness, egui::Id::unique(("went", "upright".to_owned())), "48 9/16");
    let after = plan(&mut harness);
    let up = (after.pieces[0].outline.top - before.pieces[0].outline.top).mm();
    assert!((up - 0.25 * 25.4).abs() < 1.0, "the display comes 1/4 in higher: {up} mm");
    assert!(after.findings.iter().any(|finding| finding.what.rule() == "held_away"));
    finger_on(&mut harness, "Struck");
    assert_eq!(plan(&mut harness).pieces[0].outline, before.pieces[0].outline, "taken back, it is as before");
}

#[test]
fn where_a_hole_really_went_is_dragged_on_the_close_look() {
    let mut harness = at_the_wall();
    go_to(&mut harness, |mark| matches!(mark.what, MarkWhat::Hole { .. }));
    let hole = harness.state().session().selected.clone().unwrap();
    finger_on(&mut harness, "Drilled");
    finger_on(&mut harness, "It went elsewhere");
    // The close look is beside what is told, on the right.
    let from = egui::pos2(1100.0, 300.0);
    drag(&mut harness, from, egui::vec2(40.0, 0.0));
    let wall = job(&harness).walls[0].clone();
    let fact = wall.facts.iter().find(|fact| *fact.mark.subject() == hole).unwrap();
    let (planned, went) = (fact.planned.unwrap(), fact.went.expect("it was dragged"));
    let by = (went.x.length() - planned.x.length()).mm();
    assert!(by > 3.0 && went.y == planned.y, "to the right alone: {by} mm");
    let steps = by / Length::inches(1.0 / 16.0).mm();
    assert!((steps - steps.round()).abs() < 1e-3, "in whole graduations: {by} mm");
    let plate = plan(&mut harness).pieces[0].mount.clone().unwrap();
    assert!(plate.held.is_some());
}

#[test]
fn something_else_is_noted_in_words_where_it_is() {
    let mut harness = at_the_wall();
    go_to(&mut harness, |mark| mark.what == MarkWhat::Look);
    let place = {
        let plan = plan(&mut harness);
        plan.marks.iter().find(|mark| mark.what == MarkWhat::Look).unwrap().place.unwrap()
    };
    finger_on(&mut harness, "Something else");
    harness.ctx.memory_mut(|memory| memory.request_focus(egui::Id::unique("something else")));
    harness.run();
    harness.event(egui::Event::Text("an old speaking tube".to_owned()));
    harness.run();
    finger_on(&mut harness, "Note it");
    let wall = job(&harness).walls[0].clone();
    let hidden = wall.hidden.last().unwrap();
    assert_eq!((hidden.kind, hidden.name.as_deref()), (HiddenKind::Other, Some("an old speaking tube")));
    let placed = plan(&mut harness).survey.hidden.last().unwrap().rect;
    assert!(placed.holds(place), "{placed:?} {place:?}");
}

#[test]
fn what_a_block_changes_of_the_cables_is_told_at_the_wall() {
    let mut harness = at_the_wall();
    go_to(&mut harness, |mark| mark.what == MarkWhat::Look);
    let before = plan(&mut harness);
    finger_on(&mut harness, "Block below");
    let after = plan(&mut harness);
    let changes = strikeline_solver::words::cable_changes(&before, &after);
    let shown = harness.query_all_by(|node| {
        let told = node.value().or(node.label()).unwrap_or_default();
        let told = told.replace('\u{a0}', " ");
        told.starts_with("Supposed halfway down") && changes.iter().all(|change| told.contains(change))
    });
    assert!(shown.count() > 0, "{changes:?}");
    let block = after.survey.hidden.last().unwrap();
    assert_eq!(block.kind, HiddenKind::FireBlock);
    assert!(!changes.is_empty(), "it stands in the way: else this shows nothing");
}

#[test]
fn a_tape_on_the_bar_makes_sizes_true() {
    let mut harness = at_the_wall();
    let height =
        |harness: &Harness<'_, App>| harness.get_by_role_and_label(Role::Button, "Next").rect().height();
    let before = height(&harness);
    finger_on(&mut harness, "True sizes");
    // The bar is 1280 - 16 - 40 points long, or near: at 96 points to the inch about 12 3/4 in. Half of that: points
    // are small.
    write(&mut harness, egui::Id::unique("true sizes"), "6 3/8");
    finger_on(&mut harness, "Keep");
    harness.run();
    let after = height(&harness);
    assert!((after / before - 2.0).abs() < 0.1, "{before} to {after}");
    finger_on(&mut harness, "True sizes");
    write(&mut harness, egui::Id::unique("true sizes"), "1/16");
    harness.get_by_label_contains("No screen is so made");
    finger_on(&mut harness, "Leave it");
    assert!((height(&harness) - after).abs() < 0.5);
}

/// A file dropped on the window.
#[derive(Debug)]
struct Dropped(std::path::PathBuf);

impl egui::DroppedFile for Dropped {
    fn path(&self) -> &Path {
        &self.0
    }

    fn bytes(&self) -> Result<Vec<u8>, String> {
        std::fs::read(&self.0).map_err(|why| why.to_string())
    }
}

/// The smallest picture: one dark pixel.
const PIXEL: [u8; 69] = [
    137, 80, 78, 71, 13, 10, 26, 10, 0, 0, 0, 13, 73, 72, 68, 82, 0, 0, 0, 1, 0, 0, 0, 1, 8, 2, 0, 0, 0, 144,
    119, 83, 222, 0, 0, 0, 12, 73, 68, 65, 84, 8, 215, 99, 96, 96, 96, 0, 0, 0, 4, 0, 1, 39, 52, 39, 10, 0,
    0, 0, 0, 73, 69, 78, 68, 174, 66, 96, 130,
];

#[test]
fn a_picture_dropped_at_the_wall_is_copied_beside_the_job_and_named_by_its_mark() {
    let folder = tempfile::tempdir().unwrap();
    let taken = folder.path().join("Bay.png");
    std::fs::write(&taken, PIXEL).unwrap();
    let demo = include_str!("../../../demo-jobs/breakfast_room.ron");
    let path = folder.path().join("room.ron");
    let job = read_job_text(demo, &path).unwrap().job;
    let mut harness = window_on(Session::new(job, Some(path)));
    harness.run();
    finger_on(&mut harness, "At the wall");
    let mark = harness.state().session().selected.clone();
    let drop = |harness: &mut Harness<'_, App>| {
        harness.input_mut().dropped_files.push(std::sync::Arc::new(Dropped(taken.clone())));
        harness.run_steps(5);
    };
    drop(&mut harness);
    drop(&mut harness);
    let pictures = self::job(&harness).pictures;
    assert_eq!(pictures.len(), 1, "the same is kept once: {pictures:?}");
    assert_eq!((pictures[0].file.as_str(), &pictures[0].of), ("room-pictures/bay.png", &mark));
    assert_eq!(std::fs::read(folder.path().join("room-pictures/bay.png")).unwrap(), PIXEL);
    // It is read by a thread of its own.
    for _ in 0..100 {
        harness.step();
        if harness.query_by_label("room-pictures/bay.png").is_some() {
            break;
        }
        std::thread::sleep(std::time::Duration::from_millis(10));
    }
    harness.get_by_label("room-pictures/bay.png");
    finger_on(&mut harness, "Take away");
    assert!(self::job(&harness).pictures.is_empty());
    assert!(folder.path().join("room-pictures/bay.png").exists(), "the file stays");
}

#[test]
fn a_picture_of_a_job_without_a_file_asks_to_save_it_first() {
    let mut harness = at_the_wall();
    finger_on(&mut harness, "Picture");
    harness.run_steps(5);
    harness.get_by_label_contains("Save the job first");
    assert!(job(&harness).pictures.is_empty());
}

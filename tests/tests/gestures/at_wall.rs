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
use strikeline_solver::job::fact::FactState;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::plan::mark::MarkWhat;
use strikeline_solver::plan::verdict::EmptyWhy;
use strikeline_solver::words;

/// A window at the wall of a demo, its first mark shown.
fn at_the_wall() -> Harness<'static, App> {
    let demo = include_str!("../../../demo-jobs/breakfast_room.ron");
    let job = read_job_text(demo, Path::new("room")).unwrap().job;
    let mut harness = window_on(Session::new(job, None));
    harness.run();
    finger_on(&mut harness, "At the wall");
    harness.run();
    harness
}

/// Taps on until such a mark is shown.
fn go_to(harness: &mut Harness<'_, App>, is_it: fn(&MarkWhat) -> bool) {
    let plan = plan(harness);
    let to = plan.marks.iter().find(|mark| is_it(&mark.what)).expect("there is one");
    for _ in 0..plan.marks.len() {
        if harness.state().session().selected.as_ref() == Some(&to.id) {
            harness.get_by_label(&words::mark_name(&plan, to));
            return;
        }
        finger_on(harness, "Next");
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
    assert_eq!(harness.state().session().selected.as_ref(), Some(&marks[0].id));
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
    go_to(&mut harness, |what| *what == MarkWhat::LevelLine);
    finger_on(&mut harness, "Struck");
    assert_eq!(facts(&harness), [FactState::Struck]);
    finger_on(&mut harness, "Struck");
    assert_eq!(facts(&harness), []);
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(facts(&harness), [FactState::Struck], "undo works here too");
    go_to(&mut harness, |what| matches!(what, MarkWhat::Hole { .. }));
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
    go_to(&mut harness, |what| matches!(what, MarkWhat::Probe { .. }));
    let before = job(&harness).walls[0].clone();
    let at = harness.get_by_role_and_label(Role::Button, "Air").rect().center();
    finger(&mut harness, at);
    let wall = job(&harness).walls[0].clone();
    assert_eq!(wall.hits.len(), before.hits.len() + 1);
    assert_eq!(wall.hits.last().unwrap().kind, HitKind::Air);
    finger_on(&mut harness, "Pipe seen");
    assert_eq!(job(&harness).walls[0].hidden.len(), before.hidden.len() + 1);
}

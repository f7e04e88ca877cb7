//! The room from the side, and the display's height dragged there.

use super::room::*;
use egui::{Key, Modifiers, Pos2, Rect, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas::side_view::{handles, shown, side_view_id};
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::job::seat::Seat;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

fn with_seat() -> Job {
    let mut job = room();
    let seat =
        Seat { id: Id::new("seat-1"), name: Some("Settee".into()), ..Seat::away(Length::inches(110.0)) };
    job.walls[0].seats.push(seat);
    job
}

/// The window with the side view asked for by its keys.
fn side(job: Job) -> Harness<'static, App> {
    let mut harness = window_on(Session::new(job, None));
    harness.run();
    toggle(&mut harness);
    harness
}

fn toggle(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::E);
    harness.run();
}

fn rect(harness: &Harness<'_, App>) -> Option<Rect> {
    harness.ctx.read_response(side_view_id()).map(|response| response.rect)
}

/// Where the display is taken there.
fn taken(harness: &mut Harness<'_, App>) -> Pos2 {
    let (rect, plan) = (rect(harness).unwrap(), plan(harness));
    handles(&plan, &shown(&plan, rect))[0].body.center()
}

#[test]
fn it_comes_and_goes_by_its_command_and_changes_nothing() {
    let mut harness = window_on(Session::new(with_seat(), None));
    harness.run();
    assert!(rect(&harness).is_none());
    let before = canvas_rect(&harness);
    toggle(&mut harness);
    assert!(rect(&harness).is_some());
    let beside = canvas_rect(&harness);
    assert!(beside.width() > 200.0 && beside.right() <= rect(&harness).unwrap().left(), "{beside:?}");
    assert!(harness.query_all_by_label_contains("Settee: Screen fills").next().is_some());
    toggle(&mut harness);
    assert_eq!(canvas_rect(&harness), before);
    assert_eq!(job(&harness), with_seat());
}

#[test]
fn without_a_seat_it_says_what_to_measure() {
    let harness = side(room());
    assert!(harness.query_all_by_label_contains("Add seats").next().is_some());
}

#[test]
fn the_height_dragged_there_is_the_height_dragged_on_the_elevation() {
    let mut harness = side(with_seat());
    let (from, before) = (taken(&mut harness), plan(&mut harness));
    let window = shown(&before, rect(&harness).unwrap());
    // Sideways nothing moves there, however far the hand goes.
    drag(&mut harness, from, vec2(45.0, -30.0));
    let after = job(&harness);
    let got = nudge(&after);
    let wished = window.wall_length(30.0);
    assert_eq!(got.right, nudge(&with_seat()).right);
    assert!((got.up.length() - wished).abs() <= Length::inches(1.0 / 16.0), "{got:?} {wished:?}");
    let looked = plan(&mut harness);
    let up = |plan: &strikeline_solver::plan::Plan| plan.sight[0].seen.as_ref().unwrap().up;
    assert!(up(&looked) > up(&before), "one looks up by more");
    let mut same = after.clone();
    same.walls[0].options[0].hangings[0].nudge = nudge(&with_seat());
    assert_eq!(same, with_seat(), "the nudge and nothing else");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(&harness), with_seat(), "one step");
}

#[test]
fn escape_gives_back_what_was_there_and_a_press_beside_takes_nothing() {
    let mut harness = side(with_seat());
    let from = taken(&mut harness);
    press_and_move(&mut harness, from, vec2(0.0, 40.0));
    assert_ne!(job(&harness), with_seat());
    harness.key_press(Key::Escape);
    harness.step();
    assert_eq!(job(&harness), with_seat());
    harness.drop_at(from + vec2(0.0, 40.0));
    harness.run();
    drag(&mut harness, from + vec2(90.0, 0.0), vec2(0.0, 40.0));
    assert_eq!(job(&harness), with_seat());
}

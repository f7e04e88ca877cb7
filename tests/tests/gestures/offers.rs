//! What this wall offers beside the elevation: a tap goes to a place, a drag from place to place, and a hand on the
//! display lets it wait.

use super::room::*;
use egui::{Key, Modifiers, Pos2, Rect, pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas;
use strikeline::moves::HandleKind;
use strikeline::session::Session;
use strikeline::strip::strip_id;
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::sweep::Told;
use strikeline_solver::units::Length;

fn toggle(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::D);
    harness.run();
}

/// The window with it asked for.
fn offers() -> Harness<'static, App> {
    let mut harness = window_on(Session::new(room(), None));
    harness.run();
    toggle(&mut harness);
    harness.step();
    harness
}

fn rect(harness: &Harness<'_, App>) -> Option<Rect> {
    harness.ctx.read_response(strip_id()).map(|response| response.rect)
}

fn known(harness: &Harness<'_, App>) -> usize {
    let swept = harness.state().strip().swept().unwrap();
    swept.places().iter().flatten().count() + swept.known()
}

/// The middle of the display at a place of the sweep.
fn place(harness: &Harness<'_, App>, index: usize) -> Point {
    harness.state().strip().swept().unwrap().line()[index]
}

/// Where a place of the sweep is on the screen, along the elevation's own axis.
fn on_strip(harness: &mut Harness<'_, App>, place: Point) -> Pos2 {
    let plan = plan(harness);
    let window = canvas::shown(&plan, canvas_rect(harness), harness.state().view_state());
    let (at, strip) = (window.pointer_from_wall(place), rect(harness).unwrap());
    match harness.state().view_state().sweeping.axis {
        Axis::Across => pos2(at.x, strip.center().y),
        Axis::Upright => pos2(strip.center().x, at.y),
    }
}

fn centre(harness: &mut Harness<'_, App>) -> Point {
    plan(harness).pieces[0].outline.centre()
}

fn undo(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
}

/// Within half a place of the sweep, and so at the place that was meant.
fn is_near(a: Length, b: Length) -> bool {
    (a - b).mm().abs() <= Length::inches(1.0 / 16.0).mm()
}

#[test]
fn it_comes_and_goes_by_its_command_under_the_elevation_and_changes_nothing() {
    let mut harness = window_on(Session::new(room(), None));
    harness.run();
    assert!(rect(&harness).is_none());
    let before = canvas_rect(&harness);
    toggle(&mut harness);
    let (strip, above) = (rect(&harness).unwrap(), canvas_rect(&harness));
    assert!(above.bottom() <= strip.top() && above.height() > 200.0, "{above:?} {strip:?}");
    assert_eq!((strip.left(), strip.right()), (above.left(), above.right()), "one axis");
    assert!(harness.query_all_by_label_contains("What this wall offers").next().is_some());
    toggle(&mut harness);
    assert!(!harness.state().view_state().is_swept);
    assert_eq!(canvas_rect(&harness), before);
    assert_eq!(job(&harness), room());
}

#[test]
fn places_are_pulled_frame_by_frame_the_looks_first() {
    let mut harness = offers();
    for _ in 0..2000 {
        let swept = harness.state().strip().swept().unwrap();
        if swept.places().iter().all(Option::is_some) {
            break;
        }
        assert_eq!(swept.known(), 0, "no place is solved before all are looked at");
        harness.step();
    }
    for _ in 0..2000 {
        if harness.state().strip().swept().unwrap().is_all() {
            break;
        }
        harness.step();
    }
    let swept = harness.state().strip().swept().unwrap();
    assert_eq!((swept.known(), swept.is_all()), (swept.line().len(), true), "somebody looks on");
    assert_eq!(job(&harness), room());
}

#[test]
fn a_tap_goes_to_the_place_under_it_in_one_step() {
    let mut harness = offers();
    let target = place(&harness, 200);
    let at = on_strip(&mut harness, target);
    tap(&mut harness, at);
    let after = centre(&mut harness);
    // A pixel is more than a place at this zoom.
    let pixel = Length::inches(0.5);
    assert!((after.x - target.x).abs() <= pixel, "{after:?} {target:?}");
    assert!(job(&harness) != room());
    let mut same = job(&harness);
    same.walls[0].options[0].hangings[0].nudge = nudge(&room());
    assert_eq!(same, room(), "the nudge and nothing else");
    undo(&mut harness);
    assert_eq!(job(&harness), room(), "one step");
}

#[test]
fn a_drag_goes_from_place_to_place_in_one_step_and_escape_gives_back() {
    let mut harness = offers();
    let start = place(&harness, 128);
    let from = on_strip(&mut harness, start);
    press_and_move(&mut harness, from, vec2(20.0, 0.0));
    let first = centre(&mut harness).x;
    harness.hover_at(from + vec2(40.0, 3.0));
    harness.step();
    assert!(first > start.x && centre(&mut harness).x > first, "it follows");
    assert!(harness.state().strip().is_pale(), "what is shown is of where it was");
    harness.drop_at(from + vec2(40.0, 3.0));
    harness.run();
    undo(&mut harness);
    assert_eq!(job(&harness), room(), "one step");
    press_and_move(&mut harness, from, vec2(-30.0, 0.0));
    assert_ne!(job(&harness), room());
    harness.key_press(Key::Escape);
    harness.step();
    assert_eq!(job(&harness), room());
    harness.drop_at(from);
    harness.run();
    assert_eq!(job(&harness), room());
}

#[test]
fn a_hand_on_the_display_lets_it_wait_and_pale() {
    let mut harness = offers();
    harness.step();
    let from = middle(&mut harness, HandleKind::Piece, "display-1") + vec2(-20.0, 12.0);
    press_and_move(&mut harness, from, vec2(0.0, 0.0));
    let before = known(&harness);
    for step in 0_u8..6 {
        harness.hover_at(from + vec2(12.0 + f32::from(step), 0.0));
        harness.step();
    }
    assert!(job(&harness) != room(), "it moves");
    assert_eq!(known(&harness), before, "nothing is worked out");
    assert!(harness.state().strip().is_pale());
    harness.drop_at(from + vec2(17.0, 0.0));
    harness.run();
    harness.step();
    assert!(!harness.state().strip().is_pale());
    assert!(known(&harness) > 0, "and is taken up again");
}

#[test]
fn zoomed_and_panned_its_axis_stays_the_elevation_s() {
    let mut harness = offers();
    let over = canvas_rect(&harness).center();
    harness.hover_at(over);
    harness.step();
    wheel(&mut harness, 12.0);
    assert!(harness.state().view_state().view.is_some(), "it is zoomed");
    let target = place(&harness, 150);
    let at = on_strip(&mut harness, target);
    tap(&mut harness, at);
    let after = centre(&mut harness);
    assert!(is_near(after.x, target.x), "{after:?} {target:?}");
}

#[test]
fn heights_stand_beside_the_elevation_and_a_tap_there_goes_up() {
    let mut harness = offers();
    harness.get_by_label("Heights").click();
    harness.run();
    harness.step();
    let (strip, canvas) = (rect(&harness).unwrap(), canvas_rect(&harness));
    assert!(canvas.right() <= strip.left(), "{canvas:?} {strip:?}");
    assert_eq!((strip.top(), strip.bottom()), (canvas.top(), canvas.bottom()), "one axis");
    let target = place(&harness, 190);
    let before = centre(&mut harness);
    let at = on_strip(&mut harness, target);
    tap(&mut harness, at);
    let after = centre(&mut harness);
    assert!((after.y - target.y).abs() <= Length::inches(0.5), "{after:?} {target:?}");
    assert!(is_near(after.x, before.x));
    undo(&mut harness);
    assert_eq!(job(&harness), room());
}

#[test]
fn where_the_tap_went_is_what_was_told_of_the_place() {
    let mut harness = offers();
    // The places next to the present one are worked out first.
    for _ in 0..2000 {
        if harness.state().strip().swept().unwrap().known() > 20 {
            break;
        }
        harness.step();
    }
    let swept = harness.state().strip().swept().unwrap().clone();
    let over = canvas_rect(&harness).center();
    harness.hover_at(over);
    harness.step();
    let told = swept.places()[134].clone().unwrap();
    let Told::Full(full) = told.told else { panic!("not worked out: {told:?}") };
    let mut session = Session::new(room(), None);
    let plan = session.plan();
    let handle = strikeline::moves::Handle { id: plan.pieces[0].id.clone(), kind: HandleKind::Piece };
    let moved = strikeline::moves::moved(&room(), &plan, &handle, told.wished);
    assert_eq!(nudge(&moved), full.nudge);
}

//! What one finger and two fingers do: events as the window system sends them.

use super::room::*;
use egui::{Event, Modifiers, PointerButton, Pos2, TouchDeviceId, TouchId, TouchPhase, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas;
use strikeline::moves::HandleKind;
use strikeline::session::Session;
use strikeline_solver::job::option::Nudge;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

fn touch(harness: &Harness<'_, App>, finger: u64, phase: TouchPhase, pos: Pos2) {
    harness.event(Event::Touch { device_id: TouchDeviceId(0), id: TouchId(finger), phase, pos, force: None });
}

fn button(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers: Modifiers::NONE }
}

/// The first finger, which is the pointer too.
pub(crate) fn finger_down(harness: &mut Harness<'_, App>, at: Pos2) {
    let input = harness.input_mut();
    input.events.push(Event::Touch {
        device_id: TouchDeviceId(0),
        id: TouchId(1),
        phase: TouchPhase::Start,
        pos: at,
        force: None,
    });
    input.events.push(Event::PointerMoved(at));
    input.events.push(button(at, true));
    harness.step();
}

fn finger_to(harness: &mut Harness<'_, App>, at: Pos2) {
    touch(harness, 1, TouchPhase::Move, at);
    harness.hover_at(at);
    harness.step();
}

pub(crate) fn finger_up(harness: &mut Harness<'_, App>, at: Pos2) {
    let input = harness.input_mut();
    input.events.push(Event::Touch {
        device_id: TouchDeviceId(0),
        id: TouchId(1),
        phase: TouchPhase::End,
        pos: at,
        force: None,
    });
    input.events.push(button(at, false));
    input.events.push(Event::PointerGone);
    harness.step();
    harness.run();
}

fn finger_tap(harness: &mut Harness<'_, App>, at: Pos2) {
    finger_down(harness, at);
    finger_up(harness, at);
}

fn selected(harness: &Harness<'_, App>) -> Option<String> {
    harness.state().session().selected.as_ref().map(ToString::to_string)
}

fn is_lying(harness: &Harness<'_, App>, choice: &str) -> Option<Pos2> {
    let id = canvas::loupe::target_id(&strikeline_solver::subject::Subject::read(choice).unwrap());
    harness.ctx.read_response(id).map(|response| response.rect.center())
}

/// The room with three hits within half an inch, away from everything.
fn with_close_hits() -> Harness<'static, App> {
    let mut room = room();
    let hit = room.walls[0].hits[0].clone();
    for (id, by) in [("hit-3", 14.5), ("hit-4", 15.25)] {
        let mut near = hit.clone();
        near.id = Id::new(id);
        near.x.by = Length::inches(by).quantised();
        room.walls[0].hits.push(near);
    }
    let mut harness = window_on(Session::new(room, None));
    harness.run();
    harness
}

fn x_of(harness: &Harness<'_, App>, id: &str) -> Length {
    job(harness).walls[0].hits.iter().find(|hit| hit.id.as_str() == id).unwrap().x.by
}

#[test]
fn where_hits_are_close_a_loupe_asks_and_a_second_tap_chooses() {
    let mut harness = with_close_hits();
    let before = job(&harness);
    let at = middle(&mut harness, HandleKind::Hit, "hit-3");
    finger_tap(&mut harness, at);
    assert_eq!(selected(&harness), None, "nothing is chosen before the second tap");
    let targets = ["hit-1", "hit-3", "hit-4"].map(|id| is_lying(&harness, id).expect(id));
    for (index, one) in targets.iter().enumerate() {
        for other in &targets[index + 1..] {
            assert!(one.distance(*other) >= 32.0, "{targets:?}");
        }
    }
    finger_tap(&mut harness, targets[2]);
    assert_eq!(selected(&harness).as_deref(), Some("hit-4"));
    assert_eq!(is_lying(&harness, "hit-4"), None, "the loupe is gone");
    assert_eq!(job(&harness), before);
    // The finger comes back nearer to another: the chosen one is meant.
    finger_down(&mut harness, at);
    for part in [0.3, 0.6, 1.0] {
        finger_to(&mut harness, at + vec2(60.0, 0.0) * part);
    }
    finger_up(&mut harness, at + vec2(60.0, 0.0));
    assert!(x_of(&harness, "hit-4") > Length::inches(16.0));
    let mut same = job(&harness);
    same.walls[0].hits[3].x.by = before.walls[0].hits[3].x.by;
    assert_eq!(same, before);
}

#[test]
fn before_one_of_a_crowd_is_chosen_a_drag_moves_none_of_them() {
    let mut harness = with_close_hits();
    let before = job(&harness);
    let at = middle(&mut harness, HandleKind::Hit, "hit-3");
    finger_down(&mut harness, at);
    for part in [0.3, 0.6, 1.0] {
        finger_to(&mut harness, at + vec2(60.0, 0.0) * part);
        assert_eq!(job(&harness), before);
    }
    finger_up(&mut harness, at + vec2(60.0, 0.0));
    assert_eq!(job(&harness), before);
    assert!(is_lying(&harness, "hit-3").is_some(), "it asks which was meant");
    // A tap elsewhere is an answer too.
    let away = canvas_rect(&harness).right_bottom() - vec2(8.0, 8.0);
    finger_tap(&mut harness, away);
    assert_eq!(is_lying(&harness, "hit-3"), None);
}

#[test]
fn a_mouse_is_sure_enough_and_sees_no_loupe() {
    let mut harness = with_close_hits();
    let at = middle(&mut harness, HandleKind::Hit, "hit-3");
    tap(&mut harness, at);
    assert_eq!(selected(&harness).as_deref(), Some("hit-3"));
    assert_eq!(is_lying(&harness, "hit-3"), None);
}

#[test]
fn the_holes_of_a_selected_plate_are_chosen_one_by_one() {
    let mut close = room();
    // Four holes an inch apart.
    let first = close.mounts[0].plate.as_ref().unwrap().holes[0].clone();
    let holes = &mut close.mounts[0].plate.as_mut().unwrap().holes;
    for (index, id) in ["hole-3", "hole-4", "hole-5"].into_iter().enumerate() {
        let mut hole = first.clone();
        hole.id = Id::new(id);
        hole.right.0 = hole.right.length() + Length::inches(index as f64 + 1.0).quantised();
        holes.push(hole);
    }
    let mut harness = window_on(Session::new(close, None));
    harness.run();
    let display = middle(&mut harness, HandleKind::Piece, "display-1");
    finger_tap(&mut harness, display + vec2(60.0, 40.0));
    assert_eq!(selected(&harness).as_deref(), Some("display-1"));
    let place = plan(&mut harness).pieces[0].mount.as_ref().unwrap().holes[0].place;
    let at = {
        let plan = plan(&mut harness);
        canvas::shown(&plan, canvas_rect(&harness), harness.state().view_state()).pointer_from_wall(place)
    };
    finger_tap(&mut harness, at);
    let target = is_lying(&harness, "display-1.hole-3").expect("a hole to choose");
    finger_tap(&mut harness, target);
    assert_eq!(selected(&harness).as_deref(), Some("display-1.hole-3"));
}

#[test]
fn a_resting_finger_opens_the_menu_and_its_release_chooses_nothing() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Feature, "shelf-1");
    finger_down(&mut harness, at);
    for _ in 0..25 {
        harness.step();
    }
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0, "not before half a second");
    for _ in 0..10 {
        harness.step();
    }
    harness.get_by_label("Zoom here");
    finger_up(&mut harness, at);
    harness.get_by_label("Zoom here");
    assert_eq!(selected(&harness).as_deref(), Some("shelf-1"));
    let before = middle(&mut harness, HandleKind::Hit, "hit-1").distance(middle(
        &mut harness,
        HandleKind::Hit,
        "hit-2",
    ));
    let entry = harness.get_by_label("Zoom here").rect().center();
    finger_tap(&mut harness, entry);
    let after = middle(&mut harness, HandleKind::Hit, "hit-1").distance(middle(
        &mut harness,
        HandleKind::Hit,
        "hit-2",
    ));
    assert!((after / before - 4.0).abs() < 0.01, "{before} {after}");
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0);
    assert_eq!(job(&harness), room());
}

#[test]
fn a_finger_that_moves_does_not_wait_for_the_menu() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Piece, "display-1");
    finger_down(&mut harness, at);
    finger_to(&mut harness, at + vec2(30.0, 0.0));
    for _ in 0..60 {
        harness.step();
    }
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0);
    finger_up(&mut harness, at + vec2(30.0, 0.0));
    assert_ne!(nudge(&job(&harness)), Nudge::default());
}

#[test]
fn a_finger_that_comes_back_in_a_drag_goes_on_with_it() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Piece, "display-1");
    finger_down(&mut harness, at);
    finger_to(&mut harness, at + vec2(40.0, 0.0));
    finger_to(&mut harness, at + vec2(2.0, 0.0));
    for _ in 0..60 {
        harness.step();
    }
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0, "it has moved, wherever it is now");
    finger_to(&mut harness, at + vec2(40.0, 0.0));
    finger_up(&mut harness, at + vec2(40.0, 0.0));
    assert_ne!(nudge(&job(&harness)), Nudge::default());
}

#[test]
fn a_secondary_click_opens_the_menu_and_a_secondary_drag_pans() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Feature, "shelf-1");
    let secondary = |pos, pressed| Event::PointerButton {
        pos,
        button: PointerButton::Secondary,
        pressed,
        modifiers: Modifiers::NONE,
    };
    harness.hover_at(at);
    harness.step();
    harness.event(secondary(at, true));
    harness.step();
    harness.event(secondary(at, false));
    harness.run();
    harness.get_by_label("Zoom here");
    assert_eq!(selected(&harness).as_deref(), Some("shelf-1"));
    harness.key_press(egui::Key::Escape);
    harness.run();
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0);

    harness.event(secondary(at, true));
    harness.step();
    harness.hover_at(at + vec2(40.0, 0.0));
    harness.step();
    harness.event(secondary(at + vec2(40.0, 0.0), false));
    harness.run();
    assert_eq!(harness.query_all_by_label("Zoom here").count(), 0);
    assert!((middle(&mut harness, HandleKind::Feature, "shelf-1").x - at.x - 40.0).abs() < 0.5);
}

#[test]
fn two_fingers_pinch_and_pan_and_move_nothing() {
    let mut harness = window();
    let one = middle(&mut harness, HandleKind::Piece, "display-1");
    let far = |harness: &mut Harness<'_, App>| {
        middle(harness, HandleKind::Hit, "hit-1").distance(middle(harness, HandleKind::Hit, "hit-2"))
    };
    let before = far(&mut harness);
    finger_down(&mut harness, one);
    let other = one + vec2(80.0, 0.0);
    touch(&harness, 2, TouchPhase::Start, other);
    harness.step();
    for step in 1..=8 {
        let by = vec2(10.0 * step as f32, 0.0);
        touch(&harness, 2, TouchPhase::Move, other + by);
        finger_to(&mut harness, one - by);
        assert_eq!(job(&harness), room());
    }
    let after = far(&mut harness);
    assert!((after / before - 3.0).abs() < 0.2, "{before} {after}");
    // Both on to the right.
    let at = middle(&mut harness, HandleKind::Piece, "display-1");
    for step in 1..=5 {
        let by = vec2(6.0 * step as f32, 0.0);
        touch(&harness, 2, TouchPhase::Move, other + vec2(80.0, 0.0) + by);
        finger_to(&mut harness, one - vec2(80.0, 0.0) + by);
    }
    let panned = middle(&mut harness, HandleKind::Piece, "display-1") - at;
    assert!((panned - vec2(30.0, 0.0)).length() < 4.0, "{panned:?}");
    touch(&harness, 2, TouchPhase::End, other);
    harness.step();
    // The finger that stays takes hold of nothing.
    for step in 1..=5 {
        finger_to(&mut harness, one + vec2(0.0, 9.0 * step as f32));
    }
    finger_up(&mut harness, one);
    assert_eq!(job(&harness), room());
}

#[test]
fn a_second_finger_during_a_drag_lets_go_of_what_draws_and_moves_nothing_else() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    let hit = middle(&mut harness, HandleKind::Hit, "hit-1");
    finger_down(&mut harness, from);
    for by in [vec2(10.0, 2.0), vec2(30.0, 6.0)] {
        finger_to(&mut harness, from + by);
    }
    assert_eq!(nudge(&job(&harness)).up.length(), Length::default(), "drawn to where it was");
    touch(&harness, 2, TouchPhase::Start, from + vec2(200.0, 100.0));
    harness.step();
    finger_to(&mut harness, from + vec2(30.0, 6.5));
    touch(&harness, 2, TouchPhase::Move, from + vec2(260.0, 160.0));
    harness.step();
    let free = nudge(&job(&harness)).up.length();
    assert!(free < Length::inches(-0.5), "{free:?}");
    assert_eq!(middle(&mut harness, HandleKind::Hit, "hit-1"), hit, "the drawing stays");
    touch(&harness, 2, TouchPhase::End, from + vec2(260.0, 160.0));
    finger_up(&mut harness, from + vec2(30.0, 6.5));
    assert_ne!(nudge(&job(&harness)).right.length(), Length::default(), "what was dragged stays dragged");
}

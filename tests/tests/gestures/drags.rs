//! Things dragged on the canvas, and the canvas itself.

use super::room::*;
use egui::{Event, Key, Modifiers, PointerButton, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas;
use strikeline::moves::HandleKind;
use strikeline::session::Session;
use strikeline::widgets::unbroken::unbroken;
use strikeline_solver::job::Job;
use strikeline_solver::job::option::Nudge;
use strikeline_solver::units::Length;
use strikeline_solver::words;

#[test]
fn showing_a_job_changes_nothing_in_it() {
    let harness = window();
    assert_eq!(job(&harness), room());
    assert!(!harness.state().session().is_changed() && !harness.state().session().can_undo());
}

#[test]
fn nudge_marks_and_top_line_follow_a_drag_in_the_same_frame() {
    let mut harness = window();
    let before = plan(&mut harness);
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    press_and_move(&mut harness, from, vec2(-41.0, 33.0));
    // The hand is still down.
    let held = job(&harness);
    assert!(nudge(&held).right.length() < Length::inches(-5.0), "{:?}", nudge(&held));
    assert!(nudge(&held).up.length() < Length::inches(-5.0), "{:?}", nudge(&held));
    let after = plan(&mut harness);
    let line = words::place_line(&after, &after.pieces[0]);
    assert_ne!(line, words::place_line(&before, &before.pieces[0]));
    harness.get_by_label(&unbroken(&line));
    harness.get_by_label(&unbroken(&words::next(&after)));
    // What is in sight follows in this frame; what is out of sight is left out, and never shown as it was.
    let shown = |harness: &Harness<'_, App>, told: &str| harness.query_all_by_label(told).count() > 0;
    for (mark, was) in after.marks.iter().zip(&before.marks) {
        let (told, stale) = (unbroken(&words::mark(&after, mark)), unbroken(&words::mark(&before, was)));
        assert!(told == stale || !shown(&harness, &stale), "stale: {stale}");
    }
    let label = |finding| unbroken(&words::finding(&after, finding));
    assert!(after.findings.iter().any(|finding| shown(&harness, &label(finding))), "the list is there");
    harness.drop_at(from + vec2(-41.0, 33.0));
    harness.run();
    for mark in &after.marks {
        let row = harness.query_all_by_label(&unbroken(&words::mark_name(&after, mark))).count();
        assert!(row > 0, "{}", mark.id);
        let told = unbroken(&words::mark(&after, mark));
        assert!(shown(&harness, &told), "not shown once the hand is off: {told}");
    }
    let mut same = held;
    same.walls[0].options[0].hangings[0].nudge = Nudge::default();
    assert_eq!(same, room(), "a drag writes the nudge and nothing else");
}

#[test]
fn the_canvas_stays_where_it_is_whatever_is_told_over_it() {
    let mut harness = window();
    let before = canvas_rect(&harness);
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    for right in [-180.0, -90.0, 60.0, 150.0] {
        press_and_move(&mut harness, from, vec2(right, 20.0));
        assert_eq!(canvas_rect(&harness), before, "{right}");
        harness.key_press(Key::Escape);
        harness.step();
        harness.drop_at(from);
        harness.run();
    }
}

#[test]
fn marks_come_out_round_after_a_drag() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(37.3, -21.7));
    let plan = plan(&mut harness);
    for part in ["centre_line", "level_line"] {
        let mark = plan.marks.iter().find(|mark| mark.id.part_str() == part).expect(part);
        let reading = &mark.readings[0];
        let rest = reading.value - plan.style.length_of(reading.steps);
        assert!(rest.abs() < Length::millimetres(1e-6), "{part}: {rest:?}");
    }
}

#[test]
fn escape_gives_back_what_was_there() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    press_and_move(&mut harness, from, vec2(50.0, 0.0));
    assert_ne!(job(&harness), room());
    harness.key_press(Key::Escape);
    harness.step();
    assert_eq!(job(&harness), room());
    harness.hover_at(from + vec2(90.0, 0.0));
    harness.step();
    harness.drop_at(from + vec2(90.0, 0.0));
    harness.run();
    assert_eq!(job(&harness), room(), "what was given back stays");
}

#[test]
fn back_near_its_rules_place_the_nudge_is_cleared() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(64.0, 31.0));
    assert_ne!(nudge(&job(&harness)), Nudge::default());
    let now = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, now, from - now + vec2(2.0, -2.0));
    assert_eq!(job(&harness), room());
}

#[test]
fn alt_lets_go_of_what_it_is_drawn_to() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    harness.event(Event::ModifiersChanged(Modifiers::ALT));
    press_and_move(&mut harness, from, vec2(30.0, 6.0));
    let window = {
        let rect = canvas_rect(&harness);
        let plan = plan(&mut harness);
        canvas::shown(&plan, rect, harness.state().view_state())
    };
    let wished = -window.wall_length(6.0);
    let got = nudge(&job(&harness)).up.length();
    assert!((got - wished).abs() <= Length::inches(1.0 / 16.0), "{got:?}, wished {wished:?}");
}

#[test]
fn a_hit_is_dragged_by_its_reading() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Hit, "hit-1");
    drag(&mut harness, from, vec2(30.0, 0.0));
    let after = job(&harness);
    let by = after.walls[0].hits[0].x.by;
    assert!(by > Length::inches(15.0), "{by:?}");
    let style = after.style();
    assert!((by - style.length_of(style.steps(by))).abs() < Length::millimetres(1e-6), "{by:?}");
    let mut same = after;
    same.walls[0].hits[0].x.by = room().walls[0].hits[0].x.by;
    assert_eq!(same, room());
}

#[test]
fn a_feature_is_dragged_by_its_body() {
    let mut harness = window();
    let centre = middle(&mut harness, HandleKind::Feature, "shelf-1");
    // Away from its middle, on its body.
    drag(&mut harness, centre + vec2(40.0, 1.0), vec2(-20.0, -30.0));
    let after = job(&harness);
    let shelf = &after.walls[0].features[0];
    assert!(shelf.across.left.as_ref().unwrap().by < Length::inches(79.0));
    assert!(shelf.upright.bottom.as_ref().unwrap().by > Length::inches(21.0));
    assert_eq!(shelf.across.width, room().walls[0].features[0].across.width);
}

#[test]
fn a_press_on_the_empty_canvas_writes_nothing_and_selects_nothing() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    tap(&mut harness, from);
    assert!(harness.state().session().selected.is_some());
    let corner = canvas_rect(&harness).min + vec2(6.0, 6.0);
    tap(&mut harness, corner);
    assert_eq!(harness.state().session().selected, None);
    drag(&mut harness, corner, vec2(30.0, 30.0));
    assert_eq!(job(&harness), room());
}

#[test]
fn a_few_points_are_a_tap_and_not_a_drag() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(4.0, 4.0));
    assert_eq!(job(&harness), room());
}

#[test]
fn the_wheel_zooms_about_the_pointer_and_a_key_fits_again() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Hit, "hit-2");
    let other = middle(&mut harness, HandleKind::Hit, "hit-1");
    harness.hover_at(at);
    harness.step();
    wheel(&mut harness, 3.0);
    assert!((middle(&mut harness, HandleKind::Hit, "hit-2") - at).length() < 0.1);
    let away = middle(&mut harness, HandleKind::Hit, "hit-1");
    assert!((away - at).length() > 1.3 * (other - at).length());
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Num0);
    harness.run();
    assert!((middle(&mut harness, HandleKind::Hit, "hit-1") - other).length() < 0.1);
    assert_eq!(job(&harness), room());
}

#[test]
fn the_middle_button_pans() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    let button = |pos, pressed| Event::PointerButton {
        pos,
        button: PointerButton::Middle,
        pressed,
        modifiers: Modifiers::NONE,
    };
    harness.hover_at(from);
    harness.step();
    harness.event(button(from, true));
    harness.step();
    harness.hover_at(from + vec2(25.0, 10.0));
    harness.step();
    harness.event(button(from + vec2(25.0, 10.0), false));
    harness.run();
    let now = middle(&mut harness, HandleKind::Piece, "display-1");
    assert!((now - from - vec2(25.0, 10.0)).length() < 0.1, "{now:?}");
    assert_eq!(job(&harness), room());
}

#[test]
fn a_tap_within_one_frame_selects() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Piece, "display-1");
    harness.hover_at(at);
    harness.run();
    for pressed in [true, false] {
        let button = PointerButton::Primary;
        let modifiers = Modifiers::NONE;
        harness.input_mut().events.push(Event::PointerButton { pos: at, button, pressed, modifiers });
    }
    harness.run();
    let selected = harness.state().session().selected.as_ref().map(ToString::to_string);
    assert_eq!(selected.as_deref(), Some("display-1"));
    assert_eq!(job(&harness), room());
    harness.key_press(Key::ArrowRight);
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), Length::inches(1.0 / 16.0).quantised());
}

/// The room with a hit over the display, away from the display's middle.
fn room_with_a_hit_over_the_display() -> Job {
    let mut room = room();
    room.walls[0].hits[0].x.by = Length::inches(44.0).quantised();
    room.walls[0].hits[0].y.as_mut().unwrap().by = Length::inches(66.0).quantised();
    room
}

#[test]
fn a_piece_dragged_by_its_body_near_a_hit_moves_and_the_hit_stays() {
    let before = room_with_a_hit_over_the_display();
    for beside in [vec2(12.0, 0.0), vec2(-9.0, 9.0), vec2(0.0, -20.0)] {
        let mut harness = window_on(Session::new(before.clone(), None));
        harness.run();
        let from = middle(&mut harness, HandleKind::Hit, "hit-1") + beside;
        drag(&mut harness, from, vec2(30.0, 10.0));
        assert_eq!(job(&harness).walls[0].hits, before.walls[0].hits, "{beside:?}");
        assert_ne!(nudge(&job(&harness)), Nudge::default(), "{beside:?}");
    }
}

#[test]
fn a_hit_over_a_piece_is_dragged_where_the_press_is_on_it_or_it_is_selected() {
    let before = room_with_a_hit_over_the_display();
    let mut harness = window_on(Session::new(before.clone(), None));
    harness.run();
    let at = middle(&mut harness, HandleKind::Hit, "hit-1");
    drag(&mut harness, at + vec2(3.0, 3.0), vec2(30.0, 0.0));
    let by = |harness: &egui_kittest::Harness<'_, strikeline::app::App>| job(harness).walls[0].hits[0].x.by;
    let first = by(&harness);
    assert!(first > before.walls[0].hits[0].x.by);
    // Now it is selected: a fingertip is enough.
    let at = middle(&mut harness, HandleKind::Hit, "hit-1");
    drag(&mut harness, at + vec2(-14.0, 8.0), vec2(30.0, 0.0));
    assert!(by(&harness) > first);
    assert_eq!(nudge(&job(&harness)), Nudge::default());
}

/// Drags there and back with the hand down all the time.
fn there_and_back(harness: &mut egui_kittest::Harness<'_, strikeline::app::App>, kind: HandleKind, id: &str) {
    let from = middle(harness, kind, id);
    press_and_move(harness, from, vec2(50.0, 30.0));
    // A hit is drawn to nothing, not even to where it was.
    let off = if kind == HandleKind::Hit { vec2(0.0, 0.0) } else { vec2(1.0, -1.0) };
    harness.hover_at(from + off);
    harness.step();
    harness.drop_at(from + off);
    harness.step();
    harness.run();
}

#[test]
fn a_drag_that_ends_where_it_began_is_no_step() {
    let mut odd = room();
    // A nudge and readings that are no whole graduations, and an option that is only assumed.
    odd.walls[0].options[0].hangings[0].nudge.right.0 = Length::millimetres(33.3);
    odd.walls[0].hits[0].x.by = Length::millimetres(333.3);
    odd.walls[0].features[0].across.left.as_mut().unwrap().by = Length::millimetres(2033.3);
    let mut assumed = room();
    assumed.walls[0].options.clear();
    for (before, kind, id) in [
        (&odd, HandleKind::Piece, "display-1"),
        (&odd, HandleKind::Hit, "hit-1"),
        (&odd, HandleKind::Feature, "shelf-1"),
        (&assumed, HandleKind::Piece, "display-1"),
    ] {
        let mut harness = window_on(Session::new(before.clone(), None));
        harness.run();
        there_and_back(&mut harness, kind, id);
        assert_eq!(job(&harness), *before, "{id}");
        assert!(!harness.state().session().can_undo() && !harness.state().session().is_changed(), "{id}");
    }
}

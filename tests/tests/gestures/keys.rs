//! Undo, redo, arrows and Tab.

use super::room::*;
use egui::{Key, Modifiers, vec2};
use egui_kittest::kittest::Queryable as _;
use strikeline::canvas;
use strikeline::moves::HandleKind;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;
use strikeline_solver::words;

#[test]
fn undo_and_redo_take_a_whole_gesture() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    let first = job(&harness);
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(0.0, 40.0));
    let second = job(&harness);
    assert!(first != room() && second != first);
    for (shortcut, key, after) in [
        (Modifiers::COMMAND, Key::Z, &first),
        (Modifiers::COMMAND, Key::Z, &room()),
        (Modifiers::COMMAND, Key::Z, &room()),
        (Modifiers::COMMAND | Modifiers::SHIFT, Key::Z, &first),
        (Modifiers::COMMAND, Key::Y, &second),
    ] {
        harness.key_press_modifiers(shortcut, key);
        harness.run();
        assert_eq!(job(&harness), *after, "{shortcut:?} {key:?}");
    }
}

#[test]
fn arrows_nudge_by_one_graduation_and_with_shift_by_an_inch() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    // A tap selects and gives the focus.
    tap(&mut harness, from);
    assert_eq!(job(&harness), room(), "a tap writes nothing");
    harness.key_press(Key::ArrowRight);
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), Length::inches(1.0 / 16.0).quantised());
    harness.key_press(Key::ArrowDown);
    harness.run();
    assert_eq!(nudge(&job(&harness)).up.length(), -Length::inches(1.0 / 16.0).quantised());
    harness.key_press_modifiers(Modifiers::SHIFT, Key::ArrowLeft);
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), -Length::inches(15.0 / 16.0).quantised());
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), Length::inches(1.0 / 16.0).quantised(), "a step a key");
}

#[test]
fn handles_are_found_by_name_and_reached_by_tab() {
    let mut harness = window();
    for id in ["display-1", "hit-1", "hit-2", "shelf-1"] {
        let plan = plan(&mut harness);
        let name = words::thing(&plan, &Id::new(id).whole());
        let count = harness.get_all_by_role_and_label(egui::accesskit::Role::Button, &name).count();
        assert!(count > 0, "{name}");
    }
    let mut reached = false;
    for _ in 0..200 {
        harness.key_press(Key::Tab);
        harness.step();
        reached |= harness
            .ctx
            .memory(|memory| memory.has_focus(canvas::handles::handle_id(&Id::new("display-1").whole())));
        if reached {
            break;
        }
    }
    assert!(reached, "Tab comes to the display");
    harness.run();
    harness.key_press(Key::ArrowUp);
    harness.run();
    assert_eq!(nudge(&job(&harness)).up.length(), Length::inches(1.0 / 16.0).quantised());
}

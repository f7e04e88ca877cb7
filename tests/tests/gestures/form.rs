//! A new job's form: the eight values by keys alone, and by a finger alone with the keypad.

use super::room::*;
use super::touch::{finger, finger_on};
use egui::accesskit::Role;
use egui::{Event, Key, Rect, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::{MountKind, UsualPlate};
use strikeline_solver::job::rule::UprightRule;
use strikeline_solver::plan::mark::Stage;
use strikeline_solver::units::{Length, Mass};

fn new_job(size: egui::Vec2) -> Harness<'static, App> {
    let mut harness = Harness::builder()
        .with_size(size)
        .with_step_dt(1.0 / 60.0)
        .build_eframe(|created| App::new(&created.egui_ctx, None));
    harness.run();
    harness
}

fn inches(value: f64) -> Option<Length> {
    Some(Length::inches(value).quantised())
}

/// What was given, whichever way, is in the job, and the marks hang on nothing else.
fn is_complete(harness: &mut Harness<'_, App>) {
    let Job { pieces, mounts, walls, .. } = job(harness);
    assert_eq!((pieces[0].width, pieces[0].height), (inches(48.5), inches(28.25)));
    assert_eq!(pieces[0].mass, Some(Mass::kilograms(28.0)));
    let pattern = pieces[0].pattern.as_ref().expect("a pattern");
    assert_eq!((pattern.across.mm(), pattern.upright.mm()), (400.0, 400.0));
    assert_eq!(mounts[0].drop, inches(6.375));
    assert_eq!((walls[0].width, walls[0].height), (inches(148.5), inches(96.0)));
    let by = match &walls[0].options[0].hangings[0].upright {
        UprightRule::Height { by, .. } => Some(*by),
        UprightRule::Gap { .. } | UprightRule::Aligned { .. } => None,
    };
    assert_eq!(by, inches(57.0), "the height of the middle");
    let plan = plan(harness);
    let first = || plan.marks.iter().filter(|mark| matches!(mark.stage, Stage::Agree | Stage::Level));
    assert_eq!(first().count(), 6, "four corners, the level line and the centre line");
    assert!(first().all(|mark| !mark.assumed));
    harness.get_by_label_contains("The set of marks is complete");
}

#[test]
fn values_that_come_faster_than_frames_go_each_to_its_field() {
    let mut harness = new_job(vec2(1280.0, 800.0));
    let key = |pressed| Event::Key {
        key: Key::Enter,
        physical_key: None,
        pressed,
        repeat: false,
        modifiers: egui::Modifiers::NONE,
    };
    for value in ["48 1/2", "28 1/4", "28 kg"] {
        let events = &mut harness.input_mut().events;
        events.extend(value.chars().map(|letter| Event::Text(letter.to_string())));
        events.extend([key(true), key(false)]);
    }
    harness.run_steps(12);
    let piece = &job(&harness).pieces[0];
    assert_eq!((piece.width, piece.height), (inches(48.5), inches(28.25)));
    assert_eq!(piece.mass, Some(Mass::kilograms(28.0)));
    assert_eq!(piece.pattern, None, "nothing was typed twice");
}

/// The keypad, if it is open.
fn keypad(harness: &Harness<'_, App>) -> Option<Rect> {
    harness.query_by_label("Close the keypad")?;
    let keys = harness.get_all_by_label_contains("Key ").map(|key| key.rect());
    keys.reduce(Rect::union)
}

/// Puts a field into view and taps it with a finger.
fn tap_field(harness: &mut Harness<'_, App>, name: &str) {
    harness.get_by_role_and_label(Role::TextInput, name).scroll_to_me();
    harness.run();
    let at = harness.get_by_role_and_label(Role::TextInput, name).rect().left_center() + vec2(12.0, 0.0);
    finger(harness, at);
}

/// Presses keys of the keypad; it must never cover its field nor leave the window.
fn press(harness: &mut Harness<'_, App>, field: &str, keys: &str) {
    for key in keys.split(' ') {
        let pad = keypad(harness).expect("the keypad is open");
        let rect = harness.get_by_role_and_label(Role::TextInput, field).rect();
        assert!(!pad.intersect(rect).is_positive(), "{field} is covered");
        let window = harness.ctx.content_rect();
        assert!(window.contains_rect(pad) && window.contains_rect(rect), "{field}: {rect:?}, {pad:?}");
        finger_on(harness, &format!("Key {key}"));
    }
}

#[test]
fn eight_values_by_keys_alone_are_a_complete_set_of_marks() {
    let mut harness = new_job(vec2(1280.0, 800.0));
    harness.get_by_label_contains("values are still assumed");
    for typed in ["48 1/2", "28 1/4", "28 kg", "400", "400", "6 3/8", "148 1/2", "8 ft", "57"] {
        harness.event(Event::Text(typed.to_owned()));
        harness.run();
        harness.key_press(Key::Enter);
        harness.run();
    }
    is_complete(&mut harness);
    assert_eq!(keypad(&harness), None, "keys alone open no keypad");
}

#[test]
fn eight_values_by_a_finger_alone_are_a_complete_set_of_marks() {
    for size in [vec2(1280.0, 800.0), vec2(800.0, 600.0)] {
        let mut harness = new_job(size);
        tap_field(&mut harness, "Display width");
        press(&mut harness, "Display width", "4 8 1/2");
        harness.get_by_label("48 1/2 in is 1231.9 mm");
        finger_on(&mut harness, "Next field");
        press(&mut harness, "Display height", "2 8 1/4");
        finger_on(&mut harness, "Next field");
        press(&mut harness, "Mass", "2 8 kg");
        // What is tapped while a field is in use takes the tap.
        finger_on(&mut harness, "Mounting pattern, mm: 400\u{d7}400");
        assert_eq!(keypad(&harness), None);
        tap_field(&mut harness, "Drop, display's top to plate's");
        press(&mut harness, "Drop, display's top to plate's", "6 3/8");
        finger_on(&mut harness, "Next field");
        press(&mut harness, "Wall width", "1 4 8 1/2");
        finger_on(&mut harness, "Next field");
        press(&mut harness, "Wall height", "8 ft");
        finger_on(&mut harness, "Next field");
        press(&mut harness, "Display's middle above the floor", "5 7");
        is_complete(&mut harness);
        finger_on(&mut harness, "Close the keypad");
        assert_eq!(keypad(&harness), None);
        is_complete(&mut harness);
    }
}

#[test]
fn the_keypad_shares_its_field_with_the_keyboard_and_undoes_key_by_key() {
    let mut harness = new_job(vec2(1280.0, 800.0));
    finger_on(&mut harness, "Keypad: Display width");
    press(&mut harness, "Display width", "4 9");
    harness.event(Event::Text("1".to_owned()));
    harness.run();
    assert_eq!(job(&harness).pieces[0].width, inches(491.0), "the keyboard goes on where the keypad was");
    finger_on(&mut harness, "Undo the last key");
    finger_on(&mut harness, "Undo the last key");
    press(&mut harness, "Display width", "8 plus 1/2");
    assert_eq!(job(&harness).pieces[0].width, inches(48.5));
    press(&mut harness, "Display width", "1/4 times");
    harness.get_by_label_contains("Not understood.");
    assert_eq!(job(&harness).pieces[0].width, inches(48.25), "the last understood stays");
    finger_on(&mut harness, "Clear the field");
    assert_eq!(job(&harness).pieces[0].width, None);
    // Elsewhere: it closes, and all that was pressed is one step.
    press(&mut harness, "Display width", "5 0");
    let elsewhere = canvas_rect(&harness).right_bottom() - vec2(8.0, 8.0);
    finger(&mut harness, elsewhere);
    assert_eq!(keypad(&harness), None);
    assert_eq!(job(&harness).pieces[0].width, inches(50.0));
    harness.key_press_modifiers(egui::Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(&harness).pieces[0].width, None);
    assert!(!harness.state().session().can_undo());
}

#[test]
fn what_is_usual_is_one_tap_and_assumed_until_it_is_measured() {
    let mut harness = new_job(vec2(1280.0, 800.0));
    finger_on(&mut harness, "Diagonal, in: 55");
    assert_eq!(job(&harness).pieces[0].diagonal, inches(55.0));
    assert_eq!(job(&harness).pieces[0].width, None);
    let drawn = plan(&mut harness).pieces[0].outline.width().in_inches();
    assert!((drawn - 48.4).abs() < 0.2, "a usual case round the picture: {drawn}");
    finger_on(&mut harness, "Plate, as usual: Plate of two rails");
    let mount = &job(&harness).mounts[0];
    assert_eq!((mount.like, mount.kind), (Some(UsualPlate::TwoRails), MountKind::Tilting));
    finger_on(&mut harness, "Diagonal, in: 55");
    assert_eq!(job(&harness).pieces[0].diagonal, None, "a second tap takes it back");
    harness.get_by_label_contains("marks that hang on them are not to be struck yet.");
    finger_on(&mut harness, "Show everything");
    harness.get_by_role_and_label(Role::TextInput, "Depth");
}

//! A wall read in one pull: by keys alone, by taps, taken back, and given up.

use super::room::*;
use super::touch::{finger, finger_on};
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::panels::one_pull::number_id;
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::units::Length;

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

/// A window in which a pull is begun by its keys.
fn pulling(job: Job) -> Harness<'static, App> {
    let mut harness = window_on(Session::new(job, None));
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::L);
    harness.run();
    harness
}

/// Types what the tape shows, the letter of what is there, Enter.
fn read(harness: &mut Harness<'_, App>, number: &str, letter: char) {
    for letter in number.chars().chain([letter]) {
        harness.event(Event::Text(letter.to_string()));
        harness.run();
    }
    harness.key_press(Key::Enter);
    harness.run();
}

fn wall(harness: &Harness<'_, App>) -> Wall {
    job(harness).walls[0].clone()
}

fn unmeasured() -> Job {
    let mut job = room();
    job.walls[0].width = None;
    job.walls[0].features.clear();
    job.walls[0].hits.clear();
    job
}

#[test]
fn a_pull_that_is_typed_faster_than_frames_loses_nothing() {
    let mut harness = window_on(Session::new(unmeasured(), None));
    harness.run();
    let key =
        |key, modifiers| Event::Key { key, physical_key: None, pressed: true, repeat: false, modifiers };
    let events = &mut harness.input_mut().events;
    events.push(key(Key::L, Modifiers::COMMAND));
    for entry in ["12l", "28 1/4x", "44x", "120e"] {
        events.extend(entry.chars().map(|letter| Event::Text(letter.to_string())));
        events.push(key(Key::Enter, Modifiers::NONE));
    }
    harness.run_steps(20);
    let wall = wall(&harness);
    let hits: Vec<Length> = wall.hits.iter().map(|hit| hit.x.by).collect();
    assert_eq!(hits, [12.0, 28.25, 44.0].map(inches));
    assert_eq!(wall.width, Some(inches(120.0)));
}

#[test]
fn a_wall_of_ten_features_by_keys_alone_is_one_step() {
    let before = unmeasured();
    let mut harness = pulling(before.clone());
    let entries = [
        ("10", 'w'),
        ("14", 'o'),
        ("16 1/4", 'l'),
        ("17 3/4", 'r'),
        ("42", 'w'),
        ("47 1/2", 's'),
        ("50", 'd'),
        ("82 1/2", 'd'),
        ("86", 's'),
        ("97", 'x'),
        ("100", 'o'),
        ("104", 'w'),
        ("136", 'w'),
        ("145", 'x'),
        ("150", 'w'),
        ("15 ft 2", 'w'),
        ("190", 'o'),
        ("4953 mm", 'o'),
        ("200", 'e'),
    ];
    for (index, (number, letter)) in entries.into_iter().enumerate() {
        read(&mut harness, number, letter);
        let wall = wall(&harness);
        assert!(wall.features.len() + wall.hits.len() > index / 3, "it shows as it is read: {number}");
    }
    // With nothing typed after the wall's end, Enter is done.
    harness.key_press(Key::Enter);
    harness.run();
    assert!(harness.query_by_label("Tape shows").is_none(), "the pull is over");
    let wall = wall(&harness);
    assert_eq!(wall.features.len(), 10);
    let windows: Vec<_> = wall.features.iter().filter(|thing| thing.kind == FeatureKind::Window).collect();
    let edges = |index: usize| {
        let across = &windows[index].across;
        (across.left.as_ref().unwrap().by, across.right.as_ref().unwrap().by)
    };
    assert_eq!(windows.len(), 3);
    assert_eq!(edges(0), (inches(10.0), inches(42.0)));
    assert_eq!(edges(2), (inches(150.0), inches(182.0)));
    let kinds: Vec<HitKind> = wall.hits.iter().map(|hit| hit.kind).collect();
    assert_eq!(kinds, [HitKind::LeftEdge, HitKind::RightEdge, HitKind::Centre, HitKind::Centre]);
    assert_eq!(wall.width, Some(inches(200.0)));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(&harness), before, "all of it is one step");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Y);
    harness.run();
    assert_eq!(job(&harness).walls[0], wall);
}

#[test]
fn the_last_entry_is_taken_back_and_what_is_odd_is_told() {
    let mut harness = pulling(room());
    read(&mut harness, "30", 'x');
    read(&mut harness, "31", 'x');
    assert_eq!(wall(&harness).hits.len(), 4);
    harness.key_press(Key::Backspace);
    harness.run();
    assert_eq!(wall(&harness).hits.len(), 3);
    read(&mut harness, "20", 'o');
    harness.get_by_label_contains("Less than before: read it again.");
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(wall(&harness).features.len(), 1, "undo means the last entry");
    read(&mut harness, "70", 's');
    harness.get_by_label("Undo").click();
    harness.run();
    harness.run();
    assert_eq!((wall(&harness).features.len(), wall(&harness).hits.len()), (1, 3), "and so does the button");
    // A number without a kind, and a kind without a number, take nothing.
    harness.event(Event::Text("40".to_owned()));
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    harness.get_by_label_contains("Say what is there");
    assert_eq!(wall(&harness).hits.len(), 3);
    read(&mut harness, "", 'x');
    assert_eq!(wall(&harness).hits.len(), 4, "the number was kept");
    // The wall is 120 in wide: the difference is told and nothing is changed.
    read(&mut harness, "119 1/2", 'e');
    harness.get_by_label_contains("1/2\" less than measured before, which stays");
    assert_eq!(wall(&harness).width, Some(inches(120.0)));
}

#[test]
fn by_a_finger_alone_and_given_up_it_is_found_again_by_undo() {
    let mut harness = window_on(Session::new(room(), None));
    harness.run();
    finger_on(&mut harness, "One pull");
    let at = harness.get_by_role_and_label(Role::TextInput, "Tape shows").rect().left_center();
    finger(&mut harness, at + vec2(10.0, 0.0));
    for (keys, kind) in [("2 0", "Door, near edge"), ("5 2 1/2", "Door, far edge"), ("6 0", "Stud's centre")]
    {
        for key in keys.split(' ') {
            finger_on(&mut harness, &format!("Key {key}"));
        }
        finger_on(&mut harness, kind);
        assert!(harness.ctx.memory(|memory| memory.has_focus(number_id())), "the next number can be typed");
    }
    let read = wall(&harness);
    assert_eq!((read.features.len(), read.hits.len()), (2, 3));
    assert_eq!(read.features[1].across.right.as_ref().unwrap().by, inches(52.5));
    finger_on(&mut harness, "Discard");
    assert_eq!(job(&harness), room());
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(wall(&harness), read);
}

#[test]
fn while_a_pull_is_taken_nothing_is_dragged_and_a_rest_makes_no_step() {
    let mut harness = pulling(room());
    let from = middle(&mut harness, strikeline::moves::HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    assert_eq!(job(&harness), room());
    for number in ["30", "46"] {
        let at = harness.get_by_role_and_label(Role::TextInput, "Tape shows").rect().center();
        tap(&mut harness, at);
        read(&mut harness, number, 'x');
        // Elsewhere: nothing has the focus, nothing is touched.
        let elsewhere = canvas_rect(&harness).right_bottom() - vec2(8.0, 8.0);
        tap(&mut harness, elsewhere);
    }
    assert_eq!(wall(&harness).hits.len(), 4);
    harness.get_by_label("Done").click();
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(&harness), room(), "all of it is one step");
}

#[test]
fn a_number_that_is_not_understood_is_not_taken() {
    let mut harness = pulling(room());
    read(&mut harness, "48 3/2", 'o');
    assert_eq!(job(&harness), room(), "48 is not what the tape shows");
    harness.get_by_label_contains("Not understood.");
}

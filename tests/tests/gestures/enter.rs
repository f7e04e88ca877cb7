//! Everything of a job entered, changed, copied and deleted in the window.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use strikeline::app::App;
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

fn inches(value: f64) -> Length {
    Length::inches(value).quantised()
}

/// Taps the last thing of a role and name, wherever in the list it is: it is brought into view first.
fn tap_on(harness: &mut Harness<'_, App>, role: Role, name: &str) {
    harness.get_all_by_role_and_label(role, name).last().expect("there is one").scroll_to_me();
    // Scrolling takes its time.
    harness.run_steps(30);
    harness.get_all_by_role_and_label(role, name).last().expect("there is one").click();
    harness.run();
}

fn press(harness: &mut Harness<'_, App>, name: &str) {
    tap_on(harness, Role::Button, name);
}

/// Taps a chip over the elevation: the highest of its name.
fn tap_chip(harness: &mut Harness<'_, App>, name: &str) {
    let left = canvas_rect(harness).left();
    let chips = harness.get_all_by_label(name).map(|node| node.rect()).filter(|rect| rect.left() > left);
    let chip = chips.min_by(|a, b| a.top().total_cmp(&b.top())).expect("there is one");
    tap(harness, chip.center());
}

/// Opens what is folded away.
fn unfold(harness: &mut Harness<'_, App>, name: &str) {
    tap_on(harness, Role::DisclosureTriangle, name);
}

/// Brings the focus to a field or button by Tab alone.
fn tab_to(harness: &mut Harness<'_, App>, role: Role, name: &str) {
    let mut is_there = false;
    for _ in 0..400 {
        harness.key_press(Key::Tab);
        harness.step();
        is_there =
            harness.query_all_by_role_and_label(role, name).any(|node| node.accesskit_node().is_focused());
        if is_there {
            break;
        }
    }
    assert!(is_there, "Tab comes to {name:?}");
}

/// Types in what has the focus.
fn write(harness: &mut Harness<'_, App>, text: &str) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(Event::Text(text.to_owned()));
    harness.run();
}

/// Types in a field.
fn fill(harness: &mut Harness<'_, App>, name: &str, text: &str) {
    harness.get_by_role_and_label(Role::TextInput, name).focus();
    harness.run();
    write(harness, text);
}

/// Takes the focus off every field, so that a step is noted.
fn leave(harness: &mut Harness<'_, App>) {
    let corner = canvas_rect(harness).min + vec2(6.0, 6.0);
    tap(harness, corner);
}

fn undo(harness: &mut Harness<'_, App>) -> Job {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    job(harness)
}

#[test]
fn a_window_is_added_by_keys_alone_and_its_place_typed() {
    let mut harness = window();
    tab_to(&mut harness, Role::Button, "Add on the wall\u{2026}");
    harness.key_press(Key::Enter);
    harness.run();
    tab_to(&mut harness, Role::Button, "window");
    harness.key_press(Key::Enter);
    harness.run();
    let added = job(&harness).walls[0].features[1].clone();
    assert_eq!(added.kind, FeatureKind::Window);
    assert_eq!((added.across, added.upright), Default::default(), "nobody measured it");
    // The first reading waits to be typed.
    harness.event(Event::Text("12 1/2".to_owned()));
    harness.run();
    tab_to(&mut harness, Role::TextInput, "Lower edge");
    write(&mut harness, "30");
    let features = job(&harness).walls[0].features.clone();
    assert_eq!(features[1].across.left.as_ref().unwrap().by, inches(12.5));
    assert_eq!(features[1].upright.bottom.as_ref().unwrap().by, inches(30.0));
    let drawn = plan(&mut harness);
    assert!(
        drawn.survey.features.iter().any(|feature| (feature.rect.left - inches(12.5)).abs() < inches(0.001))
    );
}

#[test]
fn a_thing_is_changed_copied_and_deleted_and_undo_brings_it_back() {
    let mut harness = window();
    press(&mut harness, "Low shelf");
    assert_eq!(harness.state().session().selected, Some(Id::new("shelf-1").whole()));
    fill(&mut harness, "Stands proud", "9");
    leave(&mut harness);
    let changed = job(&harness);
    assert_eq!(changed.walls[0].features[0].proud, Some(inches(9.0)));
    press(&mut harness, "Copy");
    let copied = job(&harness);
    let [first, second] = copied.walls[0].features.as_slice() else { unreachable!("two") };
    assert_eq!(first, &changed.walls[0].features[0], "the first is as it was");
    assert_eq!(second.proud, first.proud);
    assert_eq!(second.across.left.as_ref().unwrap().by, inches(84.0), "a hand's breadth aside");
    // The copy is selected: the key takes it out.
    harness.key_press(Key::Delete);
    harness.run();
    assert_eq!(job(&harness).walls[0].features, changed.walls[0].features);
    press(&mut harness, "Low shelf");
    press(&mut harness, "Delete");
    assert!(job(&harness).walls[0].features.is_empty());
    assert_eq!(undo(&mut harness).walls[0].features, changed.walls[0].features);
    assert_eq!(undo(&mut harness).walls[0].features, copied.walls[0].features);
    assert_eq!(undo(&mut harness), changed);
    assert_eq!(undo(&mut harness), room());
}

#[test]
fn the_delete_key_in_a_field_is_the_field_s() {
    let mut harness = window();
    press(&mut harness, "Low shelf");
    harness.get_by_role_and_label(Role::TextInput, "Stands proud").focus();
    harness.run();
    harness.key_press(Key::Delete);
    harness.run();
    assert_eq!(job(&harness).walls[0].features.len(), 1);
}

#[test]
fn a_reading_changes_its_datum_and_gets_a_check() {
    let mut harness = window();
    press(&mut harness, "Low shelf");
    tap_on(&mut harness, Role::ComboBox, "Left edge, read from");
    press(&mut harness, "from the right corner");
    let left = |harness: &Harness<'_, App>| job(harness).walls[0].features[0].across.left.clone();
    assert_eq!(left(&harness).unwrap().from.to_string(), "right");
    // Emptied and typed anew it keeps its datum.
    fill(&mut harness, "Left edge", "");
    harness.key_press(Key::Backspace);
    harness.run();
    assert_eq!(left(&harness), None);
    harness.event(Event::Text("40".to_owned()));
    harness.run();
    let typed = left(&harness).unwrap();
    assert_eq!((typed.from.to_string().as_str(), typed.by), ("right", inches(40.0)));
    press(&mut harness, "Left edge, more");
    press(&mut harness, "A check reading");
    fill(&mut harness, "Left edge, check", "80 1/4");
    assert_eq!(left(&harness).unwrap().check.unwrap().by, inches(80.25));
    press(&mut harness, "Left edge, more");
    press(&mut harness, "Remove this reading");
    assert_eq!(left(&harness), None);
}

#[test]
fn a_plate_of_two_rows_is_typed_and_its_check_told() {
    let mut harness = window();
    press(&mut harness, "Add mount");
    unfold(&mut harness, "Plate");
    fill(&mut harness, "How many", "3");
    fill(&mut harness, "Pitch", "4");
    fill(&mut harness, "Hole's diameter", "5/16");
    let rows = [("0", "1"), ("0", "9")];
    tap_on(&mut harness, Role::CheckBox, "Mirrored left to right");
    for (right, down) in rows {
        fill(&mut harness, "First, right of middle", right);
        fill(&mut harness, "First, below top", down);
        harness.key_press(Key::Enter);
        harness.run();
    }
    let plate = job(&harness).mounts[1].plate.clone().unwrap();
    let places: Vec<(f64, f64)> = plate
        .holes
        .iter()
        .map(|hole| (hole.right.length().in_inches().round(), hole.down.in_inches().round()))
        .collect();
    let row = |down: f64| [0.0, 4.0, 8.0, -4.0, -8.0].map(|x| (x, down));
    assert_eq!(places, [row(1.0), row(9.0)].concat());
    assert!(plate.holes.iter().all(|hole| !hole.id.is_empty() && hole.diameter == Some(inches(0.3125))));
    // 16 across and 8 down: the root of 320 is 17.889, to the sixteenth 17 7/8.
    harness.get_by_label_contains("measure it: 17\u{a0}7/8\"");
}

#[test]
fn hits_are_typed_one_after_another() {
    let mut harness = window();
    unfold(&mut harness, "Add hits");
    fill(&mut harness, "From the left end", "30");
    harness.key_press(Key::Enter);
    harness.run();
    // The field waits for the next.
    harness.event(Event::Text("46".to_owned()));
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    let hits: Vec<Length> = job(&harness).walls[0].hits.iter().map(|hit| hit.x.by).collect();
    assert_eq!(hits, [14.0, 62.0, 30.0, 46.0].map(inches));
}

#[test]
fn walls_and_options_are_added_and_switched_by_one_tap() {
    let mut harness = window();
    press(&mut harness, "Add option");
    let after = job(&harness);
    let [a, b] = after.walls[0].options.as_slice() else { unreachable!("two") };
    assert_eq!(plan(&mut harness).option.as_ref(), Some(&b.id), "the new one shows");
    assert_eq!(b.name.as_deref(), Some("B"));
    tap_chip(&mut harness, "A");
    assert_eq!(plan(&mut harness).option.as_ref(), Some(&a.id));
    press(&mut harness, "Add wall");
    let second = job(&harness).walls[1].id.clone();
    assert_eq!(harness.state().session().wall, second);
    fill(&mut harness, "Wall width", "80");
    assert_eq!(job(&harness).walls[1].width, Some(inches(80.0)));
    tap_chip(&mut harness, "Wall 1");
    assert_eq!(harness.state().session().wall, Id::new("wall-1"));
    // Deleting the shown wall shows the other.
    press(&mut harness, "Wall 2");
    press(&mut harness, "Delete");
    assert_eq!(job(&harness).walls.len(), 1);
    assert_eq!(harness.state().session().wall, Id::new("wall-1"));
}

#[test]
fn a_new_wall_asks_what_hangs_on_it() {
    let mut harness = window();
    press(&mut harness, "Add wall");
    assert!(plan(&mut harness).pieces.is_empty(), "the display hangs on the first wall");
    harness.get_by_label("Nothing hangs on this wall yet.");
    press(&mut harness, "Hang a piece\u{2026}");
    press(&mut harness, "Screen");
    let hung = plan(&mut harness);
    assert_eq!(hung.pieces.len(), 1);
    let wall = &job(&harness).walls[1];
    assert_eq!(wall.options[0].hangings[0].piece, Id::new("display-1"));
    assert!(harness.query_by_label("Nothing hangs on this wall yet.").is_none());
}

#[test]
fn what_is_selected_on_the_canvas_is_opened_and_brought_into_view() {
    let mut harness = window();
    let at = middle(&mut harness, strikeline::moves::HandleKind::Hit, "hit-2");
    tap(&mut harness, at);
    harness.run();
    let field = harness.get_by_role_and_label(Role::TextInput, "Along the wall").rect();
    let panel = harness.ctx.content_rect();
    assert!(field.top() > 0.0 && field.bottom() < panel.bottom(), "{field:?}");
}

#[test]
fn a_new_job_begins_at_its_display_whatever_was_open_before() {
    let mut harness = window();
    press(&mut harness, "Wall");
    press(&mut harness, "New");
    harness.event(Event::Text("48".to_owned()));
    harness.run();
    assert_eq!(job(&harness).pieces[0].width, Some(inches(48.0)));
}

#[test]
fn threads_that_are_undone_stay_undone() {
    let mut harness = window();
    unfold(&mut harness, "Mounting threads");
    fill(&mut harness, "Apart, sideways", "400 mm");
    fill(&mut harness, "Apart, upright", "300 mm");
    leave(&mut harness);
    assert!(job(&harness).pieces[0].pattern.is_some());
    assert_eq!(undo(&mut harness), room());
    harness.run_steps(5);
    assert_eq!(job(&harness), room(), "no draft writes them again");
}

#[test]
fn a_number_that_is_not_understood_makes_no_entry() {
    let mut harness = window();
    press(&mut harness, "Wall");
    unfold(&mut harness, "Add hits");
    fill(&mut harness, "From the left end", "48 3/2");
    harness.key_press(Key::Enter);
    harness.run();
    assert_eq!(job(&harness), room(), "48 is not what was typed");
    harness.get_by_label_contains("Not understood.");
}

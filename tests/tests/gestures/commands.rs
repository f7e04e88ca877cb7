//! The list of commands, the page of keys and the themes.

use super::room::*;
use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, ThemePreference};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::command::{hand_keys, keys_of, listed, shortcuts, words};
use strikeline_solver::units::Length;

fn list(harness: &mut Harness<'_, App>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::K);
    harness.run();
}

fn is_open(harness: &Harness<'_, App>) -> bool {
    harness.query_by_role_and_label(Role::TextInput, "Search the commands").is_some()
}

#[test]
fn every_command_is_listed_with_its_keys_and_enter_does_the_first_that_is_left() {
    let mut harness = window();
    harness.state_mut().session_mut().job.walls[0].height = Some(Length::inches(100.0));
    harness.run();
    list(&mut harness);
    for command in listed() {
        harness.get_by_role_and_label(Role::Button, words(&command).unwrap());
        let keys = keys_of(&harness.ctx, &command);
        assert!(keys.is_empty() || harness.query_all_by_label(&keys).next().is_some(), "{command:?}: {keys}");
    }
    harness.event(Event::Text("UNDO".to_owned()));
    harness.run();
    assert!(harness.query_by_label("Theme: dark").is_none());
    harness.key_press(Key::Enter);
    harness.run();
    assert!(!is_open(&harness));
    assert_eq!(job(&harness), room(), "it is undone");
    list(&mut harness);
    harness.event(Event::Text("no such thing".to_owned()));
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    assert!(is_open(&harness), "nothing is found, nothing is done");
    harness.key_press(Key::Escape);
    harness.run();
    assert!(!is_open(&harness));
}

#[test]
fn the_page_of_keys_tells_all_of_them() {
    let mut harness = window();
    harness.key_press(Key::F1);
    harness.run();
    for (_, command) in shortcuts() {
        let keys = keys_of(&harness.ctx, &command);
        assert!(harness.query_all_by_label(&keys).next().is_some(), "{command:?}: {keys}");
    }
    for place in hand_keys() {
        harness.get_by_label(place.place);
        for (keys, does) in place.keys {
            assert!(harness.query_all_by_label(&keys).next().is_some(), "{keys}");
            assert!(harness.query_all_by_label(does).next().is_some(), "{does}");
        }
    }
    harness.key_press(Key::Escape);
    harness.run();
    assert!(harness.query_by_label("Anywhere").is_none());
}

#[test]
fn the_theme_is_the_system_s_unless_another_is_chosen() {
    let mut harness = window();
    let preference = |harness: &Harness<'_, App>| harness.ctx.options(|options| options.theme_preference);
    for (chosen, name) in [
        (ThemePreference::Light, "Theme: light"),
        (ThemePreference::Dark, "Theme: dark"),
        (ThemePreference::System, "Theme: as the system's"),
    ] {
        list(&mut harness);
        harness.get_by_role_and_label(Role::Button, name).scroll_to_me();
        harness.run();
        harness.get_by_role_and_label(Role::Button, name).click();
        harness.run();
        assert_eq!(preference(&harness), chosen);
        assert!(!is_open(&harness));
    }
}

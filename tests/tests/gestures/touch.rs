//! A finger, as the window system tells of it: a touch, and with it the pointer that is made of it, which is gone
//! when the finger is lifted.

use egui::{Event, PointerButton, Pos2, TouchDeviceId, TouchId, TouchPhase};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;

fn touch(phase: TouchPhase, pos: Pos2) -> Event {
    Event::Touch { device_id: TouchDeviceId(1), id: TouchId(1), phase, pos, force: None }
}

fn button(pos: Pos2, pressed: bool) -> Event {
    Event::PointerButton { pos, button: PointerButton::Primary, pressed, modifiers: egui::Modifiers::NONE }
}

/// A tap with a finger.
pub(crate) fn finger(harness: &mut Harness<'_, App>, at: Pos2) {
    let down = [touch(TouchPhase::Start, at), Event::PointerMoved(at), button(at, true)];
    let up = [touch(TouchPhase::End, at), button(at, false), Event::PointerGone];
    harness.input_mut().events.extend(down);
    harness.step();
    harness.input_mut().events.extend(up);
    harness.step();
    harness.run();
}

/// A tap with a finger on what is called so.
pub(crate) fn finger_on(harness: &mut Harness<'_, App>, name: &str) {
    let at = harness.get_by_label(name).rect().center();
    finger(harness, at);
}

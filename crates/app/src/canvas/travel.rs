//! Pan and zoom: wheel and pinch zoom about the pointer, two fingers and the other buttons pan.

use super::drag::SLACK;
use crate::view_state::{View, Window};
use egui::{Event, MouseWheelSource, MouseWheelUnit, PointerButton, Response, Ui, Vec2};

/// The share of zoom in one notch of a wheel (chosen: five notches double it).
const NOTCH: f64 = 0.14;
/// A notch of a wheel that is told in points (as the toolkit's own lines).
const POINTS_PER_NOTCH: f64 = 40.0;

/// The view after this frame's pan and zoom; `None` where there was none.
#[must_use]
pub(super) fn travelled(ui: &Ui, response: &Response, window: &Window) -> Option<View> {
    let mut view = window.view;
    // A secondary press that stays where it is asks for the menu.
    let is_far = response.total_drag_delta().is_some_and(|by| by.length() >= SLACK);
    if response.dragged_by(PointerButton::Middle) || response.dragged_by(PointerButton::Secondary) && is_far {
        view = view.panned(response.drag_delta());
    }
    if let Some(touch) = ui.input(egui::InputState::multi_touch) {
        if window.canvas.contains(touch.center_pos) {
            view = view.panned(touch.translation_delta);
            view = view.zoomed_about(touch.center_pos - window.canvas.center(), f64::from(touch.zoom_delta));
        }
    } else if let Some(pointer) = response.hover_pos() {
        let (pan, factor) = ui.input(|input| {
            let (pan, notches) = wheel(&input.events);
            (pan, (notches * NOTCH).exp() * f64::from(input.zoom_delta()))
        });
        view = view.panned(pan).zoomed_about(pointer - window.canvas.center(), factor);
    }
    (view != window.view).then_some(view)
}

/// What a wheel or a touch pad did: a pan in points, and notches of zoom.
///
/// A wheel zooms; fingers on a pad pan. Where the platform does not say, only a wheel counts in lines. With a
/// modifier the toolkit makes a zoom of it.
fn wheel(events: &[Event]) -> (Vec2, f64) {
    let mut pan = Vec2::ZERO;
    let mut notches = 0.0;
    for event in events {
        let Event::MouseWheel { unit, source, delta, modifiers, .. } = event else { continue };
        if modifiers.command || modifiers.ctrl {
            continue;
        }
        let in_points = *unit == MouseWheelUnit::Point;
        match source {
            MouseWheelSource::Trackpad | MouseWheelSource::Unknown if in_points => pan += *delta,
            _ if in_points => notches += f64::from(delta.y) / POINTS_PER_NOTCH,
            _ => notches += f64::from(delta.y),
        }
    }
    (pan, notches)
}

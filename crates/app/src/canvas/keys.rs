//! What keys and screen readers do to a handle: nudge it, select it, open its menu.

use super::grab::Grabbable;
use super::handles::{self, Asked};
use super::menu::Menu;
use super::{Canvas, nowhere};
use crate::moves::{self, HandleKind};
use crate::session::Session;
use crate::view_state::Window;
use egui::{Event, Key, Ui};
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::tape::Graduation;
use strikeline_solver::units::Length;

impl Canvas {
    /// Arrow keys move what has the focus by one graduation; with Shift by an inch or 10 mm. Shift+F10 opens its menu.
    pub(super) fn keys(&mut self, ui: &Ui, session: &mut Session, window: &Window) {
        if self.is_held() {
            return;
        }
        let plan = session.plan();
        let all = handles::handles(&session.job, &plan, &nowhere(&plan), session.selected.as_ref());
        let has_focus =
            |one: &Grabbable| ui.memory(|memory| memory.has_focus(handles::handle_id(&one.subject)));
        let Some(focused) = all.into_iter().find(has_focus) else { return };
        let presses = ui.input(|input| input.events.iter().filter_map(arrow).collect::<Vec<_>>());
        for (right, up, is_long) in presses {
            nudge(session, &focused, right, up, is_long);
        }
        if ui.input(|input| input.modifiers.shift && input.key_pressed(Key::F10)) {
            let usual = plan.survey.outline.centre().y;
            if let Some(place) = moves::place(&plan, &focused.handle, usual) {
                let at = window.canvas.clamp(window.pointer_from_wall(place));
                self.menu = Some(Menu::open(at, place, Some(focused.handle.id.whole())));
            }
        }
    }
}

/// Does what a screen reader asks of a handle. Up is more for what moves up and down alone, right for all else.
pub(super) fn perform(session: &mut Session, one: &Grabbable, asked: &Asked) {
    match asked {
        Asked::Select => session.selected = Some(handles::selects(one)),
        Asked::Nudge(steps) => {
            let is_upright =
                matches!(one.handle.kind, HandleKind::Edge(side) if side.axis() == Axis::Upright);
            for _ in 0..steps.unsigned_abs() {
                let way = f64::from(steps.signum());
                let (right, up) = if is_upright { (0.0, way) } else { (way, 0.0) };
                nudge(session, one, right, up, false);
            }
        }
    }
}

/// Moves a handle by one graduation, or by an inch or 10 mm.
fn nudge(session: &mut Session, one: &Grabbable, right: f64, up: f64, is_long: bool) {
    let plan = session.plan();
    let style = plan.style;
    let step = match (is_long, style.graduation) {
        (false, _) => style.length_of(1),
        (true, Graduation::Millimetre) => Length::millimetres(10.0),
        (true, _) => Length::inches(1.0).quantised(),
    };
    let usual = plan.survey.outline.centre().y;
    let Some(from) = moves::place(&plan, &one.handle, usual) else { return };
    let by = |times: f64| {
        let to = Point::new(from.x + step * (right * times), from.y + step * (up * times));
        moves::moved(&session.job, &plan, &one.handle, to)
    };
    // What is read by its middle goes by two graduations or none.
    let after = by(1.0);
    session.job =
        if after == session.job && matches!(one.handle.kind, HandleKind::Edge(_)) { by(2.0) } else { after };
}

/// The way an arrow key points: right, up, and whether Shift was held.
fn arrow(event: &Event) -> Option<(f64, f64, bool)> {
    let Event::Key { key, pressed: true, modifiers, .. } = event else { return None };
    let (right, up) = match key {
        Key::ArrowLeft => (-1.0, 0.0),
        Key::ArrowRight => (1.0, 0.0),
        Key::ArrowUp => (0.0, 1.0),
        Key::ArrowDown => (0.0, -1.0),
        _ => return None,
    };
    Some((right, up, modifiers.shift))
}

/// Keeps the arrow keys from moving the focus away from a handle.
pub(super) fn keep_arrows(ui: &Ui, focused: &Grabbable) {
    let filter =
        egui::EventFilter { horizontal_arrows: true, vertical_arrows: true, ..egui::EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(handles::handle_id(&focused.subject), filter));
}

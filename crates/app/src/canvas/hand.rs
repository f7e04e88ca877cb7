//! What a press does, from the moment it lands to its release: it takes hold of a thing, taps a figure, waits for the
//! menu, or asks which of several was meant.

use super::drag::{Drag, SLACK};
use super::figure_field::FigureField;
use super::figures::{self, Figure};
use super::grab::{Grabbable, ON_IT, grab};
use super::loupe::Loupe;
use super::menu::Menu;
use super::{Canvas, crowd, handles};
use crate::moves;
use crate::session::Session;
use crate::view_state::Window;
use egui::{Event, Key, PointerButton, Pos2, Rect, Response, Ui, Vec2};
use std::time::Duration;
use strikeline_solver::subject::Subject;

/// A finger that rests for so long asks for the menu, in seconds (chosen: as touch systems usually do).
pub(super) const LONG_PRESS: f64 = 0.5;

/// A press that has not been lifted yet.
#[derive(Clone, Debug)]
pub(super) struct Press {
    at: Pos2,
    since: f64,
    by_finger: bool,
    /// Whether it went away from where it landed, be it back there or not.
    has_moved: bool,
    /// The figure that it is on.
    figure: Option<Figure>,
    /// The handles that it may mean, where that is in doubt.
    crowd: Vec<Grabbable>,
}

impl Canvas {
    /// What a press, a drag and a release do.
    pub(super) fn hand(&mut self, ui: &Ui, response: &Response, session: &mut Session, window: &Window) {
        let pointer =
            response.interact_pointer_pos().or_else(|| ui.input(|input| input.pointer.latest_pos()));
        // A quick tap comes and goes within one frame: that is no drag to the toolkit.
        let is_quick = response.contains_pointer()
            && ui.input(|input| input.pointer.primary_pressed() && input.pointer.primary_released());
        if (response.drag_started_by(PointerButton::Primary) || is_quick)
            && let Some(press) = ui.input(|input| input.pointer.press_origin()).or(pointer)
        {
            self.pressed(ui, press, session, window);
        }
        self.secondary(ui, response, pointer, session, window);
        if let Some(press) = &mut self.press {
            press.has_moved |= pointer.is_none_or(|pointer| pointer.distance(press.at) >= SLACK);
        }
        // A second finger makes a pinch of a press that holds nothing.
        if self.drag.is_none() && ui.input(|input| input.multi_touch().is_some()) {
            self.press = None;
        }
        let is_over = response.drag_stopped_by(PointerButton::Primary) || is_quick;
        self.wait_for_menu(ui, session, window);
        if let Some(pointer) = pointer
            && (is_over || response.dragged_by(PointerButton::Primary))
        {
            self.follow(ui, pointer, session, window);
        }
        if let Some(drag) = self.drag.take() {
            self.drag = self.broken_off(ui, drag, pointer, session, window);
        }
        if is_over {
            self.released(ui, session, window);
        } else if !response.dragged() {
            self.drag = None;
            self.press = None;
        }
    }

    /// A press lands: what is under it is taken, or noted where the release is to tell what it was for.
    fn pressed(&mut self, ui: &Ui, at: Pos2, session: &mut Session, window: &Window) {
        (self.loupe, self.menu) = (None, None);
        let by_finger = ui.input(egui::InputState::any_touches);
        let plan = session.plan();
        let grabbable = handles::handles(&session.job, &plan, window, session.selected.as_ref());
        let small_on = |one: &Grabbable| one.along.is_none() && one.is_small() && one.away(at) <= ON_IT;
        let shown = self.figures(window);
        let figure = figures::at(at, by_finger, &shown).filter(|_| !grabbable.iter().any(small_on)).cloned();
        let choices: Vec<Grabbable> = if by_finger && figure.is_none() {
            crowd::crowd(at, &grabbable).into_iter().cloned().collect()
        } else {
            Vec::new()
        };
        let since = ui.input(|input| input.time);
        // What was chosen for this place stays chosen: the finger that comes back means it.
        let settled =
            choices.iter().find(|one| one.is_selected || self.chosen.as_ref() == Some(&one.subject));
        let taken = settled.or_else(|| grab(at, &grabbable)).cloned();
        let is_in_doubt = settled.is_none()
            && taken.as_ref().is_some_and(|taken| taken.is_small() && choices.iter().any(|one| one == taken));
        let is_on_figure = figure.is_some();
        self.press = Some(Press { at, since, by_finger, has_moved: false, figure, crowd: choices });
        if !is_in_doubt && !is_on_figure {
            self.take(ui, taken.as_ref(), at, session, window);
        }
    }

    /// Takes hold of a thing, or of nothing: that selects nothing.
    fn take(&mut self, ui: &Ui, taken: Option<&Grabbable>, at: Pos2, session: &mut Session, window: &Window) {
        session.selected = taken.map(handles::selects);
        if self.chosen.as_ref() != taken.map(|taken| &taken.subject) {
            self.chosen = None;
        }
        self.drag = taken.and_then(|taken| {
            ui.memory_mut(|memory| memory.request_focus(handles::handle_id(&taken.subject)));
            Drag::begin(session, taken, at, window)
        });
    }

    /// The hand moves on. A press on a figure that moves takes what lies under the figure.
    fn follow(&mut self, ui: &Ui, pointer: Pos2, session: &mut Session, window: &Window) {
        let is_away = |press: &Press| press.at.distance(pointer) >= SLACK;
        if let Some(press) = &mut self.press
            && press.figure.is_some()
            && is_away(press)
        {
            press.figure = None;
            let at = press.at;
            let plan = session.plan();
            let grabbable = handles::handles(&session.job, &plan, window, session.selected.as_ref());
            self.take(ui, grab(at, &grabbable), at, session, window);
        }
        // A second finger lets go of what draws, as the key does.
        let is_free = ui.input(|input| input.modifiers.alt || input.multi_touch().is_some());
        if let Some(drag) = &mut self.drag {
            drag.follow(session, pointer, window, is_free);
        }
    }

    /// Escape gives back the start; a second finger that lands before anything moved makes it a pinch; a number opens
    /// the field of the dimension that leads. Otherwise the drag goes on.
    fn broken_off(
        &mut self,
        ui: &Ui,
        drag: Drag,
        pointer: Option<Pos2>,
        session: &mut Session,
        window: &Window,
    ) -> Option<Drag> {
        if ui.input(|input| input.key_pressed(Key::Escape)) {
            drag.give_back(session);
            self.press = None;
            return None;
        }
        if !drag.has_moved() && ui.input(|input| input.multi_touch().is_some()) {
            self.press = None;
            return None;
        }
        let Some(begun) = ui.input(|input| number_begun(&input.events)) else { return Some(drag) };
        let plan = session.plan();
        let axis = drag.leading_axis(pointer.unwrap_or_default());
        let Some(about) = moves::leading(&session.job, &plan, &drag.handle, axis) else { return Some(drag) };
        let shown = self.figures(window).into_iter().find(|figure| figure.about == about);
        let beside = pointer.unwrap_or(window.canvas.center());
        let figure = shown
            .filter(|figure| window.canvas.contains_rect(figure.rect))
            .unwrap_or(Figure { about, rect: Rect::from_center_size(beside, Vec2::splat(24.0)) });
        self.press = None;
        self.field = Some(FigureField::during(session, &figure, drag, begun));
        None
    }

    /// The hand lets go: the end of a drag, or a tap.
    fn released(&mut self, ui: &Ui, session: &mut Session, window: &Window) {
        let press = self.press.take();
        let has_moved = self.drag.as_ref().is_some_and(Drag::has_moved);
        if let Some(drag) = self.drag.take() {
            // The release is a click elsewhere for all but the canvas: the arrows go on where it stopped.
            ui.memory_mut(|memory| memory.request_focus(handles::handle_id(&drag.subject)));
        }
        let Some(press) = press.filter(|_| !has_moved) else { return };
        if let Some(figure) = &press.figure {
            self.field = Some(FigureField::open(session, figure));
        } else if !press.crowd.is_empty() {
            self.loupe = Some(Loupe::open(press.at, &press.crowd, window));
        }
    }

    /// A finger that rests opens the menu.
    fn wait_for_menu(&mut self, ui: &Ui, session: &mut Session, window: &Window) {
        let Some(press) = self.press.as_ref().filter(|press| press.by_finger) else { return };
        if press.has_moved || ui.input(|input| input.multi_touch().is_some()) {
            return;
        }
        let rest = LONG_PRESS - (ui.input(|input| input.time) - press.since);
        if rest > 0.0 {
            ui.request_repaint_after(Duration::from_secs_f64(rest));
            return;
        }
        let at = press.at;
        (self.press, self.drag) = (None, None);
        self.open_menu(at, session, window);
    }

    /// A secondary click opens the menu; a secondary drag pans.
    fn secondary(
        &mut self,
        ui: &Ui,
        response: &Response,
        pointer: Option<Pos2>,
        session: &mut Session,
        window: &Window,
    ) {
        let is_quick = response.contains_pointer()
            && ui.input(|input| {
                input.pointer.button_pressed(PointerButton::Secondary)
                    && input.pointer.button_released(PointerButton::Secondary)
            });
        if response.drag_started_by(PointerButton::Secondary) || is_quick {
            self.secondary_press = pointer;
        }
        if !(response.drag_stopped_by(PointerButton::Secondary) || is_quick) {
            return;
        }
        if let (Some(press), Some(pointer)) = (self.secondary_press.take(), pointer)
            && press.distance(pointer) < SLACK
        {
            self.open_menu(press, session, window);
        }
    }

    /// Opens the menu at a place, about what is there.
    fn open_menu(&mut self, at: Pos2, session: &mut Session, window: &Window) {
        let plan = session.plan();
        let grabbable = handles::handles(&session.job, &plan, window, session.selected.as_ref());
        let about: Option<Subject> = grab(at, &grabbable).map(handles::selects);
        if about.is_some() {
            session.selected.clone_from(&about);
        }
        self.loupe = None;
        self.menu = Some(Menu::open(at, window.wall_from_pointer(at), about));
    }
}

/// The text with which a number begins, among what was typed.
fn number_begun(events: &[Event]) -> Option<String> {
    events.iter().find_map(|event| {
        let Event::Text(text) = event else { return None };
        let is_number = text.chars().all(|c| c.is_ascii_digit() || matches!(c, '.' | '½' | '¼' | '¾' | '('));
        (is_number && !text.is_empty()).then(|| text.clone())
    })
}

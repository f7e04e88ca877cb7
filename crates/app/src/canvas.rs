//! The elevation in the window: pan, zoom, and things dragged on it. It alone senses the press.

pub mod drag;
pub mod grab;
pub mod handles;
pub(crate) mod paint;
pub mod snap;
mod travel;

use crate::moves::{self, Handle};
use crate::session::Session;
use crate::theme;
use crate::view_state::{View, ViewState, Window};
use drag::Drag;
use egui::{CursorIcon, Event, Key, PointerButton, Response, Sense, Stroke, Ui};
use std::rc::Rc;
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::look::Look;
use strikeline_drawing::scene::Scene;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::tape::Graduation;
use strikeline_solver::units::Length;

/// What the canvas keeps from frame to frame.
#[derive(Debug, Default)]
pub struct Canvas {
    /// What is held.
    drag: Option<Drag>,
    /// The last drawing, with what it was made from.
    drawn: Option<Drawn>,
}

#[derive(Debug)]
struct Drawn {
    plan: Rc<Plan>,
    look: Look,
    scene: Rc<Scene>,
}

impl Canvas {
    /// Whether something is held just now.
    #[must_use]
    pub fn is_held(&self) -> bool {
        self.drag.is_some()
    }

    /// What the hand does: asked before anything is shown, so that all that is shown follows in the same frame.
    pub fn listen(&mut self, ui: &Ui, session: &mut Session, view_state: &mut ViewState) {
        // Of the canvas as it was shown last; nothing yet in the first frame.
        let Some(response) = ui.read_response(canvas_id()) else { return };
        let mut window = shown(&session.plan(), response.rect, view_state);
        if let Some(view) = travel::travelled(ui, &response, &window) {
            window.view = view;
            view_state.view = Some(view);
        }
        self.hand(ui, &response, session, &window);
        self.keys(ui, session);
    }

    /// Shows the elevation in all the room there is.
    pub fn ui(&mut self, ui: &mut Ui, session: &mut Session, view_state: &ViewState) {
        let canvas = ui.available_rect_before_wrap();
        let response = ui.interact(canvas, canvas_id(), Sense::drag());
        ui.expand_to_include_rect(canvas);
        let plan = session.plan();
        let window = shown(&plan, canvas, view_state);
        let grabbable = handles::handles(&plan, &window, session.selected.as_ref());
        if let Some(focused) = handles::register(ui, &plan, canvas, &grabbable)
            && self.drag.is_none()
        {
            keep_arrows(ui, &focused);
            if ui.input(|input| input.key_pressed(Key::Tab)) {
                session.selected = Some(focused.id.whole());
            }
        }
        let hovered = response.hover_pos().and_then(|pointer| grab::grab(pointer, &grabbable));
        match (&self.drag, hovered) {
            (Some(_), _) => ui.set_cursor_icon(CursorIcon::Grabbing),
            (None, Some(_)) => ui.set_cursor_icon(CursorIcon::Grab),
            (None, None) => {}
        }

        let mut look = window.look();
        look.selected = session.selected.clone();
        look.held = self.drag.as_ref().map(|drag| drag.handle.id.whole());
        let scene = self.scene(&session.job, &plan, look);
        let painter = ui.painter_at(canvas);
        let theme = ui.theme();
        painter.rect_filled(canvas, 0.0, theme::desk(theme));
        paint::paint(&painter, canvas.min, theme, &scene);
        let lit = self.drag.as_ref().map(|drag| &drag.handle).or(hovered);
        // A ring where a finger would take it: no finger hovers, so what is selected has one too.
        for thing in grabbable.iter().filter(|thing| thing.is_selected || Some(&thing.handle) == lit) {
            painter.circle_stroke(thing.body.center(), 7.0, Stroke::new(1.5, theme::accent(theme)));
        }
    }

    /// What a press, a drag and a release do.
    fn hand(&mut self, ui: &Ui, response: &Response, session: &mut Session, window: &Window) {
        let pointer =
            response.interact_pointer_pos().or_else(|| ui.input(|input| input.pointer.latest_pos()));
        // A quick tap comes and goes within one frame: that is no drag to the toolkit.
        let is_quick = response.contains_pointer()
            && ui.input(|input| input.pointer.primary_pressed() && input.pointer.primary_released());
        if response.drag_started_by(PointerButton::Primary) || is_quick {
            let press = ui.input(|input| input.pointer.press_origin()).or(pointer);
            let plan = session.plan();
            let grabbable = handles::handles(&plan, window, session.selected.as_ref());
            let held = press.and_then(|press| grab::grab(press, &grabbable).cloned());
            session.selected = held.as_ref().map(|handle| handle.id.whole());
            self.drag = held.zip(press).and_then(|(handle, press)| {
                ui.memory_mut(|memory| memory.request_focus(handles::handle_id(&handle.id)));
                Drag::begin(session, &handle, press, window)
            });
        }
        let Some(mut drag) = self.drag.take() else { return };
        let is_broken_off = ui.input(|input| input.key_pressed(Key::Escape) || input.multi_touch().is_some());
        if is_broken_off {
            drag.give_back(session);
            return;
        }
        let is_over = response.drag_stopped();
        if let Some(pointer) = pointer
            && (is_over || response.dragged_by(PointerButton::Primary))
        {
            drag.follow(session, pointer, window, ui.input(|input| input.modifiers.alt));
        }
        if is_over {
            // The release is a click elsewhere for all but the canvas: the arrows go on where it stopped.
            ui.memory_mut(|memory| memory.request_focus(handles::handle_id(&drag.handle.id)));
        } else if response.dragged() {
            self.drag = Some(drag);
        }
    }

    /// Arrow keys move what has the focus by one graduation; with Shift by an inch or 10 mm.
    fn keys(&self, ui: &Ui, session: &mut Session) {
        if self.drag.is_some() {
            return;
        }
        let grabbable = handle_list(&session.plan());
        let Some(handle) = grabbable
            .into_iter()
            .find(|handle| ui.memory(|memory| memory.has_focus(handles::handle_id(&handle.id))))
        else {
            return;
        };
        let presses = ui.input(|input| input.events.iter().filter_map(arrow).collect::<Vec<_>>());
        for (right, up, is_long) in presses {
            let plan = session.plan();
            let style = plan.style;
            let step = match (is_long, style.graduation) {
                (false, _) => style.length_of(1),
                (true, Graduation::Millimetre) => Length::millimetres(10.0),
                (true, _) => Length::inches(1.0).quantised(),
            };
            let usual = plan.survey.outline.centre().y;
            let Some(from) = moves::place(&plan, &handle, usual) else { return };
            let to = Point::new(from.x + step * right, from.y + step * up);
            session.job = moves::moved(&session.job, &plan, &handle, to);
        }
    }

    /// The drawing of a plan, made again only where the plan or the look is another.
    fn scene(&mut self, job: &Job, plan: &Rc<Plan>, look: Look) -> Rc<Scene> {
        if let Some(drawn) = &self.drawn
            && Rc::ptr_eq(&drawn.plan, plan)
            && drawn.look == look
        {
            return Rc::clone(&drawn.scene);
        }
        let scene = Rc::new(elevation(job, plan, &look));
        self.drawn = Some(Drawn { plan: Rc::clone(plan), look, scene: Rc::clone(&scene) });
        scene
    }
}

/// The id of the canvas in the window.
#[must_use]
pub fn canvas_id() -> egui::Id {
    egui::Id::unique("canvas")
}

/// The canvas and the part of the wall that it shows.
#[must_use]
pub fn shown(plan: &Plan, canvas: egui::Rect, view_state: &ViewState) -> Window {
    let fit = View::fit(plan.survey.outline, canvas.size());
    Window { canvas, view: view_state.view.unwrap_or(fit) }
}

/// Everything that has a handle, whether it shows or not.
fn handle_list(plan: &Plan) -> Vec<Handle> {
    let nowhere = Window { canvas: egui::Rect::ZERO, view: View::fit(plan.survey.outline, egui::Vec2::ZERO) };
    handles::handles(plan, &nowhere, None).into_iter().map(|thing| thing.handle).collect()
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
fn keep_arrows(ui: &Ui, focused: &Handle) {
    let filter =
        egui::EventFilter { horizontal_arrows: true, vertical_arrows: true, ..egui::EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(handles::handle_id(&focused.id), filter));
}

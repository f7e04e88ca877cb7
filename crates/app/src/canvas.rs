//! The elevation in the window: pan, zoom, and things dragged on it. It alone senses the press.

pub mod crowd;
pub mod drag;
pub mod figure_field;
pub mod figures;
pub mod grab;
mod hand;
pub mod handles;
mod held;
mod keys;
pub mod loupe;
mod menu;
pub(crate) mod paint;
pub mod side_view;
pub mod snap;
mod travel;
mod word;

use crate::moves::whereabouts;
use crate::session::Session;
use crate::theme;
use crate::view_state::{View, ViewState, Window};
use drag::Drag;
use egui::{Key, Pos2, Sense, Stroke, Ui};
use figure_field::FigureField;
use figures::Figure;
use hand::Press;
use loupe::Loupe;
use menu::Menu;
use std::rc::Rc;
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::look::Look;
use strikeline_drawing::scene::Scene;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Subject;

/// What the canvas keeps from frame to frame.
#[derive(Debug, Default)]
pub struct Canvas {
    /// A press that has not been lifted.
    press: Option<Press>,
    /// Where the secondary button was pressed.
    secondary_press: Option<Pos2>,
    /// What is held.
    drag: Option<Drag>,
    /// The field that is open at a figure.
    field: Option<FigureField>,
    /// The loupe, while it asks which was meant.
    loupe: Option<Loupe>,
    /// What was chosen in the loupe last.
    chosen: Option<Subject>,
    /// The menu, while it is open.
    menu: Option<Menu>,
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
    /// Whether something is held just now, by a hand or by a number that is typed for it.
    #[must_use]
    pub fn is_held(&self) -> bool {
        self.drag.is_some() || self.field.as_ref().is_some_and(FigureField::holds_a_drag)
    }

    /// What the hand does: asked before anything is shown, so that all that is shown follows in the same frame.
    pub fn listen(&mut self, ui: &Ui, session: &mut Session, view_state: &mut ViewState) {
        // Of the canvas as it was shown last; nothing yet in the first frame.
        let Some(response) = ui.read_response(canvas_id()) else { return };
        let mut window = shown(&session.plan(), response.rect, view_state);
        // While something moves with the hand nothing else does: a second finger then lets go of what draws.
        let is_moving = self.drag.as_ref().is_some_and(Drag::has_moved);
        let travelled = if is_moving { None } else { travel::travelled(ui, &response, &window) };
        if let Some(view) = travelled {
            window.view = view;
            view_state.view = Some(view);
        }
        self.hand(ui, &response, session, &window);
        self.keys(ui, session, &window);
        if let Some(wanted) = view_state.wanted.take().filter(|_| !self.is_held()) {
            let part = whereabouts(&session.plan(), &wanted);
            let view = part.map_or(window.view, |part| window.view.showing(window.canvas.size(), part));
            if view != window.view {
                view_state.view = Some(view);
            }
        }
    }

    /// Shows the elevation in all the room there is.
    pub fn ui(&mut self, ui: &mut Ui, session: &mut Session, view_state: &mut ViewState) {
        let canvas = ui.available_rect_before_wrap();
        let response = ui.interact(canvas, canvas_id(), Sense::drag());
        ui.expand_to_include_rect(canvas);
        let plan = session.plan();
        let window = shown(&plan, canvas, view_state);
        let grabbable = handles::handles(&session.job, &plan, &window, session.selected.as_ref());
        let (focused, asked) = handles::register(ui, &plan, canvas, &grabbable);
        if let Some(focused) = focused
            && !self.is_held()
        {
            keys::keep_arrows(ui, &focused);
            if ui.input(|input| input.key_pressed(Key::Tab)) {
                session.selected = Some(handles::selects(&focused));
            }
        }
        if let Some((one, asked)) = asked {
            keys::perform(session, &one, &asked);
            ui.request_repaint();
        }
        let hovered = response.hover_pos().and_then(|pointer| grab::grab(pointer, &grabbable));

        let mut look = window.look();
        look.selected = session.selected.clone();
        let held = self.drag.as_ref().map(|drag| &drag.handle);
        let held = held.or_else(|| self.field.as_ref().and_then(FigureField::held));
        look.held = held.map(|handle| handle.id.whole());
        let is_touched = ui.input(|input| input.pointer.any_down() || input.any_touches());
        // Under a moving hand it would be where it was.
        look.next_probe = session.next_probe(!is_touched).filter(|_| !is_touched).map(|probe| probe.place);
        let plan = session.plan();
        let scene = self.scene(&session.job, &plan, look);
        let painter = ui.painter_at(canvas);
        let theme = ui.theme();
        painter.rect_filled(canvas, 0.0, theme::desk(theme));
        paint::paint(&painter, canvas.min, theme, &scene);

        let figures = figures::figures(&scene, canvas.min);
        if let Some(figure) = figures::register(ui, &session.job, &plan, canvas, &figures)
            && !self.is_held()
        {
            self.field = Some(FigureField::open(session, &figure));
        }
        let pointed = response.hover_pos().filter(|_| self.drag.is_none());
        let figure = pointed.and_then(|pointer| figures::at(pointer, false, &figures));
        held::cursor(ui, self.drag.as_ref(), figure, hovered);
        if let Some(figure) = figure {
            let stroke = Stroke::new(1.0, theme::accent(theme));
            painter.rect_stroke(figure.rect.expand(3.0), 2.0, stroke, egui::StrokeKind::Outside);
        }
        held::rings(&painter, theme, &grabbable, self.drag.as_ref(), hovered.filter(|_| figure.is_none()));
        if let Some(drag) = &self.drag {
            held::snaps(ui, drag, &plan, &window, &scene);
        }
        if let Some(run) = &view_state.previewed {
            held::way(&painter, theme, run, &window);
        }
        self.over(ui, session, view_state, &window);
    }

    /// What stands over the drawing: a figure's field, the loupe, the menu.
    fn over(&mut self, ui: &Ui, session: &mut Session, view_state: &mut ViewState, window: &Window) {
        if let Some(field) = self.field.take() {
            self.field = field.ui(ui, session, window.canvas);
        }
        if let Some(mut loupe) = self.loupe.take() {
            let (chosen, stays) = loupe.ui(ui, session, window);
            if let Some(chosen) = chosen {
                loupe::choose(ui, &chosen, session);
                self.chosen = Some(chosen.subject);
                ui.request_repaint();
            }
            self.loupe = stays.then_some(loupe);
        }
        if let Some(mut menu) = self.menu.take() {
            let stays = menu.ui(ui, session, view_state, window);
            self.menu = stays.then_some(menu);
            if !stays {
                ui.request_repaint();
            }
        }
    }

    /// The figures as they were shown last.
    fn figures(&self, window: &Window) -> Vec<Figure> {
        let drawn = self.drawn.as_ref();
        drawn.map(|drawn| figures::figures(&drawn.scene, window.canvas.min)).unwrap_or_default()
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

/// A canvas of no size, for what asks which handles there are and not where.
fn nowhere(plan: &Plan) -> Window {
    Window { canvas: egui::Rect::ZERO, view: View::fit(plan.survey.outline, egui::Vec2::ZERO) }
}

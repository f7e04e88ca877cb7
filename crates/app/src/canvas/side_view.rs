//! The room from the side, beside the elevation. The height of a display is dragged there as it is on the elevation, by
//! the same drag; sideways nothing moves.

use super::drag::Drag;
use super::grab::{Grabbable, grab};
use super::paint;
use crate::moves::{Handle, HandleKind};
use crate::session::Session;
use crate::theme;
use crate::view_state::{View, Window};
use crate::widgets::unbroken::unbroken;
use egui::accesskit::Role;
use egui::{Key, Label, Modifiers, Pos2, Rect, RichText, ScrollArea, Sense, Ui, WidgetInfo, pos2};
use strikeline_drawing::side_view::{display, displays, extent, side_view};
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// What is kept of it from frame to frame.
#[derive(Debug, Default)]
pub struct SideView {
    held: Option<(Drag, Pos2)>,
}

/// Kept free around what it shows, in points (chosen: a name over a head).
const MARGIN: f64 = 24.0;

/// How much of its height the figures under it may take.
const FIGURES_SHARE: f32 = 0.35;

impl SideView {
    /// Whether a display is held there just now.
    #[must_use]
    pub fn is_held(&self) -> bool {
        self.held.is_some()
    }

    /// What the hand does there: asked before anything is shown.
    pub fn listen(&mut self, ui: &Ui, session: &mut Session) {
        let Some(response) = ui.read_response(side_view_id()) else { return };
        let window = shown(&session.plan(), response.rect);
        if self.held.is_some() && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
            if let Some((drag, _)) = self.held.take() {
                drag.give_back(session);
            }
            return;
        }
        if response.drag_started()
            && let Some(press) = ui.input(|input| input.pointer.press_origin())
        {
            let plan = session.plan();
            let handles = handles(&plan, &window);
            let held = grab(press, &handles).and_then(|one| Drag::begin(session, one, press, &window));
            if let Some(drag) = &held {
                session.selected = Some(drag.subject.clone());
            }
            self.held = held.map(|drag| (drag, press));
        }
        if let (Some((drag, press)), Some(pointer)) = (&mut self.held, response.interact_pointer_pos()) {
            drag.follow(session, pos2(press.x, pointer.y), &window, true);
        }
        if !ui.input(|input| input.pointer.any_down()) {
            self.held = None;
        }
    }

    /// Shows the view, and under it each seat's figures in a line.
    pub fn ui(&mut self, ui: &mut Ui, session: &mut Session) {
        let plan = session.plan();
        let theme = ui.theme();
        if plan.sight.is_empty() {
            ui.add_space(theme::TOUCH);
            ui.label("No display is seen from a seat. Add seats to what was measured: how far their eyes are from the wall.");
            return;
        }
        let figures = ui.available_height() * FIGURES_SHARE;
        let mut canvas = ui.available_rect_before_wrap();
        canvas.max.y -= figures;
        let response = ui.interact(canvas, side_view_id(), Sense::drag());
        ui.advance_cursor_after_rect(canvas);
        response.widget_info(|| WidgetInfo::labeled(Role::GenericContainer, true, "Side view"));
        let window = shown(&plan, canvas);
        let mut look = window.look();
        look.selected = session.selected.clone();
        look.held = self.held.as_ref().map(|(drag, _)| drag.handle.id.whole());
        let scene = side_view(&session.job, &plan, &look);
        let painter = ui.painter_at(canvas);
        painter.rect_filled(canvas, 0.0, theme::desk(theme));
        paint::paint(&painter, canvas.min, theme, &scene);
        let handles = handles(&plan, &window);
        let hovered = response.hover_pos().and_then(|pointer| grab(pointer, &handles));
        if self.held.is_some() || hovered.is_some() {
            ui.set_cursor_icon(egui::CursorIcon::ResizeVertical);
        }
        ScrollArea::vertical().id_salt("figures").auto_shrink(false).show(ui, |ui| {
            for sight in &plan.sight {
                let seat = words::capital(&words::thing(&plan, &sight.seat.whole()));
                ui.label(format!("{seat}: {}", words::sight_line(&plan, sight)));
                // Each figure beside the published one that it is held against.
                for line in words::sight(&plan, sight) {
                    let text = RichText::new(unbroken(&line)).color(theme::quiet(theme));
                    ui.add(Label::new(text).wrap());
                }
                ui.add_space(theme::TOUCH / 4.0);
            }
        });
    }
}

/// The id of the view in the window.
#[must_use]
pub fn side_view_id() -> egui::Id {
    egui::Id::unique("side view")
}

/// All of the view in a canvas.
#[must_use]
pub fn shown(plan: &Plan, canvas: Rect) -> Window {
    Window { canvas, view: View::within(extent(plan), canvas.size(), MARGIN) }
}

/// What can be taken there: the displays.
#[must_use]
pub fn handles(plan: &Plan, window: &Window) -> Vec<Grabbable> {
    let one = |sight| {
        let body: strikeline_solver::geometry::Rect = display(plan, sight)?;
        Some(Grabbable {
            subject: sight.piece.whole(),
            handle: Handle { id: sight.piece.clone(), kind: HandleKind::Piece },
            body: window.canvas_rect(body),
            along: None,
            is_selected: false,
        })
    };
    displays(plan).into_iter().filter_map(one).collect()
}

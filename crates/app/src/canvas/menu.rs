//! The menu at a place of the canvas: opened by a secondary click, a long press, or a key on a handle.

mod kinds;

use crate::moves::things::{copied, with_new, without};
use crate::moves::{by_hand, choices, with_by_hand};
use crate::session::Session;
use crate::theme;
use crate::view_state::{ViewState, Window};
use egui::{Align, Area, Button, Frame, Id, Key, Layout, Order, Pos2, RichText, ScrollArea, Ui, vec2};
use kinds::Kinds;
use strikeline_solver::geometry::Point;
use strikeline_solver::subject::Subject;
use strikeline_solver::words;

/// How wide its entries are, in points.
const WIDTH: f32 = 210.0;
/// How high a list of kinds is before it scrolls, in points.
const HIGH: f32 = 330.0;

/// An open menu.
#[derive(Clone, Debug)]
pub(super) struct Menu {
    at: Pos2,
    /// The same place on the wall.
    in_wall: Point,
    /// What is there.
    about: Option<Subject>,
    /// The hole of a plate that is there.
    hole: Option<Subject>,
    /// The list of kinds that was opened.
    kinds: Option<Kinds>,
    is_new: bool,
}

impl Menu {
    /// Opens it.
    #[must_use]
    pub(super) fn open(at: Pos2, in_wall: Point, about: Option<Subject>) -> Self {
        let hole = about.clone().filter(|about| about.part.is_some());
        // Of a hole or an edge the whole thing: no part can be copied or taken out here.
        let about = about.map(|about| about.id.whole());
        Self { at, in_wall, about, hole, kinds: None, is_new: true }
    }

    /// Shows it. Whether it stays open.
    #[must_use]
    pub(super) fn ui(
        &mut self,
        ui: &Ui,
        session: &mut Session,
        view_state: &mut ViewState,
        window: &Window,
    ) -> bool {
        let corner = self.at + vec2(2.0, 2.0);
        let area = Area::new(Id::unique("canvas menu")).order(Order::Foreground).fixed_pos(corner);
        let shown = area.constrain_to(window.canvas).show(ui.ctx(), |ui| {
            let frame = Frame::menu(ui.style());
            frame.show(ui, |ui| {
                ui.set_width(WIDTH);
                ui.spacing_mut().item_spacing.y = 1.0;
                let layout = Layout::top_down_justified(Align::LEFT);
                ui.with_layout(layout, |ui| match self.kinds {
                    None => self.entries(ui, session, view_state, window),
                    Some(kinds) => self.kinds(ui, kinds, session),
                })
                .inner
            })
        });
        let is_left = ui.input(|input| {
            let press = input.pointer.press_origin().filter(|_| input.pointer.any_pressed());
            let is_elsewhere = press.is_some_and(|press| !shown.response.rect.contains(press));
            is_elsewhere && !self.is_new || input.key_pressed(Key::Escape)
        });
        self.is_new = false;
        !shown.inner.inner && !is_left
    }

    /// Its entries; whether one was chosen that closes it.
    fn entries(
        &mut self,
        ui: &mut Ui,
        session: &mut Session,
        view_state: &mut ViewState,
        window: &Window,
    ) -> bool {
        let plan = session.plan();
        let mut is_done = false;
        let choices = self.hole.as_ref().map(|hole| choices(&session.job, &plan, hole)).unwrap_or_default();
        if let Some(hole) = self.hole.clone().filter(|_| !choices.is_empty()) {
            ui.add(
                egui::Label::new(RichText::new(words::capital(&words::thing(&plan, &hole))).strong())
                    .truncate(),
            );
            let held = by_hand(&session.job, &plan, &hole);
            for (wanted, name) in choices {
                if chosen(ui, &name, held == wanted) {
                    session.job = with_by_hand(&session.job, &plan, &hole, wanted);
                    is_done = true;
                }
            }
            ui.separator();
        }
        if let Some(about) = self.about.clone() {
            ui.add(egui::Label::new(RichText::new(words::thing(&plan, &about)).strong()).truncate());
            if entry(ui, "Copy") {
                if let Some((job, copy)) = copied(&session.job, &plan, &about.id) {
                    session.job = job;
                    session.selected = Some(copy.whole());
                }
                is_done = true;
            }
            if entry(ui, "Delete") {
                session.job = without(&session.job, &about.id);
                session.selected = None;
                is_done = true;
            }
            ui.separator();
        }
        for kinds in Kinds::ALL {
            if entry(ui, kinds.words()) {
                self.kinds = Some(kinds);
            }
        }
        ui.separator();
        if entry(ui, "Zoom here") {
            view_state.view = Some(window.view.zoomed_on(self.in_wall));
            is_done = true;
        }
        if entry(ui, "Show the whole wall") {
            view_state.view = None;
            is_done = true;
        }
        is_done
    }

    /// The kinds of a list; whether one was added.
    fn kinds(&self, ui: &mut Ui, kinds: Kinds, session: &mut Session) -> bool {
        let mut is_done = false;
        ScrollArea::vertical().max_height(HIGH).show(ui, |ui| {
            for (what, text) in kinds.entries() {
                if entry(ui, &text) {
                    let plan = session.plan();
                    let (job, id) = with_new(&session.job, &plan, what, Some(self.in_wall));
                    session.job = job;
                    session.selected = Some(id.whole());
                    is_done = true;
                }
            }
        });
        is_done
    }
}

/// An entry that may hold now.
fn chosen(ui: &mut Ui, text: &str, holds: bool) -> bool {
    let button = Button::selectable(holds, text).min_size(vec2(WIDTH, theme::TOUCH));
    ui.add(button).clicked()
}

/// An entry as high as a fingertip.
fn entry(ui: &mut Ui, text: &str) -> bool {
    let button = Button::new(text).frame_when_inactive(false).min_size(vec2(WIDTH, theme::TOUCH));
    ui.add(button).clicked()
}

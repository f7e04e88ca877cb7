//! The working of a verdict in a window of its own beside the drawing: it follows while the plan changes under a hand.

use crate::session::Session;
use crate::theme;
use crate::view_state::{ViewState, WorkingOf};
use egui::{
    Align, Button, Color32, FontId, Id, Key, Label, Layout, Modifiers, RichText, ScrollArea, Ui, Window,
    pos2, style::ScrollAnimation, vec2,
};
use std::rc::Rc;
use strikeline_drawing::font::Weight;
use strikeline_solver::explain::explain;
use strikeline_solver::plan::Plan;
use strikeline_solver::words::{self, Worked, WorkedSection, WorkedStep};

/// The least height of the button that closes it, in points: found without looking.
const CLOSE: f32 = 44.0;
/// What is worked out and its equations, in points: read at arm's length.
const TEXT: f32 = 16.0;
/// Where it is from and why, in points.
const SMALL: f32 = 14.0;
/// What a part is called, in points.
const HEAD: f32 = 18.0;
/// No wider than lines are easily followed, in points.
const WIDEST: f32 = 640.0;
/// No narrower than most equations want, in points.
const LEAST: f32 = 380.0;
/// From the edge of the window, in points.
const EDGE: f32 = 24.0;

/// The working as it was told last.
#[derive(Debug, Default)]
pub struct Panel {
    told: Option<Told>,
}

#[derive(Debug)]
struct Told {
    of: WorkingOf,
    plan: Rc<Plan>,
    worked: Worked,
    /// For so many frames more it is scrolled to what it was opened for: the first are measured, not shown.
    scrolls: u8,
}

/// For how many frames (chosen: one to measure, one to lay out, one to scroll).
const SCROLLS: u8 = 3;

impl Panel {
    /// Shows the window where a working is asked for. `closes` says whether Escape is its own now: nothing is held,
    /// typed or asked.
    pub fn ui(&mut self, ui: &Ui, session: &mut Session, view_state: &mut ViewState, closes: bool) {
        let Some(of) = view_state.working.clone() else {
            self.told = None;
            return;
        };
        let plan = session.plan();
        let last = self.told.as_ref().filter(|told| told.of == of);
        let scrolls = last.map_or(SCROLLS, |told| told.scrolls);
        let is_same = last.is_some_and(|told| Rc::ptr_eq(&told.plan, &plan));
        if !is_same {
            let explained = explain(&session.job, &plan.wall, plan.option.as_ref(), &of.piece);
            self.told = explained.map(|explained| {
                let worked = words::working(&plan, &explained);
                Told { of: of.clone(), plan, worked, scrolls }
            });
        }
        let is_left = closes && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape));
        let stays = match &mut self.told {
            Some(told) if !is_left => shown(ui, told),
            _ => false,
        };
        if !stays {
            view_state.working = None;
            self.told = None;
            ui.request_repaint();
        }
    }
}

/// Shows the window. Whether it stays open.
fn shown(ui: &Ui, told: &mut Told) -> bool {
    let room = ui.content_rect();
    // On a wide window beside what follows, on a narrow one beside the panel that it was opened from.
    let is_narrow = room.width() < 1000.0;
    let width = if is_narrow { room.width() - 300.0 } else { room.width() * 0.42 };
    let size = vec2(width.clamp(LEAST, WIDEST), room.height() * 0.84);
    let left = if is_narrow { room.right() - size.x - EDGE } else { room.left() + EDGE };
    let mut is_closed = false;
    Window::new("Working")
        .id(Id::unique("working"))
        .title_bar(false)
        .resizable(true)
        .default_size(size)
        .max_size(room.size() - vec2(EDGE, EDGE))
        .default_pos(pos2(left, room.center().y - size.y / 2.0))
        .show(ui, |ui| {
            ui.horizontal(|ui| {
                let width = (ui.available_width() - 2.0 * CLOSE - 8.0).max(80.0);
                ui.allocate_ui_with_layout(vec2(width, CLOSE), Layout::left_to_right(Align::Center), |ui| {
                    ui.set_width(width);
                    ui.add(label(&told.worked.title, HEAD, Weight::Semibold, None));
                });
                is_closed = ui.add(Button::new("Close").min_size(vec2(2.0 * CLOSE, CLOSE))).clicked();
            });
            ui.separator();
            let whose = (told.of.piece.as_str(), told.of.hole.as_ref().map(ToString::to_string));
            ScrollArea::vertical().id_salt(whose).auto_shrink(false).show(ui, |ui| {
                let sections = &told.worked.sections;
                let is_its = |part: &WorkedSection| part.hole.is_some() && part.hole == told.of.hole;
                let sought = sections.iter().position(is_its).filter(|_| told.scrolls > 0);
                for (index, part) in sections.iter().enumerate() {
                    section(ui, part, sought == Some(index));
                }
                ui.add_space(theme::TOUCH);
            });
        });
    if told.scrolls > 0 {
        told.scrolls -= 1;
        ui.request_repaint();
    }
    !is_closed
}

fn section(ui: &mut Ui, part: &WorkedSection, is_sought: bool) {
    ui.add_space(14.0);
    let head = ui.add(label(&part.title, HEAD, Weight::Semibold, None));
    if is_sought {
        ui.scroll_to_rect_animation(head.rect, Some(Align::TOP), ScrollAnimation::none());
    }
    for line in &part.lines {
        ui.add(label(line, TEXT, Weight::Regular, None));
    }
    for worked in &part.steps {
        step(ui, worked);
    }
}

/// A step: its equals signs stand under one another.
fn step(ui: &mut Ui, worked: &WorkedStep) {
    ui.add_space(8.0);
    ui.add(label(&worked.name, TEXT, Weight::Semibold, None));
    ui.spacing_mut().item_spacing.y = 2.0;
    let font = theme::font(TEXT, Weight::Regular);
    let colour = ui.visuals().text_color();
    let lead = worked.equations.iter().map(|one| width(ui, &format!("{} =", one.symbol), &font, colour));
    let lead = lead.fold(0.0, f32::max).ceil() + 16.0;
    for equation in &worked.equations {
        for (index, part) in equation.parts().enumerate() {
            let first = if index == 0 { format!("{} =", equation.symbol) } else { "=".to_owned() };
            ui.horizontal_top(|ui| {
                ui.allocate_ui_with_layout(vec2(lead, 0.0), Layout::right_to_left(Align::TOP), |ui| {
                    ui.set_width(lead);
                    ui.add(label(&first, TEXT, Weight::Regular, None));
                });
                ui.add(label(part, TEXT, Weight::Regular, None));
            });
        }
    }
    let quiet = theme::quiet(ui.theme());
    for note in worked.notes.iter().chain([&worked.source]) {
        ui.horizontal_top(|ui| {
            ui.add_space(16.0);
            ui.add(label(note, SMALL, Weight::Regular, Some(quiet)));
        });
    }
}

fn width(ui: &Ui, text: &str, font: &FontId, colour: Color32) -> f32 {
    ui.painter().layout_no_wrap(text.to_owned(), font.clone(), colour).size().x
}

fn label(text: &str, size: f32, weight: Weight, colour: Option<Color32>) -> Label {
    let text = RichText::new(text).font(theme::font(size, weight));
    Label::new(match colour {
        Some(colour) => text.color(colour),
        None => text,
    })
    .wrap()
}

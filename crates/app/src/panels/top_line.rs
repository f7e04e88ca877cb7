//! Over the elevation: what to do now, where each piece goes, and the options to choose between.

use super::edit::{Ask, HANG, Names, perform};
use crate::command::{Command, Pane, Queue};
use crate::moves::things::letter;
use crate::session::Session;
use crate::theme;
use crate::widgets::pick::menu;
use crate::widgets::unbroken::unbroken;
use egui::{RichText, ScrollArea, Ui};
use strikeline_drawing::font::Weight;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// Room for what is told, in points: five lines (chosen): what to do, whether it holds, where it goes in two, and a
/// wish. What is longer scrolls, since a canvas that gave way to it would slip from under the hand.
const ROOM: f32 = 114.0;

/// Room for what is told of each further piece, in points: two lines (chosen).
const FURTHER: f32 = 44.0;

/// Narrower than this where a piece goes takes a line more, in points (chosen: the longest of the demo rooms).
const NARROW: f32 = 720.0;

/// Narrower than this a last line of them needs a little more (chosen: the same, beside both panels of a tablet).
const NARROWER: (f32, f32) = (580.0, 8.0);

/// A line, in points.
const LINE: f32 = 20.0;

/// How high the panel has to be: always the same for the same width, pieces, walls and options.
#[must_use]
pub fn height(session: &Session, plan: &Plan, width: f32) -> f32 {
    let margins = 12.0;
    let options = if has_options(session) { theme::TOUCH + 8.0 } else { 0.0 };
    // Past three pieces the drawing needs the room more.
    let further = plan.pieces.iter().skip(1).take(2).map(|_| FURTHER).sum::<f32>();
    let narrow = [(NARROW, LINE), NARROWER]
        .iter()
        .filter(|(limit, _)| width < *limit)
        .map(|(_, more)| more)
        .sum::<f32>();
    ROOM + narrow + further + options + margins
}

/// Shows what to do now, which must never be scrolled out of sight, then the line of each piece and what it wishes
/// for.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan, queue: &mut Queue) {
    options(ui, session, plan);
    let room = ui.available_size();
    ui.horizontal_top(|ui| {
        let told = egui::vec2(room.x - super::after_taping::WIDTH, room.y);
        let layout = egui::Layout::top_down(egui::Align::LEFT);
        ui.allocate_ui_with_layout(told, layout, |ui| self::told(ui, session, plan));
        ui.vertical(|ui| {
            super::after_taping::button(ui, session, plan);
            let size = egui::vec2(ui.available_width().min(super::after_taping::WIDTH), theme::TOUCH + 6.0);
            if !plan.marks.is_empty() && ui.add(egui::Button::new("At the wall").min_size(size)).clicked() {
                queue.push(Command::Show(Pane::AtWall));
            }
        });
    });
}

/// What to do now, and where each piece goes.
fn told(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    ScrollArea::vertical().id_salt("told").auto_shrink(false).show(ui, |ui| {
        let next = words::next(plan);
        if !next.is_empty() {
            let font = theme::font(14.0, Weight::Semibold);
            ui.add(egui::Label::new(RichText::new(unbroken(&next)).font(font)).wrap());
        }
        if let Some(verdict) = words::wall_verdict_line(plan) {
            ui.add(egui::Label::new(unbroken(&verdict)).wrap());
        }
        for piece in &plan.pieces {
            ui.add(egui::Label::new(unbroken(&words::place_line(plan, piece))).wrap());
            if let Some(wish) = words::wish(plan, piece) {
                let quiet = theme::quiet(ui.theme());
                ui.add(egui::Label::new(RichText::new(unbroken(&wish)).color(quiet)).wrap());
            }
        }
        if plan.pieces.is_empty() {
            nothing_hangs(ui, session, plan);
        }
    });
}

/// On a wall on which nothing hangs: the pieces of the job to choose from.
fn nothing_hangs(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let names = Names { job: &session.job, plan };
    let pieces: Vec<Named> =
        session.job.pieces.iter().map(|piece| (piece.id.clone(), names.piece(piece))).collect();
    if pieces.is_empty() {
        ui.label("There is no piece yet: add one on the left.");
        return;
    }
    ui.label("Nothing hangs on this wall yet.");
    let entries: Vec<&str> = pieces.iter().map(|(_, name)| name.as_str()).collect();
    if let Some((piece, _)) = menu(ui, HANG, &entries).and_then(|index| pieces.get(index)) {
        perform(session, plan, &Ask::Hang { option: None, piece: piece.clone() });
    }
}

/// Whether there are walls or options to choose between.
fn has_options(session: &Session) -> bool {
    let options = session.job.wall(&session.wall).map_or(0, |wall| wall.options.len());
    session.job.walls.len() > 1 || options > 1
}

/// An id and what it is called.
pub(crate) type Named = (strikeline_solver::subject::Id, String);

/// The walls of the job, each with its name, else its number.
pub(crate) fn named_walls(session: &Session) -> Vec<Named> {
    let named = |(place, wall): (usize, &Wall)| {
        (wall.id.clone(), wall.name.clone().unwrap_or_else(|| format!("Wall {}", place + 1)))
    };
    session.job.walls.iter().enumerate().map(named).collect()
}

/// The options of the wall that is looked at, each with its name, else its letter.
pub(crate) fn named_options(session: &Session) -> Vec<Named> {
    let options = session.job.wall(&session.wall).into_iter().flat_map(|wall| &wall.options).enumerate();
    options
        .map(|(place, option)| (option.id.clone(), option.name.clone().unwrap_or_else(|| letter(place))))
        .collect()
}

/// The walls and options of the job, where there are several.
fn options(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let (walls, options) = (named_walls(session), named_options(session));
    if !has_options(session) {
        return;
    }
    // One line, whatever it holds: on a narrow window it scrolls sideways.
    ScrollArea::horizontal().id_salt("options").max_height(theme::TOUCH + 4.0).show(ui, |ui| {
        ui.horizontal(|ui| chips(ui, session, plan, walls, options));
    });
}

fn chips(ui: &mut Ui, session: &mut Session, plan: &Plan, walls: Vec<Named>, options: Vec<Named>) {
    if walls.len() > 1 {
        for (id, name) in walls {
            if ui.selectable_label(session.wall == id, name).clicked() && session.wall != id {
                session.wall = id;
                session.option = None;
                session.selected = None;
            }
        }
        ui.separator();
    }
    if options.len() > 1 {
        for (id, name) in options {
            if ui.selectable_label(plan.option.as_ref() == Some(&id), name).clicked() {
                session.option = Some(id);
            }
        }
    }
}

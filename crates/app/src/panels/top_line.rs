//! Over the elevation: one line of what matters now, and the options to choose between.

use crate::session::Session;
use crate::theme;
use egui::{RichText, Ui};
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// Shows the line of each piece, and what it wishes for.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    options(ui, session, plan);
    for piece in &plan.pieces {
        ui.add(egui::Label::new(words::top_line(plan, piece)).wrap());
        if let Some(wish) = words::wish(plan, piece) {
            let quiet = theme::quiet(ui.theme());
            ui.add(egui::Label::new(RichText::new(wish).color(quiet)).wrap());
        }
    }
    let next = words::next(plan);
    if !next.is_empty() && plan.pieces.is_empty() {
        ui.add(egui::Label::new(next).wrap());
    }
}

/// The walls and options of the job, where there are several.
fn options(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let walls: Vec<_> = session
        .job
        .walls
        .iter()
        .map(|wall| (wall.id.clone(), wall.name.clone().unwrap_or_else(|| wall.id.to_string())))
        .collect();
    let options: Vec<_> = session
        .job
        .wall(&session.wall)
        .into_iter()
        .flat_map(|wall| &wall.options)
        .map(|option| (option.id.clone(), option.name.clone().unwrap_or_else(|| option.id.to_string())))
        .collect();
    if walls.len() < 2 && options.len() < 2 {
        return;
    }
    ui.horizontal_wrapped(|ui| {
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
    });
}

//! A new job's form: what one person measures, in that order, for a complete set of marks. A tap on what is usual
//! stands in until it is measured.

mod from_shelf;
mod pattern;
mod walls;

use super::measured::{field_id, section, titled};
use super::measured_field;
use super::shelf::{Kind, Stored};
use crate::command::{Command, Pane, Queue};
use crate::moves;
use crate::session::Session;
use crate::theme;
use crate::widgets::chips::chips;
use crate::widgets::field_order::in_order;
use crate::widgets::quantity_field::{forget, quantity_field};
use egui::{Button, RichText, ScrollArea, Ui};
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::{Mount, UsualPlate};
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;
use strikeline_solver::words;
use walls::CommonWall;

/// Diagonals that displays are sold by, in inches (common practice, no source).
const DIAGONALS_IN: [u8; 7] = [32, 43, 50, 55, 65, 75, 85];

/// Room for what is said of the marks, in points: three lines (chosen).
const TOLD: f32 = 62.0;

/// Shows the form. Its fields write the job as they are typed in.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan, shelf: &[Stored], queue: &mut Queue) {
    ui.add_space(4.0);
    ui.horizontal_wrapped(|ui| {
        ui.heading("New job");
        let more = ui.add(Button::new("Show everything"));
        if more.on_hover_text("All that can be measured, in place of these few").clicked() {
            session.short_form = false;
        }
        if ui.button("My shelf").on_hover_text("What was measured once").clicked() {
            queue.push(Command::Show(Pane::Shelf));
        }
    });
    // Always as high, whatever it says: fields that moved while they are typed in would slip from under the hand.
    ScrollArea::vertical().id_salt("settled").max_height(TOLD).show(ui, |ui| {
        ui.set_min_height(TOLD);
        ui.add(egui::Label::new(words::settled(plan)).wrap());
    });
    ui.separator();
    ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
        in_order(ui, fields(&session.job, &session.wall), |ui| {
            let mut is_put = display(ui, &mut session.job, shelf, queue);
            is_put |= mount(ui, &mut session.job, shelf, queue);
            wall(ui, session, shelf, queue);
            if is_put {
                // What was typed and not understood gives way to what was measured.
                fields(&session.job, &session.wall).into_iter().for_each(|field| forget(ui, field));
            }
            middle(ui, session, plan);
        });
        assumed(ui, plan);
        ui.add_space(theme::TOUCH);
    });
}

/// The fields in the order in which one person measures.
fn fields(job: &Job, wall: &Id) -> Vec<egui::Id> {
    let mut fields = Vec::new();
    let piece = job.pieces.first();
    if let Some(piece) = piece {
        fields.extend(["width", "height", "mass"].map(|what| field_id(&piece.id, what)));
        fields.extend(pattern::fields(piece));
    }
    fields.extend(job.mounts.first().map(|mount| field_id(&mount.id, "drop")));
    fields.extend(["width", "height"].map(|what| field_id(wall, what)));
    fields.extend(piece.map(|piece| field_id(&piece.id, "upright_by")));
    fields
}

/// Whether another display was asked for.
fn display(ui: &mut Ui, job: &mut Job, shelf: &[Stored], queue: &mut Queue) -> bool {
    let allowed = measured_field(job);
    let Some(piece) = job.pieces.first_mut() else { return false };
    section(ui, "Display");
    let is_put = from_shelf::ui(ui, shelf, Kind::Piece, &piece.id, queue);
    diagonal(ui, piece);
    let id = piece.id.clone();
    quantity_field(ui, field_id(&id, "width"), "Display width", &mut piece.width, allowed);
    quantity_field(ui, field_id(&id, "height"), "Display height", &mut piece.height, allowed);
    quantity_field(ui, field_id(&id, "mass"), "Mass", &mut piece.mass, allowed);
    pattern::ui(ui, piece);
    is_put
}

/// The diagonal on the box: a usual size stands in until width and height are measured.
fn diagonal(ui: &mut Ui, piece: &mut Piece) {
    let inches = |inches: u8| Length::inches(f64::from(inches)).quantised();
    let held = DIAGONALS_IN.iter().position(|usual| piece.diagonal == Some(inches(*usual)));
    let names = DIAGONALS_IN.map(|usual| usual.to_string());
    if let Some(tapped) = chips(ui, "Diagonal, in", names.iter().map(String::as_str), held) {
        let usual = DIAGONALS_IN.get(tapped).filter(|_| held != Some(tapped));
        piece.diagonal = usual.map(|usual| inches(*usual));
    }
}

/// Whether another mount was asked for.
fn mount(ui: &mut Ui, job: &mut Job, shelf: &[Stored], queue: &mut Queue) -> bool {
    let allowed = measured_field(job);
    let Some(mount) = job.mounts.first_mut() else { return false };
    section(ui, "Mount");
    let is_put = from_shelf::ui(ui, shelf, Kind::Mount, &mount.id, queue);
    plate(ui, mount);
    let id = field_id(&mount.id, "drop");
    quantity_field(ui, id, "Drop, display's top to plate's", &mut mount.drop, allowed);
    is_put
}

/// A usual plate: it stands in until the mount's own is measured.
fn plate(ui: &mut Ui, mount: &mut Mount) {
    let held = UsualPlate::ALL.iter().position(|usual| mount.like == Some(*usual));
    let names = UsualPlate::ALL.map(|usual| {
        let words = words::usual_plate(usual);
        titled(words.strip_prefix("an ").or_else(|| words.strip_prefix("a ")).unwrap_or(words))
    });
    if let Some(tapped) = chips(ui, "Plate, as usual", names.iter().map(String::as_str), held) {
        let usual = UsualPlate::ALL.get(tapped).copied().filter(|_| held != Some(tapped));
        mount.like = usual;
        mount.kind = usual.map_or(mount.kind, UsualPlate::kind);
    }
}

fn wall(ui: &mut Ui, session: &mut Session, shelf: &[Stored], queue: &mut Queue) {
    let allowed = measured_field(&session.job);
    let Some(wall) = session.job.walls.iter_mut().find(|wall| wall.id == session.wall) else { return };
    section(ui, "Wall");
    from_shelf::ui(ui, shelf, Kind::Wall, &wall.id, queue);
    made_of(ui, wall);
    let id = wall.id.clone();
    quantity_field(ui, field_id(&id, "width"), "Wall width", &mut wall.width, allowed);
    quantity_field(ui, field_id(&id, "height"), "Wall height", &mut wall.height, allowed);
}

fn made_of(ui: &mut Ui, wall: &mut Wall) {
    let is = CommonWall::of(wall);
    let held = CommonWall::ALL.iter().position(|common| is == Some(*common));
    if let Some(tapped) = chips(ui, "Made of", CommonWall::ALL.map(CommonWall::words), held) {
        match CommonWall::ALL.get(tapped).filter(|_| held != Some(tapped)) {
            Some(common) => common.put(wall),
            None => CommonWall::take(wall),
        }
    }
}

/// How high the display goes.
fn middle(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let allowed = measured_field(&session.job);
    let Some(piece) = session.job.pieces.first().map(|piece| piece.id.clone()) else { return };
    section(ui, "Placement");
    let before = moves::middle_height(&session.job, plan, &piece);
    let mut height = before;
    quantity_field(
        ui,
        field_id(&piece, "upright_by"),
        "Display's middle above the floor",
        &mut height,
        allowed,
    );
    if height != before {
        session.job = moves::with_middle_height(&session.job, plan, &piece, height);
    }
}

/// What is taken in the place of what is not given.
fn assumed(ui: &mut Ui, plan: &Plan) {
    let quiet = theme::quiet(ui.theme());
    if plan.assumed.is_empty() {
        return;
    }
    section(ui, "Assumed, not measured");
    for assumed in &plan.assumed {
        let text = RichText::new(words::assumed(plan, assumed)).color(quiet);
        ui.add(egui::Label::new(text).wrap());
    }
}

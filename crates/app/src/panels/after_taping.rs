//! After taping: one field and four ways. It moves the option by just so much and lists the tapes that move along.

use super::measured_field;
use crate::moves::{MovedTape, after_taping};
use crate::session::Session;
use crate::theme;
use crate::widgets::quantity_field::quantity_field;
use egui::{Id, RichText, ScrollArea, Ui, vec2};
use strikeline_solver::geometry::Direction;
use strikeline_solver::plan::Plan;
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// The room that its button takes beside what is told, in points.
pub const WIDTH: f32 = 122.0;

/// What the panel keeps: how much, and what moved last.
#[derive(Clone, Debug, Default)]
struct Kept {
    by: Option<Length>,
    moved: Option<(Direction, Length, Vec<MovedTape>)>,
}

/// Shows the button that opens it.
pub fn button(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    if plan.pieces.is_empty() {
        return;
    }
    let button = egui::Button::new("After taping\u{2026}").min_size(vec2(0.0, theme::TOUCH));
    let response = ui.add(button);
    egui::Popup::from_toggle_button_response(&response)
        .id(Id::unique("after taping"))
        .close_behavior(egui::PopupCloseBehavior::CloseOnClickOutside)
        .width(300.0)
        .show(|ui| contents(ui, session, plan));
}

fn contents(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let kept_id = Id::unique("after taping kept");
    let mut kept: Kept = ui.data(|data| data.get_temp(kept_id)).unwrap_or_default();
    ui.set_width(300.0);
    ui.add(egui::Label::new("All that hangs in this option moves by just so much.").wrap());
    quantity_field(ui, field_id(), "Move by", &mut kept.by, measured_field(&session.job));
    ui.horizontal(|ui| {
        let by = kept.by.filter(|by| *by > Length::default());
        for (direction, name) in [
            (Direction::Left, "Left"),
            (Direction::Right, "Right"),
            (Direction::Up, "Up"),
            (Direction::Down, "Down"),
        ] {
            let button = egui::Button::new(name).min_size(vec2(66.0, theme::TOUCH));
            if ui.add_enabled(by.is_some(), button).clicked()
                && let Some(by) = by
            {
                let (job, tapes) = after_taping(&session.job, plan, direction, by);
                session.job = job;
                kept.moved = Some((direction, by, tapes));
            }
        }
    });
    if let Some((direction, by, tapes)) = &kept.moved {
        told(ui, plan, *direction, *by, tapes);
    }
    ui.data_mut(|data| data.insert_temp(kept_id, kept));
}

/// What was moved, and which tapes with it.
fn told(ui: &mut Ui, plan: &Plan, direction: Direction, by: Length, tapes: &[MovedTape]) {
    let way = match direction {
        Direction::Left => "left",
        Direction::Right => "right",
        Direction::Up => "up",
        Direction::Down => "down",
    };
    let shown = plan.style.print(by);
    ui.separator();
    if tapes.is_empty() {
        ui.add(egui::Label::new(format!("Moved {way} {shown}. No tape has to be moved.")).wrap());
        return;
    }
    let text = format!("Moved {way} {shown}. Move these tapes {way} {shown}:");
    ui.add(egui::Label::new(RichText::new(text).strong()).wrap());
    ScrollArea::vertical().max_height(220.0).show(ui, |ui| {
        for tape in tapes {
            let mark = plan.marks.iter().find(|mark| mark.id == tape.mark);
            let name =
                mark.map_or_else(|| words::thing(plan, &tape.mark), |mark| words::mark_name(plan, mark));
            // A tape that has to go another way than all the rest says so: its piece is held by something else.
            let text = if tape.goes(direction, by) {
                name
            } else {
                let along = |length: Length, ways: [&str; 2]| {
                    let [back, forth] = ways;
                    let way = if length < Length::default() { back } else { forth };
                    format!("{} {way}", plan.style.print(length.abs()))
                };
                let (right, up) = (along(tape.right, ["left", "right"]), along(tape.up, ["down", "up"]));
                format!("{name}: not so, but {right}, {up}")
            };
            ui.add(egui::Label::new(text).wrap());
        }
    });
}

/// The id of its field in the window.
#[must_use]
pub fn field_id() -> Id {
    Id::unique("after taping by")
}

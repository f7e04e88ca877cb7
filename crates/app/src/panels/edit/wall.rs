//! The editor of a wall as a whole.

use super::framing::{framing, front};
use super::{Around, kinds};
use egui::Ui;
use strikeline_solver::job::wall::Wall;

/// Shows the fields of a wall.
pub(in crate::panels) fn wall(ui: &mut Ui, around: &Around<'_>, wall: &mut Wall) {
    let form = around.form(&wall.id);
    form.quantity(ui, "width", "Wall width", &mut wall.width);
    form.quantity(ui, "height", "Wall height", &mut wall.height);
    form.maybe(ui, "left_end", "Left end", &mut wall.left_end, kinds::ENDS, "not told");
    form.maybe(ui, "right_end", "Right end", &mut wall.right_end, kinds::ENDS, "not told");
    framing(ui, &form, "Made of", &mut wall.framing);
    front(ui, &form, &mut wall.front);
    ui.label("What is on the other side?");
    ui.horizontal_wrapped(|ui| {
        form.field("beyond");
        for (beyond, words) in kinds::BEYOND {
            let is_held = wall.beyond == Some(*beyond);
            if ui.selectable_label(is_held, *words).clicked() {
                wall.beyond = (!is_held).then_some(*beyond);
            }
        }
    });
    form.yes_no(ui, "bearing", "Bearing", &mut wall.bearing);
    form.yes_no(ui, "wet", "Wet room", &mut wall.wet);
    form.yes_no(ui, "insulated", "Insulated", &mut wall.insulated);
    form.yes_no(ui, "vapour_barrier", "Vapour barrier", &mut wall.vapour_barrier);
    form.maybe(ui, "control_line", "Control line", &mut wall.control_line, kinds::CONTROL_LINES, "none");
    form.text(ui, "name", "Name", &mut wall.name);
    form.notes(ui, "notes", "Notes", &mut wall.notes);
    if around.job.walls.len() > 1 {
        form.copy_and_delete(ui);
    } else if ui.button("Copy").clicked() {
        around.ask(super::Ask::Copy(wall.id.clone()));
    }
}

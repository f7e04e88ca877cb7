//! The editor of a plate: its solids, and its holes and slots, typed one by one or as rows.

use super::draft::{entry, forget, keep};
use super::plate_picture::plate_picture;
use super::plate_rows::{HoleRow, mirrored, plate_rows, slot_rows};
use super::{Ask, Form, fold};
use crate::panels::measured::titled;
use crate::widgets::quantity_field::quantity_field;
use crate::widgets::text_field::number_field;
use crate::widgets::tick::tick;
use egui::{Button, Ui, vec2};
use strikeline_solver::job::plate::{Plate, PlateHole, PlateSlot, Solid};
use strikeline_solver::subject::Id;
use strikeline_solver::tape::{Offset, Style};
use strikeline_solver::units::Length;

/// Shows the plate of a mount. It is there as soon as anything of it is.
pub(super) fn plate(ui: &mut Ui, form: &Form<'_>, value: &mut Option<Plate>) {
    form.part(ui, "plate", "Plate", value, &Plate::default(), |ui, form, plate| {
        plate_picture(ui, plate, form.around.plan.style);
        form.quantity(ui, "thickness", "Sheet thickness", &mut plate.thickness);
        form.quantity(ui, "bearing", "Dowel bearing strength, if its maker tells", &mut plate.bearing);
        form.field("solids");
        let style = form.around.plan.style;
        let part = |solid: &Solid| (solid.id.clone(), solid.left.length(), solid.down);
        list(ui, form, style, &mut plate.solids, part, solid_fields);
        fold(ui, (form.id.as_str(), "new solid"), "Add a solid part", plate.solids.is_empty(), |ui| {
            plate.solids.extend(new_solid(ui, form));
        });
        form.field("holes");
        let part = |hole: &PlateHole| (hole.id.clone(), hole.right.length(), hole.down);
        list(ui, form, style, &mut plate.holes, part, hole_fields);
        form.field("slots");
        let part = |slot: &PlateSlot| (slot.id.clone(), slot.right.length(), slot.down);
        list(ui, form, style, &mut plate.slots, part, slot_fields);
        let is_bare = plate.holes.is_empty() && plate.slots.is_empty();
        fold(ui, (form.id.as_str(), "new row"), "Add a row of holes or slots", is_bare, |ui| {
            new_row(ui, form, plate);
        });
        let is_lopsided = mirrored(plate) != *plate;
        let button = Button::new("Mirror left to right").min_size(vec2(0.0, crate::theme::TOUCH + 2.0));
        if is_lopsided && ui.add(button).clicked() {
            *plate = mirrored(plate);
        }
    });
}

/// Every entry of a list, under its id and place: a finding names it by that id.
fn list<T>(
    ui: &mut Ui,
    form: &Form<'_>,
    style: Style,
    entries: &mut [T],
    part: impl Fn(&T) -> (Id, Length, Length),
    fields: impl Fn(&mut Ui, &Form<'_>, &mut T),
) {
    for one in entries {
        let (id, right, down) = part(one);
        let form = form.around.form(&id);
        let name = titled(&id.as_str().replace('-', " "));
        let title = format!("{name}: {}, {} down", style.print(right), style.print(down));
        fold(ui, (id.as_str(), "fields"), &title, false, |ui| {
            fields(ui, &form, one);
            if ui.add(Button::new("Delete").min_size(vec2(0.0, crate::theme::TOUCH + 2.0))).clicked() {
                form.around.ask(Ask::Delete(id.clone()));
            }
        });
    }
}

fn solid_fields(ui: &mut Ui, form: &Form<'_>, solid: &mut Solid) {
    form.must_offset(ui, "left", "Left edge, right of middle", &mut solid.left);
    form.must_offset(ui, "right", "Right edge, right of middle", &mut solid.right);
    form.must(ui, "down", "Upper edge, below top", &mut solid.down);
    form.must(ui, "height", "Height", &mut solid.height);
}

fn hole_fields(ui: &mut Ui, form: &Form<'_>, hole: &mut PlateHole) {
    form.must_offset(ui, "right", "Right of middle", &mut hole.right);
    form.must(ui, "down", "Below plate's top", &mut hole.down);
    form.quantity(ui, "diameter", "Diameter", &mut hole.diameter);
}

fn slot_fields(ui: &mut Ui, form: &Form<'_>, slot: &mut PlateSlot) {
    form.must_offset(ui, "right", "Middle, right of plate's", &mut slot.right);
    form.must(ui, "down", "Middle, below plate's top", &mut slot.down);
    form.must(ui, "travel", "Travel", &mut slot.travel);
    form.tick(ui, "upright", "Runs up and down", &mut slot.upright);
    form.quantity(ui, "width", "Width", &mut slot.width);
}

/// Fields for a solid part: as wide as it is, about the plate's middle.
fn new_solid(ui: &mut Ui, form: &Form<'_>) -> Option<Solid> {
    let part = form.under("new solid");
    let wanted = [
        ("width", "Width, about middle", false),
        ("down", "Upper edge, below top", false),
        ("height", "Part's height", false),
    ];
    let [width, down, height] = entry(ui, form.around, |name| part.field(name), "Add solid part", wanted)?;
    let half = (width / 2.0).quantised();
    Some(Solid { id: Id::default(), left: Offset(-half), right: Offset(half), down, height })
}

/// Fields for a row of holes; of slots where a travel is typed.
fn new_row(ui: &mut Ui, form: &Form<'_>, plate: &mut Plate) {
    let part = form.under("new row");
    let field = |name: &str| part.field(name);
    let count = kept_count(ui, field("count"));
    let pitch = kept_length(ui, form, field("pitch"), "Pitch");
    let size = kept_length(ui, form, field("size"), "Hole's diameter");
    let travel = kept_length(ui, form, field("travel"), "Travel, if slots");
    let mut upright = kept_tick(ui, field("upright"));
    if travel.is_some() {
        tick(ui, "Slots run up and down", &mut upright);
        ui.data_mut(|data| data.insert_temp(field("upright").with("kept"), upright));
    }
    let mut is_mirrored = kept_tick(ui, field("mirrored"));
    tick(ui, "Mirrored left to right", &mut is_mirrored);
    ui.data_mut(|data| data.insert_temp(field("mirrored").with("kept"), is_mirrored));
    let wanted = [("right", "First, right of middle", true), ("down", "First, below top", false)];
    let name = if travel.is_some() { "Add slots" } else { "Add holes" };
    if let Some([right, down]) = entry(ui, form.around, field, name, wanted) {
        let rows = [HoleRow {
            right,
            down,
            // Without a pitch there is one.
            pitch: pitch.unwrap_or_default(),
            count: if pitch.is_some() { count.unwrap_or(1) } else { 1 },
            diameter: size,
        }];
        match travel {
            Some(travel) => plate.slots.extend(slot_rows(&rows, travel, upright, is_mirrored)),
            None => plate.holes.extend(plate_rows(&rows, is_mirrored)),
        }
        forget(ui, field, &["travel"]);
    }
}

/// A length that is kept for the next row.
fn kept_length(ui: &mut Ui, form: &Form<'_>, id: egui::Id, label: &str) -> Option<Length> {
    let kept = id.with("draft");
    let mut value: Option<Length> = ui.data(|data| data.get_temp(kept));
    quantity_field(ui, id, label, &mut value, form.around.allowed);
    keep(ui, kept, value);
    value
}

fn kept_count(ui: &mut Ui, id: egui::Id) -> Option<u32> {
    let kept = id.with("kept");
    let mut value: Option<u32> = ui.data(|data| data.get_temp(kept));
    number_field(ui, id, "How many", &mut value);
    keep(ui, kept, value);
    value
}

fn kept_tick(ui: &Ui, id: egui::Id) -> bool {
    ui.data(|data| data.get_temp(id.with("kept")).unwrap_or(false))
}

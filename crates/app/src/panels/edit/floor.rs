//! The editors of floor and flatness readings, and the quick entry of one after another.

use super::reading::{must_reading, reading};
use super::{Around, draft};
use crate::panels::measured::field_id;
use egui::Ui;
use strikeline_solver::job::place::AcrossReading;
use strikeline_solver::job::wall::{FlatnessReading, FloorReading, Wall};
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;

/// Shows the fields of a floor reading.
pub(in crate::panels) fn floor_reading(ui: &mut Ui, around: &Around<'_>, floor: &mut FloorReading) {
    let form = around.form(&floor.id);
    must_reading(ui, &form, "at", "Along the wall", &mut floor.at);
    form.must(ui, "down", "Line to floor", &mut floor.down);
    form.copy_and_delete(ui);
}

/// Shows the fields of a flatness reading.
pub(in crate::panels) fn flatness_reading(ui: &mut Ui, around: &Around<'_>, flat: &mut FlatnessReading) {
    let form = around.form(&flat.id);
    must_reading(ui, &form, "at", "Along the wall", &mut flat.at);
    reading(ui, &form, "up", "Height", &mut flat.up);
    form.must_offset(ui, "proud", "Stands out by", &mut flat.proud);
    form.copy_and_delete(ui);
}

/// Fields for the next floor reading.
pub(in crate::panels) fn new_floor(ui: &mut Ui, around: &Around<'_>, wall: &mut Wall) {
    let id = wall.id.clone();
    let field = |name: &str| field_id(&id, &format!("new floor.{name}"));
    let wanted = [("at", "From the left end", false), ("down", "Line to floor", false)];
    if let Some([at, down]) = draft::entry(ui, around, field, "Add floor reading", wanted) {
        wall.floor.push(FloorReading { id: Id::default(), at: AcrossReading::from_left(at), down });
    }
}

/// Fields for the next flatness reading.
pub(in crate::panels) fn new_flatness(ui: &mut Ui, around: &Around<'_>, wall: &mut Wall) {
    let id = wall.id.clone();
    let field = |name: &str| field_id(&id, &format!("new flat.{name}"));
    let wanted = [("at", "From the left end", false), ("proud", "Stands out by", true)];
    if let Some([at, proud]) = draft::entry(ui, around, field, "Add flatness reading", wanted) {
        let at = AcrossReading::from_left(at);
        wall.flatness.push(FlatnessReading { id: Id::default(), at, up: None, proud: Offset(proud) });
    }
}

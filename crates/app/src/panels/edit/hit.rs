//! The editor of a hit, and the quick entry of one after another.

use super::reading::{must_reading, reading};
use super::{Around, draft, kinds};
use crate::panels::measured::field_id;
use crate::widgets::choice::choice;
use egui::Ui;
use strikeline_solver::job::hit::{Hit, HitKind};
use strikeline_solver::job::place::AcrossReading;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::subject::Id;

/// Shows the fields of a hit.
pub(in crate::panels) fn hit(ui: &mut Ui, around: &Around<'_>, hit: &mut Hit) {
    let form = around.form(&hit.id);
    form.choose(ui, "kind", "Met", &mut hit.kind, kinds::HITS);
    must_reading(ui, &form, "x", "Along the wall", &mut hit.x);
    reading(ui, &form, "y", "Height", &mut hit.y);
    form.copy_and_delete(ui);
}

/// Fields for the next hit, read from the wall's left end. The kind stays for the one after.
pub(in crate::panels) fn new_hit(ui: &mut Ui, around: &Around<'_>, wall: &mut Wall) {
    let id = wall.id.clone();
    let field = |name: &str| field_id(&id, &format!("new hit.{name}"));
    let kept = field("kind").with("place");
    let place: usize = ui.data(|data| data.get_temp(kept)).unwrap_or(2);
    let entries: Vec<String> = kinds::HITS.iter().map(|(_, words)| (*words).to_owned()).collect();
    if let Some(chosen) = choice(ui, field("kind"), "Next hit", "", &entries, Some(place)) {
        ui.data_mut(|data| data.insert_temp(kept, chosen));
    }
    let kind = kinds::HITS.get(place).map_or(HitKind::Centre, |(kind, _)| *kind);
    let wanted = [("x", "From the left end", false)];
    if let Some([by]) = draft::entry(ui, around, field, "Add hit", wanted) {
        wall.hits.push(Hit { id: Id::default(), kind, x: AcrossReading::from_left(by), y: None });
    }
}

//! The editor of a seat, and the quick entry of one after another.

use super::reading::reading;
use super::{Around, draft, kinds};
use crate::panels::measured::field_id;
use egui::Ui;
use strikeline_solver::job::seat::{Posture, Seat};
use strikeline_solver::job::wall::Wall;

/// Shows the fields of a seat.
pub(in crate::panels) fn seat(ui: &mut Ui, around: &Around<'_>, seat: &mut Seat) {
    let form = around.form(&seat.id);
    form.text(ui, "name", "Name", &mut seat.name);
    form.must(ui, "distance", "Wall to eyes", &mut seat.distance);
    reading(ui, &form, "at", "Along the wall", &mut seat.at);
    form.maybe(ui, "posture", "They", &mut seat.posture, kinds::POSTURES, "sit, as usual");
    form.quantity(ui, "eye_height", "Floor to eyes", &mut seat.eye_height);
    if seat.posture() == Posture::Seated || seat.seat_height.is_some() {
        form.quantity(ui, "seat_height", "Floor to seat, sat on", &mut seat.seat_height);
    }
    form.maybe(ui, "person", "For", &mut seat.person, kinds::PERSONS, "anyone");
    form.notes(ui, "notes", "Notes", &mut seat.notes);
    form.copy_and_delete(ui);
}

/// Fields for the next seat.
pub(in crate::panels) fn new_seat(ui: &mut Ui, around: &Around<'_>, wall: &mut Wall) {
    let id = wall.id.clone();
    let field = |name: &str| field_id(&id, &format!("new seat.{name}"));
    let wanted = [("distance", "Wall to eyes", false)];
    if let Some([distance]) = draft::entry(ui, around, field, "Add seat", wanted) {
        wall.seats.push(Seat::away(distance));
    }
}

//! The readings of what is seen on the wall, found behind it and hidden in it.

use super::measured::{field_id, section, titled};
use super::{across_datum, measured_field, upright_datum};
use crate::session::Session;
use crate::widgets::quantity_field::{Allowed, length_field, quantity_field};
use egui::{CollapsingHeader, Ui};
use strikeline_solver::job::place::{AcrossExtent, AcrossReading, UprightExtent, UprightReading};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::words;

/// Shows what was read, a thing under each heading.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let allowed = measured_field(&session.job);
    let Some(wall) = session.job.walls.iter_mut().find(|wall| wall.id == session.wall) else { return };
    if !wall.features.is_empty() {
        section(ui, "On the wall");
    }
    for feature in &mut wall.features {
        let id = feature.id.clone();
        thing(ui, &id, plan, |ui| {
            across(ui, &id, &mut feature.across, plan, allowed);
            upright(ui, &id, &mut feature.upright, plan, allowed);
            quantity_field(ui, field_id(&id, "proud"), "Stands proud", &mut feature.proud, allowed);
        });
    }
    if !wall.hits.is_empty() {
        section(ui, "Hits");
    }
    for hit in &mut wall.hits {
        let id = hit.id.clone();
        thing(ui, &id, plan, |ui| {
            across_reading(ui, &id, "Along the wall", &mut hit.x, plan, allowed);
            if let Some(y) = &mut hit.y {
                upright_reading(ui, &id, "Height", y, plan, allowed);
            }
        });
    }
    if !wall.hidden.is_empty() {
        section(ui, "In the wall");
    }
    for hidden in &mut wall.hidden {
        let id = hidden.id.clone();
        thing(ui, &id, plan, |ui| {
            across(ui, &id, &mut hidden.across, plan, allowed);
            upright(ui, &id, &mut hidden.upright, plan, allowed);
        });
    }
}

fn thing(ui: &mut Ui, id: &Id, plan: &Plan, fields: impl FnOnce(&mut Ui)) {
    let name = titled(&words::thing(plan, &id.whole()));
    CollapsingHeader::new(name).id_salt(("thing", id.as_str())).show(ui, fields);
}

fn across(ui: &mut Ui, id: &Id, extent: &mut AcrossExtent, plan: &Plan, allowed: Allowed) {
    let AcrossExtent { left, right, centre, width } = extent;
    for (label, reading) in [("Left edge", left), ("Right edge", right), ("Middle", centre)] {
        if let Some(reading) = reading {
            across_reading(ui, id, label, reading, plan, allowed);
        }
    }
    quantity_field(ui, field_id(id, "width"), "Width", width, allowed);
}

fn upright(ui: &mut Ui, id: &Id, extent: &mut UprightExtent, plan: &Plan, allowed: Allowed) {
    let UprightExtent { bottom, bottom_at_right, top, top_at_right, centre, height } = extent;
    for (label, reading) in [
        ("Lower edge", bottom),
        ("Lower edge, right end", bottom_at_right),
        ("Upper edge", top),
        ("Upper edge, right end", top_at_right),
        ("Middle height", centre),
    ] {
        if let Some(reading) = reading {
            upright_reading(ui, id, label, reading, plan, allowed);
        }
    }
    quantity_field(ui, field_id(id, "height"), "Height", height, allowed);
}

fn across_reading(
    ui: &mut Ui,
    id: &Id,
    label: &str,
    reading: &mut AcrossReading,
    plan: &Plan,
    allowed: Allowed,
) {
    let named = format!("{label}, from {}", across_datum(plan, &reading.from));
    length_field(ui, field_id(id, label), &named, &mut reading.by, allowed);
}

fn upright_reading(
    ui: &mut Ui,
    id: &Id,
    label: &str,
    reading: &mut UprightReading,
    plan: &Plan,
    allowed: Allowed,
) {
    let named = format!("{label}, from {}", upright_datum(plan, &reading.from));
    length_field(ui, field_id(id, label), &named, &mut reading.by, allowed);
}

//! The editor of something seen on a wall.

use super::extent::{Usual, across, upright};
use super::framing::{framing, front};
use super::{Around, kinds};
use egui::Ui;
use strikeline_solver::job::feature::{Feature, FeatureKind};

/// Shows the fields of a feature.
pub(in crate::panels) fn feature(ui: &mut Ui, around: &Around<'_>, feature: &mut Feature) {
    use FeatureKind as Kind;
    let form = around.form(&feature.id);
    form.choose(ui, "kind", "Kind", &mut feature.kind, kinds::FEATURES);
    form.text(ui, "name", "Name", &mut feature.name);
    let usual = match feature.kind {
        Kind::Outlet | Kind::Switch | Kind::Vent | Kind::Thermostat | Kind::Other => Usual::Middle,
        _ => Usual::Edges,
    };
    across(ui, &form, &mut feature.across, usual);
    upright(ui, &form, &mut feature.upright, usual);
    form.quantity(ui, "proud", "Stands proud", &mut feature.proud);
    // Only a breast is of something else than the wall.
    if feature.kind == Kind::ChimneyBreast || feature.framing.is_some() {
        framing(ui, &form, "Breast of", &mut feature.framing);
        if feature.framing.is_some() || feature.front.is_some() {
            front(ui, &form, &mut feature.front);
        }
    }
    form.notes(ui, "notes", "Notes", &mut feature.notes);
    form.copy_and_delete(ui);
}

//! The editor of something in a wall.

use super::extent::{Usual, across, upright};
use super::{Around, kinds};
use egui::Ui;
use strikeline_solver::job::hidden::Hidden;

/// Shows the fields of something in the wall.
pub(in crate::panels) fn hidden(ui: &mut Ui, around: &Around<'_>, hidden: &mut Hidden) {
    let form = around.form(&hidden.id);
    form.choose(ui, "kind", "Kind", &mut hidden.kind, kinds::HIDDEN);
    form.text(ui, "name", "Name", &mut hidden.name);
    across(ui, &form, &mut hidden.across, Usual::Middle);
    upright(ui, &form, &mut hidden.upright, Usual::Edges);
    form.maybe(ui, "known_by", "Known by", &mut hidden.known_by, kinds::KNOWN_BY, "not told");
    form.notes(ui, "notes", "Notes", &mut hidden.notes);
    form.copy_and_delete(ui);
}

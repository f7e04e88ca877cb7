//! What was measured: the display, the wall, the mount, and what is on and in the wall.

use super::{measured_field, place, readings};
use crate::session::Session;
use crate::theme;
use crate::widgets::quantity_field::quantity_field;
use egui::{Id, ScrollArea, Ui};
use strikeline_solver::plan::Plan;

/// The id of a field, from the id of the thing it belongs to.
#[must_use]
pub fn field_id(thing: &strikeline_solver::subject::Id, what: &str) -> Id {
    Id::unique(("field", thing.as_str(), what))
}

/// Shows the fields. They write the job as they are typed in.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
        pieces(ui, session, plan);
        wall(ui, session);
        place::ui(ui, session, plan);
        mounts(ui, session, plan);
        readings::ui(ui, session, plan);
        ui.add_space(theme::TOUCH);
    });
}

fn pieces(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let allowed = measured_field(&session.job);
    for piece in &mut session.job.pieces {
        if !plan.pieces.iter().any(|shown| shown.id == piece.id) {
            continue;
        }
        let name = strikeline_solver::words::thing(plan, &piece.id.whole());
        section(ui, &name);
        let id = piece.id.clone();
        quantity_field(ui, field_id(&id, "width"), "Width", &mut piece.width, allowed);
        quantity_field(ui, field_id(&id, "height"), "Height", &mut piece.height, allowed);
        quantity_field(ui, field_id(&id, "depth"), "Depth", &mut piece.depth, allowed);
        quantity_field(ui, field_id(&id, "mass"), "Mass", &mut piece.mass, allowed);
    }
}

fn wall(ui: &mut Ui, session: &mut Session) {
    let allowed = measured_field(&session.job);
    let Some(wall) = session.job.walls.iter_mut().find(|wall| wall.id == session.wall) else { return };
    section(ui, wall.name.as_deref().unwrap_or("Wall"));
    let id = wall.id.clone();
    quantity_field(ui, field_id(&id, "width"), "Wall width", &mut wall.width, allowed);
    quantity_field(ui, field_id(&id, "height"), "Wall height", &mut wall.height, allowed);
}

fn mounts(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let allowed = measured_field(&session.job);
    for mount in &mut session.job.mounts {
        let is_shown = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()).any(|m| m.id == mount.id);
        if !is_shown {
            continue;
        }
        section(ui, mount.name.as_deref().unwrap_or("Mount"));
        let id = mount.id.clone();
        quantity_field(ui, field_id(&id, "drop"), "Drop, display's top to plate's", &mut mount.drop, allowed);
        quantity_field(ui, field_id(&id, "play_left"), "Play to the left", &mut mount.play_left, allowed);
        quantity_field(ui, field_id(&id, "play_right"), "Play to the right", &mut mount.play_right, allowed);
        quantity_field(
            ui,
            field_id(&id, "stand_off"),
            "Wall to display's back",
            &mut mount.stand_off,
            allowed,
        );
    }
}

/// A heading, from a name as it stands within a sentence.
pub(super) fn section(ui: &mut Ui, name: &str) {
    ui.add_space(8.0);
    ui.add(egui::Label::new(egui::RichText::new(titled(name)).heading()).truncate());
}

/// A name as it stands within a sentence, to stand alone: `the vent` becomes `Vent`.
pub(super) fn titled(name: &str) -> String {
    let mut rest = name.strip_prefix("the ").unwrap_or(name).chars();
    rest.next().into_iter().flat_map(char::to_uppercase).chain(rest).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_name_stands_alone_with_a_capital() {
        assert_eq!(titled("the vent"), "Vent");
        assert_eq!(titled("Theatre screen"), "Theatre screen");
        assert_eq!(titled(""), "");
    }
}

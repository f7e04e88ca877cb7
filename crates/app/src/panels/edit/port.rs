//! The editor of a port, and the entry of a new one.

use super::{Around, draft, kinds};
use crate::panels::measured::field_id;
use crate::widgets::choice::choice;
use egui::Ui;
use strikeline_solver::job::place::Sideways;
use strikeline_solver::job::port::{Carries, Port, ReadFrom};
use strikeline_solver::subject::Id;

/// Which side of the display is which, as the one who measures it stands.
const SIDES: &[(Sideways, &str)] = &[(Sideways::Left, "your left"), (Sideways::Right, "your right")];

/// Shows the fields of a port.
pub(super) fn port(ui: &mut Ui, around: &Around<'_>, port: &mut Port) {
    let form = around.form(&port.id);
    form.text(ui, "name", "Name", &mut port.name);
    form.choose(ui, "carries", "Carries", &mut port.carries, kinds::CARRIES);
    form.choose(ui, "read", "Seen from", &mut port.read, kinds::READ_FROM);
    form.choose(ui, "from", "From edge on", &mut port.from, SIDES);
    form.must(ui, "by", "In from that edge", &mut port.by);
    form.must(ui, "up", "Up from lower edge", &mut port.up);
    form.maybe(ui, "points", "Plug points", &mut port.points, kinds::POINTS, "not told");
    form.quantity(ui, "reach", "Plug reach", &mut port.reach);
    form.copy_and_delete(ui);
}

/// Fields for a new port of a piece. A display usually lies face-down when it is measured.
pub(super) fn new_port(ui: &mut Ui, around: &Around<'_>, piece: &Id) -> Option<Port> {
    let field = |name: &str| field_id(piece, &format!("new port.{name}"));
    let kept = field("carries").with("place");
    let place: usize = ui.data(|data| data.get_temp(kept)).unwrap_or(0);
    let entries: Vec<String> = kinds::CARRIES.iter().map(|(_, words)| (*words).to_owned()).collect();
    if let Some(chosen) = choice(ui, field("carries"), "New port", "", &entries, Some(place)) {
        ui.data_mut(|data| data.insert_temp(kept, chosen));
    }
    ui.label("Display face-down, from its left edge as you look at its back:");
    let wanted = [("by", "In from the left", false), ("up", "Up from lower edge", false)];
    let [by, up] = draft::entry(ui, around, field, "Add port", wanted)?;
    Some(Port {
        id: Id::default(),
        name: None,
        carries: kinds::CARRIES.get(place).map_or(Carries::Power, |(carries, _)| *carries),
        from: Sideways::Left,
        read: ReadFrom::Back,
        by,
        up,
        points: None,
        reach: None,
    })
}

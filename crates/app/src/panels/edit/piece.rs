//! The editor of a piece and its ports.

use super::draft::together;
use super::port::{new_port, port};
use super::{Around, Form, fold, kinds};
use crate::widgets::row::{Row, row};
use egui::Ui;
use strikeline_solver::job::piece::{CentreOfMass, Pattern, Piece, PieceKind};
use strikeline_solver::subject::Id;

/// Shows the fields of a piece; of the port that is open too. Gives the port whose row was tapped.
pub(in crate::panels) fn piece(
    ui: &mut Ui,
    around: &Around<'_>,
    piece: &mut Piece,
    open: Option<&Id>,
) -> Option<Id> {
    let form = around.form(&piece.id);
    form.choose(ui, "kind", "Kind", &mut piece.kind, kinds::PIECES);
    form.text(ui, "name", "Name", &mut piece.name);
    if piece.kind == PieceKind::Display || piece.diagonal.is_some() {
        form.quantity(ui, "diagonal", "Diagonal sold by", &mut piece.diagonal);
    }
    if piece.kind == PieceKind::Display || piece.lines.is_some() {
        form.number(ui, "lines", "Lines of its picture", &mut piece.lines);
    }
    form.quantity(ui, "width", "Width", &mut piece.width);
    form.quantity(ui, "height", "Height", &mut piece.height);
    form.quantity(ui, "depth", "Depth", &mut piece.depth);
    form.quantity(ui, "mass", "Mass", &mut piece.mass);
    pattern(ui, &form, &mut piece.pattern);
    let blank = CentreOfMass::default();
    form.part(
        ui,
        "centre_of_mass",
        "Where its mass is centred",
        &mut piece.centre_of_mass,
        &blank,
        |ui, form, c| {
            form.offset(ui, "right", "Right of its middle", &mut c.right);
            form.offset(ui, "up", "Above its middle", &mut c.up);
            form.quantity(ui, "forward", "In front of its back", &mut c.forward);
        },
    );
    let tapped = ports(ui, around, piece, open);
    form.copy_and_delete(ui);
    tapped
}

/// The threads in its back: across and upright come together, the rest when it is known.
fn pattern(ui: &mut Ui, form: &Form<'_>, value: &mut Option<Pattern>) {
    form.field("pattern");
    fold(ui, (form.id.as_str(), "pattern"), "Mounting threads", value.is_some(), |ui| {
        let part = form.under("pattern");
        let Some(pattern) = value else {
            let wanted = [("across", "Apart, sideways", false), ("upright", "Apart, upright", false)];
            let both = together(ui, form.around, |name| part.field(name), wanted);
            *value = both.map(|[across, upright]| Pattern::new(across, upright));
            return;
        };
        part.must(ui, "across", "Apart, sideways", &mut pattern.across);
        part.must(ui, "upright", "Apart, upright", &mut pattern.upright);
        part.quantity(ui, "down", "Top to upper threads", &mut pattern.down);
        part.offset(ui, "right", "Right of its middle", &mut pattern.right);
        part.quantity(ui, "thread", "Thread", &mut pattern.thread);
        part.quantity(ui, "insert_depth", "Insert depth", &mut pattern.insert_depth);
        part.quantity(ui, "turn_in", "Maker's turn-in", &mut pattern.turn_in);
        part.quantity(ui, "spacer", "Spacer (0 for none)", &mut pattern.spacer);
        part.number(ui, "screws", "Screws, if not one a thread", &mut pattern.screws);
        if ui.button("Not measured").clicked() {
            super::draft::forget(ui, |name| part.field(name), &["across", "upright"]);
            *value = None;
        }
    });
}

fn ports(ui: &mut Ui, around: &Around<'_>, piece: &mut Piece, open: Option<&Id>) -> Option<Id> {
    let mut tapped = None;
    let is_open = piece.ports.iter().any(|port| Some(&port.id) == open) || !piece.ports.is_empty();
    fold(ui, (piece.id.as_str(), "ports"), "Ports", is_open, |ui| {
        for one in &mut piece.ports {
            let title = around.names().port(one);
            let is_open = Some(&one.id) == open;
            let id = egui::Id::unique(("port row", one.id.as_str()));
            if row(ui, id, Row { title: &title, colour: None, text: "", is_selected: is_open }).clicked() {
                tapped = Some(one.id.clone());
            }
            if is_open {
                ui.indent(("port", id), |ui| port(ui, around, one));
            }
        }
        piece.ports.extend(new_port(ui, around, &piece.id));
    });
    tapped
}

//! What was measured: everything of the job as a list, in the order in which a person measures it. The thing
//! that is open has its editor below its row.

use super::edit::{self, Around, Ask};
use super::opened::{Opened, job_row, kit_row};
use super::{place, readings};
use crate::kinds;
use crate::moves::things::NewThing;
use crate::session::Session;
use crate::theme;
use crate::widgets::in_sight::in_sight;
use crate::widgets::pick::menu;
use crate::widgets::row::{Row, row};
use egui::{Align, Id, Key, ScrollArea, Ui};
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::{
    BoxStock, CableStock, DrillBit, FastenerKind, FastenerStock, Measure, MeasureKind,
};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id as JobId;
use strikeline_solver::words;

/// The id of a field, from the id of the thing it belongs to and the field's name in the file.
#[must_use]
pub fn field_id(thing: &JobId, what: &str) -> Id {
    Id::unique(("field", thing.as_str(), what))
}

/// Shows the list. Its fields write the job as they are typed in.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    let opened = Opened::of(ui, session, plan);
    let before = session.job.clone();
    let around = Around::new(&before, plan);
    let mut list = List { around: &around, opened: &opened, tapped: None };
    ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 3.0;
        let job = &mut session.job;
        pieces(ui, &mut list, job);
        mounts(ui, &mut list, job);
        let wall = session.wall.clone();
        readings::walls(ui, &mut list, job, &wall);
        place::ui(ui, session, plan);
        let job = &mut session.job;
        readings::ui(ui, &mut list, job, &wall);
        kit(ui, &mut list, job);
        section(ui, "Job");
        let title = if job.title.is_empty() { "Untitled job".to_owned() } else { job.title.clone() };
        list.entry(ui, &job_row(), &title, "title, units, settings", |ui, around| {
            edit::job(ui, around, &job_row(), job);
        });
        ui.add_space(theme::TOUCH);
    });
    edit::complete(&mut session.job);
    if let Some(id) = list.tapped {
        Opened::tap(ui, session, &id, opened.is(&id));
    }
    let asked = around.asked.into_inner();
    let deleted = deleted_by_key(ui, session).map(Ask::Delete);
    for ask in asked.into_iter().chain(deleted) {
        // A field may have been typed in since the plan was made.
        let plan = session.plan();
        if let Some(field) = edit::ask::perform(session, &plan, &ask) {
            ui.memory_mut(|memory| memory.request_focus(field));
        }
        ui.ctx().request_repaint();
    }
}

/// The selected thing, where the Delete key was pressed and no field or question has the keys.
fn deleted_by_key(ui: &Ui, session: &Session) -> Option<JobId> {
    let is_pressed = ui.input(|input| input.key_pressed(Key::Delete));
    let is_taken = ui.ctx().text_edit_focused() || ui.memory(|memory| memory.top_modal_layer().is_some());
    let selected = session.selected.as_ref().filter(|subject| subject.part.is_none())?;
    (is_pressed && !is_taken).then(|| selected.id.clone())
}

/// The list as it is shown.
pub(super) struct List<'a> {
    pub(super) around: &'a Around<'a>,
    opened: &'a Opened,
    /// The thing whose row was tapped.
    tapped: Option<JobId>,
}

impl List<'_> {
    /// What is open, where it is one of these.
    fn open_among<'b>(&self, mut ids: impl Iterator<Item = &'b JobId>) -> Option<JobId> {
        ids.find(|id| self.opened.is(id)).cloned()
    }

    /// A row, and its editor below where it is open.
    pub(super) fn entry(
        &mut self,
        ui: &mut Ui,
        id: &JobId,
        title: &str,
        text: &str,
        editor: impl FnOnce(&mut Ui, &Around<'_>),
    ) {
        let is_open = self.opened.is(id);
        self.row(ui, id, title, text, is_open);
        if is_open {
            self.inside(ui, id, |ui| editor(ui, self.around));
        }
    }

    fn row(&mut self, ui: &mut Ui, id: &JobId, title: &str, text: &str, is_open: bool) {
        let shown = Row { title, colour: None, text, is_selected: is_open };
        let row_id = Id::unique(("measured", id.as_str()));
        let Some(response) = in_sight(ui, row_id, |ui| row(ui, row_id, shown)) else { return };
        if response.clicked() {
            self.tapped = Some(id.clone());
        }
        if is_open && self.opened.from_elsewhere {
            response.scroll_to_me(Some(Align::Min));
        }
    }

    fn inside(&self, ui: &mut Ui, id: &JobId, editor: impl FnOnce(&mut Ui)) {
        ui.scope(|ui| {
            ui.spacing_mut().indent = 8.0;
            ui.indent(("editor", id.as_str()), editor);
        });
        ui.add_space(6.0);
    }

    /// A menu at the end of a group.
    pub(super) fn add(
        &self,
        ui: &mut Ui,
        button: &str,
        kinds: &[&str],
        what: impl Fn(usize) -> Option<NewThing>,
    ) {
        if let Some(what) = menu(ui, button, kinds).and_then(what) {
            self.around.ask(Ask::Add(what));
        }
    }

    /// A button at the end of a group.
    pub(super) fn add_one(&self, ui: &mut Ui, button: &str, what: NewThing) {
        if ui.add(egui::Button::new(button).min_size(egui::vec2(0.0, theme::TOUCH + 2.0))).clicked() {
            self.around.ask(Ask::Add(what));
        }
    }
}

fn pieces(ui: &mut Ui, list: &mut List<'_>, job: &mut Job) {
    section(ui, "Pieces");
    for piece in &mut job.pieces {
        let names = list.around.names();
        let (title, text) = (names.piece(piece), names.size(piece.width, piece.height));
        let id = piece.id.clone();
        let port = list.open_among(piece.ports.iter().map(|port| &port.id));
        let is_open = list.opened.is(&id) || port.is_some();
        list.row(ui, &id, &title, &text, is_open);
        if is_open {
            let mut tapped = None;
            list.inside(ui, &id, |ui| tapped = edit::piece(ui, list.around, piece, port.as_ref()));
            list.tapped = tapped.or(list.tapped.take());
        }
    }
    let kinds: Vec<&str> = kinds::PIECES.iter().map(|(_, words)| *words).collect();
    list.add(ui, "Add piece\u{2026}", &kinds, |place| {
        kinds::PIECES.get(place).map(|(kind, _)| NewThing::Piece(*kind))
    });
}

fn mounts(ui: &mut Ui, list: &mut List<'_>, job: &mut Job) {
    section(ui, "Mounts");
    for mount in &mut job.mounts {
        let title = list.around.names().mount(mount);
        let plate = mount.plate.as_ref();
        let text = match (plate.map_or(0, |plate| plate.holes.len() + plate.slots.len()), mount.like) {
            (0, Some(like)) => format!("like {}, not measured", words::usual_plate(like)),
            (0, None) => "no holes measured".to_owned(),
            (1, _) => "1 hole".to_owned(),
            (count, _) => format!("{count} holes"),
        };
        list.entry(ui, &mount.id.clone(), &title, &text, |ui, around| edit::mount(ui, around, mount));
    }
    list.add_one(ui, "Add mount", NewThing::Mount);
}

fn kit(ui: &mut Ui, list: &mut List<'_>, job: &mut Job) {
    section(ui, "On the truck");
    let kit = &mut job.kit;
    let names = list.around.names();
    let how_many = |count: Option<u32>| count.map(|count| format!("{count} of them")).unwrap_or_default();
    for one in &mut kit.fasteners {
        let (title, text) = (names.fastener(one), how_many(one.count));
        list.entry(ui, &one.id.clone(), &title, &text, |ui, around| edit::fastener(ui, around, one));
    }
    for one in &mut kit.bits {
        let title = names.bit(one);
        list.entry(ui, &one.id.clone(), &title, "", |ui, around| edit::drill_bit(ui, around, one));
    }
    for one in &mut kit.cables {
        let title = one.name.as_deref().map_or_else(|| "Cable".to_owned(), titled);
        list.entry(ui, &one.id.clone(), &title, &how_many(one.count), |ui, around| {
            edit::cable_stock(ui, around, one);
        });
    }
    for one in &mut kit.boxes {
        let title = one.name.as_deref().map_or_else(|| "Box".to_owned(), titled);
        list.entry(ui, &one.id.clone(), &title, &how_many(one.count), |ui, around| {
            edit::box_stock(ui, around, one);
        });
    }
    for one in &mut kit.measures {
        let title = titled(edit::measure_kind(one.kind));
        list.entry(ui, &one.id.clone(), &title, "", |ui, around| edit::measure(ui, around, one));
    }
    list.entry(ui, &kit_row(), "Small parts", "nail plates, patch material", |ui, around| {
        edit::small_parts(ui, around, &kit_row(), kit);
    });
    let id = JobId::default();
    match menu(
        ui,
        "Add to the truck\u{2026}",
        &["fastener", "cable", "box or bracket", "drill bit", "measure"],
    ) {
        Some(0) => kit.fasteners.push(FastenerStock {
            id,
            kind: FastenerKind::WoodScrew,
            diameter: None,
            length: None,
            head: None,
            washer: None,
            count: None,
            to_standard: None,
            report: None,
        }),
        Some(1) => kit.cables.push(CableStock { id, ..CableStock::default() }),
        Some(2) => {
            kit.boxes.push(BoxStock { id, name: None, width: None, height: None, depth: None, count: None });
        }
        Some(3) => kit.bits.push(DrillBit { id, diameter: None, length: None }),
        Some(_) => {
            kit.measures.push(Measure {
                id,
                kind: MeasureKind::Tape,
                doubt: None,
                class: None,
                length: None,
            });
        }
        None => {}
    }
}

/// A heading, from a name as it stands within a sentence.
pub(super) fn section(ui: &mut Ui, name: &str) {
    ui.add_space(8.0);
    ui.add(egui::Label::new(egui::RichText::new(titled(name)).heading()).truncate());
}

/// A name as it stands within a sentence, to stand alone: `the vent` becomes `Vent`.
pub(super) fn titled(name: &str) -> String {
    words::capital(name.strip_prefix("the ").unwrap_or(name))
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

//! The editors: one a kind of thing, with a field for everything that the job can say of it.
//!
//! A field's id is the thing's and the name that the field has in the file, so that a field is the same while
//! the thing lives, and a test can hold that none is forgotten.

pub mod ask;
mod cable_way;
mod draft;
mod extent;
mod feature;
mod floor;
mod framing;
mod hidden;
mod hit;
mod job;
mod kit;
mod mount;
mod mount_parts;
mod names;
mod option;
mod piece;
mod plate;
mod plate_picture;
mod plate_rows;
mod port;
mod reading;
mod seat;
#[cfg(test)]
mod tests;
mod wall;

pub use ask::{Ask, perform};
pub use plate_rows::{HoleRow, farthest, mirrored, plate_rows, slot_rows};

pub(super) use feature::feature;
pub(super) use floor::{flatness_reading, floor_reading, new_flatness, new_floor};
pub(super) use hidden::hidden;
pub(super) use hit::{hit, new_hit};
pub(super) use job::job;
pub(super) use kit::{box_stock, cable_stock, drill_bit, fastener, measure, small_parts};
pub(super) use mount::mount;
pub(super) use names::Names;
pub(super) use option::{HANG, option};
pub(super) use piece::piece;
pub(super) use seat::{new_seat, seat};
pub(super) use wall::wall;

use super::measured::field_id;
use crate::kinds;
use crate::widgets::choice::choice;
use crate::widgets::quantity_field::{Allowed, Quantity, quantity_field};
use crate::widgets::text_field::{notes_field, number_field, text_field};
use crate::widgets::tick::tick;
use egui::Ui;
use std::cell::RefCell;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;

/// What every editor needs to know besides the thing that it edits.
pub(super) struct Around<'a> {
    /// The job as it was before this frame.
    pub(super) job: &'a Job,
    /// Its plan.
    pub(super) plan: &'a Plan,
    /// What a length field of the job holds: nothing below zero, perhaps nothing at all.
    pub(super) allowed: Allowed,
    /// What buttons asked for.
    pub(super) asked: RefCell<Vec<Ask>>,
    /// Every field that was shown, as its thing's id and its name in the file.
    #[cfg(test)]
    pub(super) shown: RefCell<std::collections::BTreeSet<String>>,
}

impl<'a> Around<'a> {
    pub(super) fn new(job: &'a Job, plan: &'a Plan) -> Self {
        Self {
            job,
            plan,
            allowed: super::measured_field(job),
            asked: RefCell::default(),
            #[cfg(test)]
            shown: RefCell::default(),
        }
    }

    /// What things are called.
    pub(super) fn names(&self) -> Names<'a> {
        Names { job: self.job, plan: self.plan }
    }

    /// The fields of a thing.
    pub(super) fn form(&self, id: &Id) -> Form<'_> {
        Form { around: self, id: id.clone(), path: String::new() }
    }

    pub(super) fn ask(&self, ask: Ask) {
        self.asked.borrow_mut().push(ask);
    }
}

/// The fields of a thing, or of a part of it.
pub(super) struct Form<'a> {
    around: &'a Around<'a>,
    id: Id,
    /// What stands before a field's name: `arm.` within the arm.
    path: String,
}

impl<'a> Form<'a> {
    /// The fields of a part.
    fn under(&self, part: &str) -> Self {
        Self { around: self.around, id: self.id.clone(), path: format!("{}{part}.", self.path) }
    }

    /// The id of a field.
    fn field(&self, name: &str) -> egui::Id {
        let path = format!("{}{name}", self.path);
        #[cfg(test)]
        self.around.shown.borrow_mut().insert(format!("{} {path}", self.id));
        field_id(&self.id, &path)
    }

    /// A quantity that may not have been measured.
    fn quantity<Q>(&self, ui: &mut Ui, name: &str, label: &str, value: &mut Option<Q>)
    where
        Q: Quantity + Send + Sync + 'static,
    {
        quantity_field(ui, self.field(name), label, value, self.around.allowed);
    }

    /// A quantity that has to be there: an emptied field leaves it as it is.
    fn must<Q>(&self, ui: &mut Ui, name: &str, label: &str, value: &mut Q)
    where
        Q: Quantity + Send + Sync + 'static,
    {
        let mut some = Some(*value);
        let allowed = Allowed { empty: false, ..self.around.allowed };
        quantity_field(ui, self.field(name), label, &mut some, allowed);
        if let Some(quantity) = some {
            *value = quantity;
        }
    }

    /// An offset that has to be there; it may be below zero.
    fn must_offset(&self, ui: &mut Ui, name: &str, label: &str, value: &mut Offset) {
        let mut some = Some(value.length());
        let allowed = Allowed { empty: false, signed: true, ..self.around.allowed };
        quantity_field(ui, self.field(name), label, &mut some, allowed);
        if let Some(length) = some {
            *value = Offset(length);
        }
    }

    /// An offset that may not have been measured; it may be below zero.
    fn offset(&self, ui: &mut Ui, name: &str, label: &str, value: &mut Option<Offset>) {
        let mut some = value.map(Offset::length);
        let allowed = Allowed { signed: true, ..self.around.allowed };
        quantity_field(ui, self.field(name), label, &mut some, allowed);
        *value = some.map(Offset);
    }

    /// A line of text; empty for none.
    fn text(&self, ui: &mut Ui, name: &str, label: &str, value: &mut Option<String>) {
        let mut text = value.clone().unwrap_or_default();
        if text_field(ui, self.field(name), label, &mut text).changed() {
            *value = Some(text).filter(|text| !text.is_empty());
        }
    }

    /// Text of several lines; empty for none.
    fn notes(&self, ui: &mut Ui, name: &str, label: &str, value: &mut Option<String>) {
        let mut text = value.clone().unwrap_or_default();
        if notes_field(ui, self.field(name), label, &mut text).changed() {
            *value = Some(text).filter(|text| !text.is_empty());
        }
    }

    /// A line of text that is always there.
    fn line(&self, ui: &mut Ui, name: &str, label: &str, value: &mut String) {
        text_field(ui, self.field(name), label, value);
    }

    /// A whole number, or none.
    fn number(&self, ui: &mut Ui, name: &str, label: &str, value: &mut Option<u32>) {
        number_field(ui, self.field(name), label, value);
    }

    /// One of a list.
    fn choose<T: Copy + PartialEq>(
        &self,
        ui: &mut Ui,
        name: &str,
        label: &str,
        value: &mut T,
        list: &[(T, &str)],
    ) {
        let entries: Vec<String> = list.iter().map(|(_, words)| (*words).to_owned()).collect();
        let held = list.iter().position(|(one, _)| one == value);
        if let Some((one, _)) =
            choice(ui, self.field(name), label, "", &entries, held).and_then(|index| list.get(index))
        {
            *value = *one;
        }
    }

    /// One of a list, or nothing said.
    fn maybe<T: Copy + PartialEq>(
        &self,
        ui: &mut Ui,
        name: &str,
        label: &str,
        value: &mut Option<T>,
        list: &[(T, &str)],
        nothing: &str,
    ) {
        let mut all = vec![(None, nothing)];
        all.extend(list.iter().map(|(one, words)| (Some(*one), *words)));
        self.choose(ui, name, label, value, &all);
    }

    /// Yes, no, or not told.
    fn yes_no(&self, ui: &mut Ui, name: &str, label: &str, value: &mut Option<bool>) {
        self.maybe(ui, name, label, value, &[(true, "yes"), (false, "no")], "not told");
    }

    /// A tick.
    fn tick(&self, ui: &mut Ui, name: &str, label: &str, value: &mut bool) {
        self.field(name);
        tick(ui, label, value);
    }

    /// A thing of the job out of some, or none. What is named and not there stays until another is chosen.
    fn named(
        &self,
        ui: &mut Ui,
        name: &str,
        label: &str,
        value: &mut Option<Id>,
        things: &[(Id, String)],
        nothing: &str,
    ) {
        let mut entries = vec![nothing.to_owned()];
        entries.extend(things.iter().map(|(_, words)| words.clone()));
        let held = match value {
            None => Some(0),
            Some(id) => things.iter().position(|(thing, _)| thing == id).map(|index| index + 1),
        };
        let gone = value.as_ref().map(|id| format!("\"{id}\", not there")).unwrap_or_default();
        if let Some(index) = choice(ui, self.field(name), label, &gone, &entries, held) {
            *value = index.checked_sub(1).and_then(|index| things.get(index)).map(|(id, _)| id.clone());
        }
    }

    /// A part of which everything may be absent: it is there while anything of it is.
    fn part<T: Clone + PartialEq>(
        &self,
        ui: &mut Ui,
        name: &str,
        label: &str,
        value: &mut Option<T>,
        blank: &T,
        fields: impl FnOnce(&mut Ui, &Self, &mut T),
    ) {
        self.field(name);
        fold(ui, (self.id.as_str(), name), label, value.is_some(), |ui| {
            // A part that a file holds although it says nothing stays.
            let was_blank = value.as_ref() == Some(blank);
            let mut part = value.clone().unwrap_or_else(|| blank.clone());
            fields(ui, &self.under(name), &mut part);
            *value = Some(part).filter(|part| was_blank || part != blank);
        });
    }

    /// Asks for a copy of the thing, or for it to be taken out.
    fn copy_and_delete(&self, ui: &mut Ui) {
        ui.horizontal(|ui| {
            ui.spacing_mut().interact_size.y = crate::theme::TOUCH + 2.0;
            if ui.button("Copy").clicked() {
                self.around.ask(Ask::Copy(self.id.clone()));
            }
            if ui.button("Delete").clicked() {
                self.around.ask(Ask::Delete(self.id.clone()));
            }
        });
    }
}

/// Gives every new entry its id.
pub(super) fn complete(job: &mut Job) {
    let mut is_missing = false;
    job.each_entry(&mut |_, id| is_missing |= id.is_empty());
    if is_missing {
        // Ids that stand twice were refused when the job was read, and none is given twice.
        let _ = job.complete_ids();
    }
}

/// What a measuring tool is called in its list.
pub(super) fn measure_kind(kind: strikeline_solver::job::kit::MeasureKind) -> &'static str {
    names::words_of(kinds::MEASURES, &kind)
}

/// A heading that opens and closes what is under it; open at first where there is something to be seen.
pub(super) fn fold(
    ui: &mut Ui,
    salt: (&str, &str),
    label: &str,
    is_open: bool,
    inside: impl FnOnce(&mut Ui),
) {
    ui.spacing_mut().indent = 8.0;
    egui::CollapsingHeader::new(label).id_salt(("fold", salt)).default_open(is_open).show(ui, inside);
}

//! A reading: how far, from what, and where it needs saying which way, where it was taken, and a check.

use super::kinds::{SIDEWAYS, UP_DOWN};
use super::{Around, Form};
use crate::panels::{across_datum, upright_datum};
use crate::widgets::pick::{menu_named, pick};
use crate::widgets::quantity_field::{Allowed, quantity_field};
use egui::Ui;
use strikeline_solver::job::place::{AcrossDatum, AcrossReading, UprightDatum, UprightReading};
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// A reading, alike for both axes.
pub(super) trait Taped: Clone + Send + Sync + 'static {
    /// A reading of nothing from the usual datum: what a new one begins with. Never written as it is.
    fn begin() -> Self;
    /// How far.
    fn by(&mut self) -> &mut Length;
    /// What stands under its value: its datum, and what was noted besides. Whether it is to be taken out, where
    /// that can be asked.
    fn rest(&mut self, ui: &mut Ui, form: &Form<'_>, label: &str, can_go: bool) -> bool;
}

/// A reading that may not have been taken. Its datum and what was noted besides are kept while its value is
/// typed anew.
pub(super) fn reading<R: Taped>(
    ui: &mut Ui,
    form: &Form<'_>,
    name: &str,
    label: &str,
    value: &mut Option<R>,
) {
    let part = form.under(name);
    let field = part.field("by");
    let kept_id = field.with("reading");
    let kept: Option<R> = ui.data_mut(|data| data.get_temp(kept_id));
    let mut taken = value.clone().or(kept).unwrap_or_else(R::begin);
    let mut by = value.as_mut().map(|reading| *reading.by());
    quantity_field(ui, field, label, &mut by, form.around.allowed);
    if taken.rest(ui, &part, label, by.is_some()) {
        ui.data_mut(|data| {
            data.remove::<String>(field.with("typed"));
            data.remove::<R>(kept_id);
            data.remove::<bool>(form.field(name).with("asked"));
        });
        *value = None;
        return;
    }
    match by {
        Some(by) => {
            *taken.by() = by;
            *value = Some(taken);
        }
        None => {
            ui.data_mut(|data| data.insert_temp(kept_id, taken));
            *value = None;
        }
    }
}

/// A reading that has to be there.
pub(super) fn must_reading<R: Taped>(ui: &mut Ui, form: &Form<'_>, name: &str, label: &str, value: &mut R) {
    let part = form.under(name);
    let mut by = Some(*value.by());
    let allowed = Allowed { empty: false, ..form.around.allowed };
    quantity_field(ui, part.field("by"), label, &mut by, allowed);
    if let Some(by) = by {
        *value.by() = by;
    }
    value.rest(ui, &part, label, false);
}

/// A part that a reading may be asked to say besides: what it is called, and its name in the file.
type Besides = (&'static str, &'static str);

const WAY: Besides = ("Which way it was read", "toward");
const AT: Besides = ("Where it was taken", "at");
const CHECK: Besides = ("A check reading", "check");

/// The datum of a reading as a choice, and beside it a menu of what else it may say.
struct DatumLine<'a> {
    label: &'a str,
    shown: String,
    entries: Vec<String>,
    held: Option<usize>,
    /// What is not said yet.
    absent: Vec<Besides>,
    can_go: bool,
}

impl DatumLine<'_> {
    /// Shows it: the datum that was chosen, and whether the reading is to be taken out.
    fn ui(self, ui: &mut Ui, form: &Form<'_>) -> (Option<usize>, bool) {
        let mut more: Vec<&str> = self.absent.iter().map(|(words, _)| *words).collect();
        if self.can_go {
            more.push("Remove this reading");
        }
        ui.horizontal(|ui| {
            ui.spacing_mut().item_spacing.x = 4.0;
            let room = if more.is_empty() { 0.0 } else { 44.0 };
            let name = format!("{}, read from", self.label);
            let chosen = ui
                .scope(|ui| {
                    ui.set_max_width(ui.available_width() - room);
                    pick(ui, form.field("from"), &name, &self.shown, &self.entries, self.held)
                })
                .inner;
            if more.is_empty() {
                return (chosen, false);
            }
            let asked = menu_named(ui, "\u{2026}", &format!("{}, more", self.label), &more);
            let part = asked.and_then(|index| self.absent.get(index));
            if let Some((_, part)) = part {
                ui.data_mut(|data| data.insert_temp(form.field(part).with("asked"), true));
            }
            (chosen, asked.is_some() && part.is_none())
        })
        .inner
    }
}

/// Whether a part that is still absent was asked for.
fn is_asked(ui: &Ui, form: &Form<'_>, part: &str) -> bool {
    ui.data(|data| data.get_temp(form.field(part).with("asked")).unwrap_or(false))
}

/// A part of a reading that is a reading itself, where it is there or was asked for.
fn inner<R: Taped>(ui: &mut Ui, form: &Form<'_>, name: &str, label: &str, value: &mut Option<Box<R>>) {
    if value.is_none() && !is_asked(ui, form, name) {
        return;
    }
    ui.indent(("reading", name), |ui| {
        let mut held = value.as_deref().cloned();
        reading(ui, form, name, label, &mut held);
        *value = held.map(Box::new);
    });
}

impl Taped for AcrossReading {
    fn begin() -> Self {
        Self::from_left(Length::default())
    }

    fn by(&mut self) -> &mut Length {
        &mut self.by
    }

    fn rest(&mut self, ui: &mut Ui, form: &Form<'_>, label: &str, can_go: bool) -> bool {
        let plan = form.around.plan;
        let datums = across_datums(form.around, &form.id);
        let absent = [(WAY, self.toward.is_none()), (CHECK, self.check.is_none())];
        let line = DatumLine {
            label,
            shown: from(across_datum(plan, &self.from)),
            entries: datums.iter().map(|datum| from(across_datum(plan, datum))).collect(),
            held: datums.iter().position(|datum| *datum == self.from),
            absent: absent.into_iter().filter(|(_, is_absent)| *is_absent).map(|(part, _)| part).collect(),
            can_go,
        };
        let (chosen, is_gone) = line.ui(ui, form);
        if let Some(datum) = chosen.and_then(|index| datums.get(index)) {
            self.from = datum.clone();
        }
        if self.toward.is_some() || is_asked(ui, form, "toward") {
            form.maybe(ui, "toward", "Read to", &mut self.toward, SIDEWAYS, "away from it");
        }
        inner(ui, form, "check", &format!("{label}, check"), &mut self.check);
        is_gone
    }
}

impl Taped for UprightReading {
    fn begin() -> Self {
        Self::from_floor(Length::default())
    }

    fn by(&mut self) -> &mut Length {
        &mut self.by
    }

    fn rest(&mut self, ui: &mut Ui, form: &Form<'_>, label: &str, can_go: bool) -> bool {
        let plan = form.around.plan;
        let datums = upright_datums(form.around, &form.id);
        let absent = [(WAY, self.toward.is_none()), (AT, self.at.is_none()), (CHECK, self.check.is_none())];
        let line = DatumLine {
            label,
            shown: from(upright_datum(plan, &self.from)),
            entries: datums.iter().map(|datum| from(upright_datum(plan, datum))).collect(),
            held: datums.iter().position(|datum| *datum == self.from),
            absent: absent.into_iter().filter(|(_, is_absent)| *is_absent).map(|(part, _)| part).collect(),
            can_go,
        };
        let (chosen, is_gone) = line.ui(ui, form);
        if let Some(datum) = chosen.and_then(|index| datums.get(index)) {
            self.from = datum.clone();
        }
        if self.toward.is_some() || is_asked(ui, form, "toward") {
            form.maybe(ui, "toward", "Read", &mut self.toward, UP_DOWN, "the usual way");
        }
        inner(ui, form, "at", &format!("{label}, taken at"), &mut self.at);
        inner(ui, form, "check", &format!("{label}, check"), &mut self.check);
        is_gone
    }
}

fn from(datum: String) -> String {
    format!("from {datum}")
}

/// What a thing can be read from sideways: the ends, and the edges of the wall's other features.
fn across_datums(around: &Around<'_>, own: &Id) -> Vec<AcrossDatum> {
    let others = around.plan.survey.features.iter().filter(|feature| feature.id != *own);
    let edges = others.flat_map(|feature| ["left", "right", "centre"].map(|part| feature.id.part(part)));
    [AcrossDatum::LeftEnd, AcrossDatum::RightEnd].into_iter().chain(edges.map(AcrossDatum::Edge)).collect()
}

/// What a thing can be read from upright: the floor, the control line, and the edges of the other features.
fn upright_datums(around: &Around<'_>, own: &Id) -> Vec<UprightDatum> {
    let others = around.plan.survey.features.iter().filter(|feature| feature.id != *own);
    let edges = others.flat_map(|feature| ["top", "bottom", "centre"].map(|part| feature.id.part(part)));
    [UprightDatum::Floor, UprightDatum::ControlLine]
        .into_iter()
        .chain(edges.map(UprightDatum::Edge))
        .collect()
}

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
    /// What stands under its value: its datum, and what was noted besides.
    fn rest(&mut self, ui: &mut Ui, form: &Form<'_>, label: &str);
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
    taken.rest(ui, &part, label);
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
    value.rest(ui, &part, label);
}

/// What a reading may be asked to say besides.
const WAY: &str = "Which way it was read";
const CHECK: &str = "A check reading";
const AT: &str = "Where it was taken";

/// The datum of a reading, and beside it a menu of what else it may say.
fn datum_line(
    ui: &mut Ui,
    form: &Form<'_>,
    label: &str,
    shown: &str,
    entries: &[String],
    held: Option<usize>,
    more: &[&str],
) -> (Option<usize>, Option<usize>) {
    ui.horizontal(|ui| {
        ui.spacing_mut().item_spacing.x = 4.0;
        let room = if more.is_empty() { 0.0 } else { 44.0 };
        let name = format!("{label}, read from");
        let chosen = ui
            .scope(|ui| {
                ui.set_max_width(ui.available_width() - room);
                pick(ui, form.field("from"), &name, shown, entries, held)
            })
            .inner;
        let asked =
            if more.is_empty() { None } else { menu_named(ui, "\u{2026}", &format!("{label}, more"), more) };
        (chosen, asked)
    })
    .inner
}

/// Whether a part that is still absent was asked for.
fn is_asked(ui: &Ui, form: &Form<'_>, part: &str) -> bool {
    ui.data(|data| data.get_temp(form.field(part).with("asked")).unwrap_or(false))
}

fn set_asked(ui: &Ui, form: &Form<'_>, part: &str) {
    ui.data_mut(|data| data.insert_temp(form.field(part).with("asked"), true));
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

    fn rest(&mut self, ui: &mut Ui, form: &Form<'_>, label: &str) {
        let datums = across_datums(form.around, &form.id);
        let entries: Vec<String> =
            datums.iter().map(|datum| from(across_datum(form.around.plan, datum))).collect();
        let held = datums.iter().position(|datum| *datum == self.from);
        let shown = from(across_datum(form.around.plan, &self.from));
        let more: Vec<&str> = [(WAY, self.toward.is_none()), (CHECK, self.check.is_none())]
            .into_iter()
            .filter_map(|(words, is_absent)| is_absent.then_some(words))
            .collect();
        let (chosen, asked) = datum_line(ui, form, label, &shown, &entries, held, &more);
        if let Some(datum) = chosen.and_then(|index| datums.get(index)) {
            self.from = datum.clone();
        }
        match asked.and_then(|index| more.get(index)).copied() {
            Some(WAY) => set_asked(ui, form, "toward"),
            Some(_) => set_asked(ui, form, "check"),
            None => {}
        }
        if self.toward.is_some() || is_asked(ui, form, "toward") {
            form.maybe(ui, "toward", "Read to", &mut self.toward, SIDEWAYS, "away from it");
        }
        inner(ui, form, "check", &format!("{label}, check"), &mut self.check);
    }
}

impl Taped for UprightReading {
    fn begin() -> Self {
        Self::from_floor(Length::default())
    }

    fn by(&mut self) -> &mut Length {
        &mut self.by
    }

    fn rest(&mut self, ui: &mut Ui, form: &Form<'_>, label: &str) {
        let datums = upright_datums(form.around, &form.id);
        let entries: Vec<String> =
            datums.iter().map(|datum| from(upright_datum(form.around.plan, datum))).collect();
        let held = datums.iter().position(|datum| *datum == self.from);
        let shown = from(upright_datum(form.around.plan, &self.from));
        let more: Vec<&str> =
            [(WAY, self.toward.is_none()), (AT, self.at.is_none()), (CHECK, self.check.is_none())]
                .into_iter()
                .filter_map(|(words, is_absent)| is_absent.then_some(words))
                .collect();
        let (chosen, asked) = datum_line(ui, form, label, &shown, &entries, held, &more);
        if let Some(datum) = chosen.and_then(|index| datums.get(index)) {
            self.from = datum.clone();
        }
        match asked.and_then(|index| more.get(index)).copied() {
            Some(WAY) => set_asked(ui, form, "toward"),
            Some(AT) => set_asked(ui, form, "at"),
            Some(_) => set_asked(ui, form, "check"),
            None => {}
        }
        if self.toward.is_some() || is_asked(ui, form, "toward") {
            form.maybe(ui, "toward", "Read", &mut self.toward, UP_DOWN, "the usual way");
        }
        inner(ui, form, "at", &format!("{label}, taken at"), &mut self.at);
        inner(ui, form, "check", &format!("{label}, check"), &mut self.check);
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

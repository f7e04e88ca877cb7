//! The extents of a thing: the readings that were taken of it, and those that can be added.

use super::Form;
use super::reading::reading;
use crate::widgets::pick::menu;
use egui::Ui;
use strikeline_solver::job::place::{AcrossExtent, UprightExtent};

/// How a thing is usually found: by its middle, or by its left and its lower edge.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Usual {
    Middle,
    Edges,
}

/// Which of the readings that are not there show: those that were asked for, and of none at all the usual one.
fn shows<const N: usize>(
    ui: &Ui,
    form: &Form<'_>,
    names: [&str; N],
    there: [bool; N],
    usual: &str,
) -> [bool; N] {
    let none = there.iter().all(|is_there| !is_there);
    let mut shown = there;
    for (is_shown, name) in shown.iter_mut().zip(names) {
        let asked = ui.data(|data| data.get_temp(form.field(name).with("asked")).unwrap_or(false));
        *is_shown |= asked || (none && name == usual);
    }
    shown
}

/// A menu of the readings that do not show.
fn add<const N: usize>(
    ui: &mut Ui,
    form: &Form<'_>,
    button: &str,
    names: [&str; N],
    labels: [&'static str; N],
    shown: [bool; N],
) {
    let absent: Vec<(&str, &str)> = names
        .into_iter()
        .zip(labels)
        .zip(shown)
        .filter(|(_, is_shown)| !is_shown)
        .map(|(one, _)| one)
        .collect();
    if absent.is_empty() {
        return;
    }
    let entries: Vec<&str> = absent.iter().map(|(_, label)| *label).collect();
    if let Some((name, _)) = menu(ui, button, &entries).and_then(|index| absent.get(index)) {
        ui.data_mut(|data| data.insert_temp(form.field(name).with("asked"), true));
        ui.memory_mut(|memory| memory.request_focus(form.under(name).field("by")));
    }
}

/// The sideways extent.
pub(super) fn across(ui: &mut Ui, form: &Form<'_>, extent: &mut AcrossExtent, usual: Usual) {
    let form = form.under("across");
    let AcrossExtent { left, right, centre, width } = extent;
    let names = ["left", "right", "centre"];
    let labels = ["Left edge", "Right edge", "Middle"];
    let there = [left.is_some(), right.is_some(), centre.is_some()];
    let first = if usual == Usual::Middle { "centre" } else { "left" };
    let shown = shows(ui, &form, names, there, first);
    for (((value, name), label), is_shown) in
        [left, right, centre].into_iter().zip(names).zip(labels).zip(shown)
    {
        if is_shown {
            reading(ui, &form, name, label, value);
        }
    }
    form.quantity(ui, "width", "Width", width);
    add(ui, &form, "Another reading across\u{2026}", names, labels, shown);
}

/// The upright extent.
pub(super) fn upright(ui: &mut Ui, form: &Form<'_>, extent: &mut UprightExtent, usual: Usual) {
    let form = form.under("upright");
    let UprightExtent { bottom, bottom_at_right, top, top_at_right, centre, height } = extent;
    let names = ["bottom", "bottom_at_right", "top", "top_at_right", "centre"];
    let labels =
        ["Lower edge", "Lower edge, right end", "Upper edge", "Upper edge, right end", "Middle height"];
    let values = [bottom, bottom_at_right, top, top_at_right, centre];
    let there = values.each_ref().map(|value| value.is_some());
    let first = if usual == Usual::Middle { "centre" } else { "bottom" };
    let shown = shows(ui, &form, names, there, first);
    for (((value, name), label), is_shown) in values.into_iter().zip(names).zip(labels).zip(shown) {
        if is_shown {
            reading(ui, &form, name, label, value);
        }
    }
    form.quantity(ui, "height", "Height", height);
    add(ui, &form, "Another reading up\u{2026}", names, labels, shown);
}

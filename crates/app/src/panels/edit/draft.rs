//! Lengths that belong together: they are written when the last of them is typed. Until then what is typed is
//! kept beside the job, so that the job never holds a length that nobody measured.

use super::Around;
use crate::widgets::quantity_field::{Allowed, is_refused, quantity_field};
use egui::{Id, Ui};
use strikeline_solver::units::Length;

/// One of the lengths: its name in the file, its label, and whether it may be below zero.
pub(super) type Wanted<'a> = (&'a str, &'a str, bool);

/// Fields for lengths that have to be there together: all of them, as soon as the last is typed. Given once they are
/// forgotten here, else what is undone would be written again.
pub(super) fn together<const N: usize>(
    ui: &mut Ui,
    around: &Around<'_>,
    id: impl Fn(&str) -> Id,
    wanted: [Wanted<'_>; N],
) -> Option<[Length; N]> {
    let all = fields(ui, around, &id, wanted)?;
    ui.data_mut(|data| {
        for (name, ..) in wanted {
            data.remove::<Length>(id(name).with("draft"));
        }
    });
    Some(all)
}

/// The fields, and what they hold once all are there.
fn fields<const N: usize>(
    ui: &mut Ui,
    around: &Around<'_>,
    id: impl Fn(&str) -> Id,
    wanted: [Wanted<'_>; N],
) -> Option<[Length; N]> {
    let mut typed = [None; N];
    for (slot, (name, label, signed)) in typed.iter_mut().zip(wanted) {
        let field = id(name);
        let kept = field.with("draft");
        let mut value: Option<Length> = ui.data_mut(|data| data.get_temp(kept));
        quantity_field(ui, field, label, &mut value, Allowed { signed, ..around.allowed });
        keep(ui, kept, value);
        *slot = value;
    }
    let mut all = [Length::default(); N];
    for (place, value) in all.iter_mut().zip(typed) {
        *place = value?;
    }
    Some(all)
}

/// Keeps a value beside the job until it is asked for again; nothing is kept of nothing.
pub(super) fn keep<T: Clone + Send + Sync + 'static>(ui: &Ui, id: Id, value: Option<T>) {
    ui.data_mut(|data| {
        data.remove::<T>(id);
        if let Some(value) = value {
            data.insert_temp(id, value);
        }
    });
}

/// Forgets what was typed.
pub(super) fn forget(ui: &Ui, id: impl Fn(&str) -> Id, names: &[&str]) {
    ui.data_mut(|data| {
        for name in names {
            data.remove::<Length>(id(name).with("draft"));
            data.remove::<String>(id(name).with("typed"));
        }
    });
}

/// Fields for a new entry of a list, with a button that adds it: all its lengths, once they are there and the
/// button or Enter is pressed. Then the fields are empty again and the first waits for the next entry.
pub(super) fn entry<const N: usize>(
    ui: &mut Ui,
    around: &Around<'_>,
    id: impl Fn(&str) -> Id,
    button: &str,
    wanted: [Wanted<'_>; N],
) -> Option<[Length; N]> {
    // What is not understood is no number, whatever was understood on the way to it.
    let is_refused = |ui: &Ui, (name, _, signed): Wanted<'_>| {
        is_refused::<Length>(ui, id(name), Allowed { signed, ..around.allowed })
    };
    let all = fields(ui, around, &id, wanted).filter(|_| !wanted.iter().any(|one| is_refused(ui, *one)));
    let is_entered = ui.input(|input| input.key_pressed(egui::Key::Enter))
        && wanted.iter().any(|(name, ..)| ui.read_response(id(name)).is_some_and(|field| field.lost_focus()));
    let size = egui::vec2(0.0, crate::theme::TOUCH + 2.0);
    let is_added =
        ui.add_enabled(all.is_some(), egui::Button::new(button).min_size(size)).clicked() || is_entered;
    let entry = all.filter(|_| is_added)?;
    let names: Vec<&str> = wanted.iter().map(|(name, ..)| *name).collect();
    forget(ui, &id, &names);
    if let Some(first) = names.first() {
        ui.memory_mut(|memory| memory.request_focus(id(first)));
    }
    Some(entry)
}

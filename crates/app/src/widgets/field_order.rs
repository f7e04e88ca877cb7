//! The order in which Enter goes from field to field, where a panel has one.

use egui::{Id, Ui};

fn key() -> Id {
    Id::unique("field order")
}

/// Shows fields among which Enter goes on from each to the next.
pub fn in_order(ui: &mut Ui, fields: Vec<Id>, show: impl FnOnce(&mut Ui)) {
    ui.data_mut(|data| data.insert_temp(key(), fields));
    show(ui);
    ui.data_mut(|data| data.remove::<Vec<Id>>(key()));
}

/// The field after this one; `None` for the last, or where there is no order.
#[must_use]
pub fn next(ui: &Ui, field: Id) -> Option<Id> {
    let fields: Vec<Id> = ui.data(|data| data.get_temp(key()))?;
    let mut rest = fields.into_iter().skip_while(|other| *other != field);
    rest.next().and(rest.next())
}

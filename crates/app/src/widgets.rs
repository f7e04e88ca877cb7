//! Fields and rows that know quantities but no job.

pub mod chips;
pub mod choice;
pub mod field_order;
pub mod in_sight;
pub mod keypad;
pub mod quantity_field;
pub mod row;
pub mod unbroken;
pub mod pick;
pub mod quantities;
pub mod text_field;
pub mod tick;

use crate::theme::TOUCH;
use egui::{Align, Layout, Response, Ui, vec2};

/// The label of a row, at its left, over a share of its width.
fn row_label(ui: &mut Ui, label: &str, share: f32) -> Response {
    let size = vec2(ui.available_width() * share, TOUCH);
    let layout = Layout::left_to_right(Align::Center);
    ui.allocate_ui_with_layout(size, layout, |ui| {
        ui.set_min_size(size);
        ui.add(egui::Label::new(label).wrap())
    })
    .inner
}

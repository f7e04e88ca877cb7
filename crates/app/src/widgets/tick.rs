//! A box to be ticked.

use crate::theme::TOUCH;
use egui::{Checkbox, Response, Ui, vec2};

/// A tick with its label, as high as a fingertip. It is the response's `changed`.
pub fn tick(ui: &mut Ui, label: &str, value: &mut bool) -> Response {
    let mut is_on = *value;
    let width = ui.available_width();
    let response = ui
        .allocate_ui(vec2(width, TOUCH), |ui| {
            ui.style_mut().wrap_mode = Some(egui::TextWrapMode::Wrap);
            ui.add(Checkbox::new(&mut is_on, label))
        })
        .inner;
    if is_on != *value {
        *value = is_on;
    }
    response
}

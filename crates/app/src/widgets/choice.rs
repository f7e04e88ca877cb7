//! A labelled choice of one out of a few.

use crate::theme::TOUCH;
use egui::{Align, ComboBox, Id, Layout, Ui, vec2};

/// Shows which of the named entries holds, and lets another be chosen: its place in the list.
///
/// `shown` stands in the field where none of them holds.
pub fn choice(
    ui: &mut Ui,
    id: Id,
    label: &str,
    shown: &str,
    entries: &[String],
    held: Option<usize>,
) -> Option<usize> {
    let mut chosen = None;
    ui.horizontal(|ui| {
        let name = super::row_label(ui, label, 0.27);
        let text = held.and_then(|index| entries.get(index)).map_or(shown, String::as_str);
        // As wide as the fields above and below; what is longer goes on in a second line.
        let size = vec2(ui.available_width() - 10.0, TOUCH);
        let combo = ComboBox::from_id_salt(id).selected_text(text).width(size.x).wrap();
        ui.allocate_ui_with_layout(size, Layout::left_to_right(Align::Center), |ui| {
            let response = combo.show_ui(ui, |ui| {
                for (index, entry) in entries.iter().enumerate() {
                    if ui.selectable_label(held == Some(index), entry).clicked() && held != Some(index) {
                        chosen = Some(index);
                    }
                }
            });
            response.response.labelled_by(name.id);
        });
    });
    chosen
}

//! One of a few, a tap each: buttons in a row that wraps.

use crate::theme::TOUCH;
use egui::{Button, RichText, Ui, vec2};

/// Shows the entries, the one that holds pressed in. The place in the list of the one that was tapped.
///
/// `label` stands over them; each is called by it too, since a figure alone says nothing.
pub fn chips<'a>(
    ui: &mut Ui,
    label: &str,
    entries: impl IntoIterator<Item = &'a str>,
    held: Option<usize>,
) -> Option<usize> {
    ui.label(RichText::new(label).small().color(crate::theme::quiet(ui.theme())));
    ui.horizontal_wrapped(|ui| {
        ui.spacing_mut().item_spacing = vec2(4.0, 4.0);
        ui.spacing_mut().button_padding.x = 7.0;
        let mut tapped = None;
        for (index, entry) in entries.into_iter().enumerate() {
            let is_held = held == Some(index);
            let response = ui.add(Button::new(entry).selected(is_held).min_size(vec2(TOUCH, TOUCH)));
            let name = format!("{label}: {entry}");
            response.widget_info(|| {
                egui::WidgetInfo::selected(egui::accesskit::Role::Button, true, is_held, &name)
            });
            if response.clicked() {
                tapped = Some(index);
            }
        }
        tapped
    })
    .inner
}

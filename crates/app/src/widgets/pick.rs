//! A choice of one out of a few over the whole width, and a menu of things to be asked for.

use crate::theme::TOUCH;
use egui::accesskit::Role;
use egui::{ComboBox, Id, ScrollArea, Ui, WidgetInfo};

/// The least height of an entry of a menu, in points: a fingertip in a list of many (chosen).
const ENTRY: f32 = 34.0;

/// Shows which of the entries holds, over the whole width, and lets another be chosen: its place in the list.
///
/// `name` is what the field is called; it does not show. `shown` stands in the field where none holds.
pub fn pick(
    ui: &mut Ui,
    id: Id,
    name: &str,
    shown: &str,
    entries: &[String],
    held: Option<usize>,
) -> Option<usize> {
    let mut chosen = None;
    let text = held.and_then(|index| entries.get(index)).map_or(shown, String::as_str);
    let width = ui.available_width() - 10.0;
    ui.spacing_mut().interact_size.y = TOUCH;
    let shown = ComboBox::from_id_salt(id).selected_text(text).width(width).wrap().show_ui(ui, |ui| {
        for (index, entry) in entries.iter().enumerate() {
            if ui.selectable_label(held == Some(index), entry).clicked() && held != Some(index) {
                chosen = Some(index);
            }
        }
    });
    shown.response.widget_info(|| WidgetInfo {
        current_text_value: Some(text.to_owned()),
        ..WidgetInfo::labeled(Role::ComboBox, true, name)
    });
    chosen
}

/// A button that opens a menu of entries: the place of the one that was chosen.
pub fn menu(ui: &mut Ui, button: &str, entries: &[&str]) -> Option<usize> {
    menu_named(ui, button, button, entries)
}

/// As [`menu`], of a button that shows something else than its name.
pub fn menu_named(ui: &mut Ui, button: &str, name: &str, entries: &[&str]) -> Option<usize> {
    let mut chosen = None;
    ui.spacing_mut().interact_size.y = TOUCH + 2.0;
    let shown = ui.menu_button(button, |ui| {
        ui.spacing_mut().interact_size.y = ENTRY;
        // A long list scrolls: it has to fit a small window.
        let most = ui.ctx().content_rect().height() * 0.6;
        ScrollArea::vertical().max_height(most).show(ui, |ui| {
            for (index, entry) in entries.iter().enumerate() {
                if ui.button(*entry).clicked() {
                    chosen = Some(index);
                    ui.close();
                }
            }
        });
    });
    shown.response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
    chosen
}

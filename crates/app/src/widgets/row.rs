//! A row of a list: a name, what is said of it, and whether it is selected. Reached by Tab, named for screen
//! readers.

use super::unbroken::unbroken;
use crate::theme;
use egui::accesskit::Role;
use egui::{Color32, Id, Response, RichText, Sense, Ui, WidgetInfo};

/// What a row shows.
#[derive(Clone, Copy, Debug)]
pub struct Row<'a> {
    /// Its first line.
    pub title: &'a str,
    /// The colour of its first line; the usual one where not given.
    pub colour: Option<Color32>,
    /// What is said of it; may be empty.
    pub text: &'a str,
    /// Whether what it is about is selected.
    pub is_selected: bool,
}

/// Shows a row over the whole width, as high as its text and no lower than a fingertip.
pub fn row(ui: &mut Ui, id: Id, row: Row<'_>) -> Response {
    row_of(ui, id, row, theme::TOUCH)
}

/// The same in an outline and higher: a tap on it changes the job.
pub fn row_to_take(ui: &mut Ui, id: Id, row: Row<'_>) -> Response {
    let outline = egui::Frame::new().stroke(ui.visuals().widgets.inactive.bg_stroke).corner_radius(2);
    outline.show(ui, |ui| row_of(ui, id, row, theme::TAKEN)).inner
}

/// A row no lower than this.
fn row_of(ui: &mut Ui, id: Id, row: Row<'_>, least: f32) -> Response {
    let width = ui.available_width();
    let theme = ui.theme();
    let visuals = ui.visuals().clone();
    // The ground is painted under the text, when its height is known.
    let ground = ui.painter().add(egui::Shape::Noop);
    let inner = ui.scope(|ui| {
        egui::Frame::new().inner_margin(egui::Margin::symmetric(8, 5)).show(ui, |ui| {
            ui.set_width(width - 16.0);
            ui.set_min_height(least - 10.0);
            ui.spacing_mut().item_spacing.y = 2.0;
            let title = RichText::new(unbroken(row.title)).color(row.colour.unwrap_or(visuals.text_color()));
            ui.add(egui::Label::new(title).wrap().selectable(false));
            if !row.text.is_empty() {
                let text = RichText::new(unbroken(row.text)).color(theme::quiet(theme));
                ui.add(egui::Label::new(text).wrap().selectable(false));
            }
        });
    });
    let response = ui.interact(inner.response.rect, id, Sense::click());
    response.widget_info(|| WidgetInfo::selected(Role::Button, true, row.is_selected, row.title));
    let fill = if row.is_selected {
        visuals.selection.bg_fill
    } else if response.hovered() || response.has_focus() {
        visuals.faint_bg_color
    } else {
        Color32::TRANSPARENT
    };
    let stroke = if response.has_focus() { visuals.selection.stroke } else { egui::Stroke::NONE };
    ui.painter().set(
        ground,
        egui::epaint::RectShape::new(response.rect, 2.0, fill, stroke, egui::StrokeKind::Inside),
    );
    response
}

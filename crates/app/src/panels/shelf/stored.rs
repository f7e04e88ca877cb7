//! One thing of the shelf: a tap puts it into the job; taking it off is asked about once.

use super::Stored;
use crate::command::{Command, FromShelf, Queue};
use crate::widgets::row::{Row, row};
use egui::accesskit::Role;
use egui::{Button, Frame, Id, Label, Ui, WidgetInfo, vec2};

/// The width of the button beside a thing, in points.
const BESIDE: f32 = 70.0;

/// Shows it. `over` is what of the job a tap puts it in the place of.
pub(super) fn ui(
    ui: &mut Ui,
    one: &Stored,
    over: Option<&strikeline_solver::subject::Id>,
    doomed: &mut Option<String>,
    queue: &mut Queue,
) {
    if doomed.as_ref() == Some(&one.file) {
        ask(ui, one, doomed, queue);
        return;
    }
    ui.horizontal_top(|ui| {
        let width = (ui.available_width() - BESIDE - ui.spacing().item_spacing.x - 4.0).max(60.0);
        ui.allocate_ui(vec2(width, 0.0), |ui| {
            ui.set_width(width);
            ui.vertical(|ui| {
                let shown = Row { title: &one.name, colour: None, text: &one.sizes, is_selected: false };
                let outline = Frame::new().stroke(ui.visuals().widgets.inactive.bg_stroke).corner_radius(2);
                let response = outline.show(ui, |ui| row(ui, Id::unique(("stored", &one.file)), shown)).inner;
                let called = format!("Put in: {}", one.name);
                response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &called));
                if response.clicked() {
                    let what = FromShelf { file: one.file.clone(), over: over.cloned() };
                    queue.push(Command::PutFromShelf(what));
                    *doomed = None;
                }
            });
        });
        ui.spacing_mut().button_padding.x = 6.0;
        let button = ui.add(Button::new("Take off").min_size(vec2(BESIDE, 0.0)));
        button.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("Take off: {}", one.name)));
        if button.clicked() {
            *doomed = Some(one.file.clone());
        }
    });
}

/// Asks whether it is to be taken off.
fn ask(ui: &mut Ui, one: &Stored, doomed: &mut Option<String>, queue: &mut Queue) {
    ui.add(Label::new(format!("Take {} off the shelf for good?", one.name)).wrap());
    ui.horizontal_wrapped(|ui| {
        if ui.button("Take it off").clicked() {
            queue.push(Command::RemoveFromShelf(one.file.clone()));
            *doomed = None;
        }
        if ui.button("Leave it there").clicked() {
            *doomed = None;
        }
    });
}

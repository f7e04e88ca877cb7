//! All keys on one page, from the tables that they are done by.

use crate::command::{hand_keys, keys_of, listed, words};
use crate::theme;
use egui::{Id, Modal, RichText, ScrollArea, Ui};

/// Shows the page over the window. Whether it stays open.
#[must_use]
pub fn ui(ui: &Ui) -> bool {
    let mut is_closed = false;
    let shown = Modal::new(Id::unique("key page")).show(ui, |ui| {
        ui.set_width(520.0);
        ui.horizontal(|ui| {
            ui.heading("Keys");
            is_closed = ui.button("Close").clicked();
        });
        ScrollArea::vertical().max_height(ui.content_rect().height() * 0.75).auto_shrink([false, true]).show(
            ui,
            |ui| {
                let commands = listed();
                let commands: Vec<(String, &str)> = commands
                    .iter()
                    .filter_map(|command| Some((keys_of(ui, command), words(command)?)))
                    .filter(|(keys, _)| !keys.is_empty())
                    .collect();
                table(ui, "Anywhere", commands.into_iter());
                for place in hand_keys() {
                    table(ui, place.place, place.keys.into_iter());
                }
            },
        );
    });
    !is_closed && !shown.should_close()
}

fn table<'a>(ui: &mut Ui, place: &str, keys: impl Iterator<Item = (String, &'a str)>) {
    ui.add_space(8.0);
    ui.label(RichText::new(place).color(theme::quiet(ui.theme())));
    for (keys, does) in keys {
        ui.horizontal_top(|ui| {
            let width = ui.available_width() * 0.4;
            ui.allocate_ui(egui::vec2(width, 0.0), |ui| {
                ui.set_width(width);
                ui.add(egui::Label::new(RichText::new(keys).strong()).wrap());
            });
            ui.add(egui::Label::new(does).wrap());
        });
    }
}

//! The bar at the top: what can be asked for. It pushes commands and does nothing itself.

use crate::command::{Command, Pane, Queue, keys_of};
use crate::session::Session;
use egui::{Align, Button, Layout, ThemePreference, Ui};

/// Narrower than this the bar leaves to the list of commands what is asked for least, in points (chosen: the bar
/// stays one line).
const NARROW: f32 = 1000.0;

/// With so much room it has what this wall offers too, in points (chosen: as above).
const ROOMY: f32 = 1080.0;

/// With so much room it has what is asked for seldom, and the title still has its place, in points (chosen: as above).
const BROAD: f32 = 1400.0;

/// Shows the bar.
pub fn ui(ui: &mut Ui, session: &Session, queue: &mut Queue) {
    let is_wide = ui.available_width() >= NARROW;
    let is_broad = ui.available_width() >= BROAD;
    let is_roomy = ui.available_width() >= ROOMY;
    ui.horizontal_wrapped(|ui| {
        let mut ask = |ui: &mut Ui, is_enabled, label: &str, command: Command| {
            let button = ui.add_enabled(is_enabled, Button::new(label));
            let keys = keys_of(ui, &command);
            let button = if keys.is_empty() { button } else { button.on_hover_text(keys) };
            if button.clicked() {
                queue.push(command);
            }
        };
        ask(ui, true, "New", Command::New);
        ask(ui, true, "Open\u{2026}", Command::AskOpen);
        ask(ui, true, "Save", Command::Save);
        if is_broad {
            ask(ui, true, "Save as\u{2026}", Command::AskSave);
        }
        ui.separator();
        ask(ui, session.can_undo(), "Undo", Command::Undo);
        ask(ui, session.can_redo(), "Redo", Command::Redo);
        ui.separator();
        ask(ui, true, "Whole wall", Command::Fit);
        ask(ui, true, "One pull", Command::Show(Pane::OnePull));
        if is_wide {
            ask(ui, true, "My shelf", Command::Show(Pane::Shelf));
        }
        if is_wide {
            ask(ui, true, "Side view", Command::Show(Pane::SideView));
        }
        ask(ui, true, "Choosing", Command::Show(Pane::Choosing));
        ask(ui, true, "On paper", Command::Show(Pane::OnPaper));
        if is_roomy {
            ask(ui, true, "This wall", Command::Show(Pane::Offers));
        }
        ask(ui, true, "Commands", Command::Show(Pane::CommandList));
        if is_broad {
            ask(ui, true, "Keys", Command::Show(Pane::KeyPage));
            ui.menu_button("Theme", |ui| theme(ui, queue));
        }
        ui.separator();
        let title = if session.job.title.is_empty() { "Untitled job" } else { &session.job.title };
        let changed = if session.is_changed() { ", not saved" } else { "" };
        // In what room is left, be it none: a title that wrapped would make the bar two lines.
        let room = egui::vec2(ui.available_size_before_wrap().x, ui.spacing().interact_size.y);
        ui.allocate_ui_with_layout(room, Layout::left_to_right(Align::Center), |ui| {
            ui.add(egui::Label::new(format!("{title}{changed}")).truncate());
        });
    });
}

/// The themes, the one that holds marked.
fn theme(ui: &mut Ui, queue: &mut Queue) {
    let held = ui.options(|options| options.theme_preference);
    for (preference, name) in [
        (ThemePreference::System, "As the system's"),
        (ThemePreference::Light, "Light"),
        (ThemePreference::Dark, "Dark"),
    ] {
        if ui.radio(held == preference, name).clicked() {
            queue.push(Command::SetTheme(preference));
            ui.close();
        }
    }
}

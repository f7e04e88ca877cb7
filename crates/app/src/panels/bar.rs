//! The bar at the top: what can be asked for. It pushes commands and does nothing itself.

use crate::command::{Command, Queue};
use crate::session::Session;
use egui::{Button, Ui};

/// Shows the bar.
pub fn ui(ui: &mut Ui, session: &Session, queue: &mut Queue) {
    ui.horizontal_wrapped(|ui| {
        let mut ask = |ui: &mut Ui, is_enabled, label: &str, keys: &str, command: Command| {
            let button = ui.add_enabled(is_enabled, Button::new(label));
            if button.on_hover_text(keys).clicked() {
                queue.push(command);
            }
        };
        ask(ui, true, "New", "Ctrl+N", Command::New);
        ask(ui, true, "Open\u{2026}", "Ctrl+O", Command::AskOpen);
        ask(ui, true, "Save", "Ctrl+S", Command::Save);
        ask(ui, true, "Save as\u{2026}", "Ctrl+Shift+S", Command::AskSave);
        ui.separator();
        ask(ui, session.can_undo(), "Undo", "Ctrl+Z", Command::Undo);
        ask(ui, session.can_redo(), "Redo", "Ctrl+Shift+Z or Ctrl+Y", Command::Redo);
        ui.separator();
        ask(ui, true, "Whole wall", "Ctrl+0", Command::Fit);
        ask(ui, true, "Light or dark", "Change the theme", Command::SwitchTheme);
        let title = if session.job.title.is_empty() { "Untitled job" } else { &session.job.title };
        let changed = if session.is_changed() { ", not saved" } else { "" };
        ui.add(egui::Label::new(format!("{title}{changed}")).truncate());
    });
}

//! All that can be asked for, with its keys, narrowed down as one types.

use crate::command::{Command, Queue, keys_of, listed, words};
use crate::widgets::row::{Row, row};
use egui::{Id, Key, Modal, ScrollArea, TextEdit, Ui};

/// The list while it is open.
#[derive(Clone, Debug, Default)]
pub struct CommandList {
    /// What is looked for.
    sought: String,
    /// Whether it was shown before: at first the search has the focus.
    is_shown: bool,
}

/// Whether a command's words or keys hold each word that is looked for, in any case and order.
fn is_found(sought: &str, words: &str, keys: &str) -> bool {
    let within = format!("{words} {keys}").to_lowercase();
    sought.to_lowercase().split_whitespace().all(|word| within.contains(word))
}

impl CommandList {
    /// Shows the list over the window. Whether it stays open.
    #[must_use]
    pub fn ui(&mut self, ui: &Ui, queue: &mut Queue) -> bool {
        let mut chosen: Option<Command> = None;
        let shown = Modal::new(Id::unique("command list")).show(ui, |ui| {
            ui.set_width(440.0);
            let name = ui.label("Search the commands");
            let field = TextEdit::singleline(&mut self.sought).desired_width(f32::INFINITY);
            let field = ui.add(field).labelled_by(name.id);
            if !std::mem::replace(&mut self.is_shown, true) {
                field.request_focus();
            }
            let is_entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
            let found: Vec<(Command, &str, String)> = listed()
                .into_iter()
                .filter_map(|command| {
                    let words = words(&command)?;
                    let keys = keys_of(ui, &command);
                    is_found(&self.sought, words, &keys).then_some((command, words, keys))
                })
                .collect();
            if is_entered {
                chosen = found.first().map(|(command, ..)| command.clone());
                field.request_focus();
            }
            ScrollArea::vertical().max_height(ui.content_rect().height() * 0.6).show(ui, |ui| {
                ui.spacing_mut().item_spacing.y = 0.0;
                if found.is_empty() {
                    ui.label("Nothing is called so.");
                }
                for (index, (command, words, keys)) in found.iter().enumerate() {
                    let id = Id::unique(("command", *words));
                    // The first is what Enter does.
                    let shown = Row { title: words, colour: None, text: keys, is_selected: index == 0 };
                    if row(ui, id, shown).clicked() {
                        chosen = Some(command.clone());
                    }
                }
            });
        });
        let is_over = chosen.is_some() || shown.should_close();
        queue.extend(chosen);
        !is_over
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_are_sought_in_any_order_and_case_and_in_the_keys() {
        assert!(is_found("", "Undo: one step back", "Ctrl+Z"));
        assert!(is_found("BACK undo", "Undo: one step back", "Ctrl+Z"));
        assert!(is_found("ctrl+z", "Undo: one step back", "Ctrl+Z"));
        assert!(!is_found("undo wall", "Undo: one step back", "Ctrl+Z"));
    }
}

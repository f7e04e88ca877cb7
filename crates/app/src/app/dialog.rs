//! Questions that stand before the window: which file, what of unsaved changes, and what went wrong.

use super::left_over::{self, Offered};
use super::open_job::OpenJob;
use crate::command::{Command, Queue};
use egui::{Id, Key, Modal, TextEdit, Ui};
use std::path::PathBuf;

/// A question or a message.
#[derive(Debug)]
pub(super) enum Dialog {
    /// Which job to open.
    Open(OpenJob),
    /// Which file to save to.
    Save {
        /// The path as typed.
        path: String,
    },
    /// What is to become of unsaved changes before something else is done.
    Unsaved {
        /// What is done then.
        then: Command,
    },
    /// That saving writes a hand-written file anew.
    ByHand {
        /// The file.
        path: PathBuf,
    },
    /// That a file is not as it was when it was read.
    OnDisk {
        /// The file.
        path: PathBuf,
    },
    /// Which file to save the sheets to.
    Sheets {
        /// The path as typed.
        path: String,
    },
    /// That sheets are there under the names of those to be saved.
    SheetsThere {
        /// The first file.
        path: PathBuf,
    },
    /// What a crash left.
    LeftOver {
        /// What can be taken up again.
        offered: Vec<Offered>,
    },
    /// What went wrong.
    Message(String),
}

impl Dialog {
    /// Shows the dialog. Gives it back while it is not answered.
    pub(super) fn ui(mut self, ui: &Ui, queue: &mut Queue) -> Option<Self> {
        let mut is_answered = false;
        let shown = Modal::new(Id::unique("dialog")).show(ui, |ui| {
            ui.set_width(self.width(ui));
            is_answered = self.contents(ui, queue);
        });
        (!is_answered && !shown.should_close()).then_some(self)
    }

    /// How wide it is: as wide as its words are easily read, or as pictures need.
    fn width(&self, ui: &Ui) -> f32 {
        match self {
            Self::Open(_) => (ui.ctx().content_rect().width() - 80.0).clamp(420.0, 760.0),
            _ => 420.0,
        }
    }

    fn contents(&mut self, ui: &mut Ui, queue: &mut Queue) -> bool {
        match self {
            Self::Open(question) => question.ui(ui, queue),
            Self::Save { path } => {
                let asks = Asks { title: "Save the job", go: "Save", browse: Command::BrowseSave };
                file(ui, queue, path, &asks, Command::SaveTo)
            }
            Self::Unsaved { then } => {
                ui.heading("This job has changes that are not saved.");
                let answers = [
                    ("Save first", vec![Command::SaveThen(Box::new(then.clone()))]),
                    ("Discard the changes", vec![Command::Discard, then.clone()]),
                    ("Cancel", Vec::new()),
                ];
                answered(ui, queue, answers)
            }
            Self::ByHand { path } => {
                ui.heading("This file was written or changed by hand.");
                ui.label(
                    "Saving writes it in the program's own form: comments and layout are not kept. \
                     Use the notes of the job for what should stay.",
                );
                let answers = [
                    ("Save", vec![Command::SaveByHand(path.clone())]),
                    ("Save as\u{2026}", vec![Command::AskSave]),
                    ("Cancel", Vec::new()),
                ];
                answered(ui, queue, answers)
            }
            Self::OnDisk { path } => {
                ui.heading("The file on disk is not what was read.");
                ui.label(
                    "Something else wrote it since, or it was there before. Saving replaces what it holds.",
                );
                let answers = [
                    ("Replace it", vec![Command::Replace(path.clone())]),
                    ("Save as\u{2026}", vec![Command::AskSave]),
                    ("Cancel", Vec::new()),
                ];
                answered(ui, queue, answers)
            }
            Self::Sheets { path } => {
                let asks = Asks { title: "Save the sheets", go: "Save", browse: Command::BrowseSheets };
                file(ui, queue, path, &asks, Command::SaveSheets)
            }
            Self::SheetsThere { path } => {
                ui.heading("There are files of these names already.");
                ui.label("Saving replaces what they hold.");
                let answers = [
                    ("Replace them", vec![Command::ReplaceSheets(path.clone())]),
                    ("Save as\u{2026}", vec![Command::AskSheets]),
                    ("Cancel", Vec::new()),
                ];
                answered(ui, queue, answers)
            }
            Self::LeftOver { offered } => left_over::ui(ui, queue, offered),
            Self::Message(text) => {
                ui.label(text.as_str());
                answered(ui, queue, [("Close", Vec::new())])
            }
        }
    }
}

/// Buttons in a row, each with what it asks for. Whether one was pressed.
fn answered<const N: usize>(ui: &mut Ui, queue: &mut Queue, answers: [(&str, Vec<Command>); N]) -> bool {
    ui.add_space(8.0);
    ui.horizontal_wrapped(|ui| {
        let mut is_answered = false;
        for (label, commands) in answers {
            if ui.button(label).clicked() {
                queue.extend(commands);
                is_answered = true;
            }
        }
        is_answered
    })
    .inner
}

/// The words of a question for a file.
pub(super) struct Asks {
    pub(super) title: &'static str,
    pub(super) go: &'static str,
    pub(super) browse: Command,
}

/// A path to type, and a way to the system's own dialog. Whether it was answered.
pub(super) fn file(
    ui: &mut Ui,
    queue: &mut Queue,
    path: &mut String,
    asks: &Asks,
    go: fn(PathBuf) -> Command,
) -> bool {
    ui.heading(asks.title);
    let name = ui.label("Path of the file");
    let field = ui.add(TextEdit::singleline(path).desired_width(f32::INFINITY)).labelled_by(name.id);
    if !field.has_focus() && !field.lost_focus() && ui.memory(|memory| memory.focused().is_none()) {
        field.request_focus();
    }
    let typed = path.trim();
    let is_entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    ui.add_space(8.0);
    ui.horizontal_wrapped(|ui| {
        let is_pressed = ui.add_enabled(!typed.is_empty(), egui::Button::new(asks.go)).clicked();
        if (is_pressed || is_entered) && !typed.is_empty() {
            queue.push(go(PathBuf::from(typed)));
            return true;
        }
        if ui.button("Browse\u{2026}").clicked() {
            queue.push(asks.browse.clone());
            return true;
        }
        ui.button("Cancel").clicked()
    })
    .inner
}

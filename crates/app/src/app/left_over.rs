//! What a crash left: offered at the next start, taken up again or thrown away.

use super::App;
use super::dialog::Dialog;
use crate::command::{Command, Queue};
use crate::files::job_file::read_job_text;
use crate::files::journal::LeftOver;
use crate::session::Session;
use egui::Ui;
use std::time::{Duration, SystemTime};

/// Unsaved work as it is offered.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Offered {
    /// Its name in the journal.
    name: String,
    /// What the job is called.
    title: String,
    /// Which file it belongs to, in words.
    file: String,
    /// How old it is, in words.
    age: String,
    /// Whether it was said once that it may be thrown away.
    is_doomed: bool,
}

/// What is offered of what was found, with its age at this time.
pub(super) fn offered(left: &[LeftOver], now: SystemTime) -> Vec<Offered> {
    let one = |left: &LeftOver| Offered {
        name: left.name(),
        title: match left.unsaved.job.title.as_str() {
            "" => "Untitled job".to_owned(),
            title => title.to_owned(),
        },
        file: match &left.unsaved.path {
            Some(path) => format!("Changes to {}", path.display()),
            None => "Never saved to a file".to_owned(),
        },
        age: age(now.duration_since(left.unsaved.when).unwrap_or_default()),
        is_doomed: false,
    };
    left.iter().map(one).collect()
}

/// How long ago, in words.
fn age(since: Duration) -> String {
    let minutes = since.as_secs() / 60;
    let (count, unit) = match minutes {
        0 => return "less than a minute ago".to_owned(),
        1..=119 => (minutes, "minute"),
        120..=2879 => (minutes / 60, "hour"),
        _ => (minutes / (24 * 60), "day"),
    };
    let s = if count == 1 { "" } else { "s" };
    format!("{count} {unit}{s} ago")
}

/// Offers it. Whether the question is answered.
pub(super) fn ui(ui: &mut Ui, queue: &mut Queue, offered: &mut Vec<Offered>) -> bool {
    ui.heading("The program ended before this was saved.");
    let mut taken_up = false;
    let mut thrown_away = None;
    egui::ScrollArea::vertical().max_height(360.0).show(ui, |ui| {
        for one in offered.iter_mut() {
            ui.add_space(8.0);
            ui.strong(&one.title);
            ui.label(format!("{}, kept {}.", one.file, one.age));
            ui.horizontal_wrapped(|ui| {
                if ui.button("Take it up again").clicked() {
                    queue.push(Command::TakeUp(one.name.clone()));
                    taken_up = true;
                }
                let label = if one.is_doomed { "Throw it away for good" } else { "Throw away" };
                if ui.button(label).clicked() {
                    if one.is_doomed {
                        queue.push(Command::ThrowAway(one.name.clone()));
                        thrown_away = Some(one.name.clone());
                    }
                    one.is_doomed = true;
                }
            });
        }
    });
    offered.retain(|one| Some(&one.name) != thrown_away.as_ref());
    ui.add_space(8.0);
    let later =
        ui.button("Later").on_hover_text("It is kept: look under Open, or at the next start").clicked();
    taken_up || later || offered.is_empty()
}

impl App {
    /// Offers what a crash left and nobody took up or threw away, where there is any.
    pub(super) fn ask_left_over(&mut self) {
        if !self.left_overs.is_empty() {
            self.dialog = Some(Dialog::LeftOver { offered: offered(&self.left_overs, SystemTime::now()) });
        }
    }

    /// Goes on with what a crash left: unsaved, on its own file, and taken back to that by undo.
    pub(super) fn take_up(&mut self, name: &str) {
        let Some(left) = self.take_left_over(name) else { return };
        let unsaved = left.unsaved.clone();
        // Of a file of which the text is not known, nothing counts as known: it is asked about.
        let as_read = unsaved.path.as_ref().map(|_| unsaved.as_read.unwrap_or_default());
        let file = unsaved.path.as_deref().zip(as_read.as_deref());
        let file = file.and_then(|(path, text)| read_job_text(text, path).ok());
        let is_canonical = file.as_ref().is_none_or(|file| file.canonical);
        let mut session = match file {
            Some(file) => Session::new(file.job, None),
            None => Session::fresh(),
        };
        session.path = unsaved.path;
        session.wall = unsaved.job.walls.first().map(|wall| wall.id.clone()).unwrap_or_default();
        session.job = unsaved.job;
        self.begin(session);
        self.as_read = as_read;
        self.is_canonical = is_canonical;
        if let Some(journal) = &mut self.journal {
            journal.take_up(left);
        }
    }

    pub(super) fn throw_away(&mut self, name: &str) {
        let Some(left) = self.take_left_over(name) else { return };
        if let Err(why) = left.throw_away() {
            self.dialog = Some(Dialog::Message(why));
        }
    }

    fn take_left_over(&mut self, name: &str) -> Option<LeftOver> {
        let index = self.left_overs.iter().position(|left| left.name() == name)?;
        Some(self.left_overs.swap_remove(index))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_age_is_told_as_a_person_would() {
        for (seconds, said) in [
            (0, "less than a minute ago"),
            (60, "1 minute ago"),
            (3600, "60 minutes ago"),
            (7200, "2 hours ago"),
            (2 * 86_400, "2 days ago"),
        ] {
            assert_eq!(age(Duration::from_secs(seconds)), said);
        }
    }
}

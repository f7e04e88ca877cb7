//! Pictures taken on site: asked for, dropped on the window, and kept with the job.

use super::App;
use super::dialog::Dialog;
use crate::command::Command;
use crate::files::pictures::{PictureError, copy_in};
use egui::Context;
use std::path::{Path, PathBuf};
use strikeline_solver::job::picture::SitePicture;
use strikeline_solver::subject::Subject;

/// What files of pictures end in.
const ENDINGS: [&str; 3] = ["jpg", "jpeg", "png"];

impl App {
    /// Asks for pictures by the system's own dialog; not of a job that has no folder yet.
    pub(super) fn ask_pictures(&mut self, of: Option<Subject>) {
        if self.session.path.is_none() {
            self.dialog = Some(Dialog::Message(told(&PictureError::NotSaved)));
            return;
        }
        let dialog = rfd::FileDialog::new().add_filter("Pictures", &ENDINGS);
        if let Some(files) = dialog.pick_files() {
            self.queue.push(Command::AddPictures(of, files));
        }
    }

    /// Copies pictures in and names them in the job; what cannot be taken is told.
    pub(super) fn add_pictures(&mut self, of: Option<&Subject>, files: &[PathBuf]) {
        for file in files {
            match copy_in(self.session.path.as_deref(), file) {
                Ok(file) => {
                    let job = &mut self.session.job;
                    let is_known =
                        job.pictures.iter().any(|known| known.file == file && known.of.as_ref() == of);
                    if !is_known {
                        let id = job.give_id("picture");
                        job.pictures.push(SitePicture { id, file, of: of.cloned() });
                    }
                }
                Err(why) => self.waiting.push(Dialog::Message(told(&why))),
            }
        }
    }

    /// Takes what was dropped on the window: a job is opened, pictures are of what is selected or of the job as a
    /// whole.
    pub(super) fn take_dropped(&mut self, context: &Context) {
        let dropped: Vec<PathBuf> = context
            .input(|input| input.raw.dropped_files.iter().map(|file| file.path().to_path_buf()).collect());
        let is_job = |path: &Path| path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("ron"));
        if let Some(job) = dropped.iter().find(|path| is_job(path)) {
            self.queue.push(Command::Open(job.clone()));
        } else if !dropped.is_empty() {
            self.queue.push(Command::AddPictures(self.session.selected.clone(), dropped));
        }
    }
}

/// What went wrong, as a sentence.
fn told(why: &PictureError) -> String {
    strikeline_solver::words::capital(&format!("{why}."))
}

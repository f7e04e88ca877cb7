//! What each command does. The only place of the window that reaches for files and the system's dialogs.

use super::App;
use super::at_wall;
use super::dialog::Dialog;
use super::open_job::OpenJob;
use super::panes::Panes;
use crate::canvas::Canvas;
use crate::command::Command;
use crate::files::error::FileError;
use crate::files::job_file::read_job;
use crate::files::recent;
use crate::files::save::save_job;
use crate::files::screens;
use crate::panels::measured::field_id;
use crate::session::Session;
use crate::strip::Strip;
use crate::view_state::ViewState;
use egui::{Context, ViewportCommand};
use std::path::{Path, PathBuf};

/// The ending of job files.
const ENDING: &str = "ron";

impl App {
    /// Does what was asked for.
    pub(super) fn perform(&mut self, context: &Context, command: Command) {
        // A question on the way (an unsaved job, a failed save) leaves what was to follow undone.
        // What is thrown away or forgotten goes while others are still offered.
        if self.dialog.is_some() && !matches!(command, Command::ThrowAway(_) | Command::Forget(_)) {
            return;
        }
        match command {
            Command::New => {
                if self.may_leave(Command::New) {
                    self.my_shelf.read();
                    self.begin_fresh();
                }
            }
            Command::AskOpen => {
                if self.may_leave(Command::AskOpen) {
                    let recent = self.recents.as_deref().map(recent::recent).unwrap_or_default();
                    self.dialog = Some(Dialog::Open(OpenJob::new(
                        context,
                        self.typed_path(),
                        recent,
                        self.left_overs.len(),
                    )));
                }
            }
            Command::BrowseOpen => {
                if let Some(path) = file_dialog().pick_file() {
                    self.open(&path);
                }
            }
            Command::Open(path) => {
                if self.may_leave(Command::Open(path.clone())) {
                    self.open(&path);
                }
            }
            Command::Save => match self.session.path.clone() {
                Some(path) if self.is_canonical => self.save(&path, self.as_read.clone()),
                Some(path) => self.dialog = Some(Dialog::ByHand { path }),
                None => self.dialog = Some(Dialog::Save { path: self.typed_path() }),
            },
            Command::SaveThen(then) => {
                self.after_save = Some(*then);
                self.perform(context, Command::Save);
            }
            Command::AskSave => self.dialog = Some(Dialog::Save { path: self.typed_path() }),
            Command::BrowseSave => {
                if let Some(path) = file_dialog().set_file_name("job.ron").save_file() {
                    if path.extension().is_none() {
                        // With its ending it is another file than the system's dialog asked about.
                        self.queue.push(Command::SaveTo(path));
                    } else {
                        self.save(&path, None);
                    }
                }
            }
            Command::SaveTo(path) => {
                let path = if path.extension().is_none() { path.with_extension(ENDING) } else { path };
                let is_own = self.session.path.as_deref() == Some(path.as_path());
                if is_own && !self.is_canonical {
                    self.dialog = Some(Dialog::ByHand { path });
                    return;
                }
                // Any other file that is there holds something else than nothing, and is asked about.
                let as_read = if is_own { self.as_read.clone() } else { Some(String::new()) };
                self.save(&path, as_read);
            }
            Command::SaveByHand(path) => self.save(&path, self.as_read.clone()),
            Command::Replace(path) => self.save(&path, None),
            Command::Discard => self.discarded = Some(self.session.job.clone()),
            Command::AskLeftOver => self.ask_left_over(),
            Command::TakeUp(name) => {
                if self.may_leave(Command::TakeUp(name.clone())) {
                    self.take_up(&name);
                }
            }
            Command::ThrowAway(name) => self.throw_away(&name),
            Command::Forget(path) => {
                if let Some(recents) = &self.recents {
                    // Where the list cannot be written the job is offered again: nothing hangs on it.
                    let _ = recent::forget(recents, &path);
                }
            }
            Command::Undo => self.session.undo(),
            Command::Redo => self.session.redo(),
            Command::Fit => self.view_state.view = None,
            Command::Show(pane) => self.show(context, pane),
            Command::PutFromShelf(what) => self.put_from_shelf(&what),
            Command::KeepOnShelf(what) => self.keep_on_shelf(&what),
            Command::RemoveFromShelf(file) => self.remove_from_shelf(&file),
            Command::AskPicturesOfSelected => {
                let of = self.session.selected.clone();
                self.perform(context, Command::AskPictures(of));
            }
            Command::AskPictures(of) => self.ask_pictures(of),
            Command::AddPictures(of, files) => self.add_pictures(of.as_ref(), &files),
            Command::RemovePicture(id) => {
                self.session.job.pictures.retain(|picture| picture.id != id);
            }
            Command::KeepScreenSize(mm_per_pixel) => {
                at_wall::make_true(context, mm_per_pixel);
                if let Some(screens) = &self.screens {
                    // Where it cannot be written it is true until the window is closed.
                    let _ = screens::keep(screens, &at_wall::screen(context), mm_per_pixel);
                }
            }
            Command::AskSheets => self.ask_sheets(),
            Command::BrowseSheets => self.browse_sheets(),
            Command::SaveSheets(path) => self.save_sheets(&path, false),
            Command::ReplaceSheets(path) => self.save_sheets(&path, true),
            Command::SetTheme(preference) => context.set_theme(preference),
            Command::Close => {
                if self.may_leave(Command::Close) {
                    context.send_viewport_cmd(ViewportCommand::Close);
                }
            }
        }
    }

    /// Whether the job may be left; else asks what is to become of its changes before `then`.
    fn may_leave(&mut self, then: Command) -> bool {
        let may = !self.has_to_ask();
        if !may {
            self.dialog = Some(Dialog::Unsaved { then });
        }
        may
    }

    /// The path that a question begins with: the job's own.
    fn typed_path(&self) -> String {
        self.session.path.as_deref().map(|path| path.display().to_string()).unwrap_or_default()
    }

    /// Goes on with another job.
    pub(super) fn begin(&mut self, session: Session) {
        // Nothing is known of a job without a file: the display's width stands on its box.
        if session.path.is_none() {
            self.focus = session.job.pieces.first().map(|piece| field_id(&piece.id, "width"));
        }
        self.session = session;
        self.is_begun = true;
        self.canvas = Canvas::default();
        self.strip = Strip::default();
        self.panes = Panes::default();
        // How much of a wall is looked at does not hang on the job.
        let (is_swept, sweeping) = (self.view_state.is_swept, self.view_state.sweeping);
        self.view_state = ViewState { is_swept, sweeping, ..ViewState::default() };
        self.as_read = None;
        self.is_canonical = true;
        self.discarded = None;
    }

    /// Opens a file, or says why not and leaves the job that is open.
    pub(super) fn open(&mut self, path: &Path) {
        match read_job(path) {
            Ok(opened) => {
                self.begin(Session::new(opened.job, Some(path.to_owned())));
                self.as_read = Some(opened.text);
                self.is_canonical = opened.canonical;
                self.note_recent();
            }
            Err(why) => self.dialog = Some(Dialog::Message(format!("Not opened: {why}"))),
        }
    }

    /// Saves to a file that holds what is given, or to whatever is there.
    fn save(&mut self, path: &Path, as_read: Option<String>) {
        match save_job(&self.session.job, path, as_read.as_deref()) {
            Ok(text) => {
                self.session.was_saved(path.to_owned());
                self.as_read = Some(text);
                self.is_canonical = true;
                self.queue.extend(self.after_save.take());
                self.note_recent();
            }
            Err(FileError::ChangedOnDisk { path }) => self.dialog = Some(Dialog::OnDisk { path }),
            Err(why) => self.dialog = Some(Dialog::Message(format!("Not saved: {why}"))),
        }
    }
}

impl App {
    /// Puts the job's file first in the list of recent ones.
    pub(super) fn note_recent(&self) {
        if let (Some(recents), Some(path)) = (&self.recents, &self.session.path) {
            // Where it cannot be written the job is missing there: nothing hangs on it.
            let _ = recent::note(recents, path);
        }
    }
}

fn file_dialog() -> rfd::FileDialog {
    let dialog = rfd::FileDialog::new().add_filter("Jobs", &[ENDING]);
    match std::env::current_dir() {
        Ok(folder) => dialog.set_directory::<PathBuf>(folder),
        Err(_) => dialog,
    }
}

//! The sheets of the preview, saved.

use super::App;
use super::dialog::Dialog;
use crate::files::sheets::{self, SheetFormat};
use std::path::Path;
use strikeline_solver::words::on_paper;

impl App {
    /// Asks for a file.
    pub(super) fn ask_sheets(&mut self) {
        if let Some(preview) = &self.panes.on_paper {
            let path = preview.path(&self.session).display().to_string();
            self.dialog = Some(Dialog::Sheets { path });
        }
    }

    /// Asks for a file by the system's own dialog, which asks itself before one is replaced.
    pub(super) fn browse_sheets(&mut self) {
        let Some(preview) = &self.panes.on_paper else { return };
        let path = preview.path(&self.session);
        let endings = SheetFormat::ALL.map(SheetFormat::ending);
        let mut dialog = rfd::FileDialog::new().add_filter("Sheets", &endings);
        if let Some(name) = path.file_name() {
            dialog = dialog.set_file_name(name.to_string_lossy());
        }
        if let Some(folder) = path.parent().filter(|folder| !folder.as_os_str().is_empty()) {
            dialog = dialog.set_directory(folder);
        }
        if let Some(path) = dialog.save_file() {
            // It knows of the first page's file alone: where there are more, they are asked about.
            let is_one = SheetFormat::of(&path) == Some(SheetFormat::Pdf);
            self.save_sheets(&path, is_one);
        }
    }

    /// Writes the pages that are shown; asks first where files are there, unless they may be replaced.
    pub(super) fn save_sheets(&mut self, path: &Path, may_replace: bool) {
        let Some(preview) = &mut self.panes.on_paper else { return };
        let drawn = preview.document(&mut self.session);
        let Ok(document) = drawn.as_ref() else { return };
        let path = if path.extension().is_none() {
            path.with_extension(SheetFormat::Pdf.ending())
        } else {
            path.to_owned()
        };
        if !may_replace && sheets::names(document, &path).iter().any(|name| name.exists()) {
            self.dialog = Some(Dialog::SheetsThere { path });
            return;
        }
        match sheets::write_sheets(document, &path) {
            Ok(written) => {
                let more = written.len().saturating_sub(1);
                let mut said = on_paper::saved(&path.display().to_string(), more);
                if preview.prints() {
                    let shown = (self.viewer)(&path).map_err(|why| why.to_string());
                    said = format!("{said} {}", on_paper::to_print(shown));
                }
                preview.say(said);
            }
            Err(why) => self.dialog = Some(Dialog::Message(format!("Not saved: {why}"))),
        }
    }
}

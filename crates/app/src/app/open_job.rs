//! Asks which job to open: by its path, of those that were open lately, or of those in a folder.

mod picture;
mod reader;

use super::dialog::{Asks, file};
use crate::canvas::paint::paint;
use crate::command::{Command, Queue};
use crate::theme;
use egui::{Align2, Context, Rect, Response, Role, ScrollArea, Sense, TextStyle, Ui, WidgetInfo, pos2, vec2};
use picture::SIZE;
use reader::{Reader, Row, Source};
use std::path::{Path, PathBuf};

/// The height of a row, in points: a picture and room round it.
const ROW: f32 = SIZE.y + 8.0;
/// The width of the button beside a job that is gone.
const BESIDE: f32 = 130.0;

/// The question.
#[derive(Debug)]
pub(super) struct OpenJob {
    /// The path as typed.
    path: String,
    /// How many jobs a crash left.
    left_overs: usize,
    recent: Reader,
    /// The folder of that path, and its jobs.
    folder: Option<(PathBuf, Reader)>,
}

impl OpenJob {
    /// The question, beginning with a path, these recent jobs and so many that a crash left.
    pub(super) fn new(context: &Context, path: String, recent: Vec<PathBuf>, left_overs: usize) -> Self {
        Self { path, left_overs, recent: Reader::begin(context, Source::Files(recent)), folder: None }
    }

    /// Asks. Whether it is answered.
    pub(super) fn ui(&mut self, ui: &mut Ui, queue: &mut Queue) -> bool {
        let asks = Asks { title: "Open a job", go: "Open", browse: Command::BrowseOpen };
        let mut is_answered = file(ui, queue, &mut self.path, &asks, Command::Open);
        let folder = folder_of(&self.path);
        if self.folder.as_ref().is_none_or(|(shown, _)| *shown != folder) {
            let reader = Reader::begin(ui, Source::Folder(folder.clone()));
            self.folder = Some((folder, reader));
        }
        ui.separator();
        if self.left_overs > 0 {
            let (count, are) = (self.left_overs, if self.left_overs == 1 { "job is" } else { "jobs are" });
            let label = format!("{count} {are} kept that never got saved\u{2026}");
            if ui.button(label).clicked() {
                queue.push(Command::AskLeftOver);
                is_answered = true;
            }
        }
        // The window's height less what stands above.
        let height = (ui.ctx().content_rect().height() - 220.0).max(2.0 * ROW);
        // As high from the beginning, so that nothing jumps while jobs are read.
        let list = ScrollArea::vertical().min_scrolled_height(height).max_height(height);
        list.auto_shrink(false).show(ui, |ui| {
            self.recent.listen();
            if !self.recent.rows.is_empty() {
                ui.strong("Open lately");
                is_answered |= rows(ui, queue, &mut self.recent, true);
                ui.add_space(8.0);
            }
            if let Some((folder, reader)) = &mut self.folder {
                reader.listen();
                ui.strong(format!("In {}", folder.display()));
                is_answered |= rows(ui, queue, reader, false);
                if reader.rows.is_empty() && reader.note.is_none() {
                    ui.label(if reader.is_done {
                        "There is no job in this folder."
                    } else {
                        "Reading\u{2026}"
                    });
                }
                if let Some(note) = &reader.note {
                    ui.label(note);
                }
            }
        });
        is_answered
    }
}

/// The folder whose jobs are shown beside a typed path: all before its last name, else where the program was
/// started. Found by the letters alone, since asking a disk at every key may take long.
fn folder_of(path: &str) -> PathBuf {
    let typed = path.trim();
    let is_folder = typed.ends_with(std::path::is_separator);
    let folder = if is_folder { Some(Path::new(typed)) } else { Path::new(typed).parent() };
    let folder = folder.unwrap_or(Path::new(""));
    let folder = if folder.as_os_str().is_empty() { Path::new(".") } else { folder };
    std::path::absolute(folder).unwrap_or_else(|_| folder.to_owned())
}

/// Shows jobs, each to be opened by a tap; of recent ones those that are gone can be taken off the list.
/// Whether one was opened.
fn rows(ui: &mut Ui, queue: &mut Queue, reader: &mut Reader, are_recent: bool) -> bool {
    let mut is_opened = false;
    let mut forgotten = None;
    for (index, row) in reader.rows.iter().enumerate() {
        let is_gone = are_recent && row.holds.is_err();
        ui.horizontal(|ui| {
            let width = ui.available_width() - if is_gone { BESIDE } else { 0.0 };
            if self::row(ui, row, width, are_recent).clicked() {
                queue.push(Command::Open(row.path.clone()));
                is_opened = true;
            }
            if is_gone && ui.button("Take off the list").clicked() {
                queue.push(Command::Forget(row.path.clone()));
                forgotten = Some(index);
            }
        });
    }
    if let Some(index) = forgotten {
        reader.rows.remove(index);
    }
    is_opened
}

/// Shows a job; where the folder is not the same for all, with it.
fn row(ui: &mut Ui, row: &Row, width: f32, with_folder: bool) -> Response {
    let (rect, response) = ui.allocate_exact_size(vec2(width.max(100.0), ROW), Sense::click());
    let said = match &row.holds {
        Ok(walls) if walls.count == 1 => "1 wall".to_owned(),
        Ok(walls) => format!("{} walls", walls.count),
        Err(why) => why.clone(),
    };
    let name = if with_folder { row.path.as_os_str() } else { row.path.file_name().unwrap_or_default() };
    let name = name.to_string_lossy();
    response.widget_info(|| {
        WidgetInfo::labeled(Role::Button, ui.is_enabled(), format!("{}, {name}, {said}", row.title))
    });
    if !ui.is_rect_visible(rect) {
        return response;
    }
    let visuals = *ui.style().interact(&response);
    let quiet = theme::quiet(ui.theme());
    let painter = ui.painter_at(rect);
    painter.rect(
        rect.shrink(1.0),
        visuals.corner_radius,
        visuals.weak_bg_fill,
        visuals.bg_stroke,
        egui::StrokeKind::Inside,
    );
    let pictures = row.holds.as_ref().map(|walls| walls.pictures.as_slice()).unwrap_or_default();
    let corner = |index: usize| {
        pos2(rect.right() - 4.0 - (pictures.len() - index) as f32 * (SIZE.x + 4.0), rect.top() + 4.0)
    };
    // On a narrow window the title keeps its room, and the last pictures go first.
    let shown = pictures.iter().enumerate().filter(|(index, _)| corner(*index).x > rect.left() + 160.0);
    for (index, scene) in shown {
        let place = Rect::from_min_size(corner(index), SIZE);
        let within = painter.with_clip_rect(place.intersect(painter.clip_rect()));
        within.rect_filled(place, 0.0, theme::desk(ui.theme()));
        paint(&within, place.min, ui.theme(), scene);
    }
    let text = Rect::from_min_max(
        rect.min,
        pos2(if pictures.is_empty() { rect.right() } else { corner(0).x }, rect.bottom()),
    );
    let words = painter.with_clip_rect(text.shrink2(vec2(8.0, 0.0)).intersect(painter.clip_rect()));
    let at = |share: f32| pos2(rect.left() + 10.0, rect.top() + rect.height() * share);
    let title = theme::font(15.0, strikeline_drawing::font::Weight::Semibold);
    words.text(at(0.3), Align2::LEFT_CENTER, &row.title, title, visuals.text_color());
    let small = TextStyle::Body.resolve(ui.style());
    words.text(at(0.7), Align2::LEFT_CENTER, format!("{name}: {said}"), small, quiet);
    match &row.holds {
        Ok(_) => response,
        Err(why) => response.on_hover_text(why),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_folder_is_that_of_the_typed_path() {
        let here = std::env::current_dir().unwrap();
        for (typed, folder) in [
            ("", here.clone()),
            ("room.ron", here.clone()),
            ("rooms/den.ron", here.join("rooms")),
            (" /rooms/den.ron ", PathBuf::from("/rooms")),
            ("/rooms/", PathBuf::from("/rooms")),
            ("/", PathBuf::from("/")),
        ] {
            assert_eq!(folder_of(typed).components().collect::<PathBuf>(), folder, "{typed:?}");
        }
    }
}

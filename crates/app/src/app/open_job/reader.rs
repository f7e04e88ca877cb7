//! Reads jobs and draws their small pictures on a thread of its own, so that no slow disk holds up the window.

use super::picture::picture;
use crate::files::folder::{Found, job_files, look_at};
use egui::Context;
use std::path::PathBuf;
use std::sync::mpsc::{Receiver, Sender, TryRecvError, channel};
use strikeline_drawing::scene::Scene;

/// The most walls of a job of which a picture is shown (chosen: so many fit beside the title).
const MOST_PICTURES: usize = 3;

/// Where jobs are looked for.
pub(super) enum Source {
    /// In a folder.
    Folder(PathBuf),
    /// In these files.
    Files(Vec<PathBuf>),
}

/// A job as it is shown.
#[derive(Debug)]
pub(super) struct Row {
    /// Its file.
    pub(super) path: PathBuf,
    /// What it is called.
    pub(super) title: String,
    /// What it holds, or why it cannot be read.
    pub(super) holds: Result<Walls, String>,
}

/// The walls of a job.
#[derive(Debug)]
pub(super) struct Walls {
    /// How many there are.
    pub(super) count: usize,
    /// The pictures of the first of them.
    pub(super) pictures: Vec<Scene>,
}

/// What was read so far.
#[derive(Debug)]
pub(super) struct Reader {
    heard: Receiver<Told>,
    /// The jobs.
    pub(super) rows: Vec<Row>,
    /// What else is to be told: that there are more, or why there are none.
    pub(super) note: Option<String>,
    /// Whether all of it was read.
    pub(super) is_done: bool,
}

#[derive(Debug)]
enum Told {
    Row(Box<Row>),
    Note(String),
}

impl Reader {
    /// Begins to read; the window is woken with each job.
    pub(super) fn begin(context: &Context, source: Source) -> Self {
        let (tell, heard) = channel();
        let context = context.clone();
        let thread = std::thread::Builder::new().name("jobs".to_owned());
        let begun = thread.spawn(move || {
            // Where nobody listens any more there is nothing to do.
            let _ = read(source, &tell, &context);
            drop(tell);
            context.request_repaint();
        });
        let note = begun.err().map(|why| format!("no jobs can be shown ({why})"));
        Self { heard, rows: Vec::new(), note, is_done: false }
    }

    /// Takes in what was read since.
    pub(super) fn listen(&mut self) {
        loop {
            match self.heard.try_recv() {
                Ok(Told::Row(row)) => self.rows.push(*row),
                Ok(Told::Note(note)) => self.note = Some(note),
                Err(TryRecvError::Empty) => return,
                Err(TryRecvError::Disconnected) => {
                    self.is_done = true;
                    return;
                }
            }
        }
    }
}

/// Reads all of it, while somebody listens.
fn read(
    source: Source,
    tell: &Sender<Told>,
    context: &Context,
) -> Result<(), std::sync::mpsc::SendError<Told>> {
    let files = match source {
        Source::Files(files) => files,
        Source::Folder(folder) => match job_files(&folder) {
            Ok(found) => {
                if found.are_more {
                    let shown = found.files.len();
                    tell.send(Told::Note(format!(
                        "Only the first {shown} are shown; type the path of another."
                    )))?;
                }
                found.files
            }
            Err(why) => return tell.send(Told::Note(why)),
        },
    };
    for path in files {
        tell.send(Told::Row(Box::new(row(look_at(path)))))?;
        context.request_repaint();
    }
    Ok(())
}

fn row(found: Found) -> Row {
    let title = found.title();
    let holds = found.job.map(|job| Walls {
        count: job.walls.len(),
        pictures: job.walls.iter().take(MOST_PICTURES).map(|wall| picture(&job, wall)).collect(),
    });
    Row { path: found.path, title, holds }
}

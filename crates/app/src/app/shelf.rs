//! My shelf in the window: reads and writes it, and puts what is on it into the job.

mod sizes;

use super::App;
use super::dialog::Dialog;
use crate::command::{FromShelf, Kept, ToShelf};
use crate::files::home::VARIABLE;
use crate::files::shelf::entry::{Entry, Thing, ThingKind, construction};
use crate::files::shelf::keep::{keep, keep_defaults, keep_kit};
use crate::files::shelf::put::{Put, PutOver, put, put_over};
use crate::files::shelf::{OnShelf, list, read, remove, write};
use crate::moves;
use crate::panels::shelf::{Kind, Shown, Stored};
use crate::session::{Session, fresh_job};
use sizes::sizes;
use std::path::{Path, PathBuf};
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::port::Carries;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Style;

/// The shelf as it was read last.
#[derive(Debug, Default)]
pub(super) struct MyShelf {
    /// Its folder; `None` where the system knows none.
    folder: Option<PathBuf>,
    things: Vec<OnShelf>,
    shown: Shown,
    /// How the sizes shown are written.
    style: Option<Style>,
}

impl MyShelf {
    /// The shelf in a folder, read.
    pub(super) fn at(folder: PathBuf) -> Self {
        let mut shelf = Self { folder: Some(folder), ..Self::default() };
        shelf.read();
        shelf
    }

    /// Reads what is in the folder now.
    pub(super) fn read(&mut self) {
        let Some(folder) = &self.folder else { return };
        let found = list(folder);
        self.things = found.things;
        self.shown.mounts = self.things.iter().filter_map(mount).collect();
        self.shown.troubles = found.troubles.iter().map(ToString::to_string).collect();
        self.style = None;
    }

    /// What panels show of it: sizes as the job writes them, and what the job holds already.
    pub(super) fn shown(&mut self, session: &Session) -> &Shown {
        let style = session.job.style();
        self.shown.no_folder = self.folder.is_none().then(|| {
            format!("The system knows no folder of yours: name one in {VARIABLE} to have a shelf in it.")
        });
        if self.style != Some(style) {
            self.style = Some(style);
            self.shown.things = self.things.iter().map(|one| stored(one, style)).collect();
            first_of(&mut self.shown.things, Kind::Kit);
            first_of(&mut self.shown.things, Kind::Defaults);
        }
        if session.short_form {
            for (shown, one) in self.shown.things.iter_mut().zip(&self.things) {
                shown.is_held = is_held(&one.entry, session);
            }
        }
        &self.shown
    }

    fn path(&self, file: &str) -> Option<&Path> {
        self.things.iter().map(|one| one.path.as_path()).find(|path| file_name(path) == file)
    }
}

fn file_name(path: &Path) -> String {
    path.file_name().unwrap_or_default().to_string_lossy().into_owned()
}

/// A mount of the shelf by its file, called as it is there.
fn mount(one: &OnShelf) -> Option<(String, Mount)> {
    let Thing::Mount(mount) = &one.entry.thing else { return None };
    let name = Some(one.entry.name.clone());
    Some((file_name(&one.path), Mount { name, ..(**mount).clone() }))
}

fn stored(one: &OnShelf, style: Style) -> Stored {
    let kind = match one.entry.thing.kind() {
        ThingKind::Piece => Kind::Piece,
        ThingKind::Mount => Kind::Mount,
        ThingKind::Wall => Kind::Wall,
        ThingKind::Kit => Kind::Kit,
        ThingKind::Defaults => Kind::Defaults,
    };
    Stored {
        file: file_name(&one.path),
        kind,
        name: one.entry.name.clone(),
        sizes: sizes(&one.entry.thing, style),
        is_held: false,
    }
}

/// Says of the first of a kind that new jobs begin with it.
fn first_of(things: &mut [Stored], kind: Kind) {
    if let Some(first) = things.iter_mut().find(|one| one.kind == kind) {
        first.sizes.push_str(". New jobs begin with it");
    }
}

/// Whether what a new job asks about is this already: a thing of the same name, or a wall built so.
fn is_held(entry: &Entry, session: &Session) -> bool {
    let job = &session.job;
    let is_called = |name: Option<&String>| name == Some(&entry.name);
    match &entry.thing {
        Thing::Piece(_) => is_called(job.pieces.first().and_then(|piece| piece.name.as_ref())),
        Thing::Mount(_) => is_called(job.mounts.first().and_then(|mount| mount.name.as_ref())),
        Thing::Wall(kept) => job.wall(&session.wall).is_some_and(|wall| {
            let built = construction(wall);
            built == construction(kept)
        }),
        Thing::Kit(_) | Thing::Defaults(_) => false,
    }
}

impl App {
    /// Goes on with a job in which nothing is measured, beginning with the first defaults and the first kit that
    /// are kept.
    pub(super) fn begin_fresh(&mut self) {
        let mut job = fresh_job();
        for kind in [ThingKind::Defaults, ThingKind::Kit] {
            let kept = self.my_shelf.things.iter().find(|one| one.entry.thing.kind() == kind);
            if let Some(one) = kept {
                job = put(&job, &one.entry).job;
            }
        }
        self.begin(Session::begun(job));
    }

    /// Puts a thing of the shelf into the job: one step.
    pub(super) fn put_from_shelf(&mut self, what: &FromShelf) {
        let Some(path) = self.my_shelf.path(&what.file) else { return };
        // As it is now: it may have been mended since it was listed.
        let entry = match read(path) {
            Ok(entry) => entry,
            Err(why) => {
                self.dialog = Some(Dialog::Message(format!("Not put in: {why}")));
                self.my_shelf.read();
                return;
            }
        };
        self.session.note(true);
        let name = &entry.name;
        let told = match &what.over {
            Some(id) => {
                let Some(over) = put_over(&self.session.job, id, &entry) else { return };
                let went = went(&over);
                self.session.job = over.job;
                if !went.is_empty() && self.panes.shelf.is_none() {
                    self.waiting.push(Dialog::Message(went.trim_start().to_owned()));
                }
                format!("{name} is in the job, in the place of what was there.{went}")
            }
            None => {
                let beside = self.put_beside(&entry);
                format!("{name} is in the job{beside}.")
            }
        };
        self.session.note(true);
        if let Some(panel) = &mut self.panes.shelf {
            panel.tell(told);
        }
    }

    /// Adds a thing of the shelf where it is seen: a piece hangs in the shown option, the piece that is meant
    /// hangs on a mount, and a wall is the one that is shown. How, in words.
    fn put_beside(&mut self, entry: &Entry) -> &'static str {
        let plan = self.session.plan();
        let Put { job, id } = put(&self.session.job, entry);
        let (job, words) = match (&entry.thing, &id) {
            (Thing::Piece(_), Some(id)) => (moves::with_hung(&job, &plan, id), " beside what hangs there"),
            (Thing::Mount(_), Some(id)) => self.with_its_mount(&job, &plan, id),
            (Thing::Wall(_), Some(_)) => (job, " as another wall, which is shown now"),
            (Thing::Kit(_) | Thing::Defaults(_), _) | (_, None) => (job, ", in the place of its own"),
        };
        self.session.job = job;
        match (&entry.thing, id) {
            (Thing::Piece(_), Some(id)) => self.session.selected = Some(id.whole()),
            (Thing::Wall(_), Some(id)) => {
                self.session.wall = id;
                self.session.option = None;
                self.session.selected = None;
                self.view_state.view = None;
            }
            _ => {}
        }
        words
    }

    fn with_its_mount(&self, job: &Job, plan: &Plan, mount: &Id) -> (Job, &'static str) {
        match self.session.meant_piece(plan) {
            Some(piece) => (
                moves::with_mount(job, plan, &piece.id, mount),
                ", the piece hangs on it, and its old mount stays in the job",
            ),
            None => (job.clone(), ", and nothing hangs on it yet"),
        }
    }

    /// Keeps something of the job.
    pub(super) fn keep_on_shelf(&mut self, what: &ToShelf) {
        let Some(folder) = &self.my_shelf.folder else { return };
        let job = &self.session.job;
        let entry = match &what.what {
            Kept::Thing(id) => keep(job, id),
            Kept::Kit => Some(keep_kit(job)),
            Kept::Defaults => Some(keep_defaults(job)),
        };
        let Some(entry) = entry else { return };
        let over = what.over.as_deref().and_then(|file| self.my_shelf.path(file));
        match write(folder, &entry.called(&what.name), over) {
            Ok(_) => {
                if let Some(panel) = &mut self.panes.shelf {
                    panel.kept(&what.name);
                }
            }
            Err(why) => self.dialog = Some(Dialog::Message(format!("Not kept: {why}"))),
        }
        self.my_shelf.read();
    }

    /// Takes something off the shelf.
    pub(super) fn remove_from_shelf(&mut self, file: &str) {
        let Some(path) = self.my_shelf.path(file) else { return };
        match remove(path) {
            Ok(()) => {
                if let Some(panel) = &mut self.panes.shelf {
                    panel.tell("It is off the shelf. Jobs that had it have their own copy still.".to_owned());
                }
            }
            Err(why) => self.dialog = Some(Dialog::Message(format!("Still there: {why}"))),
        }
        self.my_shelf.read();
    }
}

/// What went with what was there, in sentences, each with a space before it.
fn went(over: &PutOver) -> String {
    let mut went = String::new();
    if over.drop_went {
        went.push_str(" The drop was measured with that: measure it again.");
    }
    for port in &over.unplugged {
        let called = match (&port.name, port.carries) {
            (Some(name), _) => name.as_str(),
            (None, Carries::Power) => "the power port",
            (None, Carries::Data) => "a data port",
        };
        let said = format!(" The cable of {called} has no port that is plainly its own now: choose one.");
        went.push_str(&said);
    }
    went
}

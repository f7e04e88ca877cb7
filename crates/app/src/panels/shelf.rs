//! My shelf: what was measured once, put into the job by a tap, and what of the job is kept. Shows what it is given
//! and pushes commands; it knows no file.

mod keep;
mod stored;

use super::measured::section;
use crate::command::Queue;
use crate::session::Session;
use crate::theme;
use crate::widgets::chips::chips;
use egui::{Label, RichText, ScrollArea, Ui};
use keep::Naming;
use std::collections::BTreeMap;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::words;

/// What a shelf is for, said while nothing else has to be.
const FOR: &str =
    "A tap puts a copy into the job, as measured. What becomes of the shelf later changes no job.";

/// Room for what is said under the heading, in points: three lines (chosen).
const TOLD: f32 = 62.0;

/// What panels show of the shelf.
#[derive(Clone, Debug, Default)]
pub struct Shown {
    /// What can be put into a job, by kind and name.
    pub things: Vec<Stored>,
    /// The mounts of these, each with the name of its file.
    pub mounts: Vec<(String, Mount)>,
    /// What cannot be read, where, and what to do.
    pub troubles: Vec<String>,
    /// Why there is no shelf at all.
    pub no_folder: Option<String>,
}

/// A thing of the shelf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Stored {
    /// The name of its file.
    pub file: String,
    /// Its kind.
    pub kind: Kind,
    /// What it is called.
    pub name: String,
    /// What tells it apart.
    pub sizes: String,
    /// Whether a new job holds it already.
    pub is_held: bool,
}

/// A kind of thing, in the order in which they are shown.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// A display or another piece.
    Piece,
    /// A mount.
    Mount,
    /// What a wall is built of.
    Wall,
    /// A kit.
    Kit,
    /// Units and settings.
    Defaults,
}

impl Kind {
    const ALL: [Self; 5] = [Self::Piece, Self::Mount, Self::Wall, Self::Kit, Self::Defaults];

    fn heading(self) -> &'static str {
        match self {
            Self::Piece => "Displays and other pieces",
            Self::Mount => "Mounts",
            Self::Wall => "Walls, what they are built of",
            Self::Kit => "Kits",
            Self::Defaults => "Units and settings",
        }
    }
}

/// The pane while it is open.
#[derive(Clone, Debug, Default)]
pub struct Panel {
    /// Where a tap puts a kind, once that was said: in the place of the shown one, or beside it.
    is_over: BTreeMap<Kind, bool>,
    /// What is about to be kept.
    naming: Option<Naming>,
    /// What is taken off if that is said once more.
    doomed: Option<String>,
    /// What was done last.
    told: Option<String>,
}

impl Panel {
    /// Says what was done.
    pub fn tell(&mut self, told: String) {
        self.told = Some(told);
    }

    /// Says that something was kept, so that its name is asked for no more.
    pub fn kept(&mut self, name: &str) {
        self.naming = None;
        self.tell(format!("{name} is kept: any job can have it by one tap."));
    }

    /// Shows the shelf. Whether it stays open.
    #[must_use]
    pub fn ui(
        &mut self,
        ui: &mut Ui,
        session: &Session,
        plan: &Plan,
        shelf: &Shown,
        queue: &mut Queue,
    ) -> bool {
        ui.add_space(4.0);
        let is_closed = ui
            .horizontal_wrapped(|ui| {
                ui.heading("My shelf");
                ui.button("Close the shelf").clicked()
            })
            .inner;
        // Always as high, whatever it says: rows that moved would slip from under the hand.
        ScrollArea::vertical().id_salt("told").max_height(TOLD).show(ui, |ui| {
            ui.set_min_height(TOLD);
            ui.add(Label::new(self.told.as_deref().unwrap_or(FOR)).wrap());
        });
        ui.separator();
        ScrollArea::vertical().id_salt("my shelf").auto_shrink(false).show(ui, |ui| {
            if let Some(why) = &shelf.no_folder {
                ui.add(Label::new(why).wrap());
                return;
            }
            keep::ui(ui, &mut self.naming, session, plan, &shelf.things, queue);
            if shelf.things.is_empty() && shelf.troubles.is_empty() {
                section(ui, "Nothing is on it yet");
                ui.add(
                    Label::new(
                        "Measure a display, a mount or a wall in a job, at the bench or at work, and keep it \
                         here under a name: that is the last time it has to be measured. The kit, and units \
                         and settings that are kept, a new job begins with.",
                    )
                    .wrap(),
                );
            }
            for kind in Kind::ALL {
                self.kind(ui, kind, session, plan, &shelf.things, queue);
            }
            troubles(ui, &shelf.troubles);
            ui.add_space(theme::TOUCH);
        });
        !is_closed
    }

    /// All of one kind.
    fn kind(
        &mut self,
        ui: &mut Ui,
        kind: Kind,
        session: &Session,
        plan: &Plan,
        things: &[Stored],
        queue: &mut Queue,
    ) {
        let mut such = things.iter().filter(|one| one.kind == kind).peekable();
        if such.peek().is_none() {
            return;
        }
        section(ui, kind.heading());
        let over = self.place(ui, kind, session, plan);
        for one in such {
            stored::ui(ui, one, over.as_ref(), &mut self.doomed, queue);
        }
    }

    /// Lets it be said where a tap puts a kind. What it goes in the place of; `None` for beside.
    fn place(&mut self, ui: &mut Ui, kind: Kind, session: &Session, plan: &Plan) -> Option<Id> {
        let quiet = |ui: &mut Ui, text: &str| {
            let text = RichText::new(text).small().color(theme::quiet(ui.theme()));
            ui.add(Label::new(text).wrap());
        };
        let Some((id, name)) = shown(kind, session, plan) else {
            match kind {
                Kind::Kit => quiet(ui, "A tap puts it in the place of the job's kit"),
                Kind::Defaults => quiet(ui, "A tap puts them in the place of the job's own"),
                Kind::Piece | Kind::Mount | Kind::Wall => quiet(ui, "A tap adds it to the job"),
            }
            return None;
        };
        // Of a new job nothing is lost; later a tap adds, and takes nothing away unasked. A wall only says what it
        // is built of.
        let usual = session.short_form || kind == Kind::Wall;
        let is_over = self.is_over.entry(kind).or_insert(usual);
        let entries = match kind {
            Kind::Wall => ["What it is built of", "Another wall"],
            Kind::Mount => ["In its place", "Another, to hang on"],
            _ => ["In its place", "Beside it"],
        };
        let label = format!("Shown: {name}. A tap puts it");
        if let Some(tapped) = chips(ui, &label, entries, Some(usize::from(!*is_over))) {
            *is_over = tapped == 0;
        }
        is_over.then_some(id)
    }
}

/// The one of a kind that is shown, and what it is called.
fn shown(kind: Kind, session: &Session, plan: &Plan) -> Option<(Id, String)> {
    let piece = session.meant_piece(plan);
    match kind {
        Kind::Piece => piece.map(|piece| (piece.id.clone(), words::thing(plan, &piece.id.whole()))),
        Kind::Mount => {
            let mount = session.job.mount(&piece?.mount.as_ref()?.id)?;
            Some((mount.id.clone(), mount.name.clone().unwrap_or_else(|| "the mount".to_owned())))
        }
        Kind::Wall => {
            let wall = session.job.wall(&session.wall)?;
            Some((wall.id.clone(), wall.name.clone().unwrap_or_else(|| "the wall".to_owned())))
        }
        Kind::Kit | Kind::Defaults => None,
    }
}

fn troubles(ui: &mut Ui, troubles: &[String]) {
    if troubles.is_empty() {
        return;
    }
    section(ui, "Left out");
    for trouble in troubles {
        let text = RichText::new(trouble).color(theme::accent(ui.theme()));
        ui.add(Label::new(text).wrap());
    }
}

//! What of the job is kept on the shelf: a tap says what, then a name is asked.

use super::{Kind, Stored, shown};
use crate::command::{Command, Kept, Queue, ToShelf};
use crate::panels::measured::titled;
use crate::session::Session;
use crate::widgets::chips::chips;
use egui::{Button, Id, Key, Label, TextEdit, Ui};
use strikeline_solver::job::Job;
use strikeline_solver::job::kit::Kit;
use strikeline_solver::plan::Plan;

/// What is about to be kept, and its name as typed.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Naming {
    kind: Kind,
    what: Kept,
    name: String,
    /// Whether the name is to have the focus.
    wants_focus: bool,
}

/// Shows what can be kept, and asks for the name of what was chosen.
pub(super) fn ui(
    ui: &mut Ui,
    naming: &mut Option<Naming>,
    session: &Session,
    plan: &Plan,
    things: &[Stored],
    queue: &mut Queue,
) {
    let offered = offered(session, plan);
    let held = offered.iter().position(|(_, one)| naming.as_ref().is_some_and(|it| it.what == one.what));
    let names = offered.iter().map(|(label, _)| *label);
    if let Some(index) = chips(ui, "Keep as mine", names, held) {
        let chosen = offered.into_iter().nth(index).map(|(_, one)| one);
        // A second tap lets go.
        *naming = chosen.filter(|_| held != Some(index));
    }
    if let Some(asked) = naming
        && !ask(ui, asked, things, queue)
    {
        *naming = None;
    }
}

/// What of the job can be kept, each with the name that is proposed.
fn offered(session: &Session, plan: &Plan) -> Vec<(&'static str, Naming)> {
    let mut offered = Vec::new();
    let mut offer = |label, kind, what, name: &str| {
        offered.push((label, Naming { kind, what, name: titled(name), wants_focus: true }));
    };
    for (label, kind) in [("Display", Kind::Piece), ("Mount", Kind::Mount), ("Wall", Kind::Wall)] {
        if let Some((id, name)) = shown(kind, session, plan) {
            let label = if kind == Kind::Piece { piece_label(session, &id) } else { label };
            offer(label, kind, Kept::Thing(id), &name);
        }
    }
    if session.job.kit != Kit::default() {
        offer("Kit", Kind::Kit, Kept::Kit, "My kit");
    }
    if has_defaults(&session.job) {
        offer("Units and settings", Kind::Defaults, Kept::Defaults, "My settings");
    }
    offered
}

fn piece_label(session: &Session, id: &strikeline_solver::subject::Id) -> &'static str {
    use strikeline_solver::job::piece::PieceKind;
    match session.job.piece(id).map(|piece| piece.kind) {
        Some(PieceKind::SoundBar) => "Sound bar",
        Some(PieceKind::Shelf) => "Shelf",
        Some(PieceKind::Box) => "Box",
        Some(PieceKind::Display) | None => "Display",
    }
}

fn has_defaults(job: &Job) -> bool {
    let Job { units, graduation, codes, settings, .. } = Job::new();
    (job.units, job.graduation, job.codes) != (units, graduation, codes) || job.settings != settings
}

/// Asks for a name. Whether it is still asked for.
fn ask(ui: &mut Ui, asked: &mut Naming, things: &[Stored], queue: &mut Queue) -> bool {
    let label = ui.label("Name on the shelf");
    let field = TextEdit::singleline(&mut asked.name)
        .id(Id::unique("name on the shelf"))
        .min_size(egui::vec2(0.0, crate::theme::TOUCH))
        .align(egui::Align2::LEFT_CENTER)
        .desired_width(ui.available_width() - 10.0);
    let field = ui.add(field).labelled_by(label.id);
    if std::mem::take(&mut asked.wants_focus) {
        field.request_focus();
    }
    if asked.kind == Kind::Mount {
        let drop = "The drop to the plate is not kept: under another display it is another.";
        ui.add(Label::new(egui::RichText::new(drop).small().color(crate::theme::quiet(ui.theme()))).wrap());
    }
    let is_entered = field.lost_focus() && ui.input(|input| input.key_pressed(Key::Enter));
    let name = asked.name.trim();
    let alike = things
        .iter()
        .find(|one| one.kind == asked.kind && one.name.trim().to_lowercase() == name.to_lowercase());
    let mut keep = |over: Option<&Stored>| {
        let over = over.map(|one| one.file.clone());
        queue.push(Command::KeepOnShelf(ToShelf { what: asked.what.clone(), name: name.to_owned(), over }));
    };
    if alike.is_some() {
        ui.add(Label::new("One of this name is there.").wrap());
    }
    ui.horizontal_wrapped(|ui| {
        let button =
            |ui: &mut Ui, label: &str| ui.add_enabled(!name.is_empty(), Button::new(label)).clicked();
        match alike {
            None => {
                if button(ui, "Keep") || (is_entered && !name.is_empty()) {
                    keep(None);
                }
            }
            Some(_) => {
                if button(ui, "Keep in its place") {
                    keep(alike);
                }
                if button(ui, "Keep beside it") {
                    keep(None);
                }
            }
        }
        !ui.button("Cancel").clicked()
    })
    .inner
}

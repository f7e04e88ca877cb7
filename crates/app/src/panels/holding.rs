//! Whether the fasteners hold: the verdict of each piece with its working in words, the schedule of fasteners, the
//! holes left empty and why, and how far the fasteners reach.

use super::edit::fold;
use super::follows::List;
use super::measured::section;
use crate::command::{Command, Pane, Queue};
use crate::moves;
use crate::session::Session;
use crate::theme;
use crate::view_state::WorkingOf;
use crate::widgets::in_sight::in_sight;
use crate::widgets::row::Row;
use crate::widgets::unbroken::unbroken;
use egui::accesskit::Role;
use egui::{Align, Button, Id, Label, Layout, RichText, Ui, WidgetInfo, vec2};
use strikeline_drawing::font::Weight;
use strikeline_solver::capacity::group::Word;
use strikeline_solver::choosing::{self, BetterHoles};
use strikeline_solver::limits::Limits;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::plan::verdict::Fastening;
use strikeline_solver::subject::Subject;
use strikeline_solver::words;

/// What asks which of one's own mounts suit the place.
pub(super) const MINE: &str = "Which of mine?";

/// A button that opens a working, with its name for screen readers. Whether it was pressed.
fn opens(ui: &mut Ui, label: &str, name: &str) -> bool {
    let response = ui.add(Button::new(label).min_size(vec2(0.0, theme::TOUCH)));
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
    response.clicked()
}

/// Shows it; nothing where nothing hangs on a mount.
pub(super) fn holding(
    ui: &mut Ui,
    list: &mut List<'_>,
    session: &mut Session,
    plan: &Plan,
    is_resting: bool,
    queue: &mut Queue,
) {
    let mounted = plan.pieces.iter().filter_map(|piece| Some((piece, &piece.mount.as_ref()?.fastening)));
    let mounted: Vec<_> = mounted.collect();
    if mounted.is_empty() {
        return;
    }
    let limits = session.limits(is_resting);
    section(ui, "Fasteners");
    let offers = session.better_holes(is_resting);
    for (piece, fastening) in &mounted {
        let reach = limits.iter().find(|(id, _)| *id == piece.id).map(|(_, limits)| limits);
        let better = offers.iter().find(|better| better.piece == piece.id);
        let id = Id::unique(("holding", piece.id.to_string()));
        in_sight(ui, id, |ui| {
            if mounted.len() > 1 {
                ui.label(words::capital(&words::thing(plan, &piece.id.whole())));
            }
            of_piece(ui, list, session, plan, (piece, fastening), (reach, better));
        });
    }
    if ui.add(Button::new(MINE).min_size(vec2(0.0, theme::TAKEN))).clicked() {
        queue.push(Command::Show(Pane::Mine));
    }
}

/// Shows what holds one piece: the verdict, how far the fasteners reach, what would be better, the schedule, the holes
/// left empty.
fn of_piece(
    ui: &mut Ui,
    list: &mut List<'_>,
    session: &mut Session,
    plan: &Plan,
    (piece, fastening): (&PiecePlan, &Fastening),
    (reach, better): (Option<&Limits>, Option<&BetterHoles>),
) {
    // What it rests on opens by a tap.
    let told = words::verdict_alone(plan, fastening);
    let rests = words::rests_on(plan, fastening);
    let mut told = told.iter();
    if let Some(first) = told.next() {
        let font = theme::font(14.0, Weight::Semibold);
        let text = RichText::new(unbroken(first)).font(font);
        let text =
            if fastening.verdict.word == Word::Short { text.color(theme::accent(ui.theme())) } else { text };
        ui.add(Label::new(text).wrap());
    }
    for more in told {
        let text = RichText::new(unbroken(more)).color(theme::quiet(ui.theme()));
        ui.add(Label::new(text).wrap());
    }
    // The pull that was counted, and what the maker says, each on a line of its own: neither makes the verdict.
    let asks = piece.mount.as_ref().and_then(|mount| words::asks(&session.job, &mount.id));
    for line in words::pull(fastening).into_iter().chain(asks) {
        ui.add(Label::new(RichText::new(unbroken(&line)).color(theme::quiet(ui.theme()))).wrap());
    }
    if let Some(text) = reach.and_then(|limits| words::limits(plan, piece, limits)) {
        ui.add(Label::new(unbroken(&text)).wrap());
    }
    if let Some(better) = better {
        ui.add(Label::new(unbroken(&words::better_holes(better))).wrap());
        let button = Button::new("Take this choice").min_size(vec2(0.0, theme::TOUCH + 6.0));
        if ui.add(button).clicked() {
            session.job = choosing::taken(&session.job, plan, better);
        }
    }
    if !rests.is_empty() {
        let label = words::rests_on_title(rests.len());
        fold(ui, (piece.id.as_str(), "rests on"), &label, false, |ui| {
            for rest in &rests {
                ui.add(Label::new(unbroken(&words::capital(rest))).wrap());
            }
        });
    }
    let name = words::thing(plan, &piece.id.whole());
    if opens(ui, "Show the working", &format!("Working of the verdict on {name}")) {
        list.worked = Some(WorkingOf { piece: piece.id.clone(), hole: None });
    }
    for fastener in &fastening.fasteners {
        let title = words::fastener(plan, fastener);
        let is_selected = list.is_about(&fastener.subject);
        let row = Row { title: &title, colour: None, text: "", is_selected };
        // From the right, so that the button takes what it needs and the row the rest: the panel never grows by it.
        let height = theme::TOUCH;
        let across = Layout::right_to_left(Align::TOP);
        ui.allocate_ui_with_layout(vec2(ui.available_width(), height), across, |ui| {
            let of = words::thing(plan, &fastener.subject);
            if opens(ui, "Working", &format!("Working of {of}")) {
                let hole = Some(fastener.subject.clone());
                list.worked = Some(WorkingOf { piece: piece.id.clone(), hole });
            }
            let width = ui.available_width();
            ui.allocate_ui_with_layout(vec2(width, height), Layout::top_down(Align::LEFT), |ui| {
                ui.set_max_width(width);
                let id = Id::unique(("fastener", fastener.subject.to_string()));
                list.row(ui, id, &fastener.subject, row);
            });
        });
        by_hand(ui, list, session, plan, &fastener.subject);
    }
    for empty in &fastening.left_empty {
        let title = words::left_empty(plan, empty);
        let is_selected = list.is_about(&empty.subject);
        let colour = Some(theme::quiet(ui.theme()));
        let row = Row { title: &title, colour, text: "", is_selected };
        list.row(ui, Id::unique(("left empty", empty.subject.to_string())), &empty.subject, row);
        by_hand(ui, list, session, plan, &empty.subject);
    }
}

/// Under the row of the selected hole: what a hand can choose of it. What holds now is pressed in.
fn by_hand(ui: &mut Ui, list: &List<'_>, session: &mut Session, plan: &Plan, hole: &Subject) {
    if !list.is_selected(hole) {
        return;
    }
    let held = moves::by_hand(&session.job, plan, hole);
    ui.horizontal_wrapped(|ui| {
        for (wanted, name) in moves::choices(&session.job, plan, hole) {
            let button = Button::selectable(held == wanted, unbroken(&name));
            let button = button.frame_when_inactive(true).min_size(vec2(0.0, theme::TOUCH + 6.0));
            if ui.add(button).clicked() && held != wanted {
                session.job = moves::with_by_hand(&session.job, plan, hole, wanted);
            }
        }
    });
}

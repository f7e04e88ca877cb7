//! What follows: the findings, and the marks in the order of work. Choosing one selects what it is about.

use super::behind::behind;
use super::bring::bring;
use super::cable_ways::cable_ways;
use super::holding::holding;
use super::measured::section;
use super::mending;
use crate::command::Queue;
use crate::session::Session;
use crate::theme;
use crate::view_state::{ViewState, WorkingOf};
use crate::widgets::in_sight::in_sight;
use crate::widgets::row::{Row, row};
use crate::widgets::unbroken::unbroken;
use egui::{Id, ScrollArea, Ui};
use strikeline_solver::error_budget::error_budgets;
use strikeline_solver::finding::Level;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkWhat, Stage};
use strikeline_solver::subject::Subject;
use strikeline_solver::words;

/// Shows what follows. What is chosen here is brought into view on the drawing; what is selected there is scrolled to.
pub fn ui(ui: &mut Ui, session: &mut Session, view_state: &mut ViewState, plan: &Plan, queue: &mut Queue) {
    let shown_id = Id::unique("follows shown for");
    let shown_for: Option<Subject> = ui.data(|data| data.get_temp(shown_id)).flatten();
    // Not while a hand is down: nothing moves then but what it holds.
    let is_touched = ui.input(|input| input.pointer.any_down() || input.any_touches());
    let is_new = !is_touched && session.selected != shown_for;
    let selected = session.selected.clone();
    // What takes many solves waits for a hand that rests, on keys too.
    let is_resting = !is_touched && ui.input(|input| input.keys_down.is_empty());
    let mut list = List { selected: &selected, scrolls: is_new, chosen: None, worked: None };
    ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 2.0;
        findings(ui, &mut list, session, plan, is_resting);
        assumed(ui, &mut list, plan);
        holding(ui, &mut list, session, plan, is_resting, queue);
        cable_ways(ui, session, view_state, plan);
        behind(ui, &mut list, session, plan, is_touched);
        marks(ui, &mut list, plan);
        in_sight(ui, Id::unique("error budget"), |ui| how_true(ui, session, plan));
        in_sight(ui, Id::unique("bring"), |ui| bring(ui, session, plan, is_resting));
        section(ui, "Cautions");
        for caution in words::cautions() {
            ui.add(egui::Label::new(egui::RichText::new(*caution).color(theme::quiet(ui.theme()))).wrap());
        }
        ui.add_space(theme::TOUCH);
    });
    if let Some(worked) = list.worked {
        view_state.working = Some(worked);
        ui.request_repaint();
    }
    if let Some(chosen) = list.chosen {
        // It is where the hand is already.
        ui.data_mut(|data| data.insert_temp(shown_id, Some(chosen.clone())));
        session.selected = Some(chosen.clone());
        view_state.wanted = Some(chosen);
        ui.request_repaint();
    } else if is_new {
        let selected = session.selected.clone();
        ui.data_mut(|data| data.insert_temp(shown_id, selected));
    }
}

/// The rows while they are shown.
pub(super) struct List<'a> {
    selected: &'a Option<Subject>,
    /// Whether the first row that is lit is still to be scrolled to.
    scrolls: bool,
    /// What was chosen.
    chosen: Option<Subject>,
    /// Whose working was asked for.
    pub(super) worked: Option<WorkingOf>,
}

impl List<'_> {
    /// Shows a row about a subject, and scrolls to the first that is lit where that is due.
    pub(super) fn row(&mut self, ui: &mut Ui, id: Id, subject: &Subject, shown: Row<'_>) {
        let response = row(ui, id, shown);
        if shown.is_selected && self.scrolls {
            self.scrolls = false;
            response.scroll_to_me(Some(egui::Align::Center));
        }
        if response.clicked() {
            self.chosen = Some(subject.clone());
        }
    }

    /// Whether what is told about a subject is about what is selected: the same, or one of its parts.
    pub(super) fn is_about(&self, subject: &Subject) -> bool {
        self.selected.as_ref().is_some_and(|selected| {
            subject == selected || subject.id == selected.id && selected.part.is_none()
        })
    }

    /// Whether a subject itself is selected.
    pub(super) fn is_selected(&self, subject: &Subject) -> bool {
        self.selected.as_ref() == Some(subject)
    }

    /// Whether a mark is that which is selected: itself, one at the selected hole, or a line of the selected piece's
    /// plate, which says where the piece is.
    fn is_mark(&self, mark: &Mark) -> bool {
        let Some(selected) = self.selected else { return false };
        let is_line = matches!(mark.what, MarkWhat::CentreLine | MarkWhat::LevelLine);
        let at_hole = mark.id.id == selected.id
            && selected.part.is_some()
            && mark.id.part_str().strip_prefix(selected.part_str()).is_some_and(|rest| rest.starts_with('.'));
        mark.id == *selected || at_hole || is_line && mark.piece == selected.id && selected.part.is_none()
    }
}

/// The word that stands before a finding, so that its colour is not all that tells its level.
fn level(level: Level) -> &'static str {
    match level {
        Level::Stop => "Stop",
        Level::Caution => "Caution",
        Level::Note => "Note",
    }
}

/// The findings, each with what would clear it: a tap on that takes it, as one step.
fn findings(ui: &mut Ui, list: &mut List<'_>, session: &mut Session, plan: &Plan, is_resting: bool) {
    let mends = session.mends(is_resting);
    if is_resting && !mends.is_all {
        ui.request_repaint();
    }
    let mut taken: Option<Job> = None;
    section(ui, "Findings");
    if plan.findings.is_empty() {
        ui.label("Nothing found.");
    }
    for (index, finding) in plan.findings.iter().enumerate() {
        // A finding has no id of its own: its subject and its place among those of that subject.
        let earlier =
            plan.findings.iter().take(index).filter(|other| other.subject == finding.subject).count();
        let id = Id::unique(("finding", finding.subject.to_string(), earlier));
        let of_it = mends.of.get(index).map(|mends| mends.as_slice()).unwrap_or_default();
        in_sight(ui, id, |ui| {
            let text = words::finding(plan, finding);
            let title = format!("{}: {}", level(finding.level), words::thing(plan, &finding.subject));
            let shown = Row {
                title: &title,
                colour: Some(theme::level(ui.theme(), finding.level)),
                text: &text,
                is_selected: list.is_about(&finding.subject),
            };
            list.row(ui, id, &finding.subject, shown);
            mending::mends(ui, id, session, plan, of_it, &mut taken);
        });
    }
    if let Some(job) = taken {
        session.job = job;
        ui.request_repaint();
    }
}

fn assumed(ui: &mut Ui, list: &mut List<'_>, plan: &Plan) {
    if plan.assumed.is_empty() {
        return;
    }
    section(ui, "Assumed, not measured");
    for (index, assumed) in plan.assumed.iter().enumerate() {
        let earlier =
            plan.assumed.iter().take(index).filter(|other| other.subject == assumed.subject).count();
        let id = Id::unique(("assumed", assumed.subject.to_string(), earlier));
        in_sight(ui, id, |ui| {
            let text = words::assumed(plan, assumed);
            let is_selected = list.is_about(&assumed.subject);
            let colour = Some(theme::quiet(ui.theme()));
            let shown = Row { title: &text, colour, text: "", is_selected };
            list.row(ui, id, &assumed.subject, shown);
        });
    }
}

fn marks(ui: &mut Ui, list: &mut List<'_>, plan: &Plan) {
    let mut stage: Option<Stage> = None;
    for mark in &plan.marks {
        if stage != Some(mark.stage) {
            stage = Some(mark.stage);
            section(ui, words::stage(mark.stage));
        }
        let id = Id::unique(("mark", mark.id.to_string()));
        in_sight(ui, id, |ui| {
            let name = words::mark_name(plan, mark);
            let text = words::mark(plan, mark);
            let is_selected = list.is_mark(mark);
            let colour = mark.assumed.then(|| theme::quiet(ui.theme()));
            list.row(ui, id, &mark.id, Row { title: &name, colour, text: &text, is_selected });
        });
    }
}

/// What the finished displays can be off by.
fn how_true(ui: &mut Ui, session: &Session, plan: &Plan) {
    for (index, line) in words::error_budgets(plan, &error_budgets(&session.job, plan)).iter().enumerate() {
        if index == 0 {
            section(ui, words::on_paper::HOW_TRUE);
        }
        ui.label(unbroken(line));
    }
}

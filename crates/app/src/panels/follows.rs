//! What follows: the findings, and the marks in the order of work. Choosing one selects what it is about.

use super::measured::section;
use crate::session::Session;
use crate::theme;
use crate::widgets::row::{Row, row};
use egui::{Id, ScrollArea, Ui};
use strikeline_solver::finding::Level;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::Stage;
use strikeline_solver::subject::Subject;
use strikeline_solver::words;

/// Shows what follows.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    ScrollArea::vertical().auto_shrink(false).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 2.0;
        findings(ui, &mut session.selected, plan);
        assumed(ui, &mut session.selected, plan);
        marks(ui, &mut session.selected, plan);
        ui.add_space(theme::TOUCH);
    });
}

/// The word that stands before a finding, so that its colour is not all that tells its level.
fn level(level: Level) -> &'static str {
    match level {
        Level::Stop => "Stop",
        Level::Caution => "Caution",
        Level::Note => "Note",
    }
}

fn findings(ui: &mut Ui, selected: &mut Option<Subject>, plan: &Plan) {
    section(ui, "Findings");
    if plan.findings.is_empty() {
        ui.label("Nothing found.");
    }
    for (index, finding) in plan.findings.iter().enumerate() {
        let theme = ui.theme();
        let text = words::finding(plan, finding);
        let title = format!("{}: {}", level(finding.level), words::thing(plan, &finding.subject));
        // A finding has no id of its own: its subject and its place among those of that subject.
        let earlier =
            plan.findings.iter().take(index).filter(|other| other.subject == finding.subject).count();
        let id = Id::unique(("finding", finding.subject.to_string(), earlier));
        let shown = Row {
            title: &title,
            colour: Some(theme::level(theme, finding.level)),
            text: &text,
            is_selected: selected.as_ref() == Some(&finding.subject),
        };
        if row(ui, id, shown).clicked() {
            *selected = Some(finding.subject.clone());
        }
    }
}

fn assumed(ui: &mut Ui, selected: &mut Option<Subject>, plan: &Plan) {
    if plan.assumed.is_empty() {
        return;
    }
    section(ui, "Assumed, not measured");
    for (index, assumed) in plan.assumed.iter().enumerate() {
        let text = words::assumed(plan, assumed);
        let earlier =
            plan.assumed.iter().take(index).filter(|other| other.subject == assumed.subject).count();
        let id = Id::unique(("assumed", assumed.subject.to_string(), earlier));
        let is_selected = selected.as_ref() == Some(&assumed.subject);
        let colour = Some(theme::quiet(ui.theme()));
        if row(ui, id, Row { title: &text, colour, text: "", is_selected }).clicked() {
            *selected = Some(assumed.subject.clone());
        }
    }
}

fn marks(ui: &mut Ui, selected: &mut Option<Subject>, plan: &Plan) {
    let mut stage: Option<Stage> = None;
    for mark in &plan.marks {
        if stage != Some(mark.stage) {
            stage = Some(mark.stage);
            section(ui, words::stage(mark.stage));
        }
        let name = words::mark_name(plan, mark);
        let text = words::mark(plan, mark);
        let id = Id::unique(("mark", mark.id.to_string()));
        let is_selected = selected.as_ref() == Some(&mark.id);
        let colour = mark.assumed.then(|| theme::quiet(ui.theme()));
        if row(ui, id, Row { title: &name, colour, text: &text, is_selected }).clicked() {
            *selected = Some(mark.id.clone());
        }
    }
}

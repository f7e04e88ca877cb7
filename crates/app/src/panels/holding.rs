//! Whether the fasteners hold: the verdict of each piece with its working in words, the schedule of fasteners, the holes
//! left empty and why.

use super::edit::fold;
use super::follows::List;
use super::measured::section;
use crate::theme;
use crate::view_state::WorkingOf;
use crate::widgets::row::Row;
use crate::widgets::unbroken::unbroken;
use egui::accesskit::Role;
use egui::{Align, Button, Id, Label, Layout, RichText, Ui, WidgetInfo, vec2};
use strikeline_drawing::font::Weight;
use strikeline_solver::capacity::group::Word;
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// The room that a fastener's button takes beside its row, in points.
const BESIDE: f32 = 74.0;

/// A button that opens a working, with its name for screen readers. Whether it was pressed.
fn opens(ui: &mut Ui, label: &str, name: &str) -> bool {
    let response = ui.add(Button::new(label).min_size(vec2(0.0, theme::TOUCH)));
    response.widget_info(|| WidgetInfo::labeled(Role::Button, true, name));
    response.clicked()
}

/// Shows it; nothing where nothing hangs on a mount.
pub(super) fn holding(ui: &mut Ui, list: &mut List<'_>, plan: &Plan) {
    let mounted = plan.pieces.iter().filter_map(|piece| Some((piece, &piece.mount.as_ref()?.fastening)));
    let mounted: Vec<_> = mounted.collect();
    if mounted.is_empty() {
        return;
    }
    section(ui, "Fasteners");
    for (piece, fastening) in &mounted {
        if mounted.len() > 1 {
            ui.label(words::capital(&words::thing(plan, &piece.id.whole())));
        }
        let told = words::verdict(plan, fastening);
        let rests = words::rests_on(plan, fastening);
        // The last sentence names what it rests on: here that opens by a tap.
        let mut told = told.iter().take(told.len().saturating_sub(usize::from(!rests.is_empty())));
        if let Some(first) = told.next() {
            let font = theme::font(14.0, Weight::Semibold);
            let text = RichText::new(unbroken(first)).font(font);
            let text = if fastening.verdict.word == Word::Short {
                text.color(theme::accent(ui.theme()))
            } else {
                text
            };
            ui.add(Label::new(text).wrap());
        }
        for more in told {
            let text = RichText::new(unbroken(more)).color(theme::quiet(ui.theme()));
            ui.add(Label::new(text).wrap());
        }
        if !rests.is_empty() {
            let label = format!("Rests on {} chosen values", rests.len());
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
            ui.horizontal_top(|ui| {
                let width = ui.available_width() - BESIDE;
                ui.allocate_ui_with_layout(vec2(width, 0.0), Layout::top_down(Align::LEFT), |ui| {
                    ui.set_width(width);
                    let id = Id::unique(("fastener", fastener.subject.to_string()));
                    list.row(ui, id, &fastener.subject, row);
                });
                let of = words::thing(plan, &fastener.subject);
                if opens(ui, "Working", &format!("Working of {of}")) {
                    let hole = Some(fastener.subject.clone());
                    list.worked = Some(WorkingOf { piece: piece.id.clone(), hole });
                }
            });
        }
        for empty in &fastening.left_empty {
            let title = words::left_empty(plan, empty);
            let is_selected = list.is_about(&empty.subject);
            let colour = Some(theme::quiet(ui.theme()));
            let row = Row { title: &title, colour, text: "", is_selected };
            list.row(ui, Id::unique(("left empty", empty.subject.to_string())), &empty.subject, row);
        }
    }
}

//! The cables' way, and the other ways as a short list: one that is pointed at is drawn, one that is tapped is taken.

use super::measured::{section, titled};
use crate::moves;
use crate::session::Session;
use crate::theme;
use crate::view_state::ViewState;
use crate::widgets::in_sight::in_sight;
use crate::widgets::row::{Row, row};
use crate::widgets::unbroken::unbroken;
use egui::{Button, Id, Label, RichText, Ui, vec2};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::words;

/// What lets go of an opening that is kept.
pub const BEST: &str = "Best way again";

/// Shows them; nothing where no port is used.
pub(super) fn cable_ways(ui: &mut Ui, session: &mut Session, view_state: &mut ViewState, plan: &Plan) {
    view_state.previewed = None;
    let is_touched = ui.input(|input| input.pointer.any_down() || input.any_touches());
    view_state.found.look(session, is_touched);
    let with = plan.pieces.iter().filter(|piece| piece.cable.is_some());
    for (index, piece) in with.enumerate() {
        if index == 0 {
            section(ui, "Cables");
            for told in view_state.found.changes() {
                ui.add(Label::new(RichText::new(unbroken(told)).color(theme::accent(ui.theme()))).wrap());
            }
        }
        let id = Id::unique(("cables", piece.id.to_string()));
        in_sight(ui, id, |ui| of_piece(ui, session, view_state, plan, piece));
    }
}

fn of_piece(ui: &mut Ui, session: &mut Session, view_state: &mut ViewState, plan: &Plan, piece: &PiecePlan) {
    let Some(cable) = &piece.cable else { return };
    ui.label(titled(&words::thing(plan, &piece.id.whole())));
    for line in words::cable(plan, piece) {
        ui.add(Label::new(unbroken(&line)).wrap());
    }
    for (index, other) in cable.alternatives.iter().enumerate() {
        let text = words::alternative(plan, other);
        let title = format!("Way {}", index + 2);
        let shown =
            Row { title: &title, colour: Some(theme::quiet(ui.theme())), text: &text, is_selected: false };
        let response = row(ui, Id::unique(("other way", piece.id.to_string(), index)), shown);
        if response.hovered() || response.has_focus() {
            view_state.previewed = Some(other.run.clone());
        }
        if response.clicked() {
            session.job = moves::with_way(&session.job, plan, &piece.id, other);
            ui.request_repaint();
        }
    }
    let is_kept = moves::is_kept(&session.job, plan, &piece.id);
    if is_kept && ui.add(Button::new(BEST).min_size(vec2(0.0, theme::TOUCH + 6.0))).clicked() {
        session.job = moves::without_kept(&session.job, plan, &piece.id);
        ui.request_repaint();
    }
}

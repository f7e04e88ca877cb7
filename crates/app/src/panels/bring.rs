//! What to bring for the whole job, with the option that is looked at: a line a thing, with what asks for it.

use super::measured::section;
use crate::session::Session;
use crate::theme;
use crate::widgets::unbroken::unbroken;
use egui::{Label, RichText, Ui};
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// Shows it; nothing where nothing hangs. It is worked out anew only once the hand rests.
pub(super) fn bring(ui: &mut Ui, session: &mut Session, plan: &Plan, is_resting: bool) {
    let lines = session.carry(is_resting);
    if lines.is_empty() {
        return;
    }
    section(ui, words::on_paper::CARRY);
    ui.add(Label::new(unbroken(&words::carried_for(&session.job, &[plan]))).wrap());
    for line in lines.iter() {
        ui.add_space(2.0);
        ui.add(Label::new(RichText::new(unbroken(&words::carried(plan, line))).strong()).wrap());
        let why = RichText::new(unbroken(&words::carried_why(plan, line)));
        ui.add(Label::new(why.color(theme::quiet(ui.theme()))).wrap());
    }
}

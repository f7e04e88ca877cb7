//! What would clear a finding: rows to take by a tap, and lines of what has to be found or done first.

use crate::session::Session;
use crate::theme;
use crate::widgets::row::{Row, row_to_take};
use crate::widgets::unbroken::unbroken;
use egui::accesskit::Role;
use egui::{Frame, Id, Label, Margin, RichText, Ui, WidgetInfo};
use strikeline_solver::job::Job;
use strikeline_solver::mend::MendPlan;
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// From a finding's edge to what would clear it, in points.
const IN: i8 = 14;

/// Shows them under the finding of this id. What was tapped is the job in `taken`.
pub(super) fn mends(
    ui: &mut Ui,
    finding: Id,
    session: &Session,
    plan: &Plan,
    mends: &[MendPlan],
    taken: &mut Option<Job>,
) {
    if mends.is_empty() {
        return;
    }
    Frame::new().inner_margin(Margin { left: IN, right: 2, top: 0, bottom: 6 }).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 4.0;
        for (index, mend) in mends.iter().enumerate() {
            let told = words::mend(&session.job, plan, mend);
            let Some(job) = &mend.job else {
                let text = RichText::new(unbroken(&told)).color(theme::quiet(ui.theme()));
                ui.add(Label::new(text).wrap());
                continue;
            };
            let shown = Row { title: &told, colour: None, text: "", is_selected: false };
            let response = row_to_take(ui, finding.with(("mend", index)), shown);
            let called = format!("Take: {told}");
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &called));
            if response.clicked() {
                *taken = Some(job.clone());
            }
        }
    });
}

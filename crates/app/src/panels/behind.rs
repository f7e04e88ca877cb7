//! What is behind the face, as far as hits tell: the spacing, hits that are of no stud, and where to probe next, with a
//! tap for each answer.

use super::follows::List;
use super::measured::section;
use crate::moves;
use crate::session::Session;
use crate::theme;
use crate::widgets::row::Row;
use crate::widgets::unbroken::unbroken;
use egui::{Button, Id, Label, RichText, Ui, vec2};
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// What a probe can meet beside what it is asked for, and what that is called on its button.
const OTHERS: [(HitKind, &str); 4] = [
    (HitKind::Wood, "Wood"),
    (HitKind::Air, "Air"),
    (HitKind::ShallowWood, "Shallow wood"),
    (HitKind::Metal, "Metal"),
];

/// Shows it; nothing on a wall of which nothing is known yet. An answer is a hit at the place of the probe.
pub(super) fn behind(ui: &mut Ui, list: &mut List<'_>, session: &mut Session, plan: &Plan, is_touched: bool) {
    if plan.framing.planes.is_empty() {
        return;
    }
    section(ui, "Behind the face");
    for plane in &plan.framing.planes {
        ui.add(Label::new(unbroken(&words::spacing(plan, plane))).wrap());
        for outlier in &plane.outliers {
            let text = words::outlier(plan, outlier);
            let subject = outlier.hit.whole();
            let colour = Some(theme::quiet(ui.theme()));
            let row = Row { title: &text, colour, text: "", is_selected: list.is_about(&subject) };
            list.row(ui, Id::unique(("outlier", outlier.hit.to_string())), &subject, row);
        }
    }
    if plan.pieces.iter().all(|piece| piece.mount.is_none()) {
        return;
    }
    let probe = session.next_probe(!is_touched);
    ui.add_space(4.0);
    ui.label("Next probe");
    let told = words::next_probe(plan, probe.as_deref());
    ui.add(Label::new(RichText::new(unbroken(&told)).color(theme::quiet(ui.theme()))).wrap());
    let Some(probe) = probe else { return };
    ui.horizontal_wrapped(|ui| {
        let asked: Vec<_> = probe
            .answers
            .iter()
            .filter_map(|answer| Some((answer.said.hit()?, words::said(answer.said))))
            .collect();
        // A magnet is held, not pushed in: it holds, or there is nothing to be noted.
        let is_bit = asked.iter().all(|(kind, _)| *kind != HitKind::Magnet);
        let others =
            OTHERS.into_iter().filter(|(kind, _)| is_bit && asked.iter().all(|(one, _)| one != kind));
        for (met, name) in asked.iter().copied().chain(others) {
            if ui.add(Button::new(name).min_size(vec2(0.0, theme::TOUCH + 6.0))).clicked() {
                session.job = moves::probed(&session.job, plan, probe.place, met);
            }
        }
    });
}

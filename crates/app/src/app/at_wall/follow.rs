//! The short list after an answer: what to rub out, move, strike anew or make good, and what is still good. A tap on an
//! entry shows its mark.

use super::sizes::points;
use crate::theme;
use crate::widgets::unbroken::unbroken;
use egui::{Button, Frame, Label, RichText, Ui, vec2};
use strikeline_drawing::font::Weight;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Subject;
use strikeline_solver::words;

/// Shows the list; nothing where nothing was struck, drilled or cut yet. The mark that was tapped.
pub(super) fn follow(ui: &mut Ui, plan: &Plan) -> Option<Subject> {
    let list = words::follow_up(plan);
    if list.is_empty() {
        return None;
    }
    let mut tapped = None;
    Frame::group(ui.style()).show(ui, |ui| {
        ui.set_width(ui.available_width());
        for one in &list {
            match &one.asked {
                Some((kind, mark)) => {
                    let kind = RichText::new(words::follow_kind(*kind))
                        .font(theme::font(20.0, Weight::Semibold))
                        .color(theme::accent(ui.theme()));
                    let height = points(ui, 9.0);
                    if ui.add(Button::new(kind).min_size(vec2(110.0, height))).clicked() {
                        tapped = Some(mark.clone());
                    }
                    ui.add(Label::new(RichText::new(unbroken(&one.text)).size(20.0)).wrap());
                }
                None => {
                    let text = RichText::new(unbroken(&one.text)).size(20.0);
                    ui.add(Label::new(text).wrap());
                }
            }
        }
    });
    ui.add_space(8.0);
    tapped
}

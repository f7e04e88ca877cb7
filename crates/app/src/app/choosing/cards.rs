//! The options side by side, each a picture and its words; the rows of all stand level, so that one is read against the
//! other.

use super::{told, window};
use crate::canvas::paint::paint;
use crate::theme;
use egui::accesskit::Role;
use egui::{Grid, Id as UiId, RichText, ScrollArea, Sense, Stroke, StrokeKind, Ui, WidgetInfo, vec2};
use std::rc::Rc;
use strikeline_drawing::customer_view::customer_view;
use strikeline_drawing::font::Weight;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::words;

/// The least width of a card, in points (chosen: a picture that tells something, and words of a few to a line).
const LEAST: f32 = 260.0;

/// An option as it stands beside the others.
pub(super) struct Card {
    pub(super) option: Id,
    pub(super) name: String,
    pub(super) is_chosen: bool,
    pub(super) plan: Rc<Plan>,
}

/// Shows them. The option that was tapped.
pub(super) fn cards(ui: &mut Ui, cards: &[Card]) -> Option<Id> {
    let gap = ui.spacing().item_spacing.x;
    let count = cards.len().max(1) as f32;
    let width = ((ui.available_width() - gap * (count - 1.0)) / count).max(LEAST);
    let mut tapped = None;
    ScrollArea::both().auto_shrink(false).show(ui, |ui| {
        Grid::new("cards").num_columns(cards.len()).min_col_width(width).max_col_width(width).show(
            ui,
            |ui| {
                for card in cards {
                    if picture(ui, card, width) {
                        tapped = Some(card.option.clone());
                    }
                }
                ui.end_row();
                let rows: Vec<_> = cards.iter().map(|card| words::offer(&card.plan)).collect();
                let parts = rows.first().map(|row| row.len()).unwrap_or_default();
                for index in 0..parts {
                    for row in &rows {
                        ui.vertical(|ui| {
                            ui.set_width(width);
                            if let Some((part, text)) = row.get(index) {
                                told(ui, *part, text);
                            }
                        });
                    }
                    ui.end_row();
                }
            },
        );
    });
    tapped
}

/// One picture with its name. Whether it was tapped.
fn picture(ui: &mut Ui, card: &Card, width: f32) -> bool {
    ui.vertical(|ui| {
        ui.set_width(width);
        let chosen = if card.is_chosen { "\u{2713} " } else { "" };
        let name = RichText::new(format!("{chosen}{}", card.name)).font(theme::font(19.0, Weight::Semibold));
        ui.add(egui::Label::new(name).wrap());
        let outline = card.plan.survey.outline;
        let share = (outline.height().mm() / outline.width().mm().max(1.0)) as f32;
        let size = vec2(width, (width * share).clamp(width * 0.3, width));
        let (canvas, _) = ui.allocate_exact_size(size, Sense::hover());
        let response = ui.interact(canvas, UiId::unique(("card", card.option.to_string())), Sense::click());
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, format!("Look at {}", card.name)));
        let painter = ui.painter_at(canvas);
        painter.rect_filled(canvas, 0.0, theme::desk(ui.theme()));
        let scene = customer_view(&card.plan, &window(&card.plan, canvas).look());
        paint(&painter, canvas.min, ui.theme(), &scene);
        if response.hovered() || response.has_focus() || card.is_chosen {
            let stroke = Stroke::new(2.0, theme::accent(ui.theme()));
            painter.rect_stroke(canvas.shrink(1.0), 0.0, stroke, StrokeKind::Inside);
        }
        response.clicked()
    })
    .inner
}

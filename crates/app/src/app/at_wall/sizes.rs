//! True sizes: once per screen a tape is laid on a bar, and what it shows is typed; from then on what has to be so large
//! is so large on this screen.

use super::GLOVE_MM;
use crate::theme;
use crate::widgets::quantity_field::{Allowed, quantity_field};
use egui::{Button, Context, Id, Label, RichText, Sense, Stroke, Ui, pos2, vec2};
use strikeline_drawing::font::Weight;
use strikeline_solver::units::{Length, LengthUnit};

/// A point where nobody laid a tape on the screen: 96 points to the inch, as systems suppose.
const USUAL_MM_PER_POINT: f32 = 25.4 / 96.0;
/// No screen's points are smaller or larger than this (chosen: what is typed beyond is a slip).
const LEAST_MM_PER_POINT: f32 = 0.08;
const MOST_MM_PER_POINT: f32 = 1.2;

/// So many millimetres on this screen, in points.
pub(super) fn points(ui: &Ui, mm: f32) -> f32 {
    mm / mm_per_point(ui.ctx())
}

fn mm_per_point(context: &Context) -> f32 {
    let pixel: Option<f32> = context.data(|data| data.get_temp(pixel_id()));
    pixel.map_or(USUAL_MM_PER_POINT, |mm| mm * context.pixels_per_point())
}

fn pixel_id() -> Id {
    Id::unique("millimetres of a pixel")
}

/// Makes sizes true on a screen whose pixels are so large, in millimetres; as systems suppose where that is not known.
pub(in super::super) fn make_true(context: &Context, mm_per_pixel: Option<f32>) {
    context.data_mut(|data| match mm_per_pixel {
        Some(mm) => {
            data.insert_temp(pixel_id(), mm);
        }
        None => data.remove::<f32>(pixel_id()),
    });
}

/// What tells one screen from another: its size in points, and how many pixels a point has.
pub(in super::super) fn screen(context: &Context) -> String {
    context.input(|input| {
        let size = input.viewport().monitor_size.unwrap_or_default();
        let pixels = input.viewport().native_pixels_per_point.unwrap_or(1.0);
        format!("{:.0} x {:.0} at {pixels:.3}", size.x, size.y)
    })
}

/// The bar while it is open.
#[derive(Clone, Debug, Default)]
pub(super) struct Sizes {
    shown: Option<Length>,
}

/// What a hand made of the bar.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Measured {
    /// Nothing yet.
    Open,
    /// It was let be.
    Left,
    /// How large a pixel is, in millimetres.
    MmPerPixel(f32),
}

impl Sizes {
    /// Shows the bar and the field.
    pub(super) fn ui(&mut self, ui: &mut Ui, bare: LengthUnit) -> Measured {
        let mut measured = Measured::Open;
        ui.add_space(12.0);
        ui.label(RichText::new("True sizes on this screen").font(theme::font(26.0, Weight::Semibold)));
        let text = "Lay a tape on the bar, from the left end to the right end, and type what it shows. Figures and \
                    buttons here are then as large as they should be.";
        ui.add(Label::new(RichText::new(text).size(19.0)).wrap());
        ui.add_space(12.0);
        let long = (ui.available_width() - 40.0).max(100.0);
        bar(ui, long);
        ui.add_space(12.0);
        let allowed = Allowed { bare, signed: false, empty: true };
        quantity_field(ui, Id::unique("true sizes"), "The tape shows", &mut self.shown, allowed);
        let told = self.shown.map(|shown| narrow(shown.mm()) / long);
        let usable = told.filter(|mm| (LEAST_MM_PER_POINT..MOST_MM_PER_POINT).contains(mm));
        if told.is_some() && usable.is_none() {
            let text = "No screen is so made: see that the tape lies along the whole bar.";
            ui.label(RichText::new(text).size(19.0).color(theme::accent(ui.theme())));
        }
        ui.add_space(8.0);
        ui.horizontal(|ui| {
            let size = vec2(160.0, points(ui, GLOVE_MM));
            let big = |text: &str| Button::new(RichText::new(text).size(20.0)).min_size(size);
            if ui.add_enabled(usable.is_some(), big("Keep")).clicked()
                && let Some(mm) = usable
            {
                measured = Measured::MmPerPixel(mm / ui.ctx().pixels_per_point());
            }
            if ui.add(big("Leave it")).clicked() {
                measured = Measured::Left;
            }
        });
        measured
    }
}

/// A bar so long, with a tick at either end.
fn bar(ui: &mut Ui, long: f32) {
    let (rect, _) = ui.allocate_exact_size(vec2(long, 48.0), Sense::hover());
    let colour = ui.visuals().strong_text_color();
    let painter = ui.painter_at(rect.expand(2.0));
    let (y, stroke) = (rect.center().y, Stroke::new(2.0, colour));
    painter.line_segment([pos2(rect.left(), y), pos2(rect.right(), y)], Stroke::new(6.0, colour));
    for x in [rect.left(), rect.right()] {
        painter.line_segment([pos2(x, rect.top()), pos2(x, rect.bottom())], stroke);
    }
}

/// A size on a screen: what f32 lacks of it nobody sees.
#[expect(clippy::cast_possible_truncation, reason = "a few hundred millimetres")]
fn narrow(mm: f64) -> f32 {
    mm as f32
}

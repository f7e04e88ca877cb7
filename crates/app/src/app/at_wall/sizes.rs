//! True sizes: once per screen a tape is laid on a bar, and what it shows is typed; from then on what has to be so
//! large is so large on this screen.

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
    let id = pixel_id(context);
    let pixel: Option<f32> = context.data(|data| data.get_temp(id));
    pixel.map_or(USUAL_MM_PER_POINT, |mm| mm * context.pixels_per_point())
}

fn pixel_id(context: &Context) -> Id {
    Id::unique(("millimetres of a pixel", screen(context)))
}

/// Makes sizes true on the present screen, whose pixels are so large, in millimetres, until the window is closed.
pub(in super::super) fn make_true(context: &Context, mm_per_pixel: f32) {
    let id = pixel_id(context);
    context.data_mut(|data| {
        data.insert_temp(id, mm_per_pixel);
    });
}

/// What tells one screen from another, however its picture is zoomed: its size in pixels, and how many of them the
/// system makes a point.
pub(in super::super) fn screen(context: &Context) -> String {
    context.input(|input| {
        let size = input.viewport().monitor_size.unwrap_or_default() * input.pixels_per_point();
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

#[cfg(test)]
mod tests {
    use super::*;
    use egui::{RawInput, Vec2, ViewportInfo};

    /// A frame on a screen of 1920 x 1080 pixels, the picture zoomed by so much.
    fn frame(context: &Context, native: f32, zoom: f32, see: impl FnMut(&mut Ui)) {
        context.set_zoom_factor(zoom);
        let mut input = RawInput::default();
        let size = Vec2::new(1920.0, 1080.0) / (native * zoom);
        let info = ViewportInfo {
            monitor_size: Some(size),
            native_pixels_per_point: Some(native),
            ..ViewportInfo::default()
        };
        input.viewports.insert(input.viewport_id, info);
        context.run_ui(input, see).textures_delta.clear();
    }

    #[test]
    fn a_screen_is_the_same_and_true_however_its_picture_is_zoomed() {
        let context = Context::default();
        frame(&context, 1.0, 1.0, |_| ());
        frame(&context, 1.0, 1.0, |ui| make_true(ui.ctx(), 0.2));
        let mut long = 0.0;
        for zoom in [1.0, 1.25, 2.0] {
            frame(&context, 1.0, zoom, |_| ());
            frame(&context, 1.0, zoom, |ui| long = points(ui, 10.0));
            let expected = 10.0 / (0.2 * zoom);
            assert!((long - expected).abs() < 1e-3, "{zoom}: {long}, not {expected}");
        }
        // Another screen was not measured.
        frame(&context, 1.5, 1.0, |_| ());
        frame(&context, 1.5, 1.0, |ui| long = points(ui, 10.0));
        assert!((long - 10.0 / USUAL_MM_PER_POINT).abs() < 1e-3, "{long}");
    }
}

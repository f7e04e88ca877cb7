//! A scene as shapes of the toolkit. Each coordinate is converted once and rounded to a pixel, so that lines
//! that share a place share a pixel.

use crate::theme::{self, Paint};
use crate::view_state::POINTS_PER_PAPER_MM;
use egui::emath::{GuiRounding as _, Rot2};
use egui::epaint::TextShape;
use egui::{Color32, Painter, Pos2, Shape, Stroke, Theme, Vec2};
use strikeline_drawing::font::{self, Weight};
use strikeline_drawing::paper::PaperPoint;
use strikeline_drawing::scene::{Anchor, Item, ItemKind, Scene, Turn};

/// Paints a scene, its upper left corner at a place.
pub(crate) fn paint(painter: &Painter, corner: Pos2, theme: Theme, scene: &Scene) {
    paint_with(painter, corner, scene, POINTS_PER_PAPER_MM, |item| theme::paint(theme, item));
}

/// Paints a page in the very colours that it is saved in, with so many points to a paper millimetre.
pub(crate) fn paint_page(painter: &Painter, corner: Pos2, scene: &Scene, per_mm: f64) {
    paint_with(painter, corner, scene, per_mm, theme::on_paper);
}

fn paint_with(painter: &Painter, corner: Pos2, scene: &Scene, per_mm: f64, paint: impl Fn(&Item) -> Paint) {
    let brush = Brush { painter, corner, pixels: painter.pixels_per_point(), per_mm };
    for item in &scene.items {
        brush.item(item, paint(item));
    }
}

struct Brush<'a> {
    painter: &'a Painter,
    corner: Pos2,
    pixels: f32,
    per_mm: f64,
}

impl Brush<'_> {
    /// Paper millimetres in points.
    fn points(&self, mm: f64) -> f32 {
        (mm * self.per_mm) as f32
    }

    fn at(&self, place: PaperPoint) -> Pos2 {
        (self.corner + Vec2::new(self.points(place.x_mm), self.points(place.y_mm)))
            .round_to_pixels(self.pixels)
    }

    fn item(&self, item: &Item, paint: Paint) {
        // Whole pixels: a line is crisp, and never thinner than one.
        let pixels = (self.points(item.width_mm) * self.pixels).round().max(1.0);
        let width = pixels / self.pixels;
        let stroke = Stroke::new(width, paint.stroke);
        match &item.kind {
            ItemKind::Line { from, to } => self.path(item, &[self.at(*from), self.at(*to)], stroke),
            ItemKind::Polyline { points } => {
                let path: Vec<Pos2> = points.iter().map(|&place| self.at(place)).collect();
                self.path(item, &path, stroke);
            }
            ItemKind::Polygon { points, filled, outlined } => {
                let mut path: Vec<Pos2> = points.iter().map(|&place| self.at(place)).collect();
                if *filled {
                    self.fill(&path, paint.fill);
                }
                if *outlined {
                    path.extend(path.first().copied());
                    self.path(item, &path, stroke);
                }
            }
            ItemKind::Circle { centre, radius_mm, filled } => {
                let fill = if *filled { paint.fill } else { Color32::TRANSPARENT };
                self.painter.circle(self.at(*centre), self.points(*radius_mm), fill, stroke);
            }
            ItemKind::Text { at, text, height_mm, anchor, turn, weight } => {
                let run = Run { text, height_mm: *height_mm, anchor: *anchor, turn: *turn, weight: *weight };
                self.text(self.at(*at), &run, paint.stroke);
            }
        }
    }

    /// A fill. A rectangle is filled as one, with sharp edges.
    fn fill(&self, path: &[Pos2], colour: Color32) {
        let bounds = egui::Rect::from_points(path);
        let is_rect = path.len() == 4
            && path.iter().all(|place| {
                (place.x == bounds.left() || place.x == bounds.right())
                    && (place.y == bounds.top() || place.y == bounds.bottom())
            });
        if is_rect {
            self.painter.rect_filled(bounds, 0.0, colour);
        } else {
            self.painter.add(Shape::convex_polygon(path.to_vec(), colour, Stroke::NONE));
        }
    }

    /// A line, a straight piece at a time: level and upright ones fall on whole pixels.
    fn path(&self, item: &Item, path: &[Pos2], stroke: Stroke) {
        let pattern = item.pattern().dashes_mm();
        if pattern.is_empty() {
            for pair in path.windows(2) {
                if let [from, to] = *pair {
                    self.painter.line_segment([from, to], stroke);
                }
            }
            return;
        }
        let take =
            |skip: usize| pattern.iter().skip(skip).step_by(2).map(|&mm| self.points(mm)).collect::<Vec<_>>();
        let (dashes, gaps) = (take(0), take(1));
        for pair in path.windows(2) {
            if let [from, to] = *pair
                && from.distance(to) > 0.0
            {
                let dashed = Shape::dashed_line_with_offset(&[from, to], stroke, &dashes, &gaps, 0.0);
                self.painter.extend(dashed);
            }
        }
    }

    fn text(&self, at: Pos2, run: &Run<'_>, colour: Color32) {
        let galley = self.painter.layout_no_wrap(
            run.text.to_owned(),
            theme::font(self.points(run.height_mm), run.weight),
            colour,
        );
        let width = self.points(font::text_width_mm(run.text, run.height_mm, run.weight));
        let along = match run.anchor {
            Anchor::Start => 0.0,
            Anchor::Middle => width / 2.0,
            Anchor::End => width,
        };
        let row = galley.rows.first();
        let base = row.and_then(|row| Some(row.pos.y + row.glyphs.first()?.pos.y)).unwrap_or_default();
        let offset = Vec2::new(along, base);
        let shape = match run.turn {
            Turn::Level => TextShape::new((at - offset).round_to_pixels(self.pixels), galley, colour),
            Turn::Up => {
                let angle = -std::f32::consts::FRAC_PI_2;
                let corner = (at - Rot2::from_angle(angle) * offset).round_to_pixels(self.pixels);
                TextShape { angle, ..TextShape::new(corner, galley, colour) }
            }
        };
        self.painter.add(shape);
    }
}

/// A text on one line.
struct Run<'a> {
    text: &'a str,
    height_mm: f64,
    anchor: Anchor,
    turn: Turn,
    weight: Weight,
}

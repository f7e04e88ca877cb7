//! The word beside a line that draws what is held.

use crate::theme;
use crate::view_state::POINTS_PER_PAPER_MM;
use egui::{Align2, Painter, Pos2, Rect, Theme, Vec2, vec2};
use strikeline_drawing::font::Weight;
use strikeline_drawing::paper::{PaperPoint, PaperRect};
use strikeline_drawing::scene::{Item, ItemKind, Scene};

/// At how many places along its line a word is tried (chosen).
const PLACES: u8 = 12;

/// What hiding a text weighs, beside the paper millimetres that a line is wide (chosen).
const WRITTEN: f64 = 10.0;

/// What is kept free round a word, in points.
const GROUND: f32 = 2.0;

/// A word beside a line, on a ground of its own, within the canvas: at the first place along the line where it hides
/// nothing that is drawn, else where it hides the least.
pub(super) fn word(
    painter: &Painter,
    theme: Theme,
    (canvas, scene): (Rect, &Scene),
    [from, to]: [Pos2; 2],
    text: &str,
) -> Rect {
    let galley =
        painter.layout_no_wrap(text.to_owned(), theme::font(13.0, Weight::Semibold), theme::accent(theme));
    let size = galley.size();
    let sides = match from.y == to.y {
        true => [(vec2(0.0, -6.0), Align2::LEFT_BOTTOM), (vec2(0.0, 6.0), Align2::LEFT_TOP)],
        false => [(vec2(6.0, 0.0), Align2::LEFT_TOP), (vec2(-6.0, 0.0), Align2::RIGHT_TOP)],
    };
    let room = canvas.shrink(4.0);
    let along = (0..PLACES).map(|part| from.lerp(to, f32::from(part) / f32::from(PLACES)));
    let places = along.flat_map(|at| sides.map(|(off, anchor)| anchor.anchor_size(at + off, size)));
    let places = places.map(|rect| {
        let over = (rect.max - room.max).max(Vec2::ZERO);
        let rect = rect.translate(-over);
        rect.translate((room.min - rect.min).max(Vec2::ZERO))
    });
    let places: Vec<Rect> = places.collect();
    let on_paper = |rect: Rect| {
        let at = |at: Pos2| {
            let [x, y] = [at.x - canvas.left(), at.y - canvas.top()];
            PaperPoint::new(f64::from(x) / POINTS_PER_PAPER_MM, f64::from(y) / POINTS_PER_PAPER_MM)
        };
        PaperRect::of(at(rect.min), at(rect.max))
    };
    let band = places.iter().copied().reduce(Rect::union).unwrap_or(canvas);
    let near = near(scene, on_paper(band.expand(GROUND)));
    let hidden = |rect: &Rect| {
        let ground = on_paper(rect.expand(GROUND));
        // A thin line is hidden rather than a heavy one, and both rather than what is written.
        let weight = |(bounds, item): &(PaperRect, &Item)| match item.kind {
            _ if !bounds.meets(ground) => 0.0,
            ItemKind::Text { .. } => WRITTEN,
            _ if item.goes_through(ground) => item.width_mm,
            _ => 0.0,
        };
        near.iter().map(weight).sum::<f64>()
    };
    let mut best = (f64::INFINITY, Rect::from_min_size(from, size));
    for rect in places {
        let hides = hidden(&rect);
        if hides < best.0 {
            best = (hides, rect);
        }
        if hides <= 0.0 {
            break;
        }
    }
    let rect = best.1;
    painter.rect_filled(rect.expand(GROUND), 2.0, theme::desk(theme));
    painter.galley(rect.min, galley, theme::accent(theme));
    rect
}

/// What may go through a band, each with the rectangle that it takes. A text is set to be measured, which costs: what is
/// sure to be off the band is not.
fn near(scene: &Scene, band: PaperRect) -> Vec<(PaperRect, &Item)> {
    let may = |item: &&Item| match &item.kind {
        ItemKind::Text { at, text, height_mm, .. } => {
            // No letter is wider than it is high by half.
            let reach = 1.5 * height_mm * text.chars().count() as f64;
            PaperRect::of(*at, *at).grown(reach).meets(band)
        }
        _ => true,
    };
    let bounds = |item: &Item| item.bounds().filter(|bounds| bounds.meets(band));
    scene.items.iter().filter(may).filter_map(|item| Some((bounds(item)?, item))).collect()
}

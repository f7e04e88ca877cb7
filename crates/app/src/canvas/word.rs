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
    let hidden = |rect: &Rect| {
        let ground = rect.expand(GROUND);
        let on_paper = |at: Pos2| {
            let [x, y] =
                [at.x - canvas.left(), at.y - canvas.top()].map(|one| f64::from(one) / POINTS_PER_PAPER_MM);
            PaperPoint::new(x, y)
        };
        let ground = PaperRect::of(on_paper(ground.min), on_paper(ground.max));
        // A thin line is hidden rather than a heavy one, and both rather than what is written.
        let weight = |item: &Item| match item.kind {
            ItemKind::Text { .. } => WRITTEN,
            _ => item.width_mm,
        };
        scene.items.iter().filter(|item| item.goes_through(ground)).map(weight).sum::<f64>()
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

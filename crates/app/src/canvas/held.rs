//! What shows under the hand: the cursor, rings where a finger takes a thing, bars on edges, and the lines that draw
//! what is held, each with its word.

use super::drag::Drag;
use super::figures::Figure;
use super::grab::Grabbable;
use super::snap::{Line, Target};
use super::word::word;
use crate::moves::HandleKind;
use crate::theme;
use crate::view_state::Window;
use egui::accesskit::Role;
use egui::{CursorIcon, Id, Painter, Pos2, Rect, Sense, Stroke, Theme, Ui, Vec2, WidgetInfo, pos2, vec2};
use strikeline_drawing::scene::Scene;
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::plan::Plan;

/// The cursor over what can be taken or tapped.
pub(super) fn cursor(ui: &Ui, drag: Option<&Drag>, figure: Option<&Figure>, hovered: Option<&Grabbable>) {
    let resize = |kind: HandleKind| match kind {
        HandleKind::Edge(side) if side.axis() == Axis::Across => Some(CursorIcon::ResizeHorizontal),
        HandleKind::Edge(_) => Some(CursorIcon::ResizeVertical),
        _ => None,
    };
    let icon = match (drag, figure, hovered) {
        (Some(drag), ..) => resize(drag.handle.kind).unwrap_or(CursorIcon::Grabbing),
        (None, Some(_), _) => CursorIcon::PointingHand,
        (None, None, Some(hovered)) => resize(hovered.handle.kind).unwrap_or(CursorIcon::Grab),
        (None, None, None) => return,
    };
    ui.set_cursor_icon(icon);
}

/// A ring where a finger would take a thing, a bar across the middle of an edge: no finger hovers, so what is selected
/// has them too.
pub(super) fn rings(
    painter: &Painter,
    theme: Theme,
    handles: &[Grabbable],
    drag: Option<&Drag>,
    hovered: Option<&Grabbable>,
) {
    let accent = theme::accent(theme);
    let lit = drag.map(|drag| &drag.subject).or(hovered.map(|one| &one.subject));
    for one in handles {
        let is_lit = Some(&one.subject) == lit;
        match one.handle.kind {
            HandleKind::Edge(side) => {
                let size = match side.axis() {
                    Axis::Across => vec2(5.0, 22.0),
                    Axis::Upright => vec2(22.0, 5.0),
                };
                // On a short edge the bar is no longer than the edge.
                let room = one.body.size() + vec2(5.0, 5.0);
                let bar = Rect::from_center_size(one.body.center(), size.min(room.max(Vec2::splat(8.0))));
                let fill = if is_lit { accent } else { theme::desk(theme) };
                painter.rect(bar, 2.0, fill, Stroke::new(1.5, accent), egui::StrokeKind::Middle);
            }
            _ if one.is_selected || is_lit => {
                painter.circle_stroke(one.body.center(), 7.0, Stroke::new(1.5, accent));
            }
            _ => {}
        }
    }
}

/// A way of cables that is pointed at in a list.
pub(super) fn way(painter: &Painter, theme: Theme, run: &[Point], window: &Window) {
    let points: Vec<Pos2> = run.iter().map(|at| window.pointer_from_wall(*at)).collect();
    let stroke = Stroke::new(2.5, theme::accent(theme));
    for end in [points.first(), points.last()].into_iter().flatten() {
        painter.circle_stroke(*end, 7.0, stroke);
    }
    painter.add(egui::Shape::line(points, stroke));
}

/// The lines that draw what is held, and in a word what they are.
pub(super) fn snaps(ui: &Ui, drag: &Drag, plan: &Plan, window: &Window, scene: &Scene) {
    let Some(snapped) = drag.snapped() else { return };
    let (painter, theme) = (&ui.painter_at(window.canvas), ui.theme());
    let canvas = window.canvas;
    let line = |target: &Target, axis: Axis| {
        // Where it was says nothing: all the time of a level drag its height would be lined out.
        if target.what == Line::Start {
            return;
        }
        let place = match axis {
            Axis::Across => window.pointer_from_wall(Point::new(target.line, snapped.to.y)),
            Axis::Upright => window.pointer_from_wall(Point::new(snapped.to.x, target.line)),
        };
        let ends = match axis {
            Axis::Across => [pos2(place.x, canvas.top()), pos2(place.x, canvas.bottom())],
            Axis::Upright => [pos2(canvas.left(), place.y), pos2(canvas.right(), place.y)],
        };
        painter.line_segment(ends, Stroke::new(1.0, theme::accent(theme)));
        let words = target.what.words(plan);
        let rect = word(painter, theme, (canvas, scene), ends, &words);
        // A screen reader is told too.
        let response = ui.interact(rect, Id::unique(("drawn to", axis == Axis::Across)), Sense::hover());
        response.widget_info(|| WidgetInfo::labeled(Role::Label, true, &words));
    };
    if let Some(target) = &snapped.across {
        line(target, Axis::Across);
    }
    if let Some(target) = &snapped.upright {
        line(target, Axis::Upright);
    }
}

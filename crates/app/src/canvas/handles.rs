//! The handles of the canvas: where they are, and how Tab, screen readers and tests find them.

use super::grab::Grabbable;
use crate::moves::{Handle, HandleKind};
use crate::theme::TOUCH;
use crate::view_state::Window;
use egui::accesskit::Role;
use egui::{Id, Rect, Sense, Ui, WidgetInfo};
use strikeline_solver::geometry::Point;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::{Id as JobId, Subject};
use strikeline_solver::words;

/// The id of a handle in the window: from its id in the job, so that it stays while the thing lives.
#[must_use]
pub fn handle_id(id: &JobId) -> Id {
    Id::unique(("canvas handle", id.as_str()))
}

/// All that can be taken hold of, the farthest back first.
///
/// What belongs to the room (a baseboard, a crown, a chimney breast) can be too.
#[must_use]
pub fn handles(plan: &Plan, window: &Window, selected: Option<&Subject>) -> Vec<Grabbable> {
    let survey = &plan.survey;
    let thing = |id: &JobId, kind, body: Rect| Grabbable {
        handle: Handle { id: id.clone(), kind },
        body,
        is_selected: selected == Some(&id.whole()),
    };
    let middle = survey.outline.centre().y;
    let hidden = survey.hidden.iter().map(|h| thing(&h.id, HandleKind::Hidden, window.canvas_rect(h.rect)));
    let features =
        survey.features.iter().map(|f| thing(&f.id, HandleKind::Feature, window.canvas_rect(f.rect)));
    let pieces = plan.pieces.iter().map(|p| thing(&p.id, HandleKind::Piece, window.canvas_rect(p.outline)));
    let hits = survey.hits.iter().map(|hit| {
        let at = window.pointer_from_wall(Point::new(hit.x, hit.y.unwrap_or(middle)));
        thing(&hit.id, HandleKind::Hit, Rect::from_center_size(at, egui::Vec2::ZERO))
    });
    hidden.chain(features).chain(pieces).chain(hits).collect()
}

/// Registers the handles without sensing: the canvas alone senses the press. Gives the one that has the focus.
pub fn register(ui: &Ui, plan: &Plan, canvas: Rect, handles: &[Grabbable]) -> Option<Handle> {
    let mut focused = None;
    for Grabbable { handle, body, .. } in handles {
        // As large as a fingertip, within the canvas: what lies outside of it cannot be pointed at.
        let large = Rect::from_center_size(body.center(), body.size().max(egui::Vec2::splat(TOUCH)));
        let rect = large.intersect(canvas);
        if !rect.is_positive() {
            continue;
        }
        let response = ui.interact(rect, handle_id(&handle.id), Sense::focusable_noninteractive());
        let name = words::thing(plan, &handle.id.whole());
        let value = value(plan, handle);
        response.widget_info(|| WidgetInfo {
            current_text_value: Some(value.clone()),
            ..WidgetInfo::labeled(Role::Button, true, &name)
        });
        if response.has_focus() {
            focused = Some(handle.clone());
        }
    }
    focused
}

/// Where a handle is, for a screen reader: its middle from the wall's left end and above the level plane.
fn value(plan: &Plan, handle: &Handle) -> String {
    let usual = plan.survey.outline.centre().y;
    let Some(place) = crate::moves::place(plan, handle, usual) else { return String::new() };
    let style = plan.style;
    format!("middle {} from the left end, {} up", style.print(place.x), style.print(place.y))
}

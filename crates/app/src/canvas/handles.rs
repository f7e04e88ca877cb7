//! The handles of the canvas: where they are, and how Tab, screen readers and tests find them.

use super::grab::{Grabbable, REACH};
use crate::moves::edge::{self, Side};
use crate::moves::{Handle, HandleKind};
use crate::theme::TOUCH;
use crate::view_state::Window;
use egui::accesskit::{Action, Role};
use egui::{Id, Rect, Sense, Ui, Vec2, WidgetInfo};
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::{Id as JobId, Subject};
use strikeline_solver::words;

/// The id of a handle in the window: from its subject, so that it stays while the thing lives.
#[must_use]
pub fn handle_id(subject: &Subject) -> Id {
    Id::unique(("canvas handle", subject.to_string()))
}

/// All that can be taken hold of, the farthest back first. What is selected has its edges too, and a piece the holes
/// of its plate.
///
/// What belongs to the room (a baseboard, a crown, a chimney breast) can be taken hold of too.
#[must_use]
pub fn handles(job: &Job, plan: &Plan, window: &Window, selected: Option<&Subject>) -> Vec<Grabbable> {
    let survey = &plan.survey;
    let thing = |id: &JobId, kind, body: Rect| {
        let handle = Handle { id: id.clone(), kind };
        let is_selected = selected == Some(&id.whole());
        Grabbable { subject: handle.subject(), handle, body, along: None, is_selected }
    };
    let middle = survey.outline.centre().y;
    let hidden = survey.hidden.iter().map(|h| thing(&h.id, HandleKind::Hidden, window.canvas_rect(h.rect)));
    let features =
        survey.features.iter().map(|f| thing(&f.id, HandleKind::Feature, window.canvas_rect(f.rect)));
    let pieces = plan.pieces.iter().map(|p| thing(&p.id, HandleKind::Piece, window.canvas_rect(p.outline)));
    let hits = survey.hits.iter().map(|hit| {
        let at = window.pointer_from_wall(Point::new(hit.x, hit.y.unwrap_or(middle)));
        thing(&hit.id, HandleKind::Hit, Rect::from_center_size(at, Vec2::ZERO))
    });
    let all = hidden.chain(features).chain(pieces).chain(hits);
    let openings = openings(plan, window, selected);
    all.chain(holes(plan, window, selected))
        .chain(openings)
        .chain(edges(job, plan, window, selected))
        .collect()
}

/// The cables' openings of the selected piece, or the end of their raceway.
fn openings<'a>(
    plan: &'a Plan,
    window: &'a Window,
    selected: Option<&'a Subject>,
) -> impl Iterator<Item = Grabbable> {
    let its =
        plan.pieces.iter().filter(move |piece| selected.is_some_and(|selected| selected.id == piece.id));
    its.flat_map(move |piece| {
        let way = piece.cable.as_ref().and_then(|cable| cable.way.as_ref());
        let entry = way.and_then(|way| Some((HandleKind::Entry, way.entry?)));
        let exit = way.map(|way| (HandleKind::Exit, way.exit));
        entry.into_iter().chain(exit).map(move |(kind, rect)| {
            let handle = Handle { id: piece.id.clone(), kind };
            let is_selected = selected == Some(&handle.subject());
            Grabbable {
                subject: handle.subject(),
                handle,
                body: window.canvas_rect(rect),
                along: None,
                is_selected,
            }
        })
    })
}

/// The edges of what is selected.
fn edges<'a>(
    job: &'a Job,
    plan: &'a Plan,
    window: &'a Window,
    selected: Option<&'a Subject>,
) -> impl Iterator<Item = Grabbable> {
    let of = selected.into_iter().flat_map(|selected| edge::movable(job, plan, &selected.id));
    of.filter_map(|handle| {
        let HandleKind::Edge(side) = handle.kind else { return None };
        let body = window.canvas_rect(edge::outline(plan, &handle.id)?);
        let (line, along) = caught(body, side);
        Some(Grabbable {
            subject: handle.subject(),
            handle,
            body: line,
            along: Some(along),
            is_selected: false,
        })
    })
}

/// An edge of a body as a line, and where a press takes it: a fingertip outside, and inside no more than a quarter of
/// the body, so that its middle stays its own.
fn caught(body: Rect, side: Side) -> (Rect, Rect) {
    let inside = match side.axis() {
        Axis::Across => (body.width() / 4.0).min(REACH),
        Axis::Upright => (body.height() / 4.0).min(REACH),
    };
    let line = match side {
        Side::Left => body.with_max_x(body.left()),
        Side::Right => body.with_min_x(body.right()),
        Side::Top => body.with_max_y(body.top()),
        Side::Bottom => body.with_min_y(body.bottom()),
    };
    // A short edge is taken a little beyond its ends.
    let beyond = |length: f32| (REACH - length / 2.0).max(0.0);
    let (before, after) = match side {
        Side::Left | Side::Top => (REACH, inside),
        Side::Right | Side::Bottom => (inside, REACH),
    };
    let along = match side.axis() {
        Axis::Across => Rect::from_x_y_ranges(
            line.left() - before..=line.left() + after,
            line.top() - beyond(line.height())..=line.bottom() + beyond(line.height()),
        ),
        Axis::Upright => Rect::from_x_y_ranges(
            line.left() - beyond(line.width())..=line.right() + beyond(line.width()),
            line.top() - before..=line.top() + after,
        ),
    };
    (line, along)
}

/// The holes of the plate of the selected piece. Of a plate that is only assumed there are none.
fn holes<'a>(
    plan: &'a Plan,
    window: &'a Window,
    selected: Option<&'a Subject>,
) -> impl Iterator<Item = Grabbable> {
    let its =
        plan.pieces.iter().filter(move |piece| selected.is_some_and(|selected| selected.id == piece.id));
    its.flat_map(move |piece| {
        let mount = piece.mount.iter().filter(|mount| !mount.holes_assumed);
        mount.flat_map(|mount| &mount.holes).map(move |hole| Grabbable {
            subject: hole.subject.clone(),
            handle: Handle { id: piece.id.clone(), kind: HandleKind::Piece },
            body: Rect::from_center_size(window.pointer_from_wall(hole.place), Vec2::ZERO),
            along: None,
            is_selected: selected == Some(&hole.subject),
        })
    })
}

/// What selecting a handle selects: an edge its thing, a hole itself.
#[must_use]
pub fn selects(grabbable: &Grabbable) -> Subject {
    match grabbable.handle.kind {
        HandleKind::Edge(_) => grabbable.handle.id.whole(),
        _ => grabbable.subject.clone(),
    }
}

/// The order in which Tab walks the handles: pieces, features and hits from left to right, hidden things; after each
/// its own holes and edges.
fn walked(plan: &Plan, handles: &[Grabbable]) -> Vec<Grabbable> {
    let kind = |one: &Grabbable| match one.handle.kind {
        HandleKind::Piece | HandleKind::Entry | HandleKind::Exit => 0,
        HandleKind::Feature => 1,
        HandleKind::Hit => 2,
        HandleKind::Edge(_) if plan.survey.features.iter().any(|feature| feature.id == one.handle.id) => 1,
        HandleKind::Hidden | HandleKind::Edge(_) => 3,
    };
    let left = |one: &Grabbable| {
        let whole = handles.iter().find(|other| other.subject == one.handle.id.whole());
        whole.unwrap_or(one).body.center().x
    };
    let mut walked = handles.to_vec();
    walked.sort_by(|a, b| {
        let by_kind = kind(a).cmp(&kind(b)).then(left(a).total_cmp(&left(b)));
        // Two of one kind at one place must not mix their edges.
        by_kind
            .then_with(|| a.handle.id.cmp(&b.handle.id))
            .then(a.subject.part.is_some().cmp(&b.subject.part.is_some()))
    });
    walked
}

/// What is asked of a handle without a pointer.
#[derive(Clone, Debug, PartialEq)]
pub enum Asked {
    /// To be selected.
    Select,
    /// To be nudged by so many graduations to the right or up; negative to the left or down.
    Nudge(i32),
}

/// Registers the handles without sensing: the canvas alone senses the press. Gives the one that has the focus, and
/// what a screen reader asks of one.
pub fn register(
    ui: &Ui,
    plan: &Plan,
    canvas: Rect,
    handles: &[Grabbable],
) -> (Option<Grabbable>, Option<(Grabbable, Asked)>) {
    let (mut focused, mut asked) = (None, None);
    for one in walked(plan, handles) {
        // As large as a fingertip, within the canvas: what lies outside of it cannot be pointed at.
        let large = Rect::from_center_size(one.body.center(), one.body.size().max(Vec2::splat(TOUCH)));
        let rect = large.intersect(canvas);
        if !rect.is_positive() {
            continue;
        }
        let id = handle_id(&one.subject);
        let response = ui.interact(rect, id, Sense::focusable_noninteractive());
        let name = words::thing(plan, &one.subject);
        let value = value(plan, &one);
        response.widget_info(|| WidgetInfo {
            current_text_value: Some(value.clone()),
            ..WidgetInfo::labeled(Role::Button, true, &name)
        });
        ui.accesskit_node_builder(id, |node| {
            for action in [Action::Click, Action::Increment, Action::Decrement] {
                node.add_action(action);
            }
        });
        let (is_clicked, steps) = ui.input(|input| {
            let count = |action| input.num_accesskit_action_requests(id, action) as i32;
            (count(Action::Click) > 0, count(Action::Increment) - count(Action::Decrement))
        });
        if steps != 0 {
            asked = Some((one.clone(), Asked::Nudge(steps)));
        } else if is_clicked {
            asked = Some((one.clone(), Asked::Select));
        }
        if response.has_focus() {
            focused = Some(one);
        }
    }
    (focused, asked)
}

/// Where a handle is, for a screen reader: its middle from the wall's left end and above the level plane, an edge
/// along its own axis.
fn value(plan: &Plan, one: &Grabbable) -> String {
    let usual = plan.survey.outline.centre().y;
    let holes = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
    let hole = holes.into_iter().find(|hole| hole.subject == one.subject).map(|hole| hole.place);
    let Some(place) = hole.or_else(|| crate::moves::place(plan, &one.handle, usual)) else {
        return String::new();
    };
    let (right, up) = (plan.style.print(place.x), plan.style.print(place.y));
    match one.handle.kind {
        HandleKind::Edge(side) if side.axis() == Axis::Across => format!("{right} from the left end"),
        HandleKind::Edge(_) => format!("{up} up"),
        _ => format!("middle {right} from the left end, {up} up"),
    }
}

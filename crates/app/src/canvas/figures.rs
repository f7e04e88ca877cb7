//! The figures of the dimensions: what each is called, where it is on the canvas, and which one a press is on.

use crate::moves::{dimension, read_from};
use crate::view_state::POINTS_PER_PAPER_MM;
use egui::accesskit::{Action, Role};
use egui::{Id, Pos2, Rect, Sense, Ui, Vec2, WidgetInfo};
use strikeline_drawing::dimension::{About, GapSide, ReadPlace};
use strikeline_drawing::scene::Scene;
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, ReadingDatum};
use strikeline_solver::words;

/// Beside a figure a press still counts as on it, in points (chosen: with the figure's own height the least for a
/// mouse, and for a fingertip).
const BESIDE: f32 = 4.0;
const BESIDE_FINGER: f32 = 10.0;

/// A figure on the canvas.
#[derive(Clone, Debug, PartialEq)]
pub struct Figure {
    /// What it tells.
    pub about: About,
    /// Where it is.
    pub rect: Rect,
}

/// The figures of a scene whose upper left corner is at a place.
#[must_use]
pub fn figures(scene: &Scene, corner: Pos2) -> Vec<Figure> {
    let points = |mm: f64| (mm * POINTS_PER_PAPER_MM) as f32;
    let on_canvas = |rect: strikeline_drawing::paper::PaperRect| {
        let min = corner + Vec2::new(points(rect.left_mm), points(rect.top_mm));
        Rect::from_min_size(min, Vec2::new(points(rect.width_mm()), points(rect.height_mm())))
    };
    let shown = scene.figures.iter();
    shown.map(|figure| Figure { about: figure.about.clone(), rect: on_canvas(figure.bounds) }).collect()
}

/// The figure that a press is on, of several the nearest.
#[must_use]
pub fn at(press: Pos2, by_finger: bool, figures: &[Figure]) -> Option<&Figure> {
    let beside = if by_finger { BESIDE_FINGER } else { BESIDE };
    let pressed_on = figures.iter().filter(|figure| figure.rect.expand(beside).contains(press));
    let away = |figure: &&Figure| figure.rect.distance_sq_to_pos(press);
    pressed_on.min_by(|a, b| away(a).total_cmp(&away(b)))
}

/// The id of a figure in the window.
#[must_use]
pub fn figure_id(about: &About) -> Id {
    Id::unique(("figure", format!("{about:?}")))
}

/// Registers the figures without sensing, for Tab, screen readers and tests. Gives the one that Enter, or a screen
/// reader's click, is to open.
pub fn register(ui: &Ui, job: &Job, plan: &Plan, canvas: Rect, figures: &[Figure]) -> Option<Figure> {
    let mut opened = None;
    for figure in figures {
        let rect = figure.rect.expand(BESIDE).intersect(canvas);
        if !rect.is_positive() {
            continue;
        }
        let id = figure_id(&figure.about);
        let response = ui.interact(rect, id, Sense::focusable_noninteractive());
        let name = name(job, plan, &figure.about);
        response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
        ui.accesskit_node_builder(id, |node| node.add_action(Action::Click));
        let has_focus = response.has_focus();
        if has_focus {
            let theme = ui.theme();
            let stroke = egui::Stroke::new(1.5, crate::theme::accent(theme));
            ui.painter_at(canvas).rect_stroke(rect, 2.0, stroke, egui::StrokeKind::Inside);
        }
        let is_asked = ui.input(|input| {
            let by_key =
                has_focus && (input.key_pressed(egui::Key::Enter) || input.key_pressed(egui::Key::Space));
            by_key || input.has_accesskit_action_request(id, Action::Click)
        });
        if is_asked {
            opened = Some(figure.clone());
        }
    }
    opened
}

/// What a dimension is called, with its length: `centre line, 51 1/4" right of the left corner`.
#[must_use]
pub fn name(job: &Job, plan: &Plan, about: &About) -> String {
    let told = dimension::length_told(job, plan, about);
    let shown = told.map(|length| plan.style.print(length)).unwrap_or_default();
    format!("{}, {shown} {}", title(plan, about), from_where(job, plan, about))
}

/// What a dimension is of: `centre line`, `the door's left trim`.
#[must_use]
pub fn title(plan: &Plan, about: &About) -> String {
    match about {
        About::Reading { mark, .. } | About::Close { mark, .. } => {
            find(plan, mark).map(|mark| words::mark_name(plan, mark)).unwrap_or_default()
        }
        About::Gap { piece, .. } => words::thing(plan, &piece.whole()),
        About::Width(id) | About::Height(id) => words::thing(plan, &id.whole()),
        About::Read { thing, place } => {
            let part = match place {
                ReadPlace::Left => "left",
                ReadPlace::Right => "right",
                ReadPlace::Bottom => "bottom",
                ReadPlace::Top => "top",
                ReadPlace::Middle | ReadPlace::MiddleHeight => "centre",
            };
            let is_hit = plan.survey.hits.iter().any(|hit| hit.id == *thing);
            words::thing(plan, &if is_hit { thing.whole() } else { thing.part(part) })
        }
    }
}

/// From where a dimension is told: `right of the left corner`, `wide`.
#[must_use]
pub fn from_where(job: &Job, plan: &Plan, about: &About) -> String {
    match about {
        About::Reading { mark, index } | About::Close { mark, index } => {
            let reading = find(plan, mark).and_then(|mark| mark.readings.get(*index));
            let Some(reading) = reading else { return String::new() };
            match (&reading.close, about) {
                (Some(close), About::Close { .. }) => {
                    format!("{}, its check", words::beside(plan, close.direction, &close.from))
                }
                _ => words::beside(plan, reading.direction, &reading.from),
            }
        }
        About::Gap { piece, side } => {
            let gaps = plan.pieces.iter().find(|one| one.id == *piece).map(|piece| &piece.gaps);
            let gap = gaps.and_then(|gaps| match side {
                GapSide::Left => gaps.left.as_ref(),
                GapSide::Right => gaps.right.as_ref(),
                GapSide::Below | GapSide::BelowRight => gaps.below.as_ref(),
            });
            let to = gap.map(|gap| match (gap.to.id == plan.wall, gap.to.part_str()) {
                (true, "left") => words::datum(plan, &ReadingDatum::LeftEnd),
                (true, "right") => words::datum(plan, &ReadingDatum::RightEnd),
                (true, _) => words::datum(plan, &ReadingDatum::Floor),
                (false, _) => words::thing(plan, &gap.to),
            });
            let end = if *side == GapSide::BelowRight { " at its right end" } else { "" };
            format!("to {}{end}", to.unwrap_or_default())
        }
        About::Width(_) => "wide".to_owned(),
        About::Height(_) => "high".to_owned(),
        About::Read { thing, place } => read_from(job, plan, thing, *place)
            .map(|(direction, from)| words::beside(plan, direction, &from))
            .unwrap_or_default(),
    }
}

fn find<'a>(plan: &'a Plan, id: &strikeline_solver::subject::Subject) -> Option<&'a Mark> {
    plan.marks.iter().find(|mark| mark.id == *id)
}

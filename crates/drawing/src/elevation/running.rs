//! Running dimensions: from one end of the wall, all on one line over it, to each centre line and each stud that a
//! fastener meets. They are what is read in one pull of the tape, with no sum of gaps in it.
//!
//! A dot where they begin, a figure at each tick: ISO 129-1, running dimensioning, from memory.

use crate::dimension::{FIGURE_GAP_MM, Figure, GAP_MM, OVERSHOOT_MM, Rows, TICK_HALF_MM};
use crate::font::Weight;
use crate::ink::Ink;
use crate::look::Look;
use crate::paper::{PaperPoint, PaperRect};
use crate::scale::Scale;
use crate::scene::{Anchor, ItemKind, Turn};
use strikeline_solver::geometry::Point;
use strikeline_solver::job::wall::End;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::MarkWhat;
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::units::Length;

/// Between a figure and its tick.
const ASIDE_MM: f64 = 1.0;
/// The dot where they begin.
const DOT_MM: f64 = 0.8;
/// Fewer stops than this are no running dimensions.
const LEAST: usize = 2;

/// Running dimensions with the room that they take.
#[derive(Default)]
pub(super) struct Running {
    /// Each part with what it is about.
    pub(super) parts: Vec<(Subject, Ink, ItemKind)>,
    /// Their figures and lines.
    pub(super) taken: Vec<PaperRect>,
}

/// A place that is told.
struct Stop {
    subject: Subject,
    x: Length,
}

/// Those of a plan, in the first free row above the wall; empty where there is no row, no end to measure from, or too
/// little to tell. A stop whose figure or line finds no room is left out.
pub(super) fn running(rows: &Rows, plan: &Plan, scale: &Scale, look: &Look) -> Running {
    let survey = &plan.survey;
    let outline = survey.outline;
    let from = match (survey.left_end, survey.right_end) {
        (End::Open, End::Open) => return Running::default(),
        (End::Open, _) => outline.right,
        _ => outline.left,
    };
    let Some(line_mm) = rows.free_row_above() else { return Running::default() };
    let way = if from == outline.left { 1.0 } else { -1.0 };
    let at = |x: Length| scale.paper_from_wall(Point::new(x, outline.top));
    let origin = at(from);
    let mut last_mm = origin.x_mm;
    let mut told: Vec<(Stop, Figure, PaperPoint, f64)> = Vec::new();
    for stop in stops(plan, from) {
        let parts = plan.style.parts_of(plan.style.steps((stop.x - from).abs()));
        let figure = Figure::new(parts, look.sound_text_height_mm());
        let place = at(stop.x);
        // The figure stands before its tick, over the line that comes there.
        let left_mm =
            if way > 0.0 { place.x_mm - ASIDE_MM - figure.width_mm() } else { place.x_mm + ASIDE_MM };
        let start = PaperPoint::new(left_mm, line_mm - FIGURE_GAP_MM + figure.foot_mm());
        let bounds = figure.bounds(start, Turn::Level);
        let near = if way > 0.0 { bounds.left_mm - last_mm } else { last_mm - bounds.right_mm };
        let extension = extension(place, line_mm);
        let has_room = near >= TICK_HALF_MM
            && rows.is_free(bounds)
            && rows.is_free(PaperRect::of(extension.0, extension.1));
        if has_room {
            last_mm = place.x_mm;
            told.push((stop, figure, start, place.x_mm));
        }
    }
    if told.len() < LEAST || !rows.is_free(PaperRect::of(origin, PaperPoint::new(origin.x_mm, line_mm))) {
        return Running::default();
    }
    drawn(plan, (origin, line_mm, last_mm), told)
}

/// From the wall's upper edge to past the line.
fn extension(place: PaperPoint, line_mm: f64) -> (PaperPoint, PaperPoint) {
    (PaperPoint::new(place.x_mm, place.y_mm - GAP_MM), PaperPoint::new(place.x_mm, line_mm - OVERSHOOT_MM))
}

fn drawn(
    plan: &Plan,
    (origin, line_mm, last_mm): (PaperPoint, f64, f64),
    told: Vec<(Stop, Figure, PaperPoint, f64)>,
) -> Running {
    let mut running = Running::default();
    let wall = plan.wall.part("running");
    let (begin, end) = (PaperPoint::new(origin.x_mm, line_mm), PaperPoint::new(last_mm, line_mm));
    let mut line = |subject: &Subject, ink: Ink, from: PaperPoint, to: PaperPoint| {
        running.taken.push(PaperRect::of(from, to));
        running.parts.push((subject.clone(), ink, ItemKind::Line { from, to }));
    };
    let (foot, head) = extension(origin, line_mm);
    line(&wall, Ink::Extension, foot, head);
    line(&wall, Ink::Dimension, begin, end);
    for (stop, figure, start, x_mm) in &told {
        let (foot, head) = extension(PaperPoint::new(*x_mm, origin.y_mm), line_mm);
        line(&stop.subject, Ink::Extension, foot, head);
        let tick = PaperPoint::new(*x_mm, line_mm);
        let (a, b) = (tick.moved(-TICK_HALF_MM, TICK_HALF_MM), tick.moved(TICK_HALF_MM, -TICK_HALF_MM));
        line(&stop.subject, Ink::DimensionTick, a, b);
        if let Some((from, to, above)) = figure.bar() {
            let bar = |along| Turn::Level.place(*start, along, above);
            line(&stop.subject, Ink::DimensionText, bar(from), bar(to));
        }
    }
    running.parts.push((
        wall,
        Ink::DimensionTick,
        ItemKind::Circle { centre: begin, radius_mm: DOT_MM, filled: true },
    ));
    for (stop, figure, start, _) in told {
        running.taken.push(figure.bounds(start, Turn::Level));
        running.parts.extend(figure.runs().iter().map(|run| {
            let text = ItemKind::Text {
                at: Turn::Level.place(start, run.along_mm, run.above_mm),
                text: run.text.clone(),
                height_mm: run.height_mm,
                anchor: Anchor::Start,
                turn: Turn::Level,
                weight: Weight::Regular,
            };
            (stop.subject.clone(), Ink::DimensionText, text)
        }));
    }
    running
}

/// Each centre line and each stud that a fastener in use meets, the nearest to where they begin first; one at the
/// place of another is told once.
fn stops(plan: &Plan, from: Length) -> Vec<Stop> {
    let lines = plan.marks.iter().filter(|mark| mark.what == MarkWhat::CentreLine && !mark.assumed);
    let lines = lines.filter_map(|mark| Some(Stop { subject: mark.id.clone(), x: mark.place?.x }));
    let mounted = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref());
    let studs = mounted.flat_map(|mount| {
        let is_used = |id: &Id| mount.fastening.fasteners.iter().any(|one| one.hole == *id);
        let used = mount.holes.iter().filter(move |hole| is_used(&hole.id));
        used.filter_map(|hole| plan.framing.studs.get(hole.stud?))
    });
    let studs = studs.map(|stud| {
        let hit = stud.hits.first().cloned().unwrap_or_else(|| plan.wall.clone());
        Stop { subject: hit.whole(), x: stud.centre }
    });
    let mut stops: Vec<Stop> = lines.chain(studs).collect();
    stops.sort_by(|a, b| (a.x - from).abs().mm().total_cmp(&(b.x - from).abs().mm()));
    stops.dedup_by(|a, b| plan.style.steps(a.x - from) == plan.style.steps(b.x - from));
    stops
}

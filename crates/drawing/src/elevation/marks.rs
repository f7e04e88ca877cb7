//! What is to strike on the wall: the level and centre lines always, what would crowd the drawing only when it is
//! selected. What is done is drawn always, in its own ink and with a sign of its own.

use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::Pen;
use crate::scene::ItemKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkState, MarkWhat};

/// The arms of a corner on tape, and of a mark's cross.
const ARM_MM: f64 = 4.0;
/// Half of a small cross or tick.
const TICK_MM: f64 = 2.0;
/// A hole that is drilled.
const HOLE_MM: f64 = 1.1;
/// The ring round a hole or probe that is selected.
const RING_MM: f64 = 2.4;

/// Draws all marks that have a place.
pub(super) fn marks(pen: &mut Pen<'_>, plan: &Plan) {
    for mark in &plan.marks {
        pen.take(mark.id.clone(), mark.assumed);
        if is_on_wall(mark.state) {
            done(pen, mark);
        } else {
            draw(pen, mark);
        }
    }
}

/// Whether something is on the wall there.
fn is_on_wall(state: MarkState) -> bool {
    matches!(state, MarkState::Struck | MarkState::Drilled | MarkState::Cut | MarkState::Stripped)
}

/// What is on the wall: a line, a corner on tape, a tick, a filled hole, a crossed one that is stripped, an
/// opening crossed; where the plan has it elsewhere now, a thin line leads there.
fn done(pen: &mut Pen<'_>, mark: &Mark) {
    let Some(at) = mark.place.map(|place| pen.at(place)) else { return };
    match (&mark.what, mark.state) {
        (MarkWhat::LevelLine | MarkWhat::CentreLine, _) => {
            if let Some((from, to)) = mark.line.map(|(from, to)| (pen.at(from), pen.at(to))) {
                pen.line(Ink::Done, from, to);
            } else {
                sign(pen, at);
            }
        }
        (MarkWhat::Corner { top, left }, _) => corner(pen, Ink::Done, at, *top, *left),
        (_, MarkState::Stripped) => {
            pen.circle(Ink::Done, at, HOLE_MM, false);
            pen.cross(Ink::Done, PaperRect::of(at, at).grown(HOLE_MM * 0.7));
        }
        (_, MarkState::Drilled) => pen.circle(Ink::Done, at, HOLE_MM, true),
        (_, MarkState::Cut) => {
            if let Some(outline) = mark.outline {
                let rect = pen.scale.paper_rect(outline);
                pen.outline(Ink::Done, &rect.corners());
                pen.cross(Ink::Done, rect);
            }
        }
        _ => sign(pen, at),
    }
    if let Some(planned) = &mark.planned {
        let there = pen.at(planned.place);
        pen.line(Ink::Dimension, at, there);
        pen.cross(Ink::Mark, PaperRect::of(there, there).grown(TICK_MM * 0.7));
    }
    if pen.is_lit() {
        pen.circle(Ink::Mark, at, RING_MM, false);
    }
}

/// A short tick, done with.
fn sign(pen: &mut Pen<'_>, at: PaperPoint) {
    pen.line(Ink::Done, at.moved(-TICK_MM, 0.0), at.moved(TICK_MM, 0.0));
    pen.line(Ink::Done, at.moved(0.0, -TICK_MM), at.moved(0.0, TICK_MM));
}

fn draw(pen: &mut Pen<'_>, mark: &Mark) {
    let line = mark.line.map(|(from, to)| (pen.at(from), pen.at(to)));
    let at = mark.place.map(|place| pen.at(place));
    match &mark.what {
        MarkWhat::LevelLine | MarkWhat::CentreLine => {
            if let Some((from, to)) = line {
                pen.line(Ink::ChalkLine, from, to);
            }
        }
        MarkWhat::PieceCentre => {
            // A tick of its own length on either side of the piece's edge.
            if let Some((from, to)) = line.or(at.map(|at| (at.moved(0.0, -TICK_MM), at.moved(0.0, TICK_MM))))
            {
                pen.line(Ink::PieceTape, from, to);
            }
        }
        MarkWhat::Corner { top, left } => {
            if let Some(at) = at {
                corner(pen, Ink::PieceTape, at, *top, *left);
            }
        }
        MarkWhat::Help | MarkWhat::Passage | MarkWhat::RacewayEnd => {
            if let Some(at) = at {
                pen.cross(Ink::Mark, PaperRect::of(at, at).grown(TICK_MM * 0.7));
            }
        }
        MarkWhat::Sweep { .. } => {
            if let (Some((from, to)), true) = (line, pen.is_lit()) {
                pen.line(Ink::Sweep, from, to);
            }
        }
        MarkWhat::Probe { .. } | MarkWhat::Hole { .. } | MarkWhat::Look => {
            if let (Some(at), true) = (at, pen.is_lit()) {
                pen.circle(Ink::Mark, at, RING_MM, false);
            }
        }
        MarkWhat::Entry | MarkWhat::Exit => {
            if let (Some(outline), true) = (mark.outline, pen.is_lit()) {
                let corners = pen.scale.paper_rect(outline).corners();
                pen.outline(Ink::Mark, &corners);
            }
        }
        MarkWhat::MakeSafe
        | MarkWhat::Feed
        | MarkWhat::Plug
        | MarkWhat::LiftOn
        | MarkWhat::Test
        | MarkWhat::Check => {}
    }
}

/// Two arms along the piece's edges from its corner.
fn corner(pen: &mut Pen<'_>, ink: Ink, at: PaperPoint, top: bool, left: bool) {
    let across = if left { ARM_MM } else { -ARM_MM };
    let upright = if top { ARM_MM } else { -ARM_MM };
    let points = vec![at.moved(across, 0.0), at, at.moved(0.0, upright)];
    pen.add(ink, ItemKind::Polyline { points });
}

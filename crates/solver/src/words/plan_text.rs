//! The whole plan as text for a terminal.

use super::called::Called;
use super::lines::Text;
use super::phrase::{named, one_line};
use super::place_line;
use super::things::{from_lines, hole_name};
use super::{
    assumed, cautions, framing, mark, mark_name, mend, next, next_probe, on_paper, sight, stage, wish,
};
use crate::beside::Beside;
use crate::error_budget::error_budgets;
use crate::job::Job;
use crate::plan::Plan;
use crate::plan::piece::{HolePlan, Meets, PiecePlan};
use crate::units::Length;

/// The mark-out as text, with what was asked beside it: lines of at most 100 characters without trailing spaces, ending
/// in a line feed.
///
/// Names are taken from the job on one line and without control characters, so that none can steer a terminal.
#[must_use]
pub fn plan_text(job: &Job, plan: &Plan, beside: &Beside) -> String {
    let mut text = Text::default();
    head(&mut text, job, plan);
    for piece in &plan.pieces {
        text.gap();
        self::piece(&mut text, job, plan, beside, piece);
    }
    let mut before = None;
    for (index, one) in plan.marks.iter().enumerate() {
        if before != Some(one.stage) {
            before = Some(one.stage);
            text.heading(stage(one.stage));
        }
        text.line(2, &format!("{}. {}", index + 1, mark_name(plan, one)));
        text.line(6, &mark(plan, one));
    }
    if plan.pieces.iter().any(|piece| piece.mount.is_some()) && !plan.framing.planes.is_empty() {
        text.heading("Next probe");
        text.line(2, &next_probe(plan, beside.probe.as_ref()));
    }
    text.heading("Studs");
    for stud in &plan.framing.studs {
        text.line(2, &framing::stud(plan, stud));
    }
    if plan.framing.studs.is_empty() {
        text.line(2, "None known.");
    }
    for plane in &plan.framing.planes {
        text.line(2, &framing::spacing(plan, plane));
        for outlier in &plane.outliers {
            text.line(2, &framing::outlier(plan, outlier));
        }
    }
    for (index, one) in plan.sight.iter().enumerate() {
        if index == 0 {
            text.heading("Seats");
        }
        let mut told = sight(plan, one).into_iter();
        text.lines(2, told.next());
        told.for_each(|line| text.line(4, &line));
    }
    text.heading("Findings");
    for (index, one) in plan.findings.iter().enumerate() {
        text.line(2, &on_paper::finding(plan, one));
        for one in beside.mends.get(index).into_iter().flatten() {
            text.line(4, &mend(job, plan, one));
        }
    }
    if plan.findings.is_empty() {
        text.line(2, "None.");
    }
    for (index, line) in super::error_budgets(plan, &error_budgets(job, plan)).iter().enumerate() {
        if index == 0 {
            text.heading("How true it will be");
        }
        text.line(2, line);
    }
    if !plan.assumed.is_empty() {
        text.heading("Assumed");
        for one in &plan.assumed {
            text.line(2, &assumed(plan, one));
        }
    }
    text.heading("Cautions");
    for caution in cautions() {
        text.line(2, caution);
    }
    text.written
}

fn head(text: &mut Text, job: &Job, plan: &Plan) {
    let title = one_line(&job.title);
    text.line(0, if title.is_empty() { "A job without a title" } else { &title });
    let wall = job.wall(&plan.wall);
    let print = |length: Length| plan.style.print(length);
    let outline = plan.survey.outline;
    let (width, height) = (print(outline.width()), print(outline.height()));
    let name = named(wall.and_then(|wall| wall.name.as_ref()), &plan.wall);
    text.line(0, &format!("Wall: {name}, {width} wide, {height} high"));
    if let Some(id) = &plan.option {
        let option = wall.and_then(|wall| wall.options.iter().find(|option| option.id == *id));
        text.line(0, &format!("Option: {}", named(option.and_then(|option| option.name.as_ref()), id)));
    }
    let next = next(plan);
    if !next.is_empty() {
        text.line(0, &format!("Next: {next}"));
    }
}

fn piece(text: &mut Text, job: &Job, plan: &Plan, beside: &Beside, piece: &PiecePlan) {
    let size = |width: Length, height: Length| {
        format!("{} wide, {} high", plan.style.print(width), plan.style.print(height))
    };
    let called = Called::piece(plan, piece);
    let outline = size(piece.outline.width(), piece.outline.height());
    text.line(0, &format!("{}: {outline}", super::phrase::capital(called.bare())));
    text.line(2, &place_line(plan, piece));
    text.lines(2, wish(plan, piece));
    if let Some(mount) = &piece.mount {
        text.line(2, &format!("Plate: {}", size(mount.plate.width(), mount.plate.height())));
        for hole in &mount.holes {
            text.line(4, &hole_line(plan, hole));
        }
        for one in super::verdict(plan, &mount.fastening) {
            text.line(2, &one);
        }
        let limits = beside.limits_of(&piece.id);
        text.lines(2, limits.and_then(|limits| super::limits(plan, piece, limits)));
        if let Some(asks) = super::asks(job, &mount.id) {
            text.line(2, &asks);
        }
        for one in &mount.fastening.fasteners {
            text.line(4, &super::fastener(plan, one));
        }
        for one in &mount.fastening.left_empty {
            text.line(4, &super::left_empty(plan, one));
        }
    }
    for one in super::cable(plan, piece).into_iter().chain(super::cable::other_ways(plan, piece)) {
        text.line(2, &one);
    }
}

/// A hole by the plate's two lines, and what it meets.
fn hole_line(plan: &Plan, hole: &HolePlan) -> String {
    let [across, upright] = from_lines(plan, hole.in_plate.x, hole.in_plate.y);
    let meets = match hole.meets {
        Meets::Stud => "in a stud",
        Meets::StudEdge => "too near a stud's edge",
        Meets::Board => "nothing behind the face",
        Meets::Hidden => "on something hidden",
        Meets::Masonry => "in masonry or concrete",
        Meets::OffWall => "off the wall or over an opening",
        Meets::NotKnown => "not known what it meets",
    };
    let chance = match hole.chance {
        Some(_) if hole.met => ", met".to_owned(),
        Some(chance) if matches!(hole.meets, Meets::Stud | Meets::StudEdge) => {
            format!(", {} solid wood", framing::percent(chance))
        }
        _ => String::new(),
    };
    format!("{}: {across}, {upright}: {meets}{chance}.", super::phrase::capital(&hole_name(&hole.id)))
}

#[cfg(test)]
mod tests;

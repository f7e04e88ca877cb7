//! The one line over the drawing.

use super::called::Called;
use super::datum;
use super::phrase::{amount, capital, side_of};
use super::reading::line_end;
use super::things::{above_floor, along};
use crate::geometry::{Direction, Point};
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkWhat, Reading};
use crate::plan::piece::{MountedPlan, PiecePlan};
use crate::units::Length;

/// The plate's centre line and top by their readings, and the piece's own centre where it is another. Without a
/// mount the piece's own middle and top.
#[must_use]
pub fn place_line(plan: &Plan, piece: &PiecePlan) -> String {
    let mut parts = match &piece.mount {
        Some(mount) => plate(plan, piece, mount),
        None => bare_piece(plan, piece),
    };
    if let Some(first) = parts.first_mut() {
        *first = capital(first);
    }
    // What was measured of the plate's holes decides where its middle is.
    let assumed =
        piece.assumed || piece.mount.as_ref().is_some_and(|mount| mount.assumed || mount.middle_assumed);
    format!("{}{}.", if assumed { "Assumed: " } else { "" }, parts.join("; "))
}

fn plate(plan: &Plan, piece: &PiecePlan, mount: &MountedPlan) -> Vec<String> {
    let origin = mount.frame.origin;
    let centre = match struck(plan, piece, &MarkWhat::CentreLine).and_then(|mark| mark.readings.first()) {
        Some(reading) => by_reading(plan, reading),
        None => along(plan, origin.x),
    };
    let level = match struck(plan, piece, &MarkWhat::LevelLine).filter(|mark| !mark.readings.is_empty()) {
        Some(mark) => level(plan, mark),
        None => above_floor(plan, origin),
    };
    let mut parts = vec![format!("centre line {centre}"), format!("level line {level}")];
    if plan.style.steps(mount.offset) != 0 {
        let side = if mount.offset < Length::default() { Direction::Left } else { Direction::Right };
        parts.push(format!(
            "{} {} {} the centre line",
            Called::piece(plan, piece).own("centre").trim_start_matches("the "),
            amount(plan, mount.offset),
            side_of(side)
        ));
    }
    parts
}

fn bare_piece(plan: &Plan, piece: &PiecePlan) -> Vec<String> {
    let middle = piece.outline.centre();
    let top = Point::new(middle.x, piece.outline.top);
    vec![
        format!("{} {}", Called::piece(plan, piece).own("centre"), along(plan, middle.x)),
        format!("its top {}", above_floor(plan, top)),
    ]
}

fn struck<'a>(plan: &'a Plan, piece: &PiecePlan, what: &MarkWhat) -> Option<&'a Mark> {
    plan.marks.iter().find(|mark| mark.piece == piece.id && mark.what == *what)
}

/// The level line's readings: once where both ends read alike, else each with its end.
fn level(plan: &Plan, mark: &Mark) -> String {
    let mut told: Vec<(String, Option<&str>)> = Vec::new();
    for reading in &mark.readings {
        let words = by_reading(plan, reading);
        if !told.iter().any(|(known, _)| *known == words) {
            told.push((words, line_end(mark, reading)));
        }
    }
    if let [(only, _)] = told.as_slice() {
        return only.clone();
    }
    let each = told.into_iter().map(|(words, end)| match end {
        Some(end) => format!("{words} at its {end} end"),
        None => words,
    });
    each.collect::<Vec<_>>().join(", ")
}

fn by_reading(plan: &Plan, reading: &Reading) -> String {
    let (shown, from) = (plan.style.print_steps(reading.steps), datum(plan, &reading.from));
    if reading.steps == 0 {
        format!("on {from}")
    } else {
        format!("{shown} {} {from}", side_of(reading.direction))
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches};
    use super::*;

    #[test]
    fn the_line_is_told_by_its_readings() {
        let plan = sample::plan();
        assert_eq!(
            place_line(&plan, &plan.pieces[0]),
            "Centre line 24 1/4\" right of the left corner; level line 52\" above the floor at its left end, 52 \
             1/4\" above the floor at its right end; display's centre 1 1/4\" right of the centre line."
        );
    }

    #[test]
    fn ends_that_read_alike_are_told_once() {
        let mut plan = sample::plan();
        plan.next = None;
        let level = plan.marks.iter_mut().find(|mark| mark.what == MarkWhat::LevelLine).unwrap();
        level.readings[1].steps = level.readings[0].steps;
        plan.pieces[0].mount.as_mut().unwrap().offset = inches("0");
        assert_eq!(
            place_line(&plan, &plan.pieces[0]),
            "Centre line 24 1/4\" right of the left corner; level line 52\" above the floor."
        );
    }

    #[test]
    fn a_middle_that_hangs_on_a_usual_plate_is_told_as_assumed() {
        let mut plan = sample::plan();
        assert!(!place_line(&plan, &plan.pieces[0]).starts_with("Assumed: "));
        plan.pieces[0].mount.as_mut().unwrap().middle_assumed = true;
        assert!(place_line(&plan, &plan.pieces[0]).starts_with("Assumed: "));
    }

    #[test]
    fn without_marks_or_mount_the_places_are_told() {
        let mut plan = sample::plan();
        plan.marks.clear();
        plan.next = None;
        plan.pieces[0].assumed = true;
        let text = place_line(&plan, &plan.pieces[0]);
        assert!(
            text.starts_with("Assumed: Centre line 24 1/4\" right of the left corner; level line 52"),
            "{text}"
        );
        plan.pieces[0].mount = None;
        let text = place_line(&plan, &plan.pieces[0]);
        assert_eq!(
            text,
            "Assumed: The display's centre 25 1/2\" right of the left corner; its top 58\" above the floor."
        );
    }
}

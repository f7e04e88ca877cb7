//! Moving a piece: its rule stays, its nudge changes, in whole graduations of the reading that locates it. A drag and
//! the sweep both come through here, so that what is offered is what one gets.

use crate::geometry::{Axis, Point};
use crate::job::option::Nudge;
use crate::plan::Plan;
use crate::plan::mark::{MarkWhat, Reading};
use crate::plan::piece::PiecePlan;
use crate::subject::Id;
use crate::tape::Offset;
use crate::units::Length;

/// The nudge that takes the middle of a piece as near to a place as whole graduations allow, and the plan with it.
///
/// `was` is the piece's nudge in `plan`; `solve` gives the plan with another. At its rule's own place the nudge is none
/// at all, whatever the graduation. An axis along which it does not move keeps what it had.
pub fn nudged(
    plan: &Plan,
    piece: &PiecePlan,
    was: Nudge,
    to: Point,
    solve: &mut dyn FnMut(Nudge) -> Plan,
) -> (Nudge, Plan) {
    let now = piece.outline.centre();
    let right = Motion::new(plan, piece, Axis::Across, now, to);
    let up = Motion::new(plan, piece, Axis::Upright, now, to);
    let first = written(plan, was, right.nudge, up.nudge);

    // The plate may stand elsewhere in its play from there, read from another datum: where the readings then
    // do not come out round, try the place at which they do.
    let after = solve(first);
    let (over, above) = (rest(&after, &piece.id, Axis::Across), rest(&after, &piece.id, Axis::Upright));
    let right_again = right.corrected(over);
    let up_again = up.corrected(above);
    if right_again.is_none() && up_again.is_none() {
        return (first, after);
    }
    let second = written(plan, first, right_again.unwrap_or(right.nudge), up_again.unwrap_or(up.nudge));
    let again = solve(second);
    let worse = |axis, before: Length| rest(&again, &piece.id, axis).abs() > before.abs();
    if worse(Axis::Across, over) || worse(Axis::Upright, above) {
        return (first, after);
    }
    (second, again)
}

/// How a piece moves along one axis.
struct Motion {
    /// The nudge to be written.
    nudge: Length,
    /// Whether the nudge is to stay: at the rule's own place, or not moved at all.
    settled: bool,
}

impl Motion {
    fn new(plan: &Plan, piece: &PiecePlan, axis: Axis, now: Point, to: Point) -> Self {
        let (ruled, now, to) = (piece.ruled_centre.along(axis), now.along(axis), to.along(axis));
        let style = plan.style;
        if style.steps(to - ruled) == 0 {
            return Self { nudge: Length::default(), settled: true };
        }
        if style.steps(to - now) == 0 {
            return Self { nudge: now - ruled, settled: true };
        }
        let motion = to - now;
        let whole = match locating(plan, &piece.id, axis) {
            Some(reading) => {
                let sign = reading.direction.sign();
                let shown = style.length_of(style.steps(reading.value + motion * sign));
                (shown - reading.value) * sign
            }
            None => style.length_of(style.steps(motion)),
        };
        Self { nudge: now + whole - ruled, settled: false }
    }

    /// The nudge that takes away a rest, where there is one to take away.
    fn corrected(&self, rest: Length) -> Option<Length> {
        let small = Length::millimetres(1e-6);
        (!self.settled && rest.abs() > small).then(|| self.nudge - rest)
    }
}

/// The reading that locates a piece along an axis: of its own middle where that is not the plate's, else of
/// the plate's centre line; and of the level line.
fn locating<'a>(plan: &'a Plan, piece: &Id, axis: Axis) -> Option<&'a Reading> {
    let of = |wanted: &MarkWhat| {
        let mark = plan.marks.iter().find(|mark| mark.piece == *piece && mark.what == *wanted)?;
        mark.readings.iter().find(|reading| reading.direction.axis() == axis)
    };
    match axis {
        Axis::Across => of(&MarkWhat::PieceCentre).or_else(|| of(&MarkWhat::CentreLine)),
        Axis::Upright => of(&MarkWhat::LevelLine),
    }
}

/// By how much the reading that locates a piece lies past a whole graduation, right or up; 0 where there is none.
#[must_use]
pub fn rest(plan: &Plan, piece: &Id, axis: Axis) -> Length {
    locating(plan, piece, axis).map_or(Length::default(), |reading| {
        let over = reading.value - plan.style.length_of(plan.style.steps(reading.value));
        over * reading.direction.sign()
    })
}

/// A nudge as it is written; one that is not moved keeps the unit it was written in, and nothing is written as nothing.
fn written(plan: &Plan, was: Nudge, right: Length, up: Length) -> Nudge {
    let unit = plan.style.graduation.unit();
    let write = |was: Offset, length: Length| {
        let offset = Offset(length.quantised().with_unit(unit));
        if was == offset { was } else { offset }
    };
    Nudge { right: write(was.right, right), up: write(was.up, up) }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::Job;
    use crate::solve::solve;

    /// A room whose plate keeps its studs while the piece moves within its play.
    fn room() -> Job {
        ron::Options::default()
            .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
            .from_str(include_str!("../../../demo-jobs/breakfast_room.ron"))
            .unwrap()
    }

    #[test]
    fn where_the_plate_keeps_its_studs_the_middle_of_the_piece_is_round_from_its_centre_line() {
        let mut job = room();
        let wall = job.walls[0].id.clone();
        let before = solve(&job, &wall, None);
        let piece = before.pieces[0].clone();
        let plate_x = |plan: &Plan| plan.pieces[0].mount.as_ref().unwrap().frame.origin.x;
        let mut kept = 0;
        for sixteenths in (-24..=24).filter(|sixteenths| *sixteenths != 0) {
            let now = piece.outline.centre();
            let by = Length::inches(f64::from(sixteenths) / 16.0 + 0.011);
            let was = job.walls[0].options[0].hangings[0].nudge;
            let (_, after) = nudged(&before, &piece, was, Point::new(now.x + by, now.y), &mut |nudge| {
                job.walls[0].options[0].hangings[0].nudge = nudge;
                solve(&job, &wall, None)
            });
            job.walls[0].options[0].hangings[0].nudge = was;
            let tick = after.marks.iter().find(|mark| mark.what == MarkWhat::PieceCentre);
            let (Some(tick), true) = (tick, (plate_x(&after) - plate_x(&before)).mm().abs() < 1e-6) else {
                continue;
            };
            kept += 1;
            let shown = after.style.length_of(tick.readings[0].steps);
            let over = (tick.readings[0].value - shown).mm().abs();
            assert!(over < 1e-6, "{sixteenths}/16 in: {over} mm past a graduation");
        }
        assert!(kept > 10, "{kept}");
    }
}

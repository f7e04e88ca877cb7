//! Moving a piece: its rule stays, its nudge changes, in whole graduations of the reading that locates it.

use strikeline_solver::geometry::{Axis, Direction, Point};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{MarkWhat, Reading};
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::solve::{self, hanging_mut, solve};
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// Moves the middle of a piece as near to a place as whole graduations allow.
///
/// At its rule's own place the nudge is none at all, whatever the graduation.
pub(super) fn move_piece(job: &mut Job, plan: &Plan, id: &Id, to: Point) {
    let Some(piece) = plan.pieces.iter().find(|piece| piece.id == *id) else { return };
    let now = piece.outline.centre();
    let right = Motion::new(plan, piece, Axis::Across, now, to);
    let up = Motion::new(plan, piece, Axis::Upright, now, to);
    write(job, plan, piece, right.nudge, up.nudge);

    // The plate may stand elsewhere in its play from there, read from another datum: where the readings then
    // do not come out round, try the place at which they do.
    let after = solve(job, &plan.wall, plan.option.as_ref());
    let (over, above) = (rest(&after, id, Axis::Across), rest(&after, id, Axis::Upright));
    let right_again = right.corrected(over);
    let up_again = up.corrected(above);
    if right_again.is_none() && up_again.is_none() {
        return;
    }
    let first = (right.nudge, up.nudge);
    write(job, plan, piece, right_again.unwrap_or(first.0), up_again.unwrap_or(first.1));
    let again = solve(job, &plan.wall, plan.option.as_ref());
    let worse = |axis, before: Length| rest(&again, id, axis).abs() > before.abs();
    if worse(Axis::Across, over) || worse(Axis::Upright, above) {
        write(job, plan, piece, first.0, first.1);
    }
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

/// By how much the struck line of a piece lies past a whole graduation, right or up; 0 where none is struck.
fn rest(plan: &Plan, piece: &Id, axis: Axis) -> Length {
    let wanted = match axis {
        Axis::Across => MarkWhat::CentreLine,
        Axis::Upright => MarkWhat::LevelLine,
    };
    let mark = plan.marks.iter().find(|mark| mark.piece == *piece && mark.what == wanted);
    let reading = mark.and_then(|mark| mark.readings.iter().find(|reading| reading.direction.axis() == axis));
    reading.map_or(Length::default(), |reading| {
        let over = reading.value - plan.style.length_of(plan.style.steps(reading.value));
        over * Direction::sign(reading.direction)
    })
}

/// Writes the option that the plan assumed down as one of the job's own.
pub(super) fn write_down(job: &mut Job, plan: &Plan) {
    let _written = solve::write_down(job, &plan.wall);
}

/// Writes a nudge; what is nothing is written as nothing.
fn write(job: &mut Job, plan: &Plan, piece: &PiecePlan, right: Length, up: Length) {
    let unit = job.style().graduation.unit();
    let Some(hanging) = hanging_mut(job, plan, piece) else { return };
    let offset = |length: Length| Offset(length.quantised().with_unit(unit));
    // A nudge that is not moved keeps the unit it was written in.
    if hanging.nudge.right != offset(right) {
        hanging.nudge.right = offset(right);
    }
    if hanging.nudge.up != offset(up) {
        hanging.nudge.up = offset(up);
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{handle, job, plan};
    use super::super::{HandleKind, moved, place};
    use super::*;
    use strikeline_solver::job::option::Nudge;

    fn inches(value: f64) -> Length {
        Length::inches(value).quantised()
    }

    /// The job after moving the display by inches from where it is.
    fn after(job: &Job, right: f64, up: f64) -> Job {
        let plan = plan(job);
        let handle = handle(HandleKind::Piece, "display-1");
        let from = place(&plan, &handle, inches(60.0)).unwrap();
        moved(job, &plan, &handle, Point::new(from.x + inches(right), from.y + inches(up)))
    }

    fn nudge(job: &Job) -> Nudge {
        job.walls[0].options[0].hangings[0].nudge
    }

    #[test]
    fn a_piece_moves_by_its_nudge_and_its_marks_come_out_round() {
        let after = after(&job(), 3.04, -2.27);
        assert!((nudge(&after).right.length() - inches(3.04)).abs() <= inches(1.0 / 16.0));
        assert!((nudge(&after).up.length() + inches(2.27)).abs() <= inches(1.0 / 16.0));
        let plan = plan(&after);
        for axis in [Axis::Across, Axis::Upright] {
            assert!(rest(&plan, &Id::new("display-1"), axis).abs() < Length::millimetres(1e-6), "{axis:?}");
        }
        // Nothing but the nudge is written.
        let mut same = after.clone();
        same.walls[0].options[0].hangings[0].nudge = Nudge::default();
        assert_eq!(same, job());
    }

    #[test]
    fn back_at_its_rules_own_place_the_nudge_is_cleared() {
        let away = after(&job(), 3.0, 2.0);
        let plan = plan(&away);
        let ruled = plan.pieces[0].ruled_centre;
        let near = Point::new(ruled.x + inches(0.02), ruled.y - inches(0.02));
        let back = moved(&away, &plan, &handle(HandleKind::Piece, "display-1"), near);
        assert_eq!(nudge(&back), Nudge::default());
        assert_eq!(back, job());
    }

    #[test]
    fn one_graduation_at_a_time_moves_by_one_graduation() {
        let mut job = after(&job(), 1.0, 0.0);
        let start = nudge(&job).right.length();
        for step in 1..=5 {
            job = after(&job, 1.0 / 16.0, 0.0);
            let moved = nudge(&job).right.length() - start;
            assert!((moved - inches(f64::from(step) / 16.0)).abs() < inches(0.001), "step {step}: {moved:?}");
        }
    }

    #[test]
    fn an_assumed_option_is_written_down_when_the_piece_is_moved() {
        let mut bare = job();
        bare.walls[0].options.clear();
        let moved = after(&bare, 2.0, 0.0);
        assert_eq!(moved.walls[0].options.len(), 1);
        assert_ne!(nudge(&moved), Nudge::default());
        let before = plan(&bare).pieces[0].outline.centre();
        let now = plan(&moved).pieces[0].outline.centre();
        assert!((now.x - before.x - inches(2.0)).abs() <= inches(1.0 / 16.0));
        assert!((now.y - before.y).abs() < inches(0.001));
    }
}

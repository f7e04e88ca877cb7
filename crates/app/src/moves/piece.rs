//! Moving a piece: its rule stays, its nudge changes, in whole graduations of the reading that locates it.

use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::job::option::{Hanging, Nudge};
use strikeline_solver::nudge::nudged;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::solve::{self, Again, solve};
use strikeline_solver::subject::Id;

/// Moves the middle of a piece as near to a place as whole graduations allow.
pub(super) fn move_piece(job: &mut Job, plan: &Plan, id: &Id, to: Point) {
    let Some(piece) = plan.pieces.iter().find(|piece| piece.id == *id) else { return };
    let Some(index) = hanging_index(job, plan, piece) else { return };
    let Some(was) = hanging_at(job, index).map(|hanging| hanging.nudge) else { return };
    let (nudge, _) = nudged(plan, piece, was, to, &mut |nudge| {
        write(job, index, nudge);
        solve(job, &plan.wall, plan.option.as_ref())
    });
    write(job, index, nudge);
}

/// A piece that is moved from where it is again and again, as a hand does: what lies behind all of its places is worked
/// out once. Each time it comes to what [`moved`](super::moved) does.
#[derive(Clone, Debug)]
pub struct Moving {
    again: Again,
    /// The piece as it was.
    piece: PiecePlan,
    was: Nudge,
}

impl Moving {
    /// Of a piece of a job's plan; `None` where it is not there, or its option is an assumed one.
    #[must_use]
    pub fn of(job: &Job, plan: &Plan, piece: &Id) -> Option<Self> {
        let piece = plan.pieces.iter().find(|one| one.id == *piece)?.clone();
        let again = Again::of(job, &plan.wall, plan.option.as_ref()?, &piece.hanging)?;
        let was = again.nudge();
        Some(Self { again, piece, was })
    }

    /// The job with its middle as near to a place as whole graduations allow, and that job's plan. `plan` is the one it
    /// was made of.
    pub fn to(&mut self, plan: &Plan, to: Point) -> (Job, Plan) {
        let Self { again, piece, was } = self;
        let (nudge, there) = nudged(plan, piece, *was, to, &mut |nudge| again.plan(nudge));
        // What was tried last need not be what is taken.
        let there = if again.nudge() == nudge { there } else { again.plan(nudge) };
        (again.job().clone(), there)
    }
}

/// Which hanging of which wall and option puts a piece there. An option that was assumed is written down.
fn hanging_index(job: &mut Job, plan: &Plan, piece: &PiecePlan) -> Option<(usize, usize, usize)> {
    let wall = job.walls.iter().position(|wall| wall.id == plan.wall)?;
    let Some(option) = &plan.option else {
        write_down(job, plan);
        return Some((wall, job.walls.get(wall)?.options.len().checked_sub(1)?, 0));
    };
    let options = &job.walls.get(wall)?.options;
    let option = options.iter().position(|candidate| candidate.id == *option)?;
    let hanging = options.get(option)?.hangings.iter().position(|hanging| hanging.id == piece.hanging)?;
    Some((wall, option, hanging))
}

fn hanging_at(job: &mut Job, (wall, option, hanging): (usize, usize, usize)) -> Option<&mut Hanging> {
    job.walls.get_mut(wall)?.options.get_mut(option)?.hangings.get_mut(hanging)
}

/// Writes the option that the plan assumed down as one of the job's own.
pub(super) fn write_down(job: &mut Job, plan: &Plan) {
    let _written = solve::write_down(job, &plan.wall);
}

fn write(job: &mut Job, index: (usize, usize, usize), nudge: Nudge) {
    if let Some(hanging) = hanging_at(job, index) {
        hanging.nudge = nudge;
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{handle, job, plan};
    use super::super::{HandleKind, moved, place};
    use super::*;
    use strikeline_solver::geometry::Axis;
    use strikeline_solver::nudge::rest;
    use strikeline_solver::units::Length;

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

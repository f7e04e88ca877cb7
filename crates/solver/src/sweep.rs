//! What this wall offers: the same plan along a line of places of one piece. First a look at each, then each solved in
//! full, from where the piece is outward; one place at a time, so that whoever asks stops when there is no time left.

mod best;
mod line;
mod nearest;
mod place;

pub use best::{best, within_reach};
pub use line::Reach;
pub use nearest::{Nearest, can_hang};
pub use place::{Full, Place, Told};

use crate::geometry::{Axis, Point};
use crate::job::Job;
use crate::job::option::Nudge;
use crate::nudge::nudged;
use crate::plan::Plan;
use crate::plan::piece::PiecePlan;
use crate::solve::Again;
use crate::subject::Id;

/// The places of a piece along a line, one at each call: all at a look, from left to right or from below upward; then
/// all in full, from the present one outward.
#[derive(Clone, Debug)]
pub struct Sweep {
    plan: Plan,
    piece: PiecePlan,
    again: Again,
    /// The nudge of the piece where it is.
    was: Nudge,
    /// The middle of the piece at each place.
    line: Vec<Point>,
    /// Which of them is the present place.
    present: usize,
    /// How many were given.
    given: usize,
}

impl Sweep {
    /// Of a piece of a job's plan. The plan is the job's own.
    ///
    /// `None` where there is nothing to sweep: the plan has no such piece, its option is an assumed one, or what was
    /// done holds the piece along the axis.
    #[must_use]
    pub fn of(job: &Job, plan: &Plan, piece: &Id, axis: Axis, reach: Reach) -> Option<Self> {
        let piece = plan.pieces.iter().find(|one| one.id == *piece)?;
        let held = piece.mount.as_ref().and_then(|mount| mount.held.as_ref());
        let is_held = held.is_some_and(|held| match axis {
            Axis::Across => held.across,
            Axis::Upright => held.upright,
        });
        let again = Again::of(job, &plan.wall, plan.option.as_ref()?, &piece.hanging)?;
        let line = line::line(plan, piece, axis, reach);
        let present = line.iter().position(|place| *place == piece.outline.centre())?;
        let was = again.nudge();
        let sweep = Self { plan: plan.clone(), piece: piece.clone(), again, was, line, present, given: 0 };
        (!is_held).then_some(sweep)
    }

    /// The middle of the piece at each place, from left to right or from below upward; never empty.
    #[must_use]
    pub fn line(&self) -> &[Point] {
        &self.line
    }

    /// Which of them is where the piece is.
    #[must_use]
    pub fn present(&self) -> usize {
        self.present
    }

    fn look(&self, index: usize) -> Option<Place> {
        let centre = *self.line.get(index)?;
        let told = Told::Coarse(self.again.look(&self.plan, &self.piece, centre));
        Some(Place { index, wished: centre, told })
    }

    /// A place in full, given already or not; `None` where the sweep has no such place.
    pub fn full(&mut self, index: usize) -> Option<Place> {
        let Self { plan, piece, again, was, .. } = self;
        let wished = *self.line.get(index)?;
        let told = if index == self.present {
            Full::of(plan, &piece.id, *was)
        } else {
            let (nudge, there) = nudged(plan, piece, *was, wished, &mut |nudge| again.plan(nudge));
            Full::of(&there, &piece.id, nudge)
        };
        Some(Place { index, wished, told: Told::Full(Box::new(told?)) })
    }
}

impl Iterator for Sweep {
    type Item = Place;

    fn next(&mut self) -> Option<Place> {
        let given = self.given;
        self.given += 1;
        match given.checked_sub(self.line.len()) {
            None => self.look(given),
            Some(full) => self.full(outward(self.present, self.line.len(), full)?),
        }
    }

    fn size_hint(&self) -> (usize, Option<usize>) {
        let left = (2 * self.line.len()).saturating_sub(self.given);
        (left, Some(left))
    }
}

impl ExactSizeIterator for Sweep {}

/// The place that comes as such a one when they go outward from `present`, to the larger side first; `None` after the
/// last.
fn outward(present: usize, count: usize, turn: usize) -> Option<usize> {
    if turn >= count {
        return None;
    }
    let (below, above) = (present, count - 1 - present);
    let both = below.min(above);
    if turn <= 2 * both {
        let by = turn.div_ceil(2);
        return if turn % 2 == 1 { Some(present + by) } else { Some(present - by) };
    }
    let by = turn - both;
    if above > below { Some(present + by) } else { Some(present - by) }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn outward_takes_every_place_once_and_none_before_a_nearer_one() {
        assert_eq!(
            (0..6).map(|turn| outward(2, 5, turn)).collect::<Vec<_>>(),
            [Some(2), Some(3), Some(1), Some(4), Some(0), None]
        );
        for count in 1..9 {
            for present in 0..count {
                let order: Vec<usize> = (0..count).filter_map(|turn| outward(present, count, turn)).collect();
                let mut sorted = order.clone();
                sorted.sort_unstable();
                assert_eq!(sorted, (0..count).collect::<Vec<_>>(), "{present} of {count}: {order:?}");
                assert!(
                    order.is_sorted_by_key(|index| index.abs_diff(present)),
                    "{present} of {count}: {order:?}"
                );
            }
        }
    }
}

//! Whether a piece can hang where it is, and else the nearest place to either side where it can.

use super::{Full, Place, Reach, Sweep, Told, outward};
use crate::capacity::group::Word;
use crate::finding::Level;
use crate::geometry::Axis;
use crate::job::Job;
use crate::plan::Plan;
use crate::subject::Id;

/// Whether a piece can hang at a place, as far as is known: nothing stops it there, and its plate is not short. What is
/// not known yet stays to be probed or measured.
#[must_use]
pub fn can_hang(full: &Full) -> bool {
    full.count(Level::Stop) == 0 && full.if_probed != Some(Word::Short)
}

/// The nearest place to either side where a piece can hang, looked for from where it is outward, a place at each call:
/// whoever asks stops when there is no time left.
#[derive(Clone, Debug)]
pub struct Nearest {
    sweep: Sweep,
    turn: usize,
    found: Option<Full>,
    is_over: bool,
}

impl Nearest {
    /// Of a piece of a job's plan, over one bay to either side. The plan is the job's own. `None` as for [`Sweep::of`].
    #[must_use]
    pub fn of(job: &Job, plan: &Plan, piece: &Id) -> Option<Self> {
        let sweep = Sweep::of(job, plan, piece, Axis::Across, Reach::Bay)?;
        Some(Self { sweep, turn: 0, found: None, is_over: false })
    }

    /// Looks at one place more; whether there may be another to look at.
    pub fn look_on(&mut self) -> bool {
        if self.is_over {
            return false;
        }
        let index = outward(self.sweep.present(), self.sweep.line().len(), self.turn);
        self.turn += 1;
        match index.and_then(|index| self.sweep.full(index)) {
            Some(Place { told: Told::Full(full), .. }) if can_hang(&full) => {
                self.found = Some(*full);
                self.is_over = true;
            }
            Some(_) => {}
            None => self.is_over = true,
        }
        !self.is_over
    }

    /// Whether all that was to be looked at was.
    #[must_use]
    pub fn is_over(&self) -> bool {
        self.is_over
    }

    /// The place that was found; `None` while none is, or where there is none.
    #[must_use]
    pub fn found(&self) -> Option<&Full> {
        self.found.as_ref()
    }
}

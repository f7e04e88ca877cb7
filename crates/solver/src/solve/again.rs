//! An option solved again and again with one piece moved by its nudge: what lies behind all of its places is worked out
//! once. The steps are those of `solve`, and so is the plan.

use super::{Behind, Notes, empty_plan, hung};
use crate::job::Job;
use crate::job::option::{Hanging, Nudge};
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::subject::Id;

/// A job's option with a piece that is moved.
#[derive(Clone, Debug)]
pub struct Again {
    pub(super) job: Job,
    /// Where in the job the hanging is: wall, option, hanging.
    at: (usize, usize, usize),
    pub(super) behind: Behind,
    /// What was noted of that.
    notes: Notes,
}

impl Again {
    /// Of a hanging of an option of the job's own; `None` where the job has no such wall, option or hanging.
    #[must_use]
    pub fn of(job: &Job, wall: &Id, option: &Id, hanging: &Id) -> Option<Self> {
        let wall_at = job.walls.iter().position(|one| one.id == *wall)?;
        let own = job.walls.get(wall_at)?;
        let option_at = own.options.iter().position(|one| one.id == *option)?;
        let hangings = &own.options.get(option_at)?.hangings;
        let hanging_at = hangings.iter().position(|one| one.id == *hanging)?;
        let mut notes = Notes::default();
        let behind = Behind::of(job, own, Some(option), &mut notes);
        Some(Self { job: job.clone(), at: (wall_at, option_at, hanging_at), behind, notes })
    }

    /// The job with the nudge that was written last.
    #[must_use]
    pub fn job(&self) -> &Job {
        &self.job
    }

    /// The hanging that is moved, and its wall.
    pub(super) fn hanging(&self) -> Option<(&Wall, &Hanging)> {
        let (wall, option, hanging) = self.at;
        let wall = self.job.walls.get(wall)?;
        Some((wall, wall.options.get(option)?.hangings.get(hanging)?))
    }

    /// The nudge that it has.
    #[must_use]
    pub fn nudge(&self) -> Nudge {
        self.hanging().map(|(_, hanging)| hanging.nudge).unwrap_or_default()
    }

    /// Writes another nudge, and gives the very plan that `solve` makes of the job with it.
    pub fn plan(&mut self, nudge: Nudge) -> Plan {
        let (wall, option, hanging) = self.at;
        let options = self.job.walls.get_mut(wall).map(|wall| &mut wall.options);
        let hangings = options.and_then(|options| options.get_mut(option)).map(|option| &mut option.hangings);
        if let Some(moved) = hangings.and_then(|hangings| hangings.get_mut(hanging)) {
            moved.nudge = nudge;
        }
        let wall = self.job.walls.get(wall);
        match wall.and_then(|wall| Some((wall, wall.options.get(option)?))) {
            Some((wall, arrangement)) => {
                hung(&self.job, wall, arrangement, self.behind.clone(), None, &mut self.notes.clone())
            }
            // It was there when this was made.
            None => empty_plan(&self.job, &Id::default()),
        }
    }
}

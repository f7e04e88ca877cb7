//! What an answer would mean: the job solved with it entered.

use super::wanted::Wanted;
use super::{Answer, Said};
use crate::geometry::Point;
use crate::job::Job;
use crate::job::hit::{Hit, HitKind};
use crate::job::place::{AcrossReading, UprightReading};
use crate::plan::Plan;
use crate::solve::solve;
use crate::subject::Id;

/// The plan with an answer entered.
pub(super) struct Entered {
    pub(super) plan: Plan,
}

impl Entered {
    /// The plan with such a hit at a place; as it is where nothing is to be entered.
    pub(super) fn of(job: &Job, plan: &Plan, place: Point, kind: Option<HitKind>) -> Self {
        let Some(kind) = kind else { return Self { plan: plan.clone() } };
        let mut job = job.clone();
        let floor = plan.survey.floor.y_at(place.x);
        let hit = Hit {
            id: Id::new("next-probe"),
            kind,
            x: AcrossReading::from_left(place.x),
            y: Some(UprightReading::from_floor(place.y - floor)),
        };
        // The other walls are not solved, and a plan's wall is one of the job's.
        job.walls.retain(|wall| wall.id == plan.wall);
        for wall in &mut job.walls {
            wall.hits.push(hit.clone());
        }
        Self { plan: solve(&job, &plan.wall, plan.option.as_ref()) }
    }
}

/// What an answer means for the holes that were wanted.
pub(super) fn answer(said: Said, probability: f64, of: &Wanted<'_>, entered: &Entered) -> Answer {
    let holes = of.holes_in(&entered.plan);
    let chances = holes.iter().map(|hole| hole.chance.unwrap_or_default());
    Answer {
        said,
        probability,
        chance: chances.fold(1.0, f64::min),
        met: holes.iter().all(|hole| hole.met),
        lost: holes.iter().any(|hole| hole.stud.is_none()),
    }
}

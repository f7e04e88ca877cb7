//! What a probe met, written into the job at the place that was to be probed.

use super::things::{self, NewThing};
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::job::hidden::{Hidden, HiddenKind, KnownBy};
use strikeline_solver::job::hit::{Hit, HitKind};
use strikeline_solver::job::place::{AcrossReading, UprightReading};
use strikeline_solver::plan::Plan;
use strikeline_solver::units::Length;

/// The job with a hit at a place of the plan's wall: read from the wall's left end and from the floor there, in whole
/// graduations. The plan is the job's own.
#[must_use]
pub fn probed(job: &Job, plan: &Plan, place: Point, met: HitKind) -> Job {
    let mut after = job.clone();
    let id = after.give_id("hit");
    let (x, y) = read(plan, place);
    if let Some(wall) = after.walls.iter_mut().find(|wall| wall.id == plan.wall) {
        wall.hits.push(Hit { id, kind: met, x, y: Some(y) });
    }
    after
}

/// The job with something seen in the wall at a place, as far as it is seen there: what runs from floor to ceiling has
/// no height.
#[must_use]
pub fn seen(job: &Job, plan: &Plan, place: Point, kind: HiddenKind) -> Job {
    let (mut after, id) = things::with_new(job, plan, NewThing::Hidden(kind), Some(place));
    let (x, y) = read(plan, place);
    let hidden = after.walls.iter_mut().flat_map(|wall| &mut wall.hidden).find(|hidden| hidden.id == id);
    if let Some(hidden) = hidden {
        hidden.across.centre = Some(x);
        hidden.upright.centre = hidden.upright.centre.take().map(|_| y);
        hidden.known_by = Some(KnownBy::Seen);
    }
    after
}

/// The job with something in the wall that was met somewhere on the way, its place only supposed.
#[must_use]
pub fn supposed(job: &Job, plan: &Plan, place: Point, kind: HiddenKind) -> Job {
    let mut after = seen(job, plan, place, kind);
    if let Some(hidden) = added(job, &mut after, plan) {
        hidden.known_by = Some(KnownBy::Supposed);
    }
    after
}

/// The job with something else in the wall at a place, in the user's own words.
#[must_use]
pub fn seen_otherwise(job: &Job, plan: &Plan, place: Point, words: &str) -> Job {
    let mut after = seen(job, plan, place, HiddenKind::Other);
    if let Some(hidden) = added(job, &mut after, plan) {
        hidden.name = Some(words.trim().to_owned());
    }
    after
}

/// What was added to the hidden things of a job's wall: it comes last.
fn added<'a>(job: &Job, after: &'a mut Job, plan: &Plan) -> Option<&'a mut Hidden> {
    let known = job.wall(&plan.wall)?.hidden.len();
    after.walls.iter_mut().find(|wall| wall.id == plan.wall)?.hidden.get_mut(known)
}

/// A place as read from the wall's left end and from the floor there, in whole graduations.
fn read(plan: &Plan, place: Point) -> (AcrossReading, UprightReading) {
    let whole = |length: Length| {
        let length = plan.style.length_of(plan.style.steps(length)).max(Length::default());
        length.quantised().with_unit(plan.style.graduation.unit())
    };
    (
        AcrossReading::from_left(whole(place.x - plan.survey.outline.left)),
        UprightReading::from_floor(whole(place.y - plan.survey.floor.y_at(place.x))),
    )
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;

    #[test]
    fn what_was_met_stands_where_it_was_probed() {
        let job = job();
        let before = plan(&job);
        let place = Point::new(Length::inches(33.04), Length::inches(61.98));
        let after = probed(&job, &before, place, HitKind::Wood);
        let survey = plan(&after).survey;
        let hit = survey.hits.last().unwrap();
        assert_eq!(hit.kind, HitKind::Wood);
        let half = Length::inches(1.0 / 32.0).mm() + 1e-6;
        assert!((hit.x - place.x).mm().abs() <= half && (hit.y.unwrap() - place.y).mm().abs() <= half);
        assert_eq!(after.walls[0].hits.len(), job.walls[0].hits.len() + 1);
        let with_pipe = seen(&job, &before, place, HiddenKind::Pipe);
        let pipe = with_pipe.walls[0].hidden.last().unwrap();
        assert_eq!(pipe.across.centre.as_ref().unwrap().by, Length::inches(33.0625).quantised());
        assert_eq!(pipe.upright.centre, None, "it runs on");
        assert_eq!(job.clone(), super::super::sample::job(), "nothing else is changed");
    }
}

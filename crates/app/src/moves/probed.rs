//! What a probe met, written into the job at the place that was to be probed.

use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
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
    let whole = |length: Length| {
        let length = plan.style.length_of(plan.style.steps(length)).max(Length::default());
        length.quantised().with_unit(plan.style.graduation.unit())
    };
    let x = AcrossReading::from_left(whole(place.x - plan.survey.outline.left));
    let y = UprightReading::from_floor(whole(place.y - plan.survey.floor.y_at(place.x)));
    if let Some(wall) = after.walls.iter_mut().find(|wall| wall.id == plan.wall) {
        wall.hits.push(Hit { id, kind: met, x, y: Some(y) });
    }
    after
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
        assert_eq!(job.clone(), super::super::sample::job(), "nothing else is changed");
    }
}

//! What was planned and what was done, side by side.

use super::done::{follow_up, state};
use super::fastening::stock;
use super::finding::done::off;
use super::mark_name::mark_name;
use super::phrase::{capital, list, one_line, sentence};
use super::things::{above_floor, along, thing};
use crate::geometry::Point;
use crate::job::Job;
use crate::job::fact::Fact;
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkState};

/// What is handed over of a plan.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Handover {
    /// Each mark at which something was done, in the order of work.
    pub done: Vec<HandedOver>,
    /// What is still to be done: a sentence a stage of work that is not over.
    pub left: Vec<String>,
    /// What was found in the wall: a sentence each.
    pub met: Vec<String>,
    /// What has to follow on the wall: a sentence each.
    pub follows: Vec<String>,
    /// The files of pictures of the job as a whole.
    pub pictures: Vec<String>,
}

/// A mark at which something was done.
#[derive(Clone, Debug, PartialEq)]
pub struct HandedOver {
    /// Its name.
    pub name: String,
    /// What was done, where it went beside where it was planned, with what, and its pictures: sentences.
    pub told: String,
}

/// What was planned and what was done.
#[must_use]
pub fn handover(job: &Job, plan: &Plan) -> Handover {
    let follows = follow_up(plan).into_iter().filter(|follow| follow.asked.is_some());
    let hidden = plan.survey.hidden.iter().map(|hidden| {
        let what = thing(plan, &hidden.id.whole());
        let middle = hidden.rect.centre();
        sentence(&format!("{what}, {}, {}", along(plan, middle.x), above_floor(plan, middle)))
    });
    let of_job = job.pictures.iter().filter(|picture| picture.of.is_none());
    Handover {
        done: plan.marks.iter().filter_map(|mark| done(job, plan, mark)).collect(),
        left: left(plan),
        met: hidden.collect(),
        follows: follows.map(|follow| follow.text).collect(),
        pictures: of_job.map(|picture| one_line(&picture.file)).collect(),
    }
}

fn done(job: &Job, plan: &Plan, mark: &Mark) -> Option<HandedOver> {
    let word = state(mark.state)?;
    let wall = job.wall(&plan.wall)?;
    let own = |fact: &&Fact| *fact.mark.subject() == mark.id && fact.option == plan.option;
    let fact = wall.facts.iter().rev().find(own);
    let mut told = vec![match fact.and_then(Fact::off) {
        Some(by) if plan.style.steps(by.x.abs()) != 0 || plan.style.steps(by.y.abs()) != 0 => {
            sentence(&format!("{word} {} where it was planned", off(plan, by.x, by.y)))
        }
        Some(_) => sentence(&format!("{word} as planned")),
        None => sentence(word),
    }];
    if let Some(planned) = &mark.planned {
        let by = mark.place.map(|place| Point::new(place.x - planned.place.x, place.y - planned.place.y));
        told.extend(by.map(|by| sentence(&format!("{} where the plan now has it", off(plan, by.x, by.y)))));
    }
    let bored_for = fact.and_then(|fact| fact.fastener.as_ref());
    let bored_for = bored_for.and_then(|id| job.kit.fasteners.iter().find(|one| one.id == *id));
    told.extend(bored_for.map(|one| sentence(&format!("for a {}", stock(plan, one)))));
    let is_here =
        |of: &crate::subject::Subject| *of == mark.id || fact.is_some_and(|fact| *of == fact.id.whole());
    let pictures: Vec<String> = job
        .pictures
        .iter()
        .filter(|picture| picture.of.as_ref().is_some_and(is_here))
        .map(|picture| one_line(&picture.file))
        .collect();
    if !pictures.is_empty() {
        told.push(sentence(&format!("pictures: {}", list(&pictures))));
    }
    Some(HandedOver { name: mark_name(plan, mark), told: told.join(" ") })
}

/// What is still to be done, a stage a sentence.
fn left(plan: &Plan) -> Vec<String> {
    let mut stages: Vec<_> = plan.marks.iter().map(|mark| mark.stage).collect();
    stages.dedup();
    let told = stages.into_iter().filter_map(|stage| {
        let names: Vec<String> = plan
            .marks
            .iter()
            .filter(|mark| mark.stage == stage && mark.state == MarkState::ToDo && mark.is_needed)
            .map(|mark| mark_name(plan, mark))
            .collect();
        (!names.is_empty()).then(|| format!("{}: {}.", capital(super::stage(stage)), list(&names)))
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, well_told};
    use super::*;
    use crate::job::fact::{FactState, MarkId, Spot};
    use crate::job::picture::SitePicture;
    use crate::job::wall::Wall;
    use crate::subject::Id;
    use crate::tape::Offset;

    #[test]
    fn what_went_elsewhere_is_told_beside_its_plan_with_its_pictures() {
        let mut plan = sample::plan();
        let mark = plan.marks.iter_mut().find(|mark| mark.id.to_string() == "display-1.hole-2").unwrap();
        mark.state = MarkState::Drilled;
        let id = mark.id.clone();
        let spot = |x: &str, y: &str| Spot { x: Offset(inches(x)), y: Offset(inches(y)) };
        let fact = Fact {
            id: Id::new("fact-1"),
            mark: MarkId::of(id.clone()).unwrap(),
            option: plan.option.clone(),
            state: FactState::Drilled,
            planned: Some(spot("40", "60")),
            went: Some(spot("40 3/8", "60")),
            across: None,
            upright: None,
            upright_at_right: None,
            fastener: None,
            size: None,
        };
        let mut job = Job::new();
        job.walls.push(Wall { id: plan.wall.clone(), facts: vec![fact], ..Wall::default() });
        let picture = |of| SitePicture { id: Id::default(), file: "room-pictures/a.jpg".to_owned(), of };
        job.pictures = vec![picture(Some(id)), picture(None)];
        let handed = handover(&job, &plan);
        let [only] = handed.done.as_slice() else { panic!("{handed:?}") };
        assert_eq!(only.told, "Drilled 3/8\" right of where it was planned. Pictures: room-pictures/a.jpg.");
        assert_eq!(handed.pictures, ["room-pictures/a.jpg"]);
        for line in handed.left.iter().chain(&handed.met).chain(&handed.follows) {
            well_told(line);
        }
        assert!(handed.left.iter().any(|line| line.contains("Hole 1")), "{:?}", handed.left);
    }
}

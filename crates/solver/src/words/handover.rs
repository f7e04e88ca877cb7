//! What was planned and what was done, side by side.

use super::done::{follow_up, state};
use super::fastening::stock;
use super::finding::done::off;
use super::mark_name::mark_name;
use super::phrase::{capital, list, one_line, sentence};
use super::things::{above_floor, along, thing};
use crate::finding::What;
use crate::geometry::Point;
use crate::job::Job;
use crate::job::fact::Fact;
use crate::job::hidden::KnownBy;
use crate::job::hit::HitKind;
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkState, MarkWhat};
use crate::subject::{Id, Subject};
use crate::tolerance::{PROBED_BESIDE_MM, PROBED_WITHIN_MM};
use crate::units::Length;

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
    let wall = job.wall(&plan.wall);
    let was_met = |id: &Id| {
        let hidden = wall.and_then(|wall| wall.hidden.iter().find(|hidden| hidden.id == *id));
        hidden.is_none_or(|hidden| !matches!(hidden.known_by, Some(KnownBy::Drawing | KnownBy::Supposed)))
    };
    let hidden = plan.survey.hidden.iter().filter(|hidden| was_met(&hidden.id)).map(|hidden| {
        let what = thing(plan, &hidden.id.whole());
        let middle = hidden.rect.centre();
        sentence(&format!("{what}, {}, {}", along(plan, middle.x), above_floor(plan, middle)))
    });
    // What was done for another option, or for what hangs here no more, is on the wall too.
    let left_over = plan.findings.iter().filter(|finding| matches!(finding.what, What::LeftByOption { .. }));
    let left_over = left_over.map(|finding| super::finding(plan, finding));
    let is_told = |of: &Subject| {
        plan.marks.iter().any(|mark| state(mark.state).is_some() && shows(job, plan, mark, of))
    };
    let pictures = job.pictures.iter().filter(|picture| picture.of.as_ref().is_none_or(|of| !is_told(of)));
    let pictures = pictures.map(|picture| match &picture.of {
        None => one_line(&picture.file),
        Some(of) => format!("{}: {}", capital(&thing(plan, of)), one_line(&picture.file)),
    });
    Handover {
        done: plan.marks.iter().filter_map(|mark| done(job, plan, mark)).collect(),
        left: left(plan),
        met: hidden.collect(),
        follows: follows.map(|follow| follow.text).chain(left_over).collect(),
        pictures: pictures.collect(),
    }
}

fn done(job: &Job, plan: &Plan, mark: &Mark) -> Option<HandedOver> {
    let word = state(mark.state)?;
    let wall = job.wall(&plan.wall)?;
    let fact = wall.fact_of(&mark.id, plan.option.as_ref());
    let is_stripped = mark.state == MarkState::Stripped;
    let word = if is_stripped { "Drilled" } else { word };
    let mut told = vec![match fact.and_then(Fact::off) {
        Some(by) if plan.style.steps(by.x.abs()) != 0 || plan.style.steps(by.y.abs()) != 0 => {
            sentence(&format!("{word} {} where it was planned", off(plan, by.x, by.y)))
        }
        Some(_) => sentence(&format!("{word} as planned")),
        None => sentence(word),
    }];
    told.extend(is_stripped.then(|| "Stripped: nothing holds in it.".to_owned()));
    if matches!(mark.what, MarkWhat::Probe { .. }) {
        told.extend(probed(plan, mark));
    }
    if let Some(planned) = &mark.planned {
        let by = mark.place.map(|place| Point::new(place.x - planned.place.x, place.y - planned.place.y));
        told.extend(by.map(|by| sentence(&format!("{} where the plan now has it", off(plan, by.x, by.y)))));
    }
    let bored_for = fact.and_then(|fact| fact.fastener.as_ref());
    let bored_for = bored_for.and_then(|id| job.kit.fasteners.iter().find(|one| one.id == *id));
    let planned_for =
        planned_for(plan, mark).and_then(|id| job.kit.fasteners.iter().find(|one| one.id == *id));
    told.extend(bored_for.map(|one| match planned_for.filter(|planned| planned.id != one.id) {
        Some(planned) => sentence(&format!(
            "for a {}, where the plan now has a {}",
            stock(plan, one),
            stock(plan, planned)
        )),
        None => sentence(&format!("for a {}", stock(plan, one))),
    }));
    let is_here = |of: &Subject| shows(job, plan, mark, of);
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

/// Whether a picture's subject is a mark, or what was done there.
fn shows(job: &Job, plan: &Plan, mark: &Mark, of: &Subject) -> bool {
    let fact = job.wall(&plan.wall).and_then(|wall| wall.fact_of(&mark.id, plan.option.as_ref()));
    *of == mark.id || fact.is_some_and(|fact| *of == fact.id.whole())
}

/// The fastener that the plan has at a hole's mark.
fn planned_for<'a>(plan: &'a Plan, mark: &Mark) -> Option<&'a Id> {
    let MarkWhat::Hole { hole, .. } = &mark.what else { return None };
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece)?;
    let fasteners = &piece.mount.as_ref()?.fastening.fasteners;
    fasteners.iter().find(|one| one.hole == *hole).map(|one| &one.stock)
}

/// What a probe met: of the hits at its place.
fn probed(plan: &Plan, mark: &Mark) -> Option<String> {
    let place = mark.place?;
    let here = plan.survey.hits.iter().filter(|hit| {
        let near = |a: Length, b: Length, within: f64| (a - b).mm().abs() <= within;
        near(hit.x, place.x, PROBED_BESIDE_MM) && hit.y.is_some_and(|y| near(y, place.y, PROBED_WITHIN_MM))
    });
    let mut met: Vec<String> = here.filter_map(|hit| probe_met(hit.kind)).map(str::to_owned).collect();
    met.dedup();
    (!met.is_empty()).then(|| sentence(&format!("it met {}", list(&met))))
}

/// What a probe met, by the kind of hit; `None` for what was sensed.
fn probe_met(kind: HitKind) -> Option<&'static str> {
    match kind {
        HitKind::Wood => Some("wood"),
        HitKind::ShallowWood => Some("shallow wood"),
        HitKind::Air => Some("air"),
        HitKind::Metal => Some("metal"),
        HitKind::LeftEdge | HitKind::RightEdge | HitKind::Centre | HitKind::Magnet => None,
    }
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
        (!names.is_empty()).then(|| format!("{}: {}.", capital(super::stage(stage)), names.join("; ")))
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

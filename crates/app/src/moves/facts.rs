//! What was done at a mark, kept in the job as a fact and taken back again.

use strikeline_solver::geometry::{Axis, Direction};
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::{Fact, FactState, MarkId, Spot, StruckFrom, StruckReading};
use strikeline_solver::job::place::{Sideways, UpDown};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkWhat, Reading, ReadingDatum};
use strikeline_solver::subject::Subject;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// What can be done at a mark, the usual first; empty for a probe, of which the wall's answer is noted.
#[must_use]
pub fn doable(mark: &Mark) -> &'static [FactState] {
    match mark.what {
        MarkWhat::Corner { .. }
        | MarkWhat::LevelLine
        | MarkWhat::CentreLine
        | MarkWhat::PieceCentre
        | MarkWhat::Help => &[FactState::Struck],
        MarkWhat::Entry => &[FactState::Struck, FactState::Cut],
        MarkWhat::Hole { .. } => &[FactState::Struck, FactState::Drilled, FactState::Stripped],
        MarkWhat::Sweep { .. }
        | MarkWhat::MakeSafe
        | MarkWhat::Look
        | MarkWhat::Feed
        | MarkWhat::LiftOn
        | MarkWhat::Check => &[FactState::Done],
        MarkWhat::Probe { .. } => &[],
    }
}

/// The fact of a mark in the plan's option; where there are several, the last.
#[must_use]
pub fn fact_of<'a>(job: &'a Job, plan: &Plan, mark: &Subject) -> Option<&'a Fact> {
    let facts = &job.wall(&plan.wall)?.facts;
    facts.iter().rev().find(|fact| fact.mark.subject() == mark && fact.option == plan.option)
}

/// The job in which this was done at a mark of its plan, where it stands by the plan's readings. What was known of the
/// mark before gives way, but for where it went: a hole that is drilled where it was struck is where that went.
#[must_use]
pub fn with_fact(job: &Job, plan: &Plan, mark: &Mark, state: FactState) -> Job {
    let Some(id) = MarkId::of(mark.id.clone()) else { return job.clone() };
    let before = fact_of(job, plan, &mark.id);
    if let Some(before) = before.filter(|before| before.planned.is_some() && state != FactState::Done) {
        let mut after = job.clone();
        let facts = after.walls.iter_mut().flat_map(|wall| &mut wall.facts);
        facts.filter(|fact| fact.id == before.id).for_each(|fact| fact.state = state);
        return after;
    }
    let mut after = without_fact(job, plan, &mark.id);
    let unit = plan.style.graduation.unit();
    let offset = |length: Length| Offset(length.quantised().with_unit(unit));
    // A step strikes nothing, whether it has a place or not.
    let place = mark.place.filter(|_| state != FactState::Done);
    let along = |axis: Axis| {
        let all = mark.readings.iter().filter(move |reading| reading.direction.axis() == axis);
        all.filter(move |_| place.is_some())
    };
    let fact = Fact {
        id: after.give_id("fact"),
        mark: id,
        option: plan.option.clone(),
        state,
        planned: place.map(|place| Spot { x: offset(place.x), y: offset(place.y) }),
        went: None,
        across: along(Axis::Across).next().and_then(|reading| struck(plan, reading, sideways(reading))),
        upright: along(Axis::Upright).next().and_then(|reading| struck(plan, reading, up_down(reading))),
        upright_at_right: along(Axis::Upright)
            .nth(1)
            .and_then(|reading| struck(plan, reading, up_down(reading))),
        fastener: bored_for(plan, &mark.id),
    };
    if let Some(wall) = after.walls.iter_mut().find(|wall| wall.id == plan.wall) {
        wall.facts.push(fact);
    }
    after
}

/// The fastener that a hole of the plan is drilled for; none for another mark, or where none is chosen.
fn bored_for(plan: &Plan, mark: &Subject) -> Option<strikeline_solver::subject::Id> {
    let mounted = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref());
    let mut fasteners = mounted.flat_map(|mount| &mount.fastening.fasteners);
    fasteners.find(|fastener| fastener.subject == *mark).map(|fastener| fastener.stock.clone())
}

/// The job in which what was done at a mark went so far right of, and above, where it was planned; nothing changes where
/// nothing was done there.
#[must_use]
pub fn went(job: &Job, plan: &Plan, mark: &Subject, right: Length, up: Length) -> Job {
    let Some(before) = fact_of(job, plan, mark) else { return job.clone() };
    let unit = plan.style.graduation.unit();
    let add = |at: Offset, by: Length| Offset((at.length() + by).quantised().with_unit(unit));
    let went = before.planned.map(|planned| Spot { x: add(planned.x, right), y: add(planned.y, up) });
    let mut after = job.clone();
    let facts = after.walls.iter_mut().flat_map(|wall| &mut wall.facts);
    for fact in facts.filter(|fact| fact.id == before.id) {
        fact.went = went.filter(|went| Some(*went) != fact.planned);
    }
    after
}

/// The job in which nothing was done yet at a mark in the plan's option.
#[must_use]
pub fn without_fact(job: &Job, plan: &Plan, mark: &Subject) -> Job {
    let mut after = job.clone();
    for wall in after.walls.iter_mut().filter(|wall| wall.id == plan.wall) {
        wall.facts.retain(|fact| fact.mark.subject() != mark || fact.option != plan.option);
    }
    after
}

fn sideways(reading: &Reading) -> Option<Sideways> {
    match reading.direction {
        Direction::Left => Some(Sideways::Left),
        Direction::Right => Some(Sideways::Right),
        Direction::Up | Direction::Down => None,
    }
}

fn up_down(reading: &Reading) -> Option<UpDown> {
    match reading.direction {
        Direction::Up => Some(UpDown::Up),
        Direction::Down => Some(UpDown::Down),
        Direction::Left | Direction::Right => None,
    }
}

/// A reading as the tape showed it; `None` where there was nothing to read it from.
fn struck<D>(plan: &Plan, reading: &Reading, direction: Option<D>) -> Option<StruckReading<D>> {
    let unit = plan.style.graduation.unit();
    let from = match &reading.from {
        ReadingDatum::LeftEnd => StruckFrom::LeftEnd,
        ReadingDatum::RightEnd => StruckFrom::RightEnd,
        ReadingDatum::Floor => StruckFrom::Floor,
        ReadingDatum::ControlLine => StruckFrom::ControlLine,
        ReadingDatum::Edge(thing) | ReadingDatum::Struck(thing) => StruckFrom::Thing(thing.clone()),
        ReadingDatum::Nothing => return None,
    };
    Some(StruckReading {
        from,
        how: reading.how,
        direction: direction?,
        at: Offset(reading.at.quantised().with_unit(unit)),
        shown: plan.style.length_of(reading.steps).quantised().with_unit(unit),
        datum: match &reading.from {
            ReadingDatum::Struck(other) => plan
                .marks
                .iter()
                .find(|mark| mark.id == *other)
                .and_then(|mark| mark.place)
                .map(|at| Offset(at.along(reading.direction.axis()).quantised().with_unit(unit))),
            _ => None,
        },
    })
}

#[cfg(test)]
mod tests {
    use super::super::sample::{job, plan};
    use super::*;

    fn line(plan: &Plan) -> Mark {
        plan.marks.iter().find(|mark| mark.what == MarkWhat::LevelLine).unwrap().clone()
    }

    #[test]
    fn what_was_done_is_kept_with_its_readings_and_taken_back() {
        let job = job();
        let plan = plan(&job);
        let mark = line(&plan);
        let struck = with_fact(&job, &plan, &mark, FactState::Struck);
        let fact = fact_of(&struck, &plan, &mark.id).unwrap();
        assert_eq!((fact.state, fact.mark.subject()), (FactState::Struck, &mark.id));
        let upright: Vec<_> =
            mark.readings.iter().filter(|reading| reading.direction.axis() == Axis::Upright).collect();
        assert_eq!(fact.upright.as_ref().unwrap().shown, plan.style.length_of(upright[0].steps));
        assert_eq!(fact.upright_at_right.is_some(), upright.len() > 1);
        assert_eq!(without_fact(&struck, &plan, &mark.id).walls, job.walls);
    }

    #[test]
    fn of_one_mark_only_the_last_is_known() {
        let text = include_str!("../../../../demo-jobs/breakfast_room.ron");
        let job = crate::files::job_file::read_job_text(text, std::path::Path::new("room")).unwrap().job;
        let plan = plan(&job);
        let hole = plan.marks.iter().find(|mark| matches!(mark.what, MarkWhat::Hole { .. })).unwrap();
        let drilled = with_fact(&job, &plan, hole, FactState::Drilled);
        let stripped = with_fact(&drilled, &plan, hole, FactState::Stripped);
        assert_eq!(stripped.walls[0].facts.len(), 1);
        assert_eq!(fact_of(&stripped, &plan, &hole.id).unwrap().state, FactState::Stripped);
        let step = plan.marks.iter().find(|mark| mark.place.is_none()).unwrap();
        let done = with_fact(&job, &plan, step, FactState::Done);
        let fact = fact_of(&done, &plan, &step.id).unwrap();
        assert_eq!((fact.state, fact.planned), (FactState::Done, None));
    }

    #[test]
    fn what_went_elsewhere_keeps_where_it_was_planned() {
        let job = job();
        let plan = plan(&job);
        let mark = line(&plan);
        let struck = with_fact(&job, &plan, &mark, FactState::Struck);
        let off = went(&struck, &plan, &mark.id, Length::default(), Length::inches(0.25));
        let fact = fact_of(&off, &plan, &mark.id).unwrap();
        let (planned, at) = (fact.planned.unwrap(), fact.went.unwrap());
        assert!((at.y.length() - planned.y.length() - Length::inches(0.25)).mm().abs() < 1e-5);
        assert_eq!(at.x, planned.x);
        let nothing = went(&off, &plan, &mark.id, Length::default(), Length::default());
        assert_eq!(fact_of(&nothing, &plan, &mark.id).unwrap().went, None);
    }
}

//! What was done at a mark, kept in the job as a fact and taken back again.

use strikeline_solver::geometry::{Axis, Direction};
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::{CutSize, Fact, FactState, MarkId, Spot, StruckFrom, StruckReading};
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
        | MarkWhat::Help
        | MarkWhat::RacewayEnd => &[FactState::Struck],
        MarkWhat::Entry | MarkWhat::Exit | MarkWhat::Passage => &[FactState::Struck, FactState::Cut],
        MarkWhat::Hole { .. } => &[FactState::Struck, FactState::Drilled, FactState::Stripped],
        MarkWhat::Sweep { .. }
        | MarkWhat::MakeSafe
        | MarkWhat::Look
        | MarkWhat::Feed
        | MarkWhat::Plug
        | MarkWhat::Test
        | MarkWhat::LiftOn
        | MarkWhat::Check => &[FactState::Done],
        MarkWhat::Probe { .. } => &[],
    }
}

/// The fact of a mark in the plan's option; where there are several, the last.
#[must_use]
pub fn fact_of<'a>(job: &'a Job, plan: &Plan, mark: &Subject) -> Option<&'a Fact> {
    job.wall(&plan.wall)?.fact_of(mark, plan.option.as_ref())
}

/// The job in which this was done at a mark of its plan, where it stands by the plan's readings. What was known of the
/// mark before gives way, but for where it went: a hole that is drilled where it was struck is where that went.
#[must_use]
pub fn with_fact(job: &Job, plan: &Plan, mark: &Mark, state: FactState) -> Job {
    let Some(id) = MarkId::of(mark.id.clone()) else { return job.clone() };
    let before = fact_of(job, plan, &mark.id);
    if let Some(before) = before.filter(|before| before.planned.is_some() && state != FactState::Done) {
        let mut after = job.clone();
        let was_bored = matches!(before.state, FactState::Drilled | FactState::Stripped);
        let facts = after.walls.iter_mut().flat_map(|wall| &mut wall.facts);
        for fact in facts.filter(|fact| fact.id == before.id) {
            // The kit may have changed since it was struck, the bit that bored it has not.
            if state == FactState::Struck || !was_bored {
                fact.fastener = bored_for(plan, mark, state);
            }
            if before.state != FactState::Cut {
                fact.size = opened(plan, mark, state);
            }
            fact.state = state;
        }
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
        fastener: bored_for(plan, mark, state),
        size: opened(plan, mark, state),
    };
    if let Some(wall) = after.walls.iter_mut().find(|wall| wall.id == plan.wall) {
        wall.facts.push(fact);
    }
    after
}

/// The fastener that a hole of the plan is drilled for; none while it is only struck, for another mark, or where none
/// is chosen.
fn bored_for(plan: &Plan, mark: &Mark, state: FactState) -> Option<strikeline_solver::subject::Id> {
    if !matches!(state, FactState::Drilled | FactState::Stripped) {
        return None;
    }
    let mounted = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref());
    let mut fasteners = mounted.flat_map(|mount| &mount.fastening.fasteners);
    fasteners.find(|fastener| fastener.subject == mark.id).map(|fastener| fastener.stock.clone())
}

/// How large the opening of a mark is cut; none while it is only struck, or of another mark.
fn opened(plan: &Plan, mark: &Mark, state: FactState) -> Option<CutSize> {
    if state != FactState::Cut {
        return None;
    }
    let unit = plan.style.graduation.unit();
    let size = |length: Length| length.quantised().with_unit(unit);
    mark.outline.map(|outline| CutSize { width: size(outline.width()), height: size(outline.height()) })
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
    fn a_hole_is_bored_for_what_the_kit_has_when_it_is_drilled() {
        let text = include_str!("../../../../demo-jobs/breakfast_room.ron");
        let job = crate::files::job_file::read_job_text(text, std::path::Path::new("room")).unwrap().job;
        let stock = |plan: &Plan| plan.pieces[0].mount.as_ref().unwrap().fastening.fasteners[0].stock.clone();
        let now = plan(&job);
        let hole = now.pieces[0].mount.as_ref().unwrap().fastening.fasteners[0].subject.clone();
        let mark = |plan: &Plan| plan.marks.iter().find(|mark| mark.id == hole).unwrap().clone();
        let of = |job: &Job| fact_of(job, &now, &hole).unwrap().fastener.clone();
        let mut struck = with_fact(&job, &now, &mark(&now), FactState::Struck);
        assert_eq!(of(&struck), None, "a pencil bores nothing");
        // What was struck for is not on the truck any more, but its twin is.
        let mut twin = struck.kit.fasteners.iter().find(|one| one.id == stock(&now)).unwrap().clone();
        twin.id = strikeline_solver::subject::Id::new("twin-1");
        struck.kit.fasteners.retain(|one| one.id != stock(&now));
        struck.kit.fasteners.insert(0, twin);
        let then = plan(&struck);
        assert_ne!(stock(&then), stock(&now));
        let drilled = with_fact(&struck, &then, &mark(&then), FactState::Drilled);
        assert_eq!(of(&drilled), Some(stock(&then)));
        // That it spins changes nothing of what it was bored for, whatever the kit has by then.
        let mut sold = drilled.clone();
        sold.kit.fasteners.clear();
        let stripped = with_fact(&sold, &plan(&sold), &mark(&plan(&sold)), FactState::Stripped);
        assert_eq!(of(&stripped), Some(stock(&then)));
    }

    #[test]
    fn an_opening_keeps_the_size_that_it_is_cut_with() {
        let text = include_str!("../../../../demo-jobs/breakfast_room.ron");
        let job = crate::files::job_file::read_job_text(text, std::path::Path::new("room")).unwrap().job;
        let now = plan(&job);
        let entry = now.marks.iter().find(|mark| mark.what == MarkWhat::Entry).unwrap();
        let outline = entry.outline.unwrap();
        let cut = with_fact(&job, &now, entry, FactState::Cut);
        let size = fact_of(&cut, &now, &entry.id).unwrap().size.unwrap();
        assert_eq!((size.width, size.height), (outline.width().quantised(), outline.height().quantised()));
        // Another box is wished: the hole in the wall stays what it is.
        let mut wider = cut.clone();
        for hanging in
            wider.walls.iter_mut().flat_map(|wall| &mut wall.options).flat_map(|one| &mut one.hangings)
        {
            hanging.way.entry_kind = Some(strikeline_solver::job::option::Opening::TwoGang);
        }
        let then = plan(&wider);
        let entry = then.marks.iter().find(|mark| mark.what == MarkWhat::Entry).unwrap();
        assert_eq!(entry.outline.map(|outline| outline.width().quantised()), Some(size.width));
    }
}

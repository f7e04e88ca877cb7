//! Where a mark really went: how far off its plan, and what a tape shows there.

use super::facts::fact_of;
use strikeline_solver::geometry::{Axis, Direction};
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::{Fact, Spot, StruckFrom};
use strikeline_solver::job::place::{Sideways, UpDown};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::ReadingDatum;
use strikeline_solver::subject::Subject;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// The job in which what was done at a mark went so far right of, and above, where it was planned; nothing changes
/// where nothing was done there.
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

/// A reading that a mark was struck by, as a tape shows it where the mark really went.
#[derive(Clone, Debug, PartialEq)]
pub struct Shown {
    /// What it is taken from.
    pub from: ReadingDatum,
    /// Which way.
    pub direction: Direction,
    /// How much.
    pub value: Length,
}

/// What a tape shows at a mark where it really went, sideways first; empty of a step without a place.
#[must_use]
pub fn shown_readings(fact: &Fact, plan: &Plan) -> Vec<Shown> {
    let Some(off) = fact.off() else { return Vec::new() };
    let shown = |from: &StruckFrom, direction: Direction, shown: Length| Shown {
        from: datum_of(plan, from),
        direction,
        value: shown + off.along(direction.axis()) * direction.sign(),
    };
    let across = fact.across.as_ref().map(|reading| {
        let direction = match reading.direction {
            Sideways::Left => Direction::Left,
            Sideways::Right => Direction::Right,
        };
        shown(&reading.from, direction, reading.shown)
    });
    let upright = fact.upright.as_ref().map(|reading| {
        let direction = match reading.direction {
            UpDown::Up => Direction::Up,
            UpDown::Down => Direction::Down,
        };
        shown(&reading.from, direction, reading.shown)
    });
    across.into_iter().chain(upright).collect()
}

/// The job in which a mark went where a tape, read so, shows so much; nothing changes where it was not read that way.
#[must_use]
pub fn went_by_reading(job: &Job, plan: &Plan, mark: &Subject, read: Direction, shows: Length) -> Job {
    let Some(fact) = fact_of(job, plan, mark) else { return job.clone() };
    let (Some(off), all) = (fact.off(), shown_readings(fact, plan)) else { return job.clone() };
    let Some(now) = all.iter().find(|one| one.direction == read) else { return job.clone() };
    let by = (shows - now.value) * read.sign();
    match read.axis() {
        Axis::Across => went(job, plan, mark, off.x + by, off.y),
        Axis::Upright => went(job, plan, mark, off.x, off.y + by),
    }
}

/// What a mark was struck from, as the plan tells of it.
fn datum_of(plan: &Plan, from: &StruckFrom) -> ReadingDatum {
    match from {
        StruckFrom::LeftEnd => ReadingDatum::LeftEnd,
        StruckFrom::RightEnd => ReadingDatum::RightEnd,
        StruckFrom::Floor => ReadingDatum::Floor,
        StruckFrom::ControlLine => ReadingDatum::ControlLine,
        StruckFrom::Thing(thing) if plan.marks.iter().any(|mark| mark.id == *thing) => {
            ReadingDatum::Struck(thing.clone())
        }
        StruckFrom::Thing(thing) => ReadingDatum::Edge(thing.clone()),
    }
}

#[cfg(test)]
mod tests {
    use super::super::facts::with_fact;
    use super::super::sample::{job, plan};
    use super::*;
    use strikeline_solver::job::fact::FactState;
    use strikeline_solver::plan::mark::MarkWhat;

    #[test]
    fn what_went_elsewhere_keeps_where_it_was_planned() {
        let job = job();
        let plan = plan(&job);
        let mark = plan.marks.iter().find(|mark| mark.what == MarkWhat::LevelLine).unwrap();
        let struck = with_fact(&job, &plan, mark, FactState::Struck);
        let off = went(&struck, &plan, &mark.id, Length::default(), Length::inches(0.25));
        let fact = fact_of(&off, &plan, &mark.id).unwrap();
        let (planned, at) = (fact.planned.unwrap(), fact.went.unwrap());
        assert!((at.y.length() - planned.y.length() - Length::inches(0.25)).mm().abs() < 1e-5);
        assert_eq!(at.x, planned.x);
        let nothing = went(&off, &plan, &mark.id, Length::default(), Length::default());
        assert_eq!(fact_of(&nothing, &plan, &mark.id).unwrap().went, None);
    }

    #[test]
    fn what_a_tape_shows_where_a_mark_went_is_where_it_went() {
        let job = job();
        let plan = plan(&job);
        let corner = plan.marks.iter().find(|mark| matches!(mark.what, MarkWhat::Corner { .. })).unwrap();
        let struck = with_fact(&job, &plan, corner, FactState::Struck);
        let of = |job: &Job| fact_of(job, &plan, &corner.id).unwrap().clone();
        for shown in shown_readings(&of(&struck), &plan) {
            let more = shown.value + Length::inches(0.375);
            let moved = went_by_reading(&struck, &plan, &corner.id, shown.direction, more);
            let off = of(&moved).off().unwrap().along(shown.direction.axis()) * shown.direction.sign();
            assert!((off - Length::inches(0.375)).mm().abs() < 1e-5, "{shown:?}: {off:?}");
            let again = shown_readings(&of(&moved), &plan);
            let again = again.iter().find(|one| one.direction == shown.direction).unwrap();
            assert!((again.value - more).mm().abs() < 1e-5);
            assert_eq!(went_by_reading(&moved, &plan, &corner.id, shown.direction, shown.value), struck);
        }
        assert_eq!(shown_readings(&of(&struck), &plan).len(), 2);
    }
}

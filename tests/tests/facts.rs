//! What was done to a wall is kept in its job's file: every mark of every demo, and what is refused.
#![allow(clippy::unwrap_used, clippy::indexing_slicing, reason = "a failure here is a failed test")]

use std::path::Path;
use strikeline::files::job_file::{read_job, read_job_text, write_job_text};
use strikeline_solver::geometry::{Axis, Direction, Point};
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::{Fact, FactState, MarkId, Spot, StruckFrom, StruckReading};
use strikeline_solver::job::place::{Sideways, UpDown};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkWhat, Reading, ReadingDatum};
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;

fn spot(place: Point) -> Spot {
    Spot { x: Offset(place.x.quantised()), y: Offset(place.y.quantised()) }
}

fn struck<D>(plan: &Plan, reading: &Reading, direction: D) -> StruckReading<D> {
    let from = match &reading.from {
        ReadingDatum::RightEnd => StruckFrom::RightEnd,
        ReadingDatum::ControlLine => StruckFrom::ControlLine,
        ReadingDatum::Edge(subject) | ReadingDatum::Struck(subject) => StruckFrom::Thing(subject.clone()),
        // From nothing is told from the left end or the floor, to be taken with help.
        ReadingDatum::LeftEnd | ReadingDatum::Floor | ReadingDatum::Nothing => {
            match reading.direction.axis() {
                Axis::Across => StruckFrom::LeftEnd,
                Axis::Upright => StruckFrom::Floor,
            }
        }
    };
    let shown = plan.style.length_of(reading.steps);
    StruckReading { from, how: reading.how, direction, at: Offset(reading.at.quantised()), shown }
}

/// A mark as if it had been struck, drilled or cut; `None` for a step that strikes nothing.
fn fact(plan: &Plan, mark: &Mark) -> Option<Fact> {
    let planned = spot(mark.place?);
    let mut across = mark.readings.iter().filter_map(|reading| {
        let direction = match reading.direction {
            Direction::Left => Sideways::Left,
            Direction::Right => Sideways::Right,
            Direction::Up | Direction::Down => return None,
        };
        Some(struck(plan, reading, direction))
    });
    let mut upright = mark.readings.iter().filter_map(|reading| {
        let direction = match reading.direction {
            Direction::Up => UpDown::Up,
            Direction::Down => UpDown::Down,
            Direction::Left | Direction::Right => return None,
        };
        Some(struck(plan, reading, direction))
    });
    let state = match mark.what {
        MarkWhat::Hole { first: true, .. } => FactState::Stripped,
        MarkWhat::Hole { .. } | MarkWhat::Probe { .. } => FactState::Drilled,
        MarkWhat::Entry => FactState::Cut,
        _ => FactState::Struck,
    };
    let fact = Fact {
        id: Id::default(),
        mark: MarkId::of(mark.id.clone())?,
        option: plan.option.clone(),
        state,
        planned,
        went: (state == FactState::Stripped).then_some(planned),
        across: across.next(),
        upright: upright.next(),
        upright_at_right: upright.next(),
    };
    let kept = [fact.across.is_some(), fact.upright.is_some(), fact.upright_at_right.is_some()];
    assert_eq!(kept.iter().filter(|kept| **kept).count(), mark.readings.len(), "{}", mark.id);
    Some(fact)
}

#[test]
fn every_mark_of_every_demo_can_be_kept_as_it_was_struck() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    let mut kept = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let mut job = read_job(&path).unwrap().job;
        let plans: Vec<Plan> = job.walls.iter().map(|wall| solve(&job, &wall.id, None)).collect();
        for (wall, plan) in job.walls.iter_mut().zip(&plans) {
            assert!(plan.findings.iter().all(|finding| finding.what.rule() != "facts_not_held"));
            wall.facts = plan.marks.iter().filter_map(|mark| fact(plan, mark)).collect();
            kept += wall.facts.len();
        }
        job.complete_ids().unwrap();
        let text = write_job_text(&job).unwrap();
        let again = read_job_text(&text, &path).unwrap();
        assert_eq!(again.job, job, "{}", path.display());
        assert_eq!(write_job_text(&again.job).unwrap(), text, "{}", path.display());
        for (wall, plan) in again.job.walls.iter().zip(&plans) {
            let held = solve(&again.job, &wall.id, None);
            let is_stripped = |fact: &&Fact| fact.state == FactState::Stripped;
            let stripped: Vec<_> = wall.facts.iter().filter(is_stripped).collect();
            let mounted = held.pieces.iter().filter_map(|piece| piece.mount.as_ref());
            for fastener in mounted.flat_map(|mount| &mount.fastening.fasteners) {
                let spins = stripped.iter().any(|fact| *fact.mark.subject() == fastener.subject);
                assert!(!spins, "{}: {}", path.display(), fastener.subject);
            }
            let mut whole = again.job.clone();
            whole.walls.iter_mut().for_each(|wall| wall.facts.retain(|fact| !is_stripped(&fact)));
            let marks = solve(&whole, &wall.id, None).marks;
            assert_eq!(marks, plan.marks, "all others are kept, and not yet held to");
            let told = held.findings.iter().any(|finding| finding.what.rule() == "facts_not_held");
            assert_eq!(told, !wall.facts.is_empty(), "{}", path.display());
        }
    }
    assert!(kept > 60, "{kept} marks in all");
}

const FACT: &str = "mark: \"display-1.hole-1\", state: drilled, planned: (x: \"40 in\", y: \"-3 mm\")";

fn read(facts: &str) -> Result<Job, String> {
    let text = format!("(format: 1, walls: [(id: \"wall-1\", facts: [\n{facts}])])");
    let opened = read_job_text(&text, Path::new("room.ron")).map_err(|why| why.to_string())?;
    Ok(opened.job)
}

#[test]
fn a_fact_written_by_hand_needs_no_more_than_is_known() {
    let job = read(&format!("({FACT})")).unwrap();
    let fact = &job.walls[0].facts[0];
    assert_eq!(fact.id.as_str(), "fact-2");
    assert_eq!((fact.state, fact.went, fact.across.is_none()), (FactState::Drilled, None, true));
    let text = write_job_text(&job).unwrap();
    assert!(text.contains("y: \"-3 mm\"") && !text.contains("went"), "{text}");
}

#[test]
fn what_shows_by_itself_that_it_is_no_fact_is_refused_where_it_stands() {
    let reading = |text: &str| format!("({FACT}, across: (how: butt, at: \"1 in\", {text}))");
    for (facts, said) in [
        (FACT.replace(".hole-1", ""), "\"display-1\" is no mark: write its piece and what is struck"),
        (FACT.replace("drilled", "gone"), "one of `struck`, `drilled`, `cut`, or `stripped`"),
        (FACT.replace("40 in", "40"), "the unit is missing"),
        (FACT.replace("state: drilled, ", ""), "the field `state` of `Fact` is missing"),
        (reading("from: \"roof\", direction: left, shown: \"9 in\""), "\"roof\" is nothing to strike from"),
        (reading("from: \"left\", direction: up, shown: \"9 in\""), "expected either `left` or `right`"),
        (reading("from: \"left\", direction: right, shown: \"-9 in\""), "a quantity below zero"),
    ] {
        let facts = if facts.starts_with('(') { facts } else { format!("({facts})") };
        let why = read(&facts).unwrap_err();
        assert!(why.starts_with("line 2, ") && why.contains(said), "{facts}: {why}");
    }
    let double = format!("(id: \"fact-1\", {FACT}), (id: \"fact-1\", {FACT})");
    let why = read(&double).unwrap_err();
    assert!(why.contains("\"fact-1\" stands twice, at line 2, column 6 and at line 2, column"), "{why}");
}

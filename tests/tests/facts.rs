//! What was done to a wall is kept in its job's file: every mark of every demo, and what is refused.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a failure here is a failed test"
)]

use std::path::{Path, PathBuf};
use strikeline::files::job_file::{read_job, read_job_text, write_job_text};
use strikeline::moves::{doable, went, with_fact, without_fact};
use strikeline_solver::finding::What;
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::job::Job;
use strikeline_solver::job::fact::{FactState, StruckFrom};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkState, MarkWhat};
use strikeline_solver::solve::solve;
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// Every option of every wall of every demo.
fn demos() -> Vec<(PathBuf, Job, Id, Id)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    let mut all = Vec::new();
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let job = read_job(&path).unwrap().job;
        for wall in &job.walls {
            for option in &wall.options {
                all.push((path.clone(), job.clone(), wall.id.clone(), option.id.clone()));
            }
        }
    }
    assert!(all.len() >= 6);
    all
}

/// The last that can be done at a mark but for stripping a hole; `None` of a probe.
fn last_state(mark: &Mark) -> Option<FactState> {
    doable(mark).iter().rev().find(|state| **state != FactState::Stripped).copied()
}

/// The job with everything done at every mark, in the order of work, each time by the plan as it is then.
fn all_done(job: &Job, wall: &Id, option: &Id) -> Job {
    let mut job = job.clone();
    let first = solve(&job, wall, Some(option));
    for id in first.marks.iter().map(|mark| mark.id.clone()) {
        let plan = solve(&job, wall, Some(option));
        let Some(mark) = plan.marks.iter().find(|mark| mark.id == id) else { continue };
        if let Some(state) = last_state(mark).filter(|_| !mark.assumed) {
            job = with_fact(&job, &plan, mark, state);
        }
    }
    job
}

/// How far apart two places of a mark are along what it is read by.
fn apart(mark: &Mark, a: Point, b: Point) -> f64 {
    let reads = |axis: Axis| mark.readings.iter().any(|reading| reading.direction.axis() == axis);
    let off = |axis: Axis| if reads(axis) { (a.along(axis) - b.along(axis)).mm().abs() } else { 0.0 };
    off(Axis::Across).max(off(Axis::Upright))
}

#[test]
fn a_job_worked_through_as_planned_is_kept_and_still_good_throughout() {
    let mut kept = 0;
    for (path, job, wall, option) in demos() {
        let planned = solve(&job, &wall, Some(&option));
        let done = all_done(&job, &wall, &option);
        let text = write_job_text(&done).unwrap();
        let again = read_job_text(&text, &path).unwrap();
        assert_eq!(again.job, done, "{}", path.display());
        assert_eq!(write_job_text(&again.job).unwrap(), text, "{}", path.display());
        let plan = solve(&done, &wall, Some(&option));
        let graduation = plan.style.length_of(1).mm();
        let held = ["held_away", "hole_apart", "struck_elsewhere"];
        for mark in &plan.marks {
            let name = format!("{} {}", path.display(), mark.id);
            kept += usize::from(mark.state != MarkState::ToDo);
            assert!(mark.planned.is_none(), "{name}: {mark:?}");
            assert!(mark.is_needed, "{name}");
            let before = planned.marks.iter().find(|before| before.id == mark.id);
            let before = before.unwrap_or_else(|| panic!("{name} {:?}", mark.place));
            // A probe is done where the wall answered.
            if !matches!(mark.what, MarkWhat::Probe { .. }) {
                assert_eq!(mark.state == MarkState::ToDo, mark.assumed, "{name}");
            }
            if let (Some(a), Some(b)) = (mark.place, before.place) {
                // Its line is rounded for the tape, and it from its line.
                assert!(apart(mark, a, b) <= 2.0 * graduation, "{name}");
            }
        }
        let told: Vec<_> = plan.findings.iter().map(|finding| finding.what.rule()).collect();
        assert!(!told.iter().any(|rule| held.contains(rule)), "{}: {told:?}", path.display());
        // Taken back one after the other, nothing of it is left.
        let mut undone = done.clone();
        for mark in &plan.marks {
            undone = without_fact(&undone, &plan, &mark.id);
        }
        assert!(undone.walls.iter().all(|wall| wall.facts.is_empty()));
        assert_eq!(solve(&undone, &wall, Some(&option)), planned, "{}", path.display());
    }
    assert!(kept > 150, "{kept} marks in all");
}

/// Numbers between -1 and 1, the same each time.
struct Dice(u64);

impl Dice {
    fn roll(&mut self) -> f64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        f64::from(u32::try_from(self.0 >> 40).unwrap()) / f64::from(1_u32 << 23) - 1.0
    }
}

fn nudged(job: &Job, right: f64, up: f64) -> Job {
    let mut job = job.clone();
    let hangings =
        job.walls.iter_mut().flat_map(|wall| &mut wall.options).flat_map(|option| &mut option.hangings);
    for hanging in hangings {
        hanging.nudge.right =
            Offset(Length::millimetres(hanging.nudge.right.length().mm() + right).quantised());
        hanging.nudge.up = Offset(Length::millimetres(hanging.nudge.up.length().mm() + up).quantised());
    }
    job
}

#[test]
fn what_is_struck_stays_wherever_the_piece_is_moved() {
    let mut dice = Dice(11);
    for (path, job, wall, option) in demos() {
        let done = all_done(&job, &wall, &option);
        let before = solve(&done, &wall, Some(&option));
        for _ in 0..10 {
            let moved = nudged(&done, 200.0 * dice.roll(), 200.0 * dice.roll());
            let after = solve(&moved, &wall, Some(&option));
            for mark in before.marks.iter().filter(|mark| mark.state != MarkState::ToDo) {
                let Some(was) = mark.place else { continue };
                let now = after.marks.iter().find(|now| now.id == mark.id);
                let now = now.unwrap_or_else(|| panic!("{} {}", path.display(), mark.id));
                if mark.state == MarkState::Done {
                    continue;
                }
                let off = apart(mark, was, now.place.unwrap());
                assert!(off < 1e-5, "{} {}: {off} mm", path.display(), mark.id);
            }
        }
    }
}

#[test]
fn what_is_struck_moves_with_what_it_was_read_from_and_with_nothing_else() {
    let (mut from_right, mut from_left) = (0, 0);
    for (path, job, wall, option) in demos() {
        let done = all_done(&job, &wall, &option);
        let before = solve(&done, &wall, Some(&option));
        let mut wider = done.clone();
        let by = Length::millimetres(37.0);
        let Some(width) = done.wall(&wall).and_then(|own| own.width) else { continue };
        wider
            .walls
            .iter_mut()
            .filter(|own| own.id == wall)
            .for_each(|own| own.width = Some((width + by).quantised()));
        // What is read from the right end of the wall goes with it.
        let after = solve(&wider, &wall, Some(&option));
        let edge = |plan: &Plan, thing: &Subject| {
            let feature = plan.survey.features.iter().find(|one| one.id == thing.id)?;
            Some(if thing.part_str() == "right" { feature.rect.right } else { feature.rect.left })
        };
        for fact in &done.wall(&wall).unwrap().facts {
            let Some(across) = &fact.across else { continue };
            let expected = match &across.from {
                StruckFrom::LeftEnd => 0.0,
                StruckFrom::RightEnd => by.mm(),
                StruckFrom::Thing(thing) => match (edge(&before, thing), edge(&after, thing)) {
                    (Some(was), Some(is)) => (is - was).mm(),
                    _ => continue,
                },
                StruckFrom::Floor | StruckFrom::ControlLine => continue,
            };
            let place = |plan: &Plan| {
                let mark = plan.marks.iter().find(|mark| mark.id == *fact.mark.subject()).unwrap();
                mark.place.unwrap().x.mm()
            };
            let off = place(&after) - place(&before) - expected;
            assert!(off.abs() < 1e-5, "{} {}: {off} mm", path.display(), fact.mark.subject());
            from_right += usize::from(expected > 0.0);
            from_left += usize::from(expected == 0.0);
        }
    }
    assert!(from_right > 3 && from_left > 10, "{from_right} and {from_left}");
}

#[test]
fn the_plate_is_never_off_its_drilled_holes_by_more_than_is_told() {
    let mut dice = Dice(5);
    let (mut told_off, mut silent) = (0, 0);
    for (path, job, wall, option) in demos() {
        for _ in 0..20 {
            let mut job = job.clone();
            for _ in 0..3 {
                let plan = solve(&job, &wall, Some(&option));
                let holes = plan.marks.iter().filter(|mark| matches!(mark.what, MarkWhat::Hole { .. }));
                let holes: Vec<&Mark> =
                    holes.filter(|mark| mark.state == MarkState::ToDo && !mark.assumed).collect();
                let Some(mark) = holes.first() else { continue };
                job = with_fact(&job, &plan, mark, FactState::Drilled);
                let (right, up) = (8.0 * dice.roll(), 8.0 * dice.roll());
                job = went(&job, &plan, &mark.id, Length::millimetres(right), Length::millimetres(up));
                job = nudged(&job, 30.0 * dice.roll(), 30.0 * dice.roll());
            }
            let plan = solve(&job, &wall, Some(&option));
            let graduation = plan.style.length_of(1).mm();
            let own = plan.facts.iter().filter(|fact| fact.state == FactState::Drilled);
            for fact in own {
                let (mount, hole) = plan
                    .pieces
                    .iter()
                    .filter_map(|piece| piece.mount.as_ref())
                    .find_map(|mount| {
                        Some((mount, mount.holes.iter().find(|hole| hole.subject == fact.mark)?))
                    })
                    .unwrap();
                let went = fact.place.unwrap();
                // A slot takes its fastener anywhere along it.
                let slots = job.mounts.iter().flat_map(|mount| &mount.plate).flat_map(|plate| &plate.slots);
                let travel =
                    slots.filter(|slot| slot.id == hole.id).map(|slot| slot.travel.mm()).fold(0.0, f64::max);
                let off = (went.x - hole.place.x).mm().hypot((went.y - hole.place.y).mm());
                let stated = plan.findings.iter().find_map(|finding| match finding.what {
                    What::HoleApart { right, up } if finding.subject == fact.mark => {
                        Some(right.mm().hypot(up.mm()))
                    }
                    _ => None,
                });
                assert!(mount.held.is_some());
                let most = stated.unwrap_or(graduation) + travel + 1e-6;
                assert!(off <= most, "{} {}: off {off} mm, told {stated:?}", path.display(), fact.mark);
                told_off += usize::from(stated.is_some());
                silent += usize::from(stated.is_none());
            }
        }
    }
    assert!(told_off > 50 && silent > 50, "{told_off} told, {silent} fit");
}

#[test]
fn a_stripped_hole_is_left_and_its_mark_stays() {
    for (path, job, wall, option) in demos() {
        let plan = solve(&job, &wall, Some(&option));
        let Some(hole) =
            plan.marks.iter().find(|mark| matches!(mark.what, MarkWhat::Hole { .. }) && !mark.assumed)
        else {
            continue;
        };
        let stripped = with_fact(&job, &plan, hole, FactState::Stripped);
        let after = solve(&stripped, &wall, Some(&option));
        let mark = after.marks.iter().find(|mark| mark.id == hole.id).unwrap();
        assert_eq!(mark.state, MarkState::Stripped, "{}", path.display());
        let mounted = after.pieces.iter().filter_map(|piece| piece.mount.as_ref());
        for fastener in mounted.flat_map(|mount| &mount.fastening.fasteners) {
            assert_ne!(fastener.subject, hole.id, "{}", path.display());
        }
    }
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
        (FACT.replace("drilled", "gone"), "one of `done`, `struck`, `drilled`, `cut`, or `stripped`"),
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

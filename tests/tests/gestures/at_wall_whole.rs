//! A whole job at the wall by a finger alone, from the first sweep to the last check: one stud an inch off where the
//! hits have it, a block in the bay, a stripped hole on the way.

use super::at_wall::at_the_wall_of;
use super::room::*;
use super::touch::finger_on;
use egui_kittest::Harness;
use std::path::Path;
use strikeline::app::App;
use strikeline::files::job_file::read_job_text;
use strikeline_solver::finding::What;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::fact::FactState;
use strikeline_solver::job::hidden::HiddenKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkState, MarkWhat};

/// Half of a stud's face.
const HALF_MM: f64 = 19.05;

/// The mark that is shown, the next probe among them.
fn shown(harness: &mut Harness<'_, App>) -> Mark {
    let id = harness.state().session().selected.clone().unwrap();
    let plan = plan(harness);
    if let Some(mark) = plan.marks.iter().find(|mark| mark.id == id) {
        return mark.clone();
    }
    let probe = harness.state_mut().session_mut().next_probe(true).unwrap();
    let marks = probe.helps.iter().chain([&probe.mark]);
    marks.into_iter().find(|mark| mark.id == id).unwrap().clone()
}

/// The middles of the true studs: as the plan has them, but for the one at its last hole, which is an inch to the
/// right.
fn true_studs(plan: &Plan) -> Vec<f64> {
    let mount = plan.pieces[0].mount.as_ref().unwrap();
    let last = mount.fastening.fasteners.last().unwrap();
    let hole = mount.holes.iter().find(|hole| hole.subject == last.subject).unwrap();
    let studs = plan.framing.studs.iter().enumerate();
    studs.map(|(index, stud)| stud.centre.mm() + if Some(index) == hole.stud { 25.4 } else { 0.0 }).collect()
}

#[test]
fn a_whole_job_is_worked_by_touch_with_a_stud_off_a_block_and_a_stripped_hole() {
    let demo = include_str!("../../../demo-jobs/breakfast_room.ron");
    let mut job = read_job_text(demo, Path::new("room")).unwrap().job;
    // Nobody probed yet.
    job.walls[0].hits.retain(|hit| !matches!(hit.kind, strikeline_solver::job::hit::HitKind::Wood));
    let mut harness = at_the_wall_of(job.clone());
    let studs = true_studs(&plan(&mut harness));
    let solid = |at: Point| studs.iter().any(|stud| (at.x.mm() - stud).abs() <= HALF_MM);
    let first = plan(&mut harness).marks[0].id.clone();
    super::at_wall::go_to(&mut harness, |mark| mark.id == first);

    let (mut probes, mut stripped, mut blocked) = (0, None, false);
    let mut steps = 0;
    loop {
        steps += 1;
        assert!(steps < 120, "it comes to an end");
        let mark = shown(&mut harness);
        match &mark.what {
            MarkWhat::Probe { .. } if mark.state == MarkState::ToDo => {
                probes += 1;
                finger_on(&mut harness, if solid(mark.place.unwrap()) { "Wood" } else { "Air" });
                // The next probe comes in its place, or the one after it.
                if harness.state().session().selected.as_ref() != Some(&mark.id) {
                    continue;
                }
                if shown(&mut harness).state == MarkState::ToDo {
                    continue;
                }
            }
            MarkWhat::Look if !blocked => {
                blocked = true;
                finger_on(&mut harness, "Block");
                continue;
            }
            MarkWhat::Hole { .. } if stripped.is_none() => {
                finger_on(&mut harness, "Drilled");
                finger_on(&mut harness, "Stripped: it spins");
                stripped = Some(mark.id.clone());
            }
            MarkWhat::Hole { .. } if !mark.is_finished() => finger_on(&mut harness, "Drilled"),
            MarkWhat::Entry | MarkWhat::Exit if !mark.is_finished() => finger_on(&mut harness, "Cut"),
            MarkWhat::Corner { .. }
            | MarkWhat::LevelLine
            | MarkWhat::CentreLine
            | MarkWhat::PieceCentre
            | MarkWhat::Help
            | MarkWhat::RacewayEnd
                if !mark.is_finished() =>
            {
                finger_on(&mut harness, "Struck");
            }
            _ if !mark.is_finished() => finger_on(&mut harness, "Done"),
            _ => {}
        }
        let plan = plan(&mut harness);
        if plan.marks.last().unwrap().id == mark.id {
            break;
        }
        finger_on(&mut harness, "Next");
    }

    let after = plan(&mut harness);
    let stripped = stripped.unwrap();
    assert!(probes >= 3, "{probes} probes");
    let wall = &self::job(&harness).walls[0];
    assert!(wall.hidden.len() > job.walls[0].hidden.len());
    assert!(wall.hidden.iter().any(|hidden| hidden.kind == HiddenKind::FireBlock));
    let spun = after.marks.iter().find(|mark| mark.id == stripped).unwrap();
    assert_eq!(spun.state, MarkState::Stripped);
    let mount = after.pieces[0].mount.as_ref().unwrap();
    assert!(mount.fastening.fasteners.iter().all(|fastener| fastener.subject != stripped));
    let drilled: Vec<_> = after.facts.iter().filter(|fact| fact.state == FactState::Drilled).collect();
    assert!(!drilled.is_empty());
    for fact in &drilled {
        assert!(solid(fact.place.unwrap()), "{} is in wood: {:?}", fact.mark, fact.place);
    }
    assert!(after.findings.iter().all(|finding| !matches!(finding.what, What::HoleApart { .. })));
    let open: Vec<String> = after
        .marks
        .iter()
        .filter(|mark| !mark.is_finished() && !matches!(mark.what, MarkWhat::Probe { .. }))
        .map(|mark| mark.id.to_string())
        .collect();
    assert!(open.is_empty(), "{open:?}");
}

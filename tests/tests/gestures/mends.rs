//! What would clear a finding, how far fasteners reach, and which of one's own mounts suit: told when the hand is off,
//! and taken by one tap as one step.

use super::room::*;
use super::shelf::{at_home, files, keep, open_shelf, tap_on, undo};
use egui::accesskit::Role;
use egui::vec2;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use std::path::Path;
use strikeline::app::App;
use strikeline::files::job_file::read_job;
use strikeline::moves::HandleKind;
use strikeline::session::Session;
use strikeline_solver::finding::What;
use strikeline_solver::words;

/// A window on a demo.
fn window_on_demo(name: &str) -> Harness<'static, App> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../demo-jobs/{name}.ron"));
    let mut harness = window_on(Session::new(read_job(&path).unwrap().job, None));
    harness.run();
    harness
}

/// Every mend that can be tapped, in words, with the job that it gives and what it is for.
fn offered(harness: &mut Harness<'_, App>) -> Vec<(String, strikeline_solver::job::Job, What)> {
    let session = harness.state_mut().session_mut();
    let plan = session.plan();
    let mends = session.mends(false);
    assert!(mends.is_all, "worked out while the hand was off");
    let mut offered = Vec::new();
    for (finding, mends) in plan.findings.iter().zip(&mends.of) {
        for mend in mends.iter() {
            if let Some(job) = &mend.job {
                let told = words::mend(&session.job, &plan, mend);
                offered.push((told, job.clone(), finding.what.clone()));
            }
        }
    }
    offered
}

#[test]
fn a_mend_is_taken_by_one_tap_and_given_back_by_one_step() {
    let mut harness = window();
    let before = job(&harness);
    let (told, after, what) = offered(&mut harness).swap_remove(0);
    assert!(told.starts_with("Move "), "{told}");
    let told = format!("Take: {told}");
    let row = harness.get_by_role_and_label(Role::Button, &told);
    assert!(row.rect().height() >= 44.0, "{:?}", row.rect());
    tap_on(&mut harness, &told);
    assert_eq!(job(&harness), after);
    assert_ne!(nudge(&after), nudge(&before));
    let is_there = |harness: &mut Harness<'_, App>| {
        plan(harness).findings.iter().any(|now| now.what.rule() == what.rule())
    };
    assert!(!is_there(&mut harness), "{what:?}");
    undo(&mut harness);
    assert_eq!(job(&harness), before, "one step");
    assert!(is_there(&mut harness));
}

#[test]
fn nothing_of_it_is_worked_out_while_a_hand_drags() {
    let mut harness = window();
    assert!(!offered(&mut harness).is_empty());
    let from = middle(&mut harness, HandleKind::Piece, "display-1") + vec2(-20.0, 9.0);
    press_and_move(&mut harness, from, vec2(31.0, 0.0));
    let session = harness.state_mut().session_mut();
    assert!(session.mends(false).of.is_empty(), "in a drag");
    harness.drop_at(from + vec2(31.0, 0.0));
    harness.step();
    harness.run();
    let session = harness.state_mut().session_mut();
    let findings = session.plan().findings.len();
    assert_eq!(session.mends(false).of.len(), findings, "let go");
}

#[test]
fn how_far_fasteners_reach_is_told_under_the_verdict() {
    let harness = window_on_demo("breakfast_room");
    let verdict = harness.get_by_label_contains("Verdict: ").rect();
    let reach = harness.get_by_label_contains("these fasteners hold up to a mass of").rect();
    assert!(reach.top() > verdict.bottom());
}

#[test]
fn one_of_my_own_mounts_is_taken_by_a_tap_as_a_copy() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = at_home(home.path());
    open_shelf(&mut harness);
    keep(&mut harness, "Mount", "Bench plate");
    assert_eq!(files(home.path()).len(), 1);
    tap_on(&mut harness, "Close the shelf");
    let before = job(&harness);
    tap_on(&mut harness, "Which of mine?");
    harness.get_by_label("Close the list");
    let row = harness.get_by_role_and_label(Role::Button, "Hang it on: Bench plate");
    assert!(row.rect().height() >= 44.0, "{:?}", row.rect());
    assert_eq!(job(&harness), before, "to ask changes nothing");
    tap_on(&mut harness, "Hang it on: Bench plate");
    let after = job(&harness);
    assert_eq!(after.mounts.len(), 2, "a copy of its own");
    assert_eq!(after.mounts[1].name.as_deref(), Some("Bench plate"));
    assert_eq!(after.walls[0].options[0].hangings[0].mount.as_ref(), Some(&after.mounts[1].id));
    undo(&mut harness);
    assert_eq!(job(&harness), before, "one step");
    tap_on(&mut harness, "Close the list");
    assert!(harness.query_by_label("Close the list").is_none());
}

#[test]
fn without_a_mount_on_the_shelf_the_list_says_so() {
    let home = tempfile::tempdir().unwrap();
    let mut harness = at_home(home.path());
    tap_on(&mut harness, "Which of mine?");
    harness.get_by_label_contains("No mount is on my shelf yet");
}

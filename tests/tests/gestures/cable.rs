//! The cables' way under a hand: a block dragged into it, openings dragged, another way taken from the list.

use super::room::*;
use egui::accesskit::Role;
use egui::vec2;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas;
use strikeline::moves::HandleKind;
use strikeline::panels::cable_ways::BEST;
use strikeline::session::Session;
use strikeline::widgets::unbroken::unbroken;
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::{CablePlan, Way};
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// The demo whose straight drop is blocked.
fn nook() -> Job {
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    options.from_str(include_str!("../../../demo-jobs/reading_nook.ron")).unwrap()
}

fn window_of(job: Job) -> Harness<'static, App> {
    let mut harness = window_on(Session::new(job, None));
    harness.run();
    harness
}

fn cable(plan: &Plan) -> CablePlan {
    plan.pieces[0].cable.clone().unwrap()
}

fn way(plan: &Plan) -> Way {
    cable(plan).way.unwrap()
}

#[test]
fn a_block_dragged_into_the_run_changes_the_plan_in_the_same_frame() {
    // The block begins far above the run, in the next bay.
    let mut job = nook();
    let right = Length::inches(16.0);
    let across = &mut job.walls[0].hidden[0].across;
    for edge in [&mut across.left, &mut across.right].into_iter().flatten() {
        edge.by += right;
    }
    let mut harness = window_of(job);
    let before = plan(&mut harness);
    let free = way(&before);
    assert_eq!(free.cost.blocks + free.cost.patches, 0);
    // In the bay of the ports it would drop straight: the block comes back into that bay.
    let from = middle(&mut harness, HandleKind::Hidden, "block-1");
    let by = {
        let window = canvas::shown(&before, canvas_rect(&harness), harness.state().view_state());
        let origin = window.pointer_from_wall(Point::default());
        let to = window.pointer_from_wall(Point::new(-right, Length::default()));
        to - origin
    };
    press_and_move(&mut harness, from, by);
    let held = plan(&mut harness);
    let after = way(&held);
    assert_ne!(free.run, after.run, "the run goes another way while the hand is down");
    assert_eq!(cable(&held).in_the_way.unwrap().as_str(), "block-1");
    let marks = |plan: &Plan| {
        let openings = plan.marks.iter().filter(|mark| ["entry", "exit"].contains(&mark.id.part_str()));
        openings.map(|mark| mark.place.unwrap().along(Axis::Across).mm()).collect::<Vec<_>>()
    };
    assert_ne!(marks(&before), marks(&held), "the marks go with it");
    let told = words::finding(
        &held,
        held.findings.iter().find(|finding| finding.what.rule() == "bay_blocked").unwrap(),
    );
    assert!(harness.query_all_by_label(&unbroken(&told)).count() > 0, "told in the same frame: {told}");
    // Once the hand is off it is told what has to be done otherwise.
    harness.drop_at(from + by);
    harness.run();
    let changes = words::cable_changes(&before, &plan(&mut harness));
    assert!(changes.len() > 1, "{changes:?}");
    for change in changes {
        assert!(harness.query_all_by_label(&unbroken(&change)).count() > 0, "{change}");
    }
}

#[test]
fn the_exit_is_dragged_where_it_may_be_and_let_go_by_a_button() {
    let mut harness = window_of(nook());
    let piece = middle(&mut harness, HandleKind::Piece, "display-1");
    tap(&mut harness, piece);
    let before = way(&plan(&mut harness));
    let from = middle(&mut harness, HandleKind::Exit, "display-1");
    drag(&mut harness, from, vec2(-34.0, 0.0));
    let after = way(&plan(&mut harness));
    assert_ne!(before.exit, after.exit);
    assert_eq!(after.cost.not_allowed, 0, "{:?}", after.against);
    let kept = &self::job(&harness).walls[0].options[0].hangings[0].way;
    assert!(kept.exit_at.is_some() && kept.entry_at.is_none());
    // It may be scrolled out of sight.
    harness.get_by_label(BEST).click_accesskit();
    harness.run();
    assert_eq!(way(&plan(&mut harness)), before);
    assert_eq!(self::job(&harness), nook());
}

#[test]
fn the_entry_is_dragged_behind_the_display_and_never_out_of_what_is_allowed() {
    let mut harness = window_of(nook());
    let piece = middle(&mut harness, HandleKind::Piece, "display-1");
    tap(&mut harness, piece);
    let before = way(&plan(&mut harness));
    let from = middle(&mut harness, HandleKind::Entry, "display-1");
    press_and_move(&mut harness, from, vec2(0.0, 18.0));
    let held = way(&plan(&mut harness));
    assert_ne!(before.entry, held.entry, "it follows the hand");
    assert_eq!(before.exit, held.exit, "only what is dragged moves");
    // Far off the display: it stays at the nearest place that it may have.
    harness.hover_at(from + vec2(600.0, 300.0));
    harness.step();
    let far = plan(&mut harness);
    let hidden = cable(&far).hidden;
    let entry = way(&far).entry.unwrap();
    assert!(hidden.left <= entry.left && entry.right <= hidden.right, "{entry:?} in {hidden:?}");
    assert!(hidden.bottom <= entry.bottom && entry.top <= hidden.top, "{entry:?} in {hidden:?}");
    assert_eq!(way(&far).cost.not_allowed, 0, "{:?}", way(&far).against);
    harness.drop_at(from + vec2(600.0, 300.0));
    harness.run();
    let kept = &self::job(&harness).walls[0].options[0].hangings[0].way;
    assert!(kept.entry_at.is_some() && kept.exit_at.is_none());
    // Back to its best it is kept no more.
    let at = middle(&mut harness, HandleKind::Entry, "display-1");
    drag(&mut harness, at, from - at);
    assert_eq!(way(&plan(&mut harness)), before);
    assert_eq!(self::job(&harness), nook());
}

#[test]
fn another_way_is_shown_while_it_is_pointed_at_and_taken_by_a_tap() {
    let mut harness = window_of(nook());
    let others = cable(&plan(&mut harness)).alternatives;
    assert!(others.len() > 1);
    assert_eq!(harness.state().view_state().previewed, None);
    harness.get_by_role_and_label(Role::Button, "Way 2").focus();
    harness.run();
    assert_eq!(harness.state().view_state().previewed.as_ref(), Some(&others[0].run));
    harness.get_by_role_and_label(Role::Button, "Way 2").click_accesskit();
    harness.run();
    assert_eq!(way(&plan(&mut harness)).exit, others[0].exit);
    assert!(harness.state().session().can_undo());
}

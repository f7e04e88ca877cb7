//! The working of a verdict: opened from the verdict and from a fastener's row, live, closed by Escape and by a button.

use super::room::*;
use egui::accesskit::Role;
use egui::{Key, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use std::path::Path;
use strikeline::app::App;
use strikeline::files::job_file::read_job;
use strikeline::moves::HandleKind;
use strikeline::session::Session;

const TITLE: &str = "Working: Large screen";
const VERDICT: &str = "Working of the verdict on Large screen";

fn breakfast_room() -> Harness<'static, App> {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs/breakfast_room.ron");
    let mut harness = window_on(Session::new(read_job(&path).unwrap().job, None));
    harness.run();
    harness
}

fn press(harness: &mut Harness<'_, App>, name: &str) {
    harness.get_by_role_and_label(Role::Button, name).scroll_to_me();
    harness.run_steps(30);
    harness.get_by_role_and_label(Role::Button, name).click();
    harness.run();
}

fn is_open(harness: &Harness<'_, App>) -> bool {
    harness.query_by_label(TITLE).is_some()
}

#[test]
fn it_opens_from_the_verdict_and_is_closed_by_escape_and_by_its_button() {
    let mut harness = breakfast_room();
    assert!(!is_open(&harness));
    press(&mut harness, VERDICT);
    assert!(is_open(&harness));
    assert!(harness.get_all_by_label_contains("What hangs: ").count() > 1);
    harness.key_press(Key::Escape);
    harness.run();
    assert!(!is_open(&harness));
    press(&mut harness, VERDICT);
    let close = harness.get_by_role_and_label(Role::Button, "Close");
    assert!(close.rect().height() >= 44.0 && close.rect().width() >= 44.0, "{:?}", close.rect());
    close.click();
    harness.run();
    assert!(!is_open(&harness));
}

#[test]
fn from_a_fasteners_row_it_opens_at_that_fastener() {
    let mut harness = breakfast_room();
    let fastening = plan(&mut harness).pieces[0].mount.clone().unwrap().fastening;
    assert!(fastening.fasteners.len() > 2);
    for fastener in &fastening.fasteners {
        let number = fastener.hole.as_str().trim_start_matches("hole-");
        press(&mut harness, &format!("Working of hole {number} of Large screen's plate"));
        harness.run_steps(30);
        let sought = format!("Hole {number}: what is asked of it");
        let head = harness.get_by_label_contains(&sought);
        let window = harness.ctx.content_rect();
        assert!(window.contains_rect(head.rect()), "hole {number}: {:?}", head.rect());
        let close = harness.get_by_role_and_label(Role::Button, "Close").rect();
        assert!(head.rect().top() > close.bottom(), "hole {number}: {:?} under {close:?}", head.rect());
    }
}

#[test]
fn it_follows_while_the_plan_changes() {
    let mut harness = breakfast_room();
    press(&mut harness, VERDICT);
    let weight = |kg: f64| format!("{kg}\u{a0}kg \u{d7} 9.80665\u{a0}m/s^2");
    let heavier = weight(31.0);
    assert!(harness.query_by_label(&heavier).is_none());
    harness.state_mut().session_mut().job.pieces[0].mass =
        Some(strikeline_solver::units::Mass::kilograms(31.0));
    harness.run();
    harness.get_by_label(&heavier);
    // Without its mass nothing is asked of a fastener, and the working says so.
    harness.state_mut().session_mut().job.pieces[0].mass = None;
    harness.run();
    assert!(is_open(&harness));
    harness.get_by_label_contains("What each fastener is asked is worked out once");
    // Without its piece there is nothing to show.
    for option in &mut harness.state_mut().session_mut().job.walls[0].options {
        option.hangings.clear();
    }
    harness.run();
    assert!(!is_open(&harness));
}

#[test]
fn escape_lets_go_of_what_is_held_before_it_closes_the_working() {
    let mut harness = breakfast_room();
    press(&mut harness, VERDICT);
    let id = plan(&mut harness).pieces[0].id.to_string();
    let before = job(&harness);
    let window = harness.get_by_role_and_label(Role::Button, "Close").rect();
    let from = middle(&mut harness, HandleKind::Piece, &id) + vec2(120.0, 9.0);
    assert!(from.x > window.right(), "it does not lie under the window: {from:?} {window:?}");
    press_and_move(&mut harness, from, vec2(30.0, 0.0));
    assert_ne!(job(&harness), before);
    harness.key_press(Key::Escape);
    harness.run();
    assert_eq!(job(&harness), before, "the drag is given back");
    assert!(is_open(&harness));
    harness.drop_at(from);
    harness.run();
    harness.key_press(Key::Escape);
    harness.run();
    assert!(!is_open(&harness));
}

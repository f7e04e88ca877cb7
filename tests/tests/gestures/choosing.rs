//! The options with the customer: looked at side by side and alone, moved by a finger, agreed to in words.

use super::room::*;
use super::touch::finger_on;
use egui::{Key, Modifiers, pos2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::{NodeT as _, Queryable as _};
use strikeline::app::App;
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::subject::Id;

/// The room with a second option, a hand higher.
fn two() -> Job {
    let mut job = room();
    let mut second = job.walls[0].options[0].clone();
    second.id = Id::new("option-b");
    second.name = Some("Higher".into());
    for (hanging, number) in second.hangings.iter_mut().zip(1..) {
        hanging.id = Id::new(&format!("hanging-b{number}"));
        hanging.nudge.up = strikeline_solver::tape::Offset(strikeline_solver::units::Length::inches(4.0));
    }
    job.walls[0].options[0].name = Some("Lower".into());
    job.walls[0].options.push(second);
    job
}

fn choosing(job: Job) -> Harness<'static, App> {
    let mut harness = window_on(Session::new(job, None));
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::G);
    harness.run();
    harness
}

fn wall(harness: &Harness<'_, App>) -> strikeline_solver::job::wall::Wall {
    job(harness).walls[0].clone()
}

#[test]
fn an_option_is_looked_at_alone_agreed_to_and_taken_back_by_touch() {
    let before = two();
    let mut harness = choosing(before.clone());
    assert!(
        harness.query_by_label("Look at Lower").is_some()
            && harness.query_by_label("Look at Higher").is_some()
    );
    finger_on(&mut harness, "Look at Higher");
    assert_eq!(harness.state().session().option, Some(Id::new("option-b")));
    assert_eq!(job(&harness), before, "to look changes nothing");
    finger_on(&mut harness, "This one\u{2026}");
    finger_on(&mut harness, "Agreed");
    let agreed = wall(&harness);
    assert_eq!(agreed.chosen, Some(Id::new("option-b")));
    let words = agreed.options[1].agreed.clone().unwrap().words;
    assert!(words.contains("above the floor"), "{words}");
    finger_on(&mut harness, "Take it back");
    assert_eq!(wall(&harness).chosen, None);
    assert_eq!(wall(&harness).options[1].agreed, None);
    finger_on(&mut harness, "Back to the drawing");
    assert!(harness.query_by_label("Look at Lower").is_none());
    assert!(canvas_rect(&harness).width() > 100.0);
}

#[test]
fn a_piece_moves_under_the_finger_and_what_was_agreed_is_asked_again() {
    let mut harness = choosing(two());
    finger_on(&mut harness, "Look at Higher");
    finger_on(&mut harness, "This one\u{2026}");
    finger_on(&mut harness, "Agreed");
    let picture = harness.get_by_label("The wall as it will be seen").rect();
    let (plan, before) = (plan(&mut harness), job(&harness));
    // The display's middle, as the picture shows the wall: all of it, its middle in the middle.
    let outline = plan.survey.outline;
    let per = ((picture.width() - 32.0) / outline.width().mm() as f32)
        .min((picture.height() - 32.0) / outline.height().mm() as f32);
    let at = plan.pieces[0].outline.centre();
    let off = vec2((at.x - outline.centre().x).mm() as f32, (outline.centre().y - at.y).mm() as f32) * per;
    let middle = picture.center() + off;
    drag(&mut harness, pos2(middle.x, middle.y), vec2(0.0, -30.0));
    let after = job(&harness);
    let up = |job: &Job| job.walls[0].options[1].hangings[0].nudge.up.length().mm();
    assert!(up(&after) > up(&before) + 20.0, "{} to {}", up(&before), up(&after));
    assert_eq!(after.walls[0].options[0], before.walls[0].options[0], "only the shown option moves");
    let told = super::room::plan(&mut harness);
    assert!(told.findings.iter().any(|finding| finding.what.rule() == "moved_since_agreed"));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(job(&harness), before, "one step");
}

#[test]
fn escape_goes_back_a_step_at_a_time() {
    let mut harness = choosing(two());
    finger_on(&mut harness, "Look at Lower");
    harness.key_press(Key::Escape);
    harness.run();
    assert!(harness.query_by_label("Look at Lower").is_some());
    harness.key_press(Key::Escape);
    harness.run();
    assert!(harness.query_by_label("Look at Lower").is_none());
}

#[test]
fn a_wall_with_one_arrangement_is_shown_alone_at_once() {
    let harness = choosing(room());
    assert!(harness.query_by_label("The wall as it will be seen").is_some());
    assert!(harness.query_by_label("Side by side").is_none());
}

#[test]
fn what_was_read_out_is_void_once_a_piece_is_moved() {
    let mut harness = choosing(two());
    finger_on(&mut harness, "Look at Higher");
    finger_on(&mut harness, "This one\u{2026}");
    assert!(harness.query_by_label("Agreed").is_some());
    harness.state_mut().session_mut().job.walls[0].options[1].hangings[0].nudge.up =
        strikeline_solver::tape::Offset(strikeline_solver::units::Length::inches(6.0));
    harness.run();
    assert!(harness.query_by_label("Agreed").is_none(), "it was of another place");
    assert_eq!(wall(&harness).chosen, None);
}

/// The line that answers whether it can go there.
fn answer(harness: &Harness<'_, App>) -> String {
    let all = harness.query_all_by(|node| {
        node.value().or(node.label()).is_some_and(|told| {
            ["Yes, it can", "Nothing is", "Not there"].iter().any(|begins| told.starts_with(begins))
        })
    });
    let told = all.filter_map(|node| node.accesskit_node().value().or(node.accesskit_node().label()));
    let told: Vec<String> = told.collect();
    told.last().expect("an answer").clone()
}

#[test]
fn whether_it_can_go_there_is_answered_in_a_line() {
    let mut harness = choosing(two());
    finger_on(&mut harness, "Look at Lower");
    harness.run_steps(200);
    let before = answer(&harness);
    let unknown = "Nothing is in its way there. Will it hold? Not known yet: ";
    assert!(before.starts_with(unknown), "nobody measured its plate: {before}");
    // Off the wall's end it cannot, and the way back is told.
    let mut off = two();
    for option in &mut off.walls[0].options {
        option.hangings[0].nudge.right =
            strikeline_solver::tape::Offset(strikeline_solver::units::Length::inches(-70.0));
    }
    let mut harness = choosing(off);
    finger_on(&mut harness, "Look at Lower");
    harness.run_steps(400);
    let told = answer(&harness);
    assert!(told.starts_with("Not there. "), "{told}");
    assert!(
        told.contains("place with nothing in its way: ") || told.contains("No place within a bay"),
        "{told}"
    );
}

#[test]
fn what_is_shown_is_had_as_a_picture() {
    let mut harness = choosing(two());
    assert!(harness.query_by_label("As a picture\u{2026}").is_none(), "side by side there are several");
    finger_on(&mut harness, "Look at Higher");
    finger_on(&mut harness, "As a picture\u{2026}");
    harness.run();
    assert!(harness.query_by_label("Save as\u{2026}").is_some());
    assert_eq!(harness.state().session().option, Some(Id::new("option-b")), "of the option that was shown");
}

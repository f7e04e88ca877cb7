//! Every state of the window in both themes and at two sizes, written as pictures to be looked at one by one; none
//! is held against another. `GALLERY=folder cargo test -p strikeline-tests --features pictures --test gallery`
//! writes them; without `GALLERY` nothing is done.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

#[path = "gestures/room.rs"]
#[allow(dead_code, reason = "shared with the gestures")]
mod room;
#[path = "gestures/touch.rs"]
#[allow(dead_code, reason = "shared with the gestures")]
mod touch;

use egui::accesskit::Role;
use egui::{Event, Key, Modifiers, Theme, Vec2, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use room::*;
use std::path::{Path, PathBuf};
use strikeline::app::App;
use strikeline::canvas;
use strikeline::files::home::Home;
use strikeline::files::job_file::read_job;
use strikeline::moves::HandleKind;
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::subject::Subject;
use touch::finger;

/// A laptop, a 10 in tablet in points, the same upright, a small window and the least that there is.
const SIZES: [(&str, Vec2); 5] = [
    ("laptop", vec2(1280.0, 800.0)),
    ("tablet", vec2(1024.0, 640.0)),
    ("upright", vec2(800.0, 1280.0)),
    ("small", vec2(800.0, 600.0)),
    ("least", vec2(720.0, 480.0)),
];

type Shown<'a> = Harness<'static, App>;

/// A state: its name, the job that is open (none: a new one), and what a hand does to come to it.
struct State {
    name: &'static str,
    job: Option<&'static str>,
    hand: fn(&mut Shown<'_>),
}

fn choosing(harness: &mut Shown<'_>) {
    harness.key_press_modifiers(Modifiers::COMMAND, Key::G);
    harness.run();
}

fn first_card(harness: &mut Shown<'_>) {
    let first = harness.query_all_by_label_contains("Look at ").next();
    let at = first.map(|card| card.rect().center());
    if let Some(at) = at {
        finger(harness, at);
    }
}

const STATES: &[State] = &[
    State { name: "new", job: None, hand: |_| {} },
    State {
        name: "new_half",
        job: None,
        hand: |harness| {
            for text in ["48 1/2", "28 1/4", "28 kg"] {
                type_text(harness, text);
                harness.key_press(Key::Enter);
                harness.run();
            }
        },
    },
    State {
        name: "new_error",
        job: None,
        hand: |harness| {
            type_text(harness, "48 3/2");
            harness.key_press(Key::Enter);
            harness.run();
        },
    },
    State {
        name: "new_keypad",
        job: None,
        hand: |harness| {
            let at = harness.get_by_role_and_label(Role::TextInput, "Display width").rect().left_center()
                + vec2(12.0, 0.0);
            finger(harness, at);
        },
    },
    State { name: "parlour", job: Some("tall_parlour"), hand: |_| {} },
    State { name: "kitchen", job: Some("garden_kitchen"), hand: |_| {} },
    State { name: "suite", job: Some("corner_suite"), hand: |_| {} },
    State { name: "breakfast", job: Some("breakfast_room"), hand: |_| {} },
    State { name: "attic", job: Some("attic_landing"), hand: |_| {} },
    State { name: "listening", job: Some("listening_room"), hand: |_| {} },
    State {
        name: "selected",
        job: Some("garden_kitchen"),
        hand: |harness| {
            let id = first_piece(harness);
            let at = middle(harness, HandleKind::Piece, &id) + vec2(-20.0, 9.0);
            tap(harness, at);
        },
    },
    State {
        name: "held",
        job: Some("garden_kitchen"),
        hand: |harness| {
            let id = first_piece(harness);
            let at = middle(harness, HandleKind::Piece, &id) + vec2(-20.0, 9.0);
            press_and_move(harness, at, vec2(23.0, -14.0));
            harness.run();
        },
    },
    State {
        name: "typed_in_drag",
        job: Some("garden_kitchen"),
        hand: |harness| {
            let id = first_piece(harness);
            let at = middle(harness, HandleKind::Piece, &id) + vec2(-20.0, 9.0);
            press_and_move(harness, at, vec2(23.0, -14.0));
            type_text(harness, "12 1/4");
        },
    },
    State {
        name: "menu",
        job: Some("garden_kitchen"),
        hand: |harness| {
            let id = first_piece(harness);
            let at = middle(harness, HandleKind::Piece, &id) + vec2(-20.0, 9.0);
            harness.hover_at(at);
            harness.step();
            for pressed in [true, false] {
                harness.event(Event::PointerButton {
                    pos: at,
                    button: egui::PointerButton::Secondary,
                    pressed,
                    modifiers: Modifiers::NONE,
                });
                harness.step();
            }
            harness.run();
        },
    },
    State {
        name: "loupe",
        job: Some("garden_kitchen"),
        hand: |harness| {
            let plan = plan(harness);
            let id = format!("{}", plan.pieces[0].id);
            let at = middle(harness, HandleKind::Piece, &id);
            finger(harness, at);
        },
    },
    State {
        name: "after_taping",
        job: Some("garden_kitchen"),
        hand: |harness| press(harness, "After taping\u{2026}"),
    },
    State {
        name: "one_pull",
        job: Some("garden_kitchen"),
        hand: |harness| {
            keys(harness, Modifiers::COMMAND, Key::L);
            for (text, key) in [("12 1/2", "o"), ("28", "l"), ("29 1/2", "r"), ("44 x", "")] {
                type_text(harness, text);
                if !key.is_empty() {
                    type_text(harness, key);
                    harness.key_press(Key::Enter);
                    harness.run();
                }
            }
        },
    },
    State {
        name: "working",
        job: Some("breakfast_room"),
        hand: |harness| {
            side(harness);
            press(harness, "Working of the verdict on Large screen");
        },
    },
    State {
        name: "working_of_hole",
        job: Some("breakfast_room"),
        hand: |harness| {
            side(harness);
            press(harness, "Working of hole 3 of Large screen's plate");
        },
    },
    State {
        name: "shelf",
        job: Some("garden_kitchen"),
        hand: |harness| keys(harness, Modifiers::COMMAND, Key::B),
    },
    State {
        name: "which_of_mine",
        job: Some("breakfast_room"),
        hand: |harness| {
            keys(harness, Modifiers::COMMAND, Key::B);
            press(harness, "Keep as mine: Mount");
            harness.key_press(Key::Enter);
            harness.run();
            keys(harness, Modifiers::COMMAND, Key::K);
            type_text(harness, "which of mine");
            harness.key_press(Key::Enter);
            harness.run();
        },
    },
    State {
        name: "commands",
        job: Some("garden_kitchen"),
        hand: |harness| {
            keys(harness, Modifiers::COMMAND, Key::K);
            type_text(harness, "sa");
        },
    },
    State {
        name: "key_page",
        job: Some("garden_kitchen"),
        hand: |harness| keys(harness, Modifiers::NONE, Key::F1),
    },
    State {
        name: "open",
        job: Some("garden_kitchen"),
        hand: |harness| {
            keys(harness, Modifiers::COMMAND, Key::O);
            for _ in 0..40 {
                std::thread::sleep(std::time::Duration::from_millis(5));
                harness.run();
            }
        },
    },
    State {
        name: "save_as",
        job: Some("garden_kitchen"),
        hand: |harness| {
            keys(harness, Modifiers::COMMAND | Modifiers::SHIFT, Key::S);
        },
    },
    State {
        name: "unsaved",
        job: Some("garden_kitchen"),
        hand: |harness| {
            harness.state_mut().session_mut().job.title = "Changed".into();
            harness.run();
            keys(harness, Modifiers::COMMAND, Key::N);
        },
    },
    State { name: "second_wall", job: Some("garden_kitchen"), hand: |harness| press(harness, "Add wall") },
    State {
        name: "mount",
        job: Some("garden_kitchen"),
        hand: |harness| select(harness, |job| job.mounts[0].id.whole()),
    },
    State {
        name: "cable",
        job: Some("garden_kitchen"),
        hand: |harness| select(harness, |job| job.kit.cables[0].id.whole()),
    },
    State {
        name: "feature",
        job: Some("tall_parlour"),
        hand: |harness| {
            select(harness, |job| job.walls[0].features[1].id.whole());
        },
    },
    State {
        name: "hit",
        job: Some("tall_parlour"),
        hand: |harness| {
            select(harness, |job| job.walls[0].hits[1].id.whole());
        },
    },
    State { name: "choosing_side_by_side", job: Some("tall_parlour"), hand: choosing },
    State {
        name: "choosing_one",
        job: Some("tall_parlour"),
        hand: |harness| {
            choosing(harness);
            first_card(harness);
        },
    },
    State {
        name: "choosing_words",
        job: Some("tall_parlour"),
        hand: |harness| {
            choosing(harness);
            first_card(harness);
            press(harness, "This one\u{2026}");
        },
    },
    State { name: "choosing_only", job: Some("breakfast_room"), hand: choosing },
    State {
        name: "at_wall_level",
        job: Some("breakfast_room"),
        hand: |harness| at_wall(harness, "level_line"),
    },
    State { name: "at_wall_probe", job: Some("breakfast_room"), hand: |harness| at_wall(harness, "probe") },
    State { name: "at_wall_hole", job: Some("tall_parlour"), hand: |harness| at_wall(harness, "hole") },
    State { name: "at_wall_corner", job: Some("garden_kitchen"), hand: |harness| at_wall(harness, "corner") },
    State { name: "at_wall_find", job: Some("corner_suite"), hand: |harness| at_wall(harness, "sweep") },
    State {
        name: "at_wall_struck",
        job: Some("breakfast_room"),
        hand: |harness| {
            at_wall(harness, "level_line");
            press(harness, "Struck");
        },
    },
    State {
        name: "at_wall_went",
        job: Some("breakfast_room"),
        hand: |harness| {
            at_wall(harness, "hole-8");
            press(harness, "Drilled");
            press(harness, "It went elsewhere");
        },
    },
    State {
        name: "at_wall_list",
        job: Some("breakfast_room"),
        hand: |harness| {
            at_wall(harness, "corner_top_left");
            press(harness, "Struck");
            press(harness, "Back to the drawing");
            at_wall(harness, "level_line");
            press(harness, "Struck");
            press(harness, "Back to the drawing");
            let job = &mut harness.state_mut().session_mut().job;
            let hanging = &mut job.walls[0].options[0].hangings[0];
            hanging.nudge.up.0 += strikeline_solver::units::Length::inches(2.0);
            hanging.nudge.right.0 += strikeline_solver::units::Length::inches(9.0);
            at_wall(harness, "centre_line");
            press(harness, "Struck");
        },
    },
    State {
        name: "at_wall_else",
        job: Some("breakfast_room"),
        hand: |harness| {
            at_wall(harness, "look");
            press(harness, "Something else");
        },
    },
    State {
        name: "at_wall_sizes",
        job: Some("breakfast_room"),
        hand: |harness| {
            at_wall(harness, "level_line");
            press(harness, "True sizes");
        },
    },
    State {
        name: "done",
        job: Some("breakfast_room"),
        hand: |harness| {
            for (part, done) in [
                ("corner_top_left", "Struck"),
                ("level_line", "Struck"),
                ("centre_line", "Struck"),
                ("entry", "Cut"),
                ("hole-8", "Drilled"),
                ("hole-3", "Stripped: it spins"),
            ] {
                at_wall(harness, part);
                press(harness, done);
                press(harness, "Back to the drawing");
            }
        },
    },
    State { name: "close_plate", job: Some("breakfast_room"), hand: |harness| closer(harness, "hole", 6.0) },
    State {
        name: "close_entry",
        job: Some("breakfast_room"),
        hand: |harness| closer(harness, "entry", 12.0),
    },
    State { name: "close_exit", job: Some("listening_room"), hand: |harness| closer(harness, "exit", 6.0) },
    State { name: "close_corner", job: Some("tall_parlour"), hand: |harness| closer(harness, "corner", 6.0) },
    State { name: "close_hole", job: Some("tall_parlour"), hand: |harness| closer(harness, "hole", 20.0) },
    State { name: "close_level", job: Some("garden_kitchen"), hand: |harness| closer(harness, "level", 3.0) },
    State { name: "close_suite", job: Some("corner_suite"), hand: |harness| closer(harness, "hole", 6.0) },
    State { name: "close_attic", job: Some("attic_landing"), hand: |harness| closer(harness, "hole", 6.0) },
    State {
        name: "on_paper",
        job: Some("listening_room"),
        hand: |harness| keys(harness, Modifiers::COMMAND, Key::P),
    },
    State {
        name: "on_paper_template",
        job: Some("garden_kitchen"),
        hand: |harness| {
            keys(harness, Modifiers::COMMAND, Key::P);
            press(harness, "Full-size template");
        },
    },
    State { name: "offers", job: Some("breakfast_room"), hand: |harness| offers(harness, None) },
    State {
        name: "offers_heights",
        job: Some("breakfast_room"),
        hand: |harness| offers(harness, Some("Heights")),
    },
    State {
        name: "offers_whole",
        job: Some("tall_parlour"),
        hand: |harness| offers(harness, Some("To the ends")),
    },
    State {
        name: "offers_pale",
        job: Some("listening_room"),
        hand: |harness| {
            offers(harness, None);
            let id = first_piece(harness);
            let at = middle(harness, HandleKind::Piece, &id) + vec2(-20.0, 9.0);
            press_and_move(harness, at, vec2(23.0, -14.0));
            harness.run();
        },
    },
    State {
        name: "at_wall_stripped",
        job: Some("breakfast_room"),
        hand: |harness| {
            at_wall(harness, "hole-3");
            press(harness, "Stripped: it spins");
        },
    },
];

fn first_piece(harness: &mut Shown<'_>) -> String {
    plan(harness).pieces[0].id.to_string()
}

/// Zoomed in by the wheel, about the last mark of which the id tells so, and that mark selected.
fn closer(harness: &mut Shown<'_>, part: &str, times: f32) {
    let plan = plan(harness);
    let mark = plan.marks.iter().rfind(|mark| mark.id.to_string().contains(part)).unwrap();
    harness.state_mut().session_mut().selected = Some(mark.id.clone());
    harness.run_steps(30);
    let rect = canvas_rect(harness);
    let window = canvas::shown(&plan, rect, harness.state().view_state());
    let middle = rect.center();
    harness.hover_at(window.pointer_from_wall(mark.place.unwrap()));
    harness.step();
    for _ in 0..60 {
        let now = canvas::shown(&plan, rect, harness.state().view_state());
        if now.wall_length(times) <= window.wall_length(1.0) {
            break;
        }
        wheel(harness, 3.0);
    }
    harness.hover_at(middle);
    harness.run_steps(30);
}

/// At the wall, on the first mark of which the id tells so.
fn at_wall(harness: &mut Shown<'_>, part: &str) {
    let plan = plan(harness);
    let mark = plan.marks.iter().rfind(|mark| mark.id.to_string().contains(part));
    harness.state_mut().session_mut().selected = mark.map(|mark| mark.id.clone());
    keys(harness, Modifiers::COMMAND, Key::M);
    harness.run_steps(5);
}

/// What is selected anywhere is opened in the list.
fn select(harness: &mut Shown<'_>, of: fn(&Job) -> Subject) {
    let subject = of(&job(harness));
    harness.state_mut().session_mut().selected = Some(subject);
    harness.run();
    harness.run_steps(30);
}

/// What this wall offers, all of it worked out.
fn offers(harness: &mut Shown<'_>, press: Option<&str>) {
    keys(harness, Modifiers::COMMAND, Key::D);
    if let Some(name) = press {
        harness.get_by_label(name).click();
    }
    harness.run();
    for _ in 0..2000 {
        if harness.state().strip().swept().is_some_and(strikeline::swept::Swept::is_all) {
            break;
        }
        harness.step();
    }
    harness.run();
}

/// On a window with room for one side: what follows.
fn side(harness: &mut Shown<'_>) {
    if let Some(follows) = harness.query_by_label("What follows") {
        follows.click();
        harness.run();
    }
}

fn type_text(harness: &mut Shown<'_>, text: &str) {
    harness.event(Event::Text(text.to_owned()));
    harness.run();
}

fn keys(harness: &mut Shown<'_>, modifiers: Modifiers, key: Key) {
    harness.key_press_modifiers(modifiers, key);
    harness.run();
}

fn press(harness: &mut Shown<'_>, name: &str) {
    // In a low window the seldom answers at the wall are folded away.
    let is_folded = harness.query_all_by_role_and_label(Role::Button, name).count() == 0;
    if is_folded && harness.query_all_by_role_and_label(Role::Button, "More").count() == 1 {
        harness.get_by_role_and_label(Role::Button, "More").click();
        harness.run_steps(5);
    }
    harness.get_all_by_role_and_label(Role::Button, name).last().unwrap().scroll_to_me();
    harness.run_steps(30);
    harness.get_all_by_role_and_label(Role::Button, name).last().unwrap().click();
    harness.run();
    harness.run_steps(20);
}

fn demo(name: &str) -> (Job, PathBuf) {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs").join(name).with_extension("ron");
    (read_job(&path).unwrap().job, path)
}

#[test]
fn every_state_is_painted() {
    let Some(folder) = std::env::var_os("GALLERY").map(PathBuf::from) else { return };
    let only = std::env::var("ONLY").unwrap_or_default();
    std::fs::create_dir_all(&folder).unwrap();
    for state in STATES {
        if !only.is_empty() && !only.split(',').any(|one| one == state.name) {
            continue;
        }
        for (size_name, size) in SIZES {
            for theme in [Theme::Light, Theme::Dark] {
                let home_folder = tempfile::tempdir().unwrap();
                let home = Home::at(home_folder.path());
                let session = state.job.map(|name| {
                    let (job, path) = demo(name);
                    let mut session = Session::new(job, Some(path.clone()));
                    session.was_saved(path);
                    session
                });
                let mut harness = Harness::builder()
                    .with_size(size)
                    .with_theme(theme)
                    .with_render_cursor(false)
                    .with_max_steps(64)
                    .with_step_dt(1.0 / 60.0)
                    .build_eframe(|created| {
                        strikeline::app::install(&created.egui_ctx);
                        match session {
                            Some(session) => App::on(session),
                            None => App::new(&created.egui_ctx, None),
                        }
                        .at_home(&created.egui_ctx, &home)
                    });
                harness.run();
                (state.hand)(&mut harness);
                let picture = harness.render().unwrap();
                let lit = if theme == Theme::Light { "light" } else { "dark" };
                picture.save(folder.join(format!("{}-{size_name}-{lit}.png", state.name))).unwrap();
            }
        }
    }
}

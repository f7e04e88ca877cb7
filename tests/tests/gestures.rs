//! What hand and keys do to a job through the window: before, gesture, after. No screen and no graphics.

use egui::{Event, Key, Modifiers, PointerButton, Pos2, Rect, vec2};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas;
use strikeline::moves::{self, Handle, HandleKind};
use strikeline::session::Session;
use strikeline::theme;
use strikeline_solver::job::Job;
use strikeline_solver::job::option::Nudge;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;
use strikeline_solver::words;

const ROOM: &str = r#"(
    format: 1,
    last_id: 9,
    title: "A small room",
    pieces: [(id: "display-1", kind: display, name: "Screen", width: "48 in", height: "28 in", depth: "2 in", mass: "40 lb")],
    mounts: [(
        id: "mount-1",
        kind: flush,
        plate: (
            solids: [(id: "rail-1", left: "-10 in", right: "10 in", down: "0 in", height: "8 in")],
            holes: [
                (id: "hole-1", right: "-8 in", down: "1 in"),
                (id: "hole-2", right: "8 in", down: "1 in"),
            ],
        ),
        drop: "8 1/2 in",
    )],
    walls: [(
        id: "wall-1",
        width: "120 in",
        height: "96 in",
        left_end: inside_corner,
        right_end: inside_corner,
        features: [(
            id: "shelf-1",
            kind: shelf,
            name: "Low shelf",
            across: (left: (by: "80 in"), width: "30 in"),
            upright: (bottom: (by: "20 in"), height: "2 in"),
            proud: "8 in",
        )],
        hits: [
            (id: "hit-1", kind: centre, x: (by: "14 in"), y: (by: "20 in")),
            (id: "hit-2", kind: centre, x: (by: "62 in"), y: (by: "20 in")),
        ],
        options: [(
            id: "option-1",
            hangings: [(
                id: "hanging-1",
                piece: "display-1",
                mount: "mount-1",
                across: on_wall,
                upright: height(of: centre, by: "60 in"),
            )],
        )],
    )],
)"#;

fn room() -> Job {
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    options.from_str(ROOM).unwrap()
}

fn window_on(session: Session) -> Harness<'static, App> {
    // 60 frames a second: with the default of 4 every press would grow old into a drag.
    Harness::builder().with_size(vec2(1280.0, 800.0)).with_step_dt(1.0 / 60.0).build_eframe(|created| {
        theme::install(&created.egui_ctx);
        App::on(session)
    })
}

fn window() -> Harness<'static, App> {
    let mut harness = window_on(Session::new(room(), None));
    harness.run();
    harness
}

fn job(harness: &Harness<'_, App>) -> Job {
    harness.state().session().job.clone()
}

fn plan(harness: &mut Harness<'_, App>) -> Plan {
    (*harness.state_mut().session_mut().plan()).clone()
}

fn nudge(job: &Job) -> Nudge {
    job.walls[0].options[0].hangings[0].nudge
}

fn canvas_rect(harness: &Harness<'_, App>) -> Rect {
    harness.ctx.read_response(canvas::canvas_id()).expect("the canvas is shown").rect
}

/// Where on the screen the middle of a thing is.
fn middle(harness: &mut Harness<'_, App>, kind: HandleKind, id: &str) -> Pos2 {
    let rect = canvas_rect(harness);
    let plan = plan(harness);
    let window = canvas::shown(&plan, rect, harness.state().view_state());
    let handle = Handle { id: Id::new(id), kind };
    let place = moves::place(&plan, &handle, plan.survey.outline.centre().y).expect("it is in the plan");
    window.pointer_from_wall(place)
}

/// Presses at a place and moves on by so many points, the hand still down.
fn press_and_move(harness: &mut Harness<'_, App>, from: Pos2, by: egui::Vec2) {
    harness.hover_at(from);
    harness.step();
    harness.drag_at(from);
    harness.step();
    for part in [0.3, 0.7, 1.0] {
        harness.hover_at(from + by * part);
        harness.step();
    }
}

fn drag(harness: &mut Harness<'_, App>, from: Pos2, by: egui::Vec2) {
    press_and_move(harness, from, by);
    harness.drop_at(from + by);
    harness.step();
    harness.run();
}

#[test]
fn showing_a_job_changes_nothing_in_it() {
    let harness = window();
    assert_eq!(job(&harness), room());
    assert!(!harness.state().session().is_changed() && !harness.state().session().can_undo());
}

#[test]
fn nudge_marks_and_top_line_follow_a_drag_in_the_same_frame() {
    let mut harness = window();
    let before = plan(&mut harness);
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    press_and_move(&mut harness, from, vec2(-41.0, 33.0));
    // The hand is still down.
    let held = job(&harness);
    assert!(nudge(&held).right.length() < Length::inches(-5.0), "{:?}", nudge(&held));
    assert!(nudge(&held).up.length() < Length::inches(-5.0), "{:?}", nudge(&held));
    let after = plan(&mut harness);
    let line = words::top_line(&after, &after.pieces[0]);
    assert_ne!(line, words::top_line(&before, &before.pieces[0]));
    harness.get_by_label(&line);
    for mark in &after.marks {
        let row = harness.query_all_by_label(&words::mark_name(&after, mark)).count();
        assert!(row > 0, "{}", mark.id);
        let told = words::mark(&after, mark);
        assert!(harness.query_all_by_label(&told).count() > 0, "not shown in this frame: {told}");
    }
    let mut same = held;
    same.walls[0].options[0].hangings[0].nudge = Nudge::default();
    assert_eq!(same, room(), "a drag writes the nudge and nothing else");
}

#[test]
fn the_canvas_stays_where_it_is_whatever_is_told_over_it() {
    let mut harness = window();
    let before = canvas_rect(&harness);
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    for right in [-180.0, -90.0, 60.0, 150.0] {
        press_and_move(&mut harness, from, vec2(right, 20.0));
        assert_eq!(canvas_rect(&harness), before, "{right}");
        harness.key_press(Key::Escape);
        harness.step();
        harness.drop_at(from);
        harness.run();
    }
}

#[test]
fn marks_come_out_round_after_a_drag() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(37.3, -21.7));
    let plan = plan(&mut harness);
    for part in ["centre_line", "level_line"] {
        let mark = plan.marks.iter().find(|mark| mark.id.part_str() == part).expect(part);
        let reading = &mark.readings[0];
        let rest = reading.value - plan.style.length_of(reading.steps);
        assert!(rest.abs() < Length::millimetres(1e-6), "{part}: {rest:?}");
    }
}

#[test]
fn escape_gives_back_what_was_there() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    press_and_move(&mut harness, from, vec2(50.0, 0.0));
    assert_ne!(job(&harness), room());
    harness.key_press(Key::Escape);
    harness.step();
    assert_eq!(job(&harness), room());
    harness.hover_at(from + vec2(90.0, 0.0));
    harness.step();
    harness.drop_at(from + vec2(90.0, 0.0));
    harness.run();
    assert_eq!(job(&harness), room(), "what was given back stays");
}

#[test]
fn undo_and_redo_take_a_whole_gesture() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    let first = job(&harness);
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(0.0, 40.0));
    let second = job(&harness);
    assert!(first != room() && second != first);
    for (shortcut, key, after) in [
        (Modifiers::COMMAND, Key::Z, &first),
        (Modifiers::COMMAND, Key::Z, &room()),
        (Modifiers::COMMAND, Key::Z, &room()),
        (Modifiers::COMMAND | Modifiers::SHIFT, Key::Z, &first),
        (Modifiers::COMMAND, Key::Y, &second),
    ] {
        harness.key_press_modifiers(shortcut, key);
        harness.run();
        assert_eq!(job(&harness), *after, "{shortcut:?} {key:?}");
    }
}

#[test]
fn arrows_nudge_by_one_graduation_and_with_shift_by_an_inch() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    // A tap selects and gives the focus.
    harness.drag_at(from);
    harness.step();
    harness.drop_at(from);
    harness.run();
    assert_eq!(job(&harness), room(), "a tap writes nothing");
    harness.key_press(Key::ArrowRight);
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), Length::inches(1.0 / 16.0).quantised());
    harness.key_press(Key::ArrowDown);
    harness.run();
    assert_eq!(nudge(&job(&harness)).up.length(), -Length::inches(1.0 / 16.0).quantised());
    harness.key_press_modifiers(Modifiers::SHIFT, Key::ArrowLeft);
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), -Length::inches(15.0 / 16.0).quantised());
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Z);
    harness.run();
    assert_eq!(nudge(&job(&harness)).right.length(), Length::inches(1.0 / 16.0).quantised(), "a step a key");
}

#[test]
fn back_near_its_rules_place_the_nudge_is_cleared() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(64.0, 31.0));
    assert_ne!(nudge(&job(&harness)), Nudge::default());
    let now = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, now, from - now + vec2(2.0, -2.0));
    assert_eq!(job(&harness), room());
}

#[test]
fn alt_lets_go_of_what_it_is_drawn_to() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    harness.event(Event::ModifiersChanged(Modifiers::ALT));
    press_and_move(&mut harness, from, vec2(30.0, 6.0));
    let window = {
        let rect = canvas_rect(&harness);
        let plan = plan(&mut harness);
        canvas::shown(&plan, rect, harness.state().view_state())
    };
    let wished = -window.wall_length(6.0);
    let got = nudge(&job(&harness)).up.length();
    assert!((got - wished).abs() <= Length::inches(1.0 / 16.0), "{got:?}, wished {wished:?}");
}

#[test]
fn a_hit_is_dragged_by_its_reading() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Hit, "hit-1");
    drag(&mut harness, from, vec2(30.0, 0.0));
    let after = job(&harness);
    let by = after.walls[0].hits[0].x.by;
    assert!(by > Length::inches(15.0), "{by:?}");
    let style = after.style();
    assert!((by - style.length_of(style.steps(by))).abs() < Length::millimetres(1e-6), "{by:?}");
    let mut same = after;
    same.walls[0].hits[0].x.by = room().walls[0].hits[0].x.by;
    assert_eq!(same, room());
}

#[test]
fn a_feature_is_dragged_by_its_body() {
    let mut harness = window();
    let centre = middle(&mut harness, HandleKind::Feature, "shelf-1");
    // Away from its middle, on its body.
    drag(&mut harness, centre + vec2(40.0, 1.0), vec2(-20.0, -30.0));
    let after = job(&harness);
    let shelf = &after.walls[0].features[0];
    assert!(shelf.across.left.as_ref().unwrap().by < Length::inches(79.0));
    assert!(shelf.upright.bottom.as_ref().unwrap().by > Length::inches(21.0));
    assert_eq!(shelf.across.width, room().walls[0].features[0].across.width);
}

#[test]
fn a_press_on_the_empty_canvas_writes_nothing_and_selects_nothing() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    harness.drag_at(from);
    harness.step();
    harness.drop_at(from);
    harness.run();
    assert!(harness.state().session().selected.is_some());
    let corner = canvas_rect(&harness).min + vec2(6.0, 6.0);
    harness.drag_at(corner);
    harness.step();
    harness.drop_at(corner);
    harness.run();
    assert_eq!(harness.state().session().selected, None);
    drag(&mut harness, corner, vec2(30.0, 30.0));
    assert_eq!(job(&harness), room());
}

#[test]
fn a_few_points_are_a_tap_and_not_a_drag() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(4.0, 4.0));
    assert_eq!(job(&harness), room());
}

#[test]
fn the_wheel_zooms_about_the_pointer_and_a_key_fits_again() {
    let mut harness = window();
    let at = middle(&mut harness, HandleKind::Hit, "hit-2");
    let other = middle(&mut harness, HandleKind::Hit, "hit-1");
    harness.hover_at(at);
    harness.step();
    harness.event(Event::MouseWheel {
        unit: egui::MouseWheelUnit::Line,
        source: egui::MouseWheelSource::Wheel,
        delta: vec2(0.0, 3.0),
        phase: egui::TouchPhase::Move,
        modifiers: Modifiers::NONE,
    });
    // The toolkit smooths a wheel over some frames.
    harness.run_steps(30);
    assert!((middle(&mut harness, HandleKind::Hit, "hit-2") - at).length() < 0.1);
    let away = middle(&mut harness, HandleKind::Hit, "hit-1");
    assert!((away - at).length() > 1.3 * (other - at).length());
    harness.key_press_modifiers(Modifiers::COMMAND, Key::Num0);
    harness.run();
    assert!((middle(&mut harness, HandleKind::Hit, "hit-1") - other).length() < 0.1);
    assert_eq!(job(&harness), room());
}

#[test]
fn the_middle_button_pans() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    let button = |pos, pressed| Event::PointerButton {
        pos,
        button: PointerButton::Middle,
        pressed,
        modifiers: Modifiers::NONE,
    };
    harness.hover_at(from);
    harness.step();
    harness.event(button(from, true));
    harness.step();
    harness.hover_at(from + vec2(25.0, 10.0));
    harness.step();
    harness.event(button(from + vec2(25.0, 10.0), false));
    harness.run();
    let now = middle(&mut harness, HandleKind::Piece, "display-1");
    assert!((now - from - vec2(25.0, 10.0)).length() < 0.1, "{now:?}");
    assert_eq!(job(&harness), room());
}

#[test]
fn a_field_writes_what_it_understands_and_keeps_what_it_does_not() {
    let mut harness = window();
    let field = |harness: &Harness<'_, App>| {
        harness.get_by_role_and_label(egui::accesskit::Role::TextInput, "Wall width").rect()
    };
    let at = field(&harness).center();
    harness.drag_at(at);
    harness.step();
    harness.drop_at(at);
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::A);
    harness.event(Event::Text("10' 4".to_owned()));
    harness.run();
    assert_eq!(job(&harness).walls[0].width, Some(Length::inches(124.0).quantised()));
    harness.get_by_label("124 in is 3149.6 mm");
    harness.event(Event::Text(" 3/".to_owned()));
    harness.run();
    assert_eq!(
        job(&harness).walls[0].width,
        Some(Length::inches(124.0).quantised()),
        "the last understood stays"
    );
    harness.get_by_label_contains("Not understood.");
    // Elsewhere: what was typed is not lost.
    let corner = canvas_rect(&harness).min + vec2(6.0, 6.0);
    harness.drag_at(corner);
    harness.step();
    harness.drop_at(corner);
    harness.run();
    harness.get_by_label_contains("Not understood.");
    let shown = harness.get_by_role_and_label(egui::accesskit::Role::TextInput, "Wall width").value();
    assert_eq!(shown.as_deref(), Some("10' 4 3/"));
}

#[test]
fn choosing_a_mark_selects_what_it_is_about() {
    let mut harness = window();
    let plan = plan(&mut harness);
    let mark = plan.marks.iter().find(|mark| !mark.assumed).expect("a mark");
    let name = words::mark_name(&plan, mark);
    harness.get_by_role_and_label(egui::accesskit::Role::Button, &name).click();
    harness.run();
    assert_eq!(harness.state().session().selected.as_ref(), Some(&mark.id));
    assert_eq!(job(&harness), room());
}

#[test]
fn handles_are_found_by_name_and_reached_by_tab() {
    let mut harness = window();
    for id in ["display-1", "hit-1", "hit-2", "shelf-1"] {
        let plan = plan(&mut harness);
        let name = words::thing(&plan, &Id::new(id).whole());
        let count = harness.get_all_by_role_and_label(egui::accesskit::Role::Button, &name).count();
        assert!(count > 0, "{name}");
    }
    let mut reached = false;
    for _ in 0..200 {
        harness.key_press(Key::Tab);
        harness.step();
        reached |=
            harness.ctx.memory(|memory| memory.has_focus(canvas::handles::handle_id(&Id::new("display-1"))));
        if reached {
            break;
        }
    }
    assert!(reached, "Tab comes to the display");
    harness.run();
    harness.key_press(Key::ArrowUp);
    harness.run();
    assert_eq!(nudge(&job(&harness)).up.length(), Length::inches(1.0 / 16.0).quantised());
}

#[test]
fn without_a_job_the_display_s_width_waits_to_be_typed_and_the_drawing_grows() {
    let mut harness = Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .with_step_dt(1.0 / 60.0)
        .build_eframe(|created| App::new(&created.egui_ctx, None));
    harness.run();
    assert_eq!(plan(&mut harness).pieces.len(), 1, "never an empty canvas");
    harness.event(Event::Text("48 1/2".to_owned()));
    harness.run();
    assert_eq!(job(&harness).pieces[0].width, Some(Length::inches(48.5).quantised()));
    let drawn = plan(&mut harness).pieces[0].outline.width();
    assert!((drawn - Length::inches(48.5)).abs() < Length::millimetres(1e-6), "{drawn:?}");
}

#[test]
fn a_typed_path_is_opened_changed_and_saved() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    std::fs::write(&path, strikeline::files::job_file::write_job_text(&room()).unwrap()).unwrap();
    let mut harness = window_on(Session::fresh());
    harness.run();
    harness.key_press_modifiers(Modifiers::COMMAND, Key::O);
    harness.run();
    harness.event(Event::Text(path.display().to_string()));
    harness.run();
    harness.get_by_role_and_label(egui::accesskit::Role::Button, "Open").click();
    harness.run();
    assert_eq!(job(&harness), room());
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    assert!(harness.state().session().is_changed());
    harness.key_press_modifiers(Modifiers::COMMAND, Key::S);
    harness.run();
    assert!(!harness.state().session().is_changed());
    assert_eq!(strikeline::files::job_file::read_job(&path).unwrap().job, job(&harness));
}

#[test]
fn a_file_written_by_hand_is_not_replaced_before_it_is_said() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("room.ron");
    std::fs::write(&path, ROOM).unwrap();
    let opened = path.clone();
    let mut harness = Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .with_step_dt(1.0 / 60.0)
        .build_eframe(|created| App::new(&created.egui_ctx, Some(opened)));
    harness.run();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    harness.key_press_modifiers(Modifiers::COMMAND, Key::S);
    harness.run();
    assert_eq!(std::fs::read_to_string(&path).unwrap(), ROOM);
    harness.get_by_label("This file was written or changed by hand.");
    let in_dialog = |harness: &Harness<'_, App>| {
        harness
            .get_all_by_role_and_label(egui::accesskit::Role::Button, "Save")
            .last()
            .expect("a button")
            .click();
    };
    in_dialog(&harness);
    harness.run();
    assert_eq!(strikeline::files::job_file::read_job(&path).unwrap().job, job(&harness));
    assert!(!harness.state().session().is_changed());
}

#[test]
fn unsaved_changes_are_asked_about_before_they_are_lost() {
    let mut harness = window();
    let from = middle(&mut harness, HandleKind::Piece, "display-1");
    drag(&mut harness, from, vec2(60.0, 0.0));
    let moved = job(&harness);
    let ask = |harness: &mut Harness<'_, App>| {
        harness.key_press_modifiers(Modifiers::COMMAND, Key::N);
        harness.run();
        harness.get_by_label("This job has changes that are not saved.");
    };
    ask(&mut harness);
    harness.get_by_role_and_label(egui::accesskit::Role::Button, "Cancel").click();
    harness.run();
    assert_eq!(job(&harness), moved);
    ask(&mut harness);
    harness.get_by_role_and_label(egui::accesskit::Role::Button, "Discard the changes").click();
    harness.run();
    assert_eq!(job(&harness).title, "", "a fresh job");
    assert!(!harness.state().session().is_changed());
}

#[test]
fn a_file_that_cannot_be_read_is_told_of() {
    let mut harness = Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .build_eframe(|created| App::new(&created.egui_ctx, Some("/not/there.ron".into())));
    harness.run();
    harness.get_by_label_contains("Not opened: cannot read the job");
}

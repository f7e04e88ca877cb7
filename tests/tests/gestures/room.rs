//! A small room in a window without a screen, and what a hand does to it.

use egui::{Pos2, Rect, vec2};
use egui_kittest::Harness;
use strikeline::app::{self, App};
use strikeline::canvas;
use strikeline::moves::{self, Handle, HandleKind};
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::job::option::Nudge;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;

pub(crate) const ROOM: &str = r#"(
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

pub(crate) fn room() -> Job {
    let options = ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    options.from_str(ROOM).unwrap()
}

pub(crate) fn window_on(session: Session) -> Harness<'static, App> {
    // A folder is read beside the window: a few frames more until all has come. 60 frames a second: with the default of
    // 4 every press would grow old into a drag.
    Harness::builder()
        .with_size(vec2(1280.0, 800.0))
        .with_max_steps(64)
        .with_step_dt(1.0 / 60.0)
        .build_eframe(|created| {
            app::install(&created.egui_ctx);
            App::on(session)
        })
}

pub(crate) fn window() -> Harness<'static, App> {
    let mut harness = window_on(Session::new(room(), None));
    harness.run();
    harness
}

pub(crate) fn job(harness: &Harness<'_, App>) -> Job {
    harness.state().session().job.clone()
}

pub(crate) fn plan(harness: &mut Harness<'_, App>) -> Plan {
    (*harness.state_mut().session_mut().plan()).clone()
}

pub(crate) fn nudge(job: &Job) -> Nudge {
    job.walls[0].options[0].hangings[0].nudge
}

pub(crate) fn canvas_rect(harness: &Harness<'_, App>) -> Rect {
    harness.ctx.read_response(canvas::canvas_id()).expect("the canvas is shown").rect
}

/// Where on the screen the middle of a thing is.
pub(crate) fn middle(harness: &mut Harness<'_, App>, kind: HandleKind, id: &str) -> Pos2 {
    let rect = canvas_rect(harness);
    let plan = plan(harness);
    let window = canvas::shown(&plan, rect, harness.state().view_state());
    let handle = Handle { id: Id::new(id), kind };
    let place = moves::place(&plan, &handle, plan.survey.outline.centre().y).expect("it is in the plan");
    window.pointer_from_wall(place)
}

/// Presses at a place and moves on by so many points, the hand still down.
pub(crate) fn press_and_move(harness: &mut Harness<'_, App>, from: Pos2, by: egui::Vec2) {
    harness.hover_at(from);
    harness.step();
    harness.drag_at(from);
    harness.step();
    for part in [0.3, 0.7, 1.0] {
        harness.hover_at(from + by * part);
        harness.step();
    }
}

pub(crate) fn drag(harness: &mut Harness<'_, App>, from: Pos2, by: egui::Vec2) {
    press_and_move(harness, from, by);
    harness.drop_at(from + by);
    harness.step();
    harness.run();
}

/// A press and a release at one place.
pub(crate) fn tap(harness: &mut Harness<'_, App>, at: Pos2) {
    harness.drag_at(at);
    harness.step();
    harness.drop_at(at);
    harness.run();
}

/// Turns the wheel by so many lines, away from the hand where positive, the pointer where it is.
pub(crate) fn wheel(harness: &mut Harness<'_, App>, lines: f32) {
    harness.event(egui::Event::MouseWheel {
        unit: egui::MouseWheelUnit::Line,
        source: egui::MouseWheelSource::Wheel,
        delta: egui::vec2(0.0, lines),
        phase: egui::TouchPhase::Move,
        modifiers: egui::Modifiers::NONE,
    });
    // The toolkit smooths a wheel over some frames.
    harness.run_steps(30);
}

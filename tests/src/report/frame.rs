//! What a frame costs the processor while the display is dragged on the busiest demo, beside an empty frame:
//! logic, ui and tessellation, without a window.

use crate::demo::{busiest, machine, median, verdict};
use egui::{Event, Key, Modifiers, PointerButton, Pos2, Vec2, vec2};
use egui_kittest::Harness;
use std::process::ExitCode;
use std::time::Instant;
use strikeline::app::{self, App};
use strikeline::canvas;
use strikeline::moves::{self, Handle, HandleKind};
use strikeline::session::Session;

/// A frame's work while dragging, in the median, at most.
const BOUND_MS: f64 = 4.0;
/// Frames that are counted: five seconds at 60 Hz.
const FRAMES: u16 = 300;
const SIZE: Vec2 = vec2(1280.0, 800.0);

/// Prints the table and says whether the bound held.
pub(crate) fn report() -> ExitCode {
    let (path, job) = match busiest() {
        Ok(found) => found,
        Err(why) => {
            eprintln!("{why}");
            return ExitCode::from(2);
        }
    };
    println!("frame: {} ({}), {FRAMES} frames of a drag", job.title, machine());
    let mut window = Harness::builder().with_size(SIZE).with_step_dt(1.0 / 60.0).build_eframe(|created| {
        app::install(&created.egui_ctx);
        App::on(Session::new(job, Some(path)))
    });
    window.run();
    let Some(start) = middle_of_display(&mut window) else {
        eprintln!("nothing hangs on the busiest demo");
        return ExitCode::from(2);
    };
    let before = window.state().session().job.clone();
    let drag_ms = dragged(&mut window, start);
    if !opened(&mut window) {
        eprintln!("what this wall offers did not come");
        return ExitCode::from(2);
    }
    let Some(again) = middle_of_display(&mut window) else { return ExitCode::from(2) };
    let offers_ms = dragged(&mut window, again);
    if window.state().session().job == before {
        eprintln!("the display did not move: this was no drag");
        return ExitCode::from(2);
    }
    let mut empty = Harness::builder().with_size(SIZE).with_step_dt(1.0 / 60.0).build_ui(|_| {});
    let empty_ms = dragged(&mut empty, start);

    println!("{:>12} {:>12} {:>12} {:>10}", "", "median ms", "worst ms", "bound ms");
    let worst = |all: &[f64]| all.iter().copied().fold(0.0, f64::max);
    let (drag_worst, offers_worst, empty_worst) = (worst(&drag_ms), worst(&offers_ms), worst(&empty_ms));
    let (drag, offers, nothing) = (median(drag_ms), median(offers_ms), median(empty_ms));
    println!("{:>12} {drag:>12.3} {drag_worst:>12.3} {BOUND_MS:>10.1}", "dragging");
    println!("{:>12} {offers:>12.3} {offers_worst:>12.3} {BOUND_MS:>10.1}", "sweep open");
    println!("{:>12} {nothing:>12.3} {empty_worst:>12.3} {:>10}", "empty", "-");
    println!("{:>12} {:>12.1}", "ratio", drag / nothing);
    println!("{:>12} {:>12.1}", "sweep open", offers / nothing);
    let rows = [("dragging", drag), ("dragging with the sweep open", offers)];
    let short: Vec<String> =
        rows.into_iter().filter(|(_, ms)| *ms > BOUND_MS).map(|(name, _)| name.to_owned()).collect();
    verdict("frame", &short)
}

/// Asks for what this wall offers and waits until all of it is worked out; whether it came.
fn opened(window: &mut Harness<'_, App>) -> bool {
    window.key_press_modifiers(Modifiers::COMMAND, Key::D);
    window.run();
    for _ in 0..5000 {
        if window.state().strip().swept().is_some_and(|swept| swept.is_all() && swept.known() > 0) {
            return true;
        }
        window.step();
    }
    false
}

/// Where on the screen the middle of the first piece is.
fn middle_of_display(window: &mut Harness<'_, App>) -> Option<Pos2> {
    let rect = window.ctx.read_response(canvas::canvas_id())?.rect;
    let plan = window.state_mut().session_mut().plan();
    let piece = plan.pieces.first()?;
    let handle = Handle { id: piece.id.clone(), kind: HandleKind::Piece };
    let place = moves::place(&plan, &handle, plan.survey.outline.centre().y)?;
    let shown = canvas::shown(&plan, rect, window.state().view_state());
    // Off its middle, where the plate's holes and hits lie.
    Some(shown.pointer_from_wall(place) + vec2(0.0, 30.0))
}

/// Presses, draws circles so that every frame is another, and gives the time of each frame.
fn dragged<State>(window: &mut Harness<'_, State>, start: Pos2) -> Vec<f64> {
    let button = |pos, pressed| Event::PointerButton {
        pos,
        button: PointerButton::Primary,
        pressed,
        modifiers: Modifiers::default(),
    };
    window.event(Event::PointerMoved(start));
    window.step();
    window.event(button(start, true));
    window.step();
    let mut all_ms = Vec::new();
    for frame in 0..FRAMES {
        let angle = f32::from(frame) * 0.11;
        window.event(Event::PointerMoved(start + vec2(angle.cos() * 60.0, angle.sin() * 25.0)));
        let begin = Instant::now();
        window.step();
        let shapes = window.output().shapes.clone();
        std::hint::black_box(window.ctx.tessellate(shapes, 1.0));
        all_ms.push(begin.elapsed().as_secs_f64() * 1000.0);
    }
    // Let go where it was last: back at the start it would be no drag.
    window.event(button(start + vec2(60.0, 0.0), false));
    window.step();
    all_ms
}

//! The whole wall in the window: all that is drawn of it has room on the canvas.

use super::room::*;
use egui::vec2;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable as _;
use strikeline::app::App;
use strikeline::canvas;
use strikeline::session::Session;
use strikeline_drawing::dimension::About;
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::ink::Ink;
use strikeline_drawing::look::{Look, Margin};
use strikeline_drawing::scene::{ItemKind, Scene, ShownFigure};
use strikeline_solver::plan::mark::{MarkState, MarkWhat};

/// All that is written, in order.
fn texts(scene: &Scene) -> Vec<&str> {
    let texts = scene.items.iter().filter_map(|item| match &item.kind {
        ItemKind::Text { text, .. } => Some(text.as_str()),
        _ => None,
    });
    texts.collect()
}

/// Every demo job in a window of a size, with each of its options.
fn with_each_demo(size: egui::Vec2, mut look_at: impl FnMut(&str, &mut Harness<'_, App>)) {
    let folder = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs");
    let mut shown = 0;
    for entry in std::fs::read_dir(folder).unwrap() {
        let path = entry.unwrap().path();
        let opened = path.clone();
        let mut harness = Harness::builder()
            .with_size(size)
            .build_eframe(|created| App::new(&created.egui_ctx, Some(opened)));
        let options =
            job(&harness).walls[0].options.iter().map(|option| option.id.clone()).collect::<Vec<_>>();
        for option in options {
            let name = format!("{} {option} at {size:?}", path.display());
            harness.state_mut().session_mut().option = Some(option);
            harness.run();
            look_at(&name, &mut harness);
            shown += 1;
        }
    }
    assert!(shown > 6, "the demo jobs have options");
}

#[test]
fn at_fit_all_that_is_drawn_is_on_the_canvas_and_nothing_is_left_out_for_want_of_room() {
    for size in [vec2(1280.0, 800.0), vec2(800.0, 600.0)] {
        with_each_demo(size, |name, harness| {
            let rect = canvas_rect(harness);
            let plan = plan(harness);
            let look = canvas::shown(&plan, rect, harness.state().view_state()).look();
            let job = job(harness);
            let scene = elevation(&job, &plan, &look);
            for item in &scene.items {
                // The symbol of the ground and the returns of corners may run out; what is read may not.
                let is_read = matches!(
                    item.ink,
                    Ink::Dimension | Ink::DimensionTick | Ink::DimensionText | Ink::Label | Ink::ChalkLine
                );
                let bounds = item.bounds().unwrap();
                assert!(!is_read || scene.scale.page().shared(bounds) == Some(bounds), "{name}: {item:?}");
            }
            // With all the room there could be, no more is said.
            let wide = Look {
                margin: Margin::even(200.0),
                text_height_mm: look.text_height_mm,
                ..Look::whole_wall(&plan, look.paper_mm_per_wall_mm)
            };
            assert_eq!(texts(&scene), texts(&elevation(&job, &plan, &wide)), "{name}");
        });
    }
}

/// At fit the readings of every line that is struck are there to be read, each where its tape begins.
#[test]
fn at_fit_the_readings_of_every_line_are_shown() {
    with_each_demo(vec2(1280.0, 800.0), |name, harness| {
        let rect = canvas_rect(harness);
        let plan = plan(harness);
        let look = canvas::shown(&plan, rect, harness.state().view_state()).look();
        let scene = elevation(&job(harness), &plan, &look);
        let lines = plan.marks.iter().filter(|mark| {
            matches!(mark.what, MarkWhat::CentreLine | MarkWhat::LevelLine) && mark.state == MarkState::ToDo
        });
        for mark in lines {
            let is_shown = |figure: &ShownFigure| matches!(&figure.about, About::Reading { mark: of, .. } if *of == mark.id);
            assert!(scene.figures.iter().any(is_shown), "{name}: {}", mark.id);
        }
    });
}

#[test]
fn a_narrow_window_shows_one_panel_at_a_time_and_the_drawing_keeps_the_most_of_it() {
    let path = concat!(env!("CARGO_MANIFEST_DIR"), "/../demo-jobs/tall_parlour.ron");
    for (size, is_narrow) in [(vec2(800.0, 600.0), true), (vec2(1280.0, 800.0), false)] {
        let mut harness = Harness::builder()
            .with_size(size)
            .build_eframe(|created| App::new(&created.egui_ctx, Some(path.into())));
        harness.run();
        let shows = |harness: &Harness<'_, App>| {
            let has = |text: &str| harness.query_all_by_label(text).count() > 0;
            (has("Pieces"), has("Findings"))
        };
        assert_eq!(shows(&harness), (true, !is_narrow));
        assert!(canvas_rect(&harness).width() > size.x / 2.0, "{:?}", canvas_rect(&harness));
        if is_narrow {
            harness.get_by_label("What follows").click();
            harness.run();
            assert_eq!(shows(&harness), (false, true));
        }
    }
}

#[test]
fn the_drawing_stays_where_it_is_while_nothing_is_done() {
    for demo in ["breakfast_room", "tall_parlour", "corner_suite", "listening_room"] {
        let path = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join(format!("../demo-jobs/{demo}.ron"));
        let job = strikeline::files::job_file::read_job(&path).unwrap().job;
        let first = job.pieces[0].id.whole();
        let mut harness = window_on(Session::new(job, None));
        harness.state_mut().session_mut().selected = Some(first);
        harness.run_steps(40);
        let rect = canvas_rect(&harness);
        for _ in 0..20 {
            harness.step();
            assert_eq!(canvas_rect(&harness), rect, "{demo}");
        }
    }
}

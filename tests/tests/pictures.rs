//! Does it look right? A few pictures of the window and of a sheet, held against those kept in the repository;
//! two of them are the ones that the README shows. What a hand does is asked without pictures, in `gestures`.
//!
//! Only with the feature `pictures`. The window's pictures need a graphics adapter, best a software one; without
//! any they fail. `UPDATE_SNAPSHOTS=1` writes those that differ anew.
#![allow(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a failure here is a failed test"
)]

use egui::{Key, Modifiers, Rect, Theme, Vec2, vec2};
use egui_kittest::kittest::Queryable as _;
use egui_kittest::{Harness, SnapshotOptions, image_snapshot_options};
use image::RgbaImage;
use image::codecs::png::{CompressionType, FilterType, PngEncoder};
use std::path::{Path, PathBuf};
use strikeline::app::{self, App};
use strikeline::canvas;
use strikeline::files::job_file::read_job;
use strikeline::moves::{self, Handle, HandleKind};
use strikeline::session::Session;
use strikeline_drawing::png::png;
use strikeline_drawing::sheet::{About, PaperSize, SheetKind, document};
use strikeline_solver::job::Job;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;

/// How much a pixel may differ: two of 255 levels of grey, as the weighted square that the comparison takes.
/// Between two software rasterisers, one by Vulkan and one by GL, two pixels of a window differed, by less than
/// one level. What a reader would see is far more.
const THRESHOLD: f32 = 2.1;

/// A folder of the repository.
fn folder(name: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("..").join(name)
}

fn demo(name: &str) -> Job {
    read_job(&folder("demo-jobs").join(name)).unwrap().job
}

/// Holds a picture against the one of that name in a folder.
fn check(picture: &RgbaImage, of: &str, name: &str) {
    let options = SnapshotOptions::new().output_path(folder(of)).threshold(THRESHOLD);
    image_snapshot_options(picture, name, &options);
    if std::env::var_os("UPDATE_SNAPSHOTS").is_some() {
        shrink(&folder(of).join(name).with_extension("png"));
    }
}

/// Writes a picture again as small as it gets without loss: without its alpha, which is full, and without
/// filters, which make flat drawings larger. Half the size of what the comparison writes.
fn shrink(path: &Path) {
    let picture = image::open(path).unwrap().to_rgb8();
    let mut bytes = Vec::new();
    let encoder = PngEncoder::new_with_quality(&mut bytes, CompressionType::Best, FilterType::NoFilter);
    picture.write_with_encoder(encoder).unwrap();
    std::fs::write(path, bytes).unwrap();
}

/// The window on a job.
fn window(job: Job, theme: Theme, size: Vec2) -> Harness<'static, App> {
    let mut harness = Harness::builder()
        .with_size(size)
        .with_theme(theme)
        .with_render_cursor(false)
        // 60 frames a second: with the default of 4 every press would grow old into a drag.
        .with_step_dt(1.0 / 60.0)
        .build_eframe(|created| {
            app::install(&created.egui_ctx);
            App::on(Session::new(job, None))
        });
    harness.run();
    harness
}

fn canvas_rect(harness: &Harness<'_, App>) -> Rect {
    harness.ctx.read_response(canvas::canvas_id()).expect("the canvas is shown").rect
}

#[test]
fn the_window_by_day_as_the_readme_shows_it() {
    let mut harness = window(demo("garden_kitchen.ron"), Theme::Light, vec2(1280.0, 800.0));
    check(&harness.render().unwrap(), "assets/pictures", "window");
}

#[test]
fn a_smaller_window_in_a_dim_room() {
    let mut harness = window(demo("breakfast_room.ron"), Theme::Dark, vec2(1000.0, 640.0));
    check(&harness.render().unwrap(), "tests/pictures", "window_dark");
}

#[test]
fn a_display_held_by_a_hand() {
    let mut harness = window(demo("garden_kitchen.ron"), Theme::Light, vec2(1100.0, 640.0));
    let canvas = canvas_rect(&harness);
    let plan = harness.state_mut().session_mut().plan();
    let window = canvas::shown(&plan, canvas, harness.state().view_state());
    let display = Handle { id: Id::new("display-1"), kind: HandleKind::Piece };
    let place = moves::place(&plan, &display, plan.survey.outline.centre().y).expect("it is in the plan");
    let from = window.pointer_from_wall(place);
    harness.hover_at(from);
    harness.step();
    harness.drag_at(from);
    harness.step();
    harness.hover_at(from + vec2(36.0, -22.0));
    harness.run();
    // The canvas alone: the panels are in the other pictures.
    let picture = harness.render().unwrap();
    let [left, top, width, height] =
        [canvas.left(), canvas.top(), canvas.width(), canvas.height()].map(|points| points as u32);
    let canvas = image::imageops::crop_imm(&picture, left, top, width, height).to_image();
    check(&canvas, "tests/pictures", "held");
}

/// The states of the window beside the drawing alone, each by day and in a dim room.
#[test]
fn what_is_looked_at_beside_the_drawing() {
    type Hand = fn(&mut Harness<'_, App>);
    let states: [(&str, &str, Hand); 4] = [
        ("offers", "breakfast_room.ron", |harness| {
            harness.key_press_modifiers(Modifiers::COMMAND, Key::D);
        }),
        ("side", "listening_room.ron", |harness| harness.get_by_label("Side view").click()),
        ("choosing", "listening_room.ron", |harness| {
            harness.key_press_modifiers(Modifiers::COMMAND, Key::G);
        }),
        ("at_wall", "breakfast_room.ron", |harness| harness.get_by_label("At the wall").click()),
    ];
    for (name, job, hand) in states {
        for (theme, lit) in [(Theme::Light, "light"), (Theme::Dark, "dark")] {
            let mut harness = window(demo(job), theme, vec2(1180.0, 640.0));
            hand(&mut harness);
            for _ in 0..400 {
                harness.step();
            }
            // How many places a frame takes hangs on the machine: what this wall offers is waited for.
            let is_sweeping = |harness: &Harness<'_, App>| {
                harness.state().strip().swept().is_some_and(|swept| !swept.is_all())
            };
            for _ in 0..20_000 {
                if !is_sweeping(&harness) {
                    break;
                }
                harness.step();
            }
            assert!(!is_sweeping(&harness), "{name}");
            harness.run();
            // Half as large: what is where, and in which ink.
            let picture = harness.render().unwrap();
            let (wide, high) = (picture.width() / 2, picture.height() / 2);
            let small = image::imageops::resize(&picture, wide, high, image::imageops::FilterType::Triangle);
            check(&small, "tests/pictures", &format!("{name}_{lit}"));
        }
    }
}

#[test]
fn a_sheet_as_the_readme_shows_it() {
    let job = demo("garden_kitchen.ron");
    let plan = solve(&job, &job.walls.first().unwrap().id, None);
    let about = About { file: "garden_kitchen.ron", date: "2026-03-14" };
    let document = document(&job, &[&plan], &[SheetKind::MarkOut], PaperSize::A4, about).unwrap();
    let bytes = png(&document.pages[0].scene).unwrap();
    let picture = image::load_from_memory(&bytes).unwrap().to_rgba8();
    check(&picture, "assets/pictures", "sheet");
}

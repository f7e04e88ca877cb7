//! Sheets as they lie on the disk: PDF files read back by a reader that shares nothing with what writes them.
#![allow(
    clippy::unwrap_used,
    clippy::indexing_slicing,
    clippy::panic,
    reason = "a failure here is a failed test"
)]

#[path = "on_paper/golden.rs"]
mod golden;
#[path = "on_paper/hostile.rs"]
mod hostile;
#[path = "on_paper/poppler.rs"]
mod poppler;
#[path = "on_paper/read.rs"]
mod read;

use read::{Curve, Read};
use std::path::{Path, PathBuf};
use strikeline::files::job_file::read_job;
use strikeline_drawing::pdf::pdf;
use strikeline_drawing::png::{PIXELS_PER_INCH, png};
use strikeline_drawing::scene::ItemKind;
use strikeline_drawing::sheet::{About, Document, Page, PaperSize, SheetKind, document};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::words::{self, on_paper};

/// Points of PDF to a millimetre: 72 to the inch (ISO 32000, 8.3.2.3).
const POINTS: f64 = 72.0 / 25.4;
const ABOUT: About<'_> = About { file: "room.ron", date: "2026-03-14" };

fn demos() -> Vec<(String, Job)> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs");
    let mut paths: Vec<PathBuf> =
        std::fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path()).collect();
    paths.sort();
    let named = |path: &PathBuf| path.file_stem().unwrap().to_string_lossy().into_owned();
    paths.iter().map(|path| (named(path), read_job(path).unwrap().job)).collect()
}

fn demo(name: &str) -> Job {
    demos().into_iter().find(|(demo, _)| demo == name).unwrap().1
}

fn solved(job: &Job) -> Vec<Plan> {
    job.walls.iter().map(|wall| solve(job, &wall.id, None)).collect()
}

fn drawn(job: &Job, kinds: &[SheetKind], paper: PaperSize) -> Document {
    let plans = solved(job);
    document(job, &plans.iter().collect::<Vec<_>>(), kinds, paper, ABOUT).unwrap()
}

/// A text without its spaces: a reader finds those by guessing.
fn packed(text: &str) -> String {
    text.chars().filter(|letter| !letter.is_whitespace()).collect()
}

#[test]
fn a_pdf_has_the_pages_at_their_size_and_every_text_of_them() {
    for (name, job) in demos() {
        for paper in [PaperSize::Letter, PaperSize::A4] {
            let document = drawn(&job, &SheetKind::WHOLE_SET, paper);
            let read = Read::of(&pdf(&document).unwrap());
            assert_eq!(read.pages.len(), document.pages.len(), "{name}");
            for (read, page) in read.pages.iter().zip(&document.pages) {
                let (wide, high) = (page.scene.width_mm * POINTS, page.scene.height_mm * POINTS);
                let off = (read.wide - wide).abs().max((read.high - high).abs());
                assert!(off < 0.01, "{name}: {} by {}", read.wide, read.high);
            }
            let text = packed(&read.text);
            for plan in solved(&job) {
                for mark in &plan.marks {
                    let told = [
                        words::mark_name(&plan, mark),
                        on_paper::figures(&plan, mark),
                        words::mark(&plan, mark),
                    ];
                    for words in told {
                        assert!(text.contains(&packed(&words)), "{name}: {words}");
                    }
                }
            }
        }
    }
}

#[test]
fn fonts_are_embedded_as_subsets_and_title_language_and_bookmarks_are_there() {
    let job = demo("garden_kitchen");
    let document = drawn(&job, &SheetKind::WHOLE_SET, PaperSize::A4);
    let bytes = pdf(&document).unwrap();
    let read = Read::of(&bytes);
    assert_eq!(read.fonts.len(), 2, "both weights: {:?}", read.fonts);
    for font in &read.fonts {
        let is_subset = font.name.chars().nth(6) == Some('+')
            && font.name.chars().take(6).all(|c| c.is_ascii_uppercase());
        assert!(font.is_embedded && is_subset, "{font:?}");
    }
    assert!(bytes.len() < 400_000, "{} bytes", bytes.len());
    assert_eq!(read.title.as_deref(), Some(job.title.as_str()));
    assert_eq!(read.language.as_deref(), Some("en"));
    let bookmarks: Vec<&str> =
        document.pages.iter().flat_map(|page| &page.bookmarks).map(|it| it.words.as_str()).collect();
    assert!(bookmarks.len() > 6);
    assert_eq!(read.bookmarks, bookmarks, "each, in their order");
    assert_eq!(pdf(&document).unwrap(), bytes, "the same pages are the same bytes");
}

#[test]
fn holes_of_a_template_are_as_far_apart_as_on_the_plate() {
    // garden_kitchen's plate, from its file: round holes of 9 mm at -200, 0 and 200 mm, all 18 mm down. On A2 they
    // share a page: 400 mm from the first to the last, which may be off by 0.1 mm in 250 mm.
    let job = demo("garden_kitchen");
    let document = drawn(&job, &[SheetKind::Template], PaperSize::A2);
    let read = Read::of(&pdf(&document).unwrap());
    let is_hole =
        |curve: &&Curve| (curve.wide / POINTS - 9.0).abs() < 0.02 && (curve.high / POINTS - 9.0).abs() < 0.02;
    let holes: Vec<&Curve> = read.pages.iter().flat_map(|page| page.curves.iter().filter(is_hole)).collect();
    assert_eq!(holes.len(), 3);
    for (from, to, apart_mm) in [(0, 1, 200.0), (1, 2, 200.0), (0, 2, 400.0)] {
        let (a, b) = (holes[from], holes[to]);
        let drawn_mm = (b.x - a.x).hypot(b.y - a.y) / POINTS;
        assert!((drawn_mm - apart_mm).abs() < 0.1 * apart_mm / 250.0, "{drawn_mm} mm, not {apart_mm}");
        assert!((a.y - b.y).abs() / POINTS < 0.01, "level");
    }
    // The check bar of 4 in.
    for page in &read.pages {
        let is_bar = |line: &&read::Line| {
            line.is_level() && (line.long() / POINTS - 101.6).abs() < 0.1 * 101.6 / 250.0
        };
        assert!(page.lines.iter().any(|line| is_bar(&line)));
    }
}

#[test]
fn an_elevation_is_to_the_scale_it_names() {
    // Widths from the files; the scales as the sheets name them, 1/2 in to the foot being 1:24.
    let mut seen = 0;
    for (name, job) in demos() {
        for paper in [PaperSize::Letter, PaperSize::A3] {
            let document = drawn(&job, &[SheetKind::Elevation], paper);
            let read = Read::of(&pdf(&document).unwrap());
            for (page, wall) in read.pages.iter().zip(&job.walls) {
                let scales = strikeline_drawing::scale::StandardScale::all(job.units());
                let text = packed(&page.text);
                let named = scales.iter().find(|scale| text.contains(&packed(scale.name)));
                let (Some(scale), Some(width)) = (named, wall.width) else { continue };
                let expected_mm = width.mm() / scale.wall_mm_per_paper_mm;
                let is_edge = |line: &read::Line| {
                    line.is_level() && (line.long() / POINTS / expected_mm - 1.0).abs() < 0.001
                };
                assert!(page.lines.iter().any(is_edge), "{name}: no edge of {expected_mm} mm");
                seen += 1;
            }
        }
    }
    assert!(seen >= 8, "{seen} walls at a scale with a name");
}

#[test]
fn no_page_of_a_customer_or_before_the_tiles_is_nearly_empty() {
    for (name, job) in demos() {
        for paper in [PaperSize::Letter, PaperSize::A4] {
            for plan in &solved(&job) {
                let made = |kind| document(&job, &[plan], &[kind], paper, ABOUT).unwrap().pages;
                assert_eq!(made(SheetKind::Customer).len(), 1, "{name}: picture and words together");
                let pages = made(SheetKind::Template);
                let written = |page: &Page| {
                    let texts = page.scene.items.iter().filter_map(|item| match &item.kind {
                        ItemKind::Text { text, .. } => Some(text.clone()),
                        _ => None,
                    });
                    texts.collect::<Vec<_>>()
                };
                let is_tile = |page: &&Page| written(page).iter().any(|text| text.starts_with("Tile "));
                let before = pages.iter().filter(|page| !is_tile(page)).count();
                let plates = plan.pieces.iter().filter(|piece| piece.mount.is_some()).count();
                assert!(
                    before <= plates.max(1),
                    "{name}: {before} pages before the tiles of {plates} plates"
                );
            }
        }
    }
}

#[test]
fn a_png_states_its_resolution_and_is_as_large_as_its_paper() {
    let job = demo("garden_kitchen");
    let document = drawn(&job, &[SheetKind::Elevation], PaperSize::A4);
    let bytes = png(&document.pages[0].scene).unwrap();
    // The header's width and height are at 16 and 20; pHYs holds pixels to the metre (ISO 15948, 11.2.2 and 11.3.5.3).
    let number = |at: usize| u32::from_be_bytes(bytes[at..at + 4].try_into().unwrap());
    let pixels = |mm: f64| (mm / 25.4 * PIXELS_PER_INCH).round() as u32;
    assert_eq!((number(16), number(20)), (pixels(297.0), pixels(210.0)));
    let physical = bytes.windows(4).position(|four| four == b"pHYs").unwrap() + 4;
    assert_eq!((number(physical), number(physical + 4), bytes[physical + 8]), (5906, 5906, 1));
}

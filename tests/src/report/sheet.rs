//! What sheets cost: each kind as PDF, and the mark-out's first page as SVG and PNG, of the busiest demo, solved
//! already.

use crate::demo::{busiest, machine, median, verdict};
use std::process::ExitCode;
use std::time::Instant;
use strikeline_drawing::pdf::pdf;
use strikeline_drawing::png::png;
use strikeline_drawing::sheet::{About, Document, PaperSize, SheetKind, document};
use strikeline_drawing::svg::svg;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;

/// A sheet, at most.
const BOUND_MS: f64 = 150.0;
const RUNS: usize = 15;

/// Prints the table and says whether the bound held.
pub(crate) fn report() -> ExitCode {
    let (_, job) = match busiest() {
        Ok(found) => found,
        Err(why) => {
            eprintln!("{why}");
            return ExitCode::from(2);
        }
    };
    let plans: Vec<Plan> = job.walls.iter().map(|wall| solve(&job, &wall.id, None)).collect();
    let plans: Vec<&Plan> = plans.iter().take(1).collect();
    let paper = PaperSize::usual(job.units());
    let about = About { file: "room.ron", date: "2026-03-14" };
    println!("sheet: {} ({})", job.title, machine());
    println!("{:>20} {:>7} {:>8} {:>12} {:>10}", "sheet", "as", "pages", "median ms", "bound ms");
    let mut short = Vec::new();
    let mut row = |name: &str, form: &str, make: &dyn Fn(&Document) -> usize, kind: SheetKind| {
        let draw = || document(&job, &plans, &[kind], paper, about);
        let pages = draw().map_or(0, |document| document.pages.len());
        let one_ms = |_| {
            let start = Instant::now();
            if let Ok(document) = draw() {
                std::hint::black_box(make(&document));
            }
            start.elapsed().as_secs_f64() * 1000.0
        };
        let median_ms = median((0..RUNS).map(one_ms).collect());
        println!("{name:>20} {form:>7} {pages:>8} {median_ms:>12.1} {BOUND_MS:>10.0}");
        if median_ms > BOUND_MS {
            short.push(format!("{name} as {form}"));
        }
    };
    for kind in SheetKind::ALL {
        row(kind.name(), "PDF", &|document| pdf(document).map_or(0, |bytes| bytes.len()), kind);
    }
    let first = |document: &Document, make: &dyn Fn(&strikeline_drawing::scene::Scene) -> usize| {
        document.pages.first().map_or(0, |page| make(&page.scene))
    };
    let kind = SheetKind::Elevation;
    row(kind.name(), "SVG", &|document| first(document, &|scene| svg(scene).len()), kind);
    row(
        kind.name(),
        "PNG",
        &|document| first(document, &|scene| png(scene).map_or(0, |bytes| bytes.len())),
        kind,
    );
    verdict("sheet", &short)
}

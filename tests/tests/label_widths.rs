//! What the drawing takes for the width of a text is what the window's toolkit makes of it.
#![allow(clippy::unwrap_used, reason = "a failure here is a failed test")]

use egui::{Color32, Context, Rect, pos2, vec2};
use egui_kittest::Harness;
use std::collections::BTreeSet;
use std::path::Path;
use strikeline::canvas;
use strikeline::files::job_file::read_job;
use strikeline::theme;
use strikeline::view_state::{POINTS_PER_PAPER_MM, ViewState};
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::font::{Weight, text_width_mm};
use strikeline_drawing::scene::ItemKind;
use strikeline_solver::solve::solve;

/// A text of a drawing.
#[derive(Clone, Debug, PartialEq)]
struct Label {
    text: String,
    height_mm: f64,
    weight: Weight,
}

/// Every text on every wall of the demo jobs in every option, drawn as the window does.
fn labels() -> Vec<Label> {
    let rect = Rect::from_min_size(pos2(0.0, 0.0), vec2(760.0, 640.0));
    let mut labels = Vec::new();
    let mut jobs = 0;
    for entry in std::fs::read_dir(Path::new(env!("CARGO_MANIFEST_DIR")).join("../demo-jobs")).unwrap() {
        let job = read_job(&entry.unwrap().path()).unwrap().job;
        jobs += 1;
        for wall in &job.walls {
            let options = wall.options.iter().map(|option| Some(&option.id));
            for option in options.chain([None]) {
                let plan = solve(&job, &wall.id, option);
                let look = canvas::shown(&plan, rect, &ViewState::default()).look();
                for item in elevation(&job, &plan, &look).items {
                    if let ItemKind::Text { text, height_mm, weight, .. } = item.kind {
                        labels.push(Label { text, height_mm, weight });
                    }
                }
            }
        }
    }
    assert!(jobs >= 6, "{jobs} demo jobs");
    labels
}

/// An empty window with the fonts of the real one, so many pixels to a point.
fn window(pixels_per_point: f32) -> Harness<'static> {
    let builder = Harness::builder().with_pixels_per_point(pixels_per_point);
    let window = builder.with_context_setup(theme::install).build_ui(|_| {});
    assert_eq!(window.ctx.pixels_per_point(), pixels_per_point);
    window
}

/// How wide the toolkit sets a text on one line, in points.
fn toolkit_width(context: &Context, text: &str, size: f32, weight: Weight) -> f64 {
    let galley = context
        .fonts_mut(|fonts| fonts.layout_no_wrap(text.to_owned(), theme::font(size, weight), Color32::BLACK));
    assert_eq!(galley.rows.len(), 1, "{text}");
    f64::from(galley.rows.first().unwrap().size.x)
}

/// The toolkit rounds no glyph's advance to pixels or points, at whatever size and scale; only the width of a
/// whole line is rounded, to a 32nd of a point. Half of that, and a little for its numbers of single precision.
const ROUNDING_POINTS: f64 = 0.5 / 32.0 + 0.001;

#[test]
fn the_widths_of_all_labels_are_those_of_the_toolkit() {
    let labels = labels();
    let texts: BTreeSet<&str> = labels.iter().map(|label| label.text.as_str()).collect();
    assert!(labels.len() > 300 && texts.len() > 50, "{} labels, {} texts", labels.len(), texts.len());
    // Words are kerned, figures are not.
    assert!(texts.iter().filter(|text| text.chars().any(char::is_alphabetic)).count() > 20, "{texts:?}");
    for pixels_per_point in [1.0, 1.5, 2.0] {
        let window = window(pixels_per_point);
        for label in &labels {
            // As the canvas has it, and as larger or smaller texts would.
            for times in [0.7, 1.0, 1.31, 2.5] {
                let height_mm = label.height_mm * times;
                let size = (height_mm * POINTS_PER_PAPER_MM) as f32;
                let ours = text_width_mm(&label.text, height_mm, label.weight) * POINTS_PER_PAPER_MM;
                let theirs = toolkit_width(&window.ctx, &label.text, size, label.weight);
                let is_close = (ours - theirs).abs() <= (0.01 * theirs).min(ROUNDING_POINTS);
                assert!(
                    is_close,
                    "{label:?} at {size} points, {pixels_per_point} pixels to a point: {ours}, not {theirs}"
                );
            }
        }
    }
}

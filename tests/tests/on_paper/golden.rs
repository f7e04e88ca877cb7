//! One page as SVG, kept as text: the middle tile of a template. What a text says stands in its label; the outlines of
//! its letters, which a change of the page does not touch, are left out.

use super::{demo, drawn};
use expect_test::expect_file;
use std::path::Path;
use strikeline_drawing::sheet::{PaperSize, SheetKind};
use strikeline_drawing::svg::svg;

/// The text of an SVG file without the outlines of its letters.
fn without_outlines(svg: &str) -> String {
    let mut parts = svg.split(" d=\"");
    let mut kept = parts.next().unwrap_or_default().to_owned();
    for part in parts {
        kept.push_str(part.split_once('"').map_or(part, |(_, after)| after));
    }
    kept
}

#[test]
fn the_middle_tile_of_a_template_is_drawn_as_before() {
    let document = drawn(&demo("garden_kitchen"), &[SheetKind::Template], PaperSize::A4);
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/on_paper");
    expect_file![folder.join("garden_kitchen.tile.svg")]
        .assert_eq(&without_outlines(&svg(&document.pages[2].scene)));
}

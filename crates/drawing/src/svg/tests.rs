use super::*;
use crate::elevation::elevation;
use crate::look::Look;
use crate::sample;
use crate::sheet::{About, PaperSize, SheetKind, document};

fn sample_svg() -> String {
    let (job, plan) = sample::inches();
    let about = About { file: "room.ron", date: "2026-03-14" };
    let document = document(&job, &[&plan], &[SheetKind::Elevation], PaperSize::Letter, about).unwrap();
    svg(&document.pages[0].scene)
}

/// The names of tags still open at the end, after checking that each closing tag closes the last opened, that
/// every attribute is quoted, and that no bare `<` or `&` stands in a text or value.
fn check_well_formed(text: &str) -> Vec<String> {
    let body =
        text.strip_prefix("<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n").expect("the declaration leads");
    let mut open = Vec::new();
    for (index, piece) in body.split('<').enumerate() {
        let entity =
            |rest: &str| ["amp;", "lt;", "gt;", "quot;", "apos;"].iter().any(|name| rest.starts_with(name));
        assert!(piece.split('&').skip(1).all(entity), "a bare ampersand in {piece:?}");
        if index == 0 {
            assert_eq!(piece, "");
            continue;
        }
        let (tag, content) = piece.split_once('>').expect("a tag ends");
        assert!(!content.contains('>'), "a bare > in {content:?}");
        if let Some(name) = tag.strip_prefix('/') {
            assert_eq!(open.pop().as_deref(), Some(name));
            continue;
        }
        assert_eq!(tag.matches('"').count() % 2, 0, "quotes close in {tag:?}");
        let name = tag.split(' ').next().unwrap().trim_end_matches('/');
        if !tag.ends_with('/') {
            open.push(name.to_owned());
        }
    }
    open
}

#[test]
fn the_text_is_well_formed() {
    assert_eq!(check_well_formed(&sample_svg()), Vec::<String>::new());
}

#[test]
fn names_are_escaped() {
    let text = sample_svg();
    assert!(text.contains("Living room &lt;b&gt;&amp;&quot;"));
    assert!(!text.contains("<b>"));
    assert_eq!(escaped("a\u{0}\u{1b}\tb\u{FFFF}'"), "ab&apos;");
}

#[test]
fn numbers_are_fixed_and_never_minus_zero() {
    assert_eq!(number(-0.0001), "0.000");
    assert_eq!(number(-0.0), "0.000");
    assert_eq!(number(1.23456), "1.235");
    assert_eq!(number(f64::NAN), "0.000");
    let text = sample_svg();
    assert!(!text.contains("-0.000") && !text.contains("NaN") && !text.contains("inf"));
}

#[test]
fn the_same_scene_gives_the_same_text() {
    assert_eq!(sample_svg(), sample_svg());
}

#[test]
fn the_paper_is_sized_in_millimetres() {
    // Letter, 11 x 8 1/2 in.
    assert!(
        sample_svg().contains("width=\"279.400mm\" height=\"215.900mm\" viewBox=\"0 0 279.400 215.900\"")
    );
}

#[test]
fn items_bear_their_subject() {
    let (job, plan) = sample::inches();
    let text = svg(&elevation(&job, &plan, &Look::whole_wall(&plan, 0.05)));
    for subject in ["display-1.hole-3", "display-1.centre_line", "window-1", "wall-1.floor"] {
        assert!(text.contains(&format!("data-subject=\"{subject}\"")), "{subject}");
    }
}

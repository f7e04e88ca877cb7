//! A scene as SVG: black graphite on white paper, in millimetres, the same text for the same scene.

mod outline;

use crate::font::{FAMILY, Weight, text_width_mm};
use crate::palette::{self, Paint};
use crate::paper::PaperPoint;
use crate::scene::{Anchor, Item, ItemKind, Scene, Turn};
use std::fmt::Write;

/// The text of an SVG file, sized in millimetres. Texts are drawn as outlines, so that they look and measure
/// alike everywhere; what they say stands in `aria-label`. A text in a script that the bundled face lacks is
/// set in the reader's own sans-serif.
#[must_use]
pub fn svg(scene: &Scene) -> String {
    let (width, height) = (number(scene.width_mm), number(scene.height_mm));
    let mut out = format!(
        "<?xml version=\"1.0\" encoding=\"UTF-8\"?>\n\
         <svg xmlns=\"http://www.w3.org/2000/svg\" width=\"{width}mm\" height=\"{height}mm\" \
         viewBox=\"0 0 {width} {height}\" font-family=\"'{FAMILY}', sans-serif\" stroke-linecap=\"round\" \
         stroke-linejoin=\"round\">\n\
         <rect width=\"{width}\" height=\"{height}\" fill=\"{}\"/>\n",
        palette::PAPER,
    );
    for item in &scene.items {
        write_item(&mut out, item);
    }
    out.push_str("</svg>\n");
    out
}

fn write_item(out: &mut String, item: &Item) {
    let paint = palette::paint(item);
    match &item.kind {
        ItemKind::Line { from, to } => {
            let (x1, y1, x2, y2) = (number(from.x_mm), number(from.y_mm), number(to.x_mm), number(to.y_mm));
            put(out, &format!("<line x1=\"{x1}\" y1=\"{y1}\" x2=\"{x2}\" y2=\"{y2}\""));
            stroke(out, item, &paint);
        }
        ItemKind::Polyline { points } => {
            put(out, &format!("<polyline points=\"{}\" fill=\"none\"", list(points)));
            stroke(out, item, &paint);
        }
        ItemKind::Polygon { points, filled, outlined } => {
            put(out, &format!("<polygon points=\"{}\"", list(points)));
            fill(out, *filled, &paint);
            if *outlined {
                stroke(out, item, &paint);
            }
        }
        ItemKind::Circle { centre, radius_mm, filled } => {
            let (x, y, r) = (number(centre.x_mm), number(centre.y_mm), number(radius_mm.max(0.0)));
            put(out, &format!("<circle cx=\"{x}\" cy=\"{y}\" r=\"{r}\""));
            fill(out, *filled, &paint);
            stroke(out, item, &paint);
        }
        ItemKind::Text { at, text, height_mm, anchor, turn, weight } => {
            let (x, y) = (number(at.x_mm), number(at.y_mm));
            let turned = if *turn == Turn::Up { " rotate(-90)" } else { "" };
            if let Some(data) = outline::path(text, *height_mm, *weight) {
                let width_mm = text_width_mm(text, *height_mm, *weight);
                let back = match anchor {
                    Anchor::Start => 0.0,
                    Anchor::Middle => width_mm / 2.0,
                    Anchor::End => width_mm,
                };
                put(
                    out,
                    &format!("<path role=\"img\" aria-label=\"{}\" fill=\"{}\"", escaped(text), paint.stroke),
                );
                put(
                    out,
                    &format!(" transform=\"translate({x} {y}){turned} translate({} 0)\"", number(-back)),
                );
                put(out, &format!(" d=\"{data}\""));
                subject(out, item);
                put(out, "/>\n");
                return;
            }
            put(out, &format!("<text x=\"{x}\" y=\"{y}\" font-size=\"{}\"", number(*height_mm)));
            put(out, &format!(" fill=\"{}\"", paint.stroke));
            match anchor {
                Anchor::Start => {}
                Anchor::Middle => put(out, " text-anchor=\"middle\""),
                Anchor::End => put(out, " text-anchor=\"end\""),
            }
            if *turn == Turn::Up {
                put(out, &format!(" transform=\"rotate(-90 {x} {y})\""));
            }
            if *weight == Weight::Semibold {
                put(out, " font-weight=\"600\"");
            }
            // Spaces count: a unit keeps its distance from its figure.
            subject(out, item);
            put(out, &format!(" xml:space=\"preserve\">{}</text>\n", escaped(text)));
            return;
        }
    }
    subject(out, item);
    put(out, "/>\n");
}

fn subject(out: &mut String, item: &Item) {
    if let Some(subject) = &item.subject {
        put(out, &format!(" data-subject=\"{}\"", escaped(&subject.to_string())));
    }
}

fn fill(out: &mut String, filled: bool, paint: &Paint) {
    let fill = if filled { paint.fill.to_string() } else { "none".to_owned() };
    put(out, &format!(" fill=\"{fill}\""));
}

fn stroke(out: &mut String, item: &Item, paint: &Paint) {
    put(out, &format!(" stroke=\"{}\" stroke-width=\"{}\"", paint.stroke, number(item.width_mm)));
    let dashes = item.pattern().dashes_mm();
    if !dashes.is_empty() {
        let dashes: Vec<String> = dashes.iter().map(|&mm| number(mm)).collect();
        // Round ends would close the gaps.
        put(out, &format!(" stroke-dasharray=\"{}\" stroke-linecap=\"butt\"", dashes.join(" ")));
    }
}

fn put(out: &mut String, text: &str) {
    out.push_str(text);
}

/// Millimetres with three decimals: a micrometre, past any plotter. There is no `-0` and nothing infinite.
fn number(mm: f64) -> String {
    let mm = if mm.is_finite() { mm } else { 0.0 };
    let text = format!("{mm:.3}");
    if text == "-0.000" { "0.000".to_owned() } else { text }
}

fn list(points: &[PaperPoint]) -> String {
    let mut out = String::new();
    for (index, point) in points.iter().enumerate() {
        let space = if index == 0 { "" } else { " " };
        // Writing to a String cannot fail.
        let _ = write!(out, "{space}{},{}", number(point.x_mm), number(point.y_mm));
    }
    out
}

/// A text as XML has it. Control characters, which XML 1.0 cannot hold, are left out.
fn escaped(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for character in text.chars() {
        match character {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            '\'' => out.push_str("&apos;"),
            '\u{FFFE}' | '\u{FFFF}' => {}
            character if character.is_control() => {}
            character => out.push(character),
        }
    }
    out
}

#[cfg(test)]
mod tests;

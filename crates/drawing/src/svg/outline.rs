//! A text as the outlines of its glyphs: it looks and measures alike wherever the file is opened, whatever
//! fonts are there. A text with a character that the bundled face lacks has none.

use super::number;
use crate::font::{self, Weight};
use std::fmt::Write;
use ttf_parser::OutlineBuilder;

/// The outlines of a text on one line as SVG path data, in millimetres, from the start of its base line.
/// `None` where the face lacks a character.
pub(super) fn path(text: &str, height_mm: f64, weight: Weight) -> Option<String> {
    if !text.chars().all(|character| font::has_glyph(character, weight)) {
        return None;
    }
    let setter = font::setter(weight)?;
    let scale = height_mm / f64::from(setter.face.units_per_em());
    let mut pen = Pen { data: String::new(), scale, right_mm: 0.0 };
    for set in setter.set(text).glyphs {
        pen.right_mm = f64::from(set.right_units) * scale;
        // A space has an advance and no outline.
        let _ = setter.face.outline_glyph(set.glyph, &mut pen);
    }
    Some(pen.data)
}

/// Writes path data; the font's y runs up, the paper's down.
struct Pen {
    data: String,
    scale: f64,
    right_mm: f64,
}

impl Pen {
    fn put(&mut self, command: &str, points: &[(f32, f32)]) {
        self.data.push_str(command);
        for (index, (x, y)) in points.iter().enumerate() {
            let space = if index == 0 { "" } else { " " };
            let (x, y) = (self.right_mm + f64::from(*x) * self.scale, -f64::from(*y) * self.scale);
            // Writing to a String cannot fail.
            let _ = write!(self.data, "{space}{} {}", number(x), number(y));
        }
    }
}

impl OutlineBuilder for Pen {
    fn move_to(&mut self, x: f32, y: f32) {
        self.put("M", &[(x, y)]);
    }
    fn line_to(&mut self, x: f32, y: f32) {
        self.put("L", &[(x, y)]);
    }
    fn quad_to(&mut self, x1: f32, y1: f32, x: f32, y: f32) {
        self.put("Q", &[(x1, y1), (x, y)]);
    }
    fn curve_to(&mut self, x1: f32, y1: f32, x2: f32, y2: f32, x: f32, y: f32) {
        self.put("C", &[(x1, y1), (x2, y2), (x, y)]);
    }
    fn close(&mut self) {
        self.data.push('Z');
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// How far left and right outlines reach, in millimetres.
    fn reach(data: &str) -> (f64, f64) {
        let numbers =
            data.split(|c: char| c.is_ascii_alphabetic() || c == ' ').filter_map(|n| n.parse().ok());
        let xs = numbers.step_by(2).collect::<Vec<f64>>();
        (xs.iter().copied().fold(f64::MAX, f64::min), xs.iter().copied().fold(f64::MIN, f64::max))
    }

    #[test]
    fn kerned_letters_are_drawn_where_their_width_has_them() {
        let width = |text: &str| font::text_width_mm(text, 10.0, Weight::Semibold);
        let (_, alone) = reach(&path("o", 10.0, Weight::Semibold).unwrap());
        let (_, together) = reach(&path("To", 10.0, Weight::Semibold).unwrap());
        assert!((together - alone - (width("To") - width("o"))).abs() < 0.002, "{together}");
        assert!(together - alone < width("T") - 0.1, "o stands under the T's arm");
    }

    #[test]
    fn the_outlines_of_a_figure_lie_where_the_figure_is_set() {
        let one = path("1", 10.0, Weight::Regular).unwrap();
        let second = path("11", 10.0, Weight::Regular).unwrap();
        assert!(one.starts_with('M') && one.ends_with('Z'));
        assert!(second.starts_with(&one), "the first stays where it was");
        let numbers = |data: &str| -> Vec<f64> {
            data.split(|c: char| c.is_ascii_alphabetic() || c == ' ').filter_map(|n| n.parse().ok()).collect()
        };
        let xs: Vec<f64> = numbers(&one).into_iter().step_by(2).collect();
        let ys: Vec<f64> = numbers(&one).into_iter().skip(1).step_by(2).collect();
        let width = font::text_width_mm("1", 10.0, Weight::Regular);
        assert!(xs.iter().all(|x| (0.0..=width).contains(x)));
        // A figure stands on the base line and is about as high as a capital.
        assert!(ys.iter().all(|y| (-font::CAPITALS * 10.0 - 0.3..=0.3).contains(y)));
    }

    #[test]
    fn a_space_only_moves_on_and_an_unknown_character_has_no_outline() {
        assert_eq!(path(" ", 10.0, Weight::Regular).as_deref(), Some(""));
        assert_eq!(path("\u{10FFFF}", 10.0, Weight::Regular), None);
    }
}

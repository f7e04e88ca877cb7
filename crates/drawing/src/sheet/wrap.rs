//! Texts broken into lines that fit, by the widths of the bundled face.

use crate::font::{Weight, text_width_mm};
use strikeline_solver::words::{KEPT, unbroken};

/// A text in lines no wider than there is room, broken at spaces, never between a figure and its fraction or unit. A
/// word wider than a line is broken where the line ends.
pub(crate) fn wrapped(text: &str, room_mm: f64, height_mm: f64, weight: Weight) -> Vec<String> {
    let width = |text: &str| text_width_mm(text, height_mm, weight);
    let space = width(" ");
    let (mut lines, mut line, mut used) = (Vec::new(), String::new(), 0.0);
    for word in unbroken(text) {
        let word = word.replace(KEPT, " ");
        let wide = width(&word);
        if !line.is_empty() && used + space + wide > room_mm {
            lines.push(std::mem::take(&mut line));
            used = 0.0;
        }
        if !line.is_empty() {
            line.push(' ');
            used += space;
        }
        if wide <= room_mm {
            line.push_str(&word);
            used += wide;
            continue;
        }
        for letter in word.chars() {
            let wide = width(letter.encode_utf8(&mut [0; 4]));
            if used + wide > room_mm && !line.is_empty() {
                lines.push(std::mem::take(&mut line));
                used = 0.0;
            }
            line.push(letter);
            used += wide;
        }
    }
    if !line.is_empty() {
        lines.push(line);
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(text: &str, room_mm: f64) -> Vec<String> {
        wrapped(text, room_mm, 3.8, Weight::Regular)
    }

    #[test]
    fn every_line_fits_and_no_word_is_lost() {
        let text = "From the left corner read right 24 1/4\" (closes: 75 3/4\" to Garden door's left trim). "
            .repeat(9);
        for room in [30.0, 61.0, 124.0] {
            let lines = lines(&text, room);
            assert!(lines.len() > 3);
            for line in &lines {
                assert!(text_width_mm(line, 3.8, Weight::Regular) <= room + 0.05, "{line}");
                assert!(!line.ends_with("24") && !line.starts_with("1/4"), "{line}");
            }
            assert_eq!(lines.join(" "), text.trim());
        }
    }

    #[test]
    fn a_word_wider_than_a_line_is_broken_and_whole() {
        let word = "Wohnzimmerwandabschlussleiste".repeat(8);
        let broken = lines(&word, 40.0);
        assert!(broken.len() > 5 && broken.concat() == word);
        assert!(broken.iter().all(|line| text_width_mm(line, 3.8, Weight::Regular) <= 40.05));
        assert!(lines("", 40.0).is_empty());
    }
}

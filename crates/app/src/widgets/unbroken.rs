//! Text in which no figure is torn from its fraction or its unit at the end of a line.

/// A space that no line ends at.
const KEPT: char = '\u{a0}';

/// The text with such spaces between a figure and its fraction (`3 1/4"`), and a figure and its unit (`976 mm`).
#[must_use]
pub fn unbroken(text: &str) -> String {
    let mut kept = String::with_capacity(text.len());
    let mut words = text.split(' ').peekable();
    while let Some(word) = words.next() {
        kept.push_str(word);
        if let Some(next) = words.peek() {
            let is_figure =
                word.trim_start_matches(['-', '+', '(']).chars().all(|c| c.is_ascii_digit() || c == '.')
                    && word.ends_with(|c: char| c.is_ascii_digit());
            let is_fraction = next.starts_with(|c: char| c.is_ascii_digit()) && next.contains('/');
            let unit = next.trim_end_matches(|c: char| !c.is_alphanumeric());
            let is_unit = matches!(unit, "mm" | "cm" | "m" | "in" | "ft" | "kg" | "lb" | "N" | "lbf" | "deg");
            kept.push(if is_figure && (is_fraction || is_unit) { KEPT } else { ' ' });
        }
    }
    kept
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_stay_whole() {
        let shown = |text: &str| unbroken(text).replace(KEPT, "_");
        assert_eq!(
            shown("read up 3 1/4\" (closes: 60 9/16\" to it)"),
            "read up 3_1/4\" (closes: 60_9/16\" to it)"
        );
        assert_eq!(shown("read up 976 mm, remainder +0.2 mm."), "read up 976_mm, remainder +0.2_mm.");
        assert_eq!(shown("hole 3 in a stud"), "hole 3_in a stud", "harmless");
        assert_eq!(shown("two studs  and more "), "two studs  and more ");
        assert_eq!(shown(""), "");
    }
}

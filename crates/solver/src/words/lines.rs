//! Text for a terminal: lines broken at spaces, never between a figure and its fraction or unit.

/// The widest line of text (chosen: it fits any terminal).
pub(super) const WIDEST: usize = 100;

/// Text written line by line, broken at spaces.
#[derive(Default)]
pub(super) struct Text {
    pub(super) written: String,
}

impl Text {
    pub(super) fn gap(&mut self) {
        self.written.push('\n');
    }

    pub(super) fn heading(&mut self, words: &str) {
        self.gap();
        self.line(0, words);
    }

    pub(super) fn lines(&mut self, indent: usize, words: Option<String>) {
        if let Some(words) = words {
            self.line(indent, &words);
        }
    }

    /// Words behind a lead such as `a = `, which stands at the indent; what does not fit goes on below the first word.
    pub(super) fn hung(&mut self, indent: usize, lead: &str, words: &str) {
        let deep = indent + lead.chars().count();
        let from = self.written.len();
        self.line(deep, words);
        let padding = " ".repeat(indent);
        self.written.replace_range(from..from + deep, &format!("{padding}{lead}"));
    }

    /// Words broken into lines, each indented; a word longer than a line is broken where the line ends.
    pub(super) fn line(&mut self, indent: usize, words: &str) {
        let lead = " ".repeat(indent);
        let room = WIDEST - indent;
        let mut width = 0;
        for word in unbroken(words) {
            let long = word.chars().count();
            if width > 0 && width + 1 + long > room {
                self.gap();
                width = 0;
            }
            if width == 0 {
                self.written.push_str(&lead);
            } else {
                self.written.push(' ');
                width += 1;
            }
            for letter in word.chars().map(|letter| if letter == KEPT { ' ' } else { letter }) {
                if width == room {
                    self.gap();
                    self.written.push_str(&lead);
                    width = 0;
                }
                self.written.push(letter);
                width += 1;
            }
        }
        self.gap();
    }
}

/// A space that no line ends at.
pub const KEPT: char = '\u{a0}';

/// The words of a text, a number with its fraction or unit as one: 52 at a line's end is not 52 1/4.
#[must_use]
pub fn unbroken(words: &str) -> Vec<String> {
    let mut whole: Vec<String> = Vec::new();
    for word in words.split(|c: char| c.is_whitespace() && c != KEPT).filter(|word| !word.is_empty()) {
        let follows = word.starts_with(|c: char| c.is_ascii_digit()) && word.contains('/')
            || ["mm", "kg", "lb"].iter().any(|unit| word.starts_with(unit));
        match whole.last_mut().filter(|last| follows && last.ends_with(|c: char| c.is_ascii_digit())) {
            Some(last) => {
                last.push(' ');
                last.push_str(word);
            }
            None => whole.push(word.to_owned()),
        }
    }
    whole
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_does_not_fit_goes_on_below_the_first_word() {
        let mut text = Text::default();
        text.hung(2, "ab = ", &"word ".repeat(25));
        let lines: Vec<&str> = text.written.lines().collect();
        assert!(lines[0].starts_with("  ab = word word") && lines[0].len() <= WIDEST, "{lines:?}");
        assert!(lines[1].starts_with("       word"), "{lines:?}");
        assert_eq!(text.written.matches("word").count(), 25);
    }
}

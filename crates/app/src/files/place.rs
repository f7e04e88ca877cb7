//! Where things stand in the text of a job, for what is only seen once all of it was read.

use std::fmt;
use std::iter::Peekable;
use std::str::Chars;

/// A place in a text, both counted from 1.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Place {
    pub(super) line: usize,
    pub(super) column: usize,
}

impl Place {
    /// Where a text begins.
    pub(super) const START: Self = Self { line: 1, column: 1 };
}

impl fmt::Display for Place {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "line {}, column {}", self.line, self.column)
    }
}

/// Where entries have this id, in the order of the file.
pub(super) fn of_id(text: &str, id: &str) -> Vec<Place> {
    let values = values_of(text, "id");
    values.filter_map(|(place, piece)| (piece == Piece::Text(id.to_owned())).then_some(place)).collect()
}

/// Where the number of the format stands; where there is none, where the job begins.
pub(super) fn of_format(text: &str) -> Place {
    let number = values_of(text, "format").next();
    let number = number.or_else(|| Pieces::of(text).find(|(_, piece)| *piece == Piece::Sign('(')));
    number.map_or(Place::START, |(place, _)| place)
}

/// Where the value of this field first stands; where there is none, where the text begins.
pub(super) fn of_field(text: &str, field: &str) -> Place {
    values_of(text, field).next().map_or(Place::START, |(place, _)| place)
}

/// What a text begins with that is none of the program's: they all begin with a bracket, a word before one or an
/// extension.
pub(super) fn foreign(text: &str) -> Option<String> {
    let mut pieces = Pieces::of(text).map(|(_, piece)| piece);
    match (pieces.next()?, pieces.next()) {
        (Piece::Sign('(' | '#'), _) | (Piece::Word(_), Some(Piece::Sign('('))) => None,
        (Piece::Word(begins) | Piece::Text(begins), _) => Some(begins),
        (Piece::Sign(sign), _) => Some(sign.to_string()),
    }
}

/// The first piece of each value of this field.
fn values_of<'t>(text: &'t str, field: &'t str) -> impl Iterator<Item = (Place, Piece)> + 't {
    let followers = Pieces::of(text).skip(1).zip(Pieces::of(text).skip(2));
    Pieces::of(text).zip(followers).filter_map(move |((_, name), ((_, colon), value))| {
        (name == Piece::Word(field.to_owned()) && colon == Piece::Sign(':')).then_some(value)
    })
}

/// A piece of a job's text that is neither a gap nor a comment.
#[derive(Debug, PartialEq)]
enum Piece {
    /// A name or a number.
    Word(String),
    /// What stands between quotes.
    Text(String),
    /// Any other sign.
    Sign(char),
}

/// The pieces of a text, each with its place.
struct Pieces<'t> {
    rest: Peekable<Chars<'t>>,
    place: Place,
}

fn is_of_word(sign: char) -> bool {
    sign.is_alphanumeric() || sign == '_'
}

impl<'t> Pieces<'t> {
    fn of(text: &'t str) -> Self {
        Self { rest: text.chars().peekable(), place: Place::START }
    }

    fn step(&mut self) -> Option<char> {
        let sign = self.rest.next()?;
        if sign == '\n' {
            self.place = Place { line: self.place.line + 1, column: 1 };
        } else {
            self.place.column += 1;
        }
        Some(sign)
    }

    fn step_over(&mut self, sign: char) -> bool {
        self.rest.peek() == Some(&sign) && self.step().is_some()
    }

    /// Comments between `/*` and `*/` may hold others.
    fn leave_comment(&mut self) {
        let mut depth = 1_usize;
        while depth > 0 {
            match self.step() {
                Some('/') if self.step_over('*') => depth += 1,
                Some('*') if self.step_over('/') => depth -= 1,
                Some(_) => {}
                None => return,
            }
        }
    }

    /// The text up to its closing quote; what is escaped is left out, since no id holds any.
    fn quoted(&mut self) -> String {
        let mut text = String::new();
        while let Some(sign) = self.step() {
            match sign {
                '"' => break,
                '\\' => {
                    self.step();
                }
                _ => text.push(sign),
            }
        }
        text
    }

    /// The rest of a raw text, `r#"..."#`, after its `r`; `None` where it is none.
    fn raw(&mut self) -> Option<String> {
        let mut fence = 0_usize;
        while self.step_over('#') {
            fence += 1;
        }
        if !self.step_over('"') {
            return None;
        }
        let mut text = String::new();
        while let Some(sign) = self.step() {
            if sign != '"' {
                text.push(sign);
            } else if (0..fence).all(|_| self.step_over('#')) {
                break;
            }
        }
        Some(text)
    }
}

impl Iterator for Pieces<'_> {
    type Item = (Place, Piece);

    fn next(&mut self) -> Option<Self::Item> {
        loop {
            let place = self.place;
            let piece = match self.step()? {
                gap if gap.is_whitespace() => continue,
                '/' if self.step_over('/') => {
                    while self.step().is_some_and(|sign| sign != '\n') {}
                    continue;
                }
                '/' if self.step_over('*') => {
                    self.leave_comment();
                    continue;
                }
                '"' => Piece::Text(self.quoted()),
                'r' if matches!(self.rest.peek(), Some('"' | '#')) => match self.raw() {
                    Some(text) => Piece::Text(text),
                    // A raw name, `r#id`: the name itself comes next.
                    None => continue,
                },
                first if is_of_word(first) => {
                    let mut word = String::from(first);
                    while self.rest.peek().copied().is_some_and(is_of_word) {
                        word.extend(self.step());
                    }
                    Piece::Word(word)
                }
                sign => Piece::Sign(sign),
            };
            return Some((place, piece));
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn at(line: usize, column: usize) -> Place {
        Place { line, column }
    }

    #[test]
    fn ids_are_found_however_they_are_spaced() {
        let text = "(walls: [(id: \"a\"), (id:\"a\"),\n  (id\n:\t\"a\", name: \"b\")])";
        assert_eq!(of_id(text, "a"), [at(1, 15), at(1, 25), at(3, 3)]);
        assert_eq!(of_id(text, "b"), []);
    }

    #[test]
    fn texts_and_comments_are_no_ids() {
        for text in [
            "(notes: \"id: \\\"a\\\"\", last_id: \"a\")",
            "// (id: \"a\")\n(id: \"b\")",
            "/* (id: \"a\") /* */ (id: \"a\") */ (id: \"b\")",
            "(notes: r#\"say \" (id: \"a\")\"#)",
        ] {
            assert_eq!(of_id(text, "a"), [], "{text}");
        }
        assert_eq!(of_id("(notes: r#\"é \" \"#, r#id: r\"a\")", "a"), [at(1, 26)]);
    }

    #[test]
    fn the_format_is_found_where_it_stands() {
        assert_eq!(of_format("// format: 9 (\n(title: \"format: 8\",\n format: 0)"), at(3, 10));
        assert_eq!(of_format("// none (\n  (title: \"x\")"), at(2, 3));
        assert_eq!(of_format("none"), Place::START);
    }
}

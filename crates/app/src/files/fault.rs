//! What is wrong with a text that should hold a job or the like, in the words of who reads the file, not of the
//! reader's own types.

use super::place::Place;

/// The longest word on what is wrong, in characters: it may quote a value as large as the file (chosen; the
/// longest list of expected fields is half of it).
const LONGEST: usize = 800;

/// The most that is quoted of what a file begins with, in characters.
const BEGINS: usize = 24;

/// Why a text is not what was asked for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Fault {
    /// It has a newer format.
    Newer {
        /// Which.
        found: u64,
    },
    /// It is something else from its beginning on.
    Foreign {
        /// What is wrong and what was expected.
        what: String,
    },
    /// Something in it is wrong.
    Malformed {
        /// Where.
        place: Place,
        /// What is wrong and what was expected.
        what: String,
    },
}

/// A text that begins as none of the program's files does; `noun` is what it should hold, such as `job`.
pub(super) fn foreign(begins: &str, noun: &str, format: u32) -> Fault {
    let mut quoted: String = begins.chars().filter(|c| !c.is_control()).take(BEGINS).collect();
    if begins.chars().count() > BEGINS {
        quoted.push_str("...");
    }
    let what = format!("it begins with `{quoted}`, and a {noun} begins with (format: {format},");
    Fault::Foreign { what }
}

/// What is wrong and what was expected.
pub(super) fn told(error: &ron::Error, noun: &str) -> String {
    use ron::Error;
    // After what is wrong the reader lists what may stand there.
    let instead = || {
        let said = error.to_string();
        let tail = said.split_once(", expected").or_else(|| said.split_once(", there are no"));
        tail.map_or_else(String::new, |(_, tail)| format!(", expected{tail}"))
    };
    let said = match error {
        Error::Eof => "the file ends here, before its last bracket is closed".to_owned(),
        Error::TrailingCharacters => format!("the {noun} ended before this: nothing may follow it"),
        Error::MissingStructField { field, outer } => {
            let of = outer.as_ref().map(|outer| format!(" of `{outer}`")).unwrap_or_default();
            format!("the field `{field}`{of} is missing: write {field}: and its value before this")
        }
        Error::DuplicateStructField { field, .. } => {
            format!("the field `{field}` stands twice between these brackets: take one away")
        }
        Error::NoSuchStructField { found, .. } => format!("there is no field `{found}` here{}", instead()),
        Error::NoSuchEnumVariant { found, .. } => format!("`{found}` is not known here{}", instead()),
        Error::ExpectedDifferentStructName { found, .. } => {
            format!("`{found}` stands where only a bracket with fields may: take it away, or write ( there")
        }
        Error::ExpectedStructLike | Error::ExpectedNamedStructLike(_) => {
            "fields in brackets are expected here: write ( before the first and ) after the last".to_owned()
        }
        Error::ExpectedOptionEnd | Error::ExpectedStructLikeEnd => {
            "a closing ) or a comma is expected here".to_owned()
        }
        Error::ExpectedArray => "a list is expected here: write [ and ] round its entries".to_owned(),
        Error::ExpectedArrayEnd => "a closing ] or a comma is expected here".to_owned(),
        Error::ExpectedMapColon => "a colon is expected here, between a field and its value".to_owned(),
        Error::ExpectedComma => "a comma is expected here".to_owned(),
        Error::ExpectedString => "a text is expected here: write it in quotes, \"so\"".to_owned(),
        Error::ExpectedStringEnd => "the text that begins here has no closing quote".to_owned(),
        Error::ExpectedBoolean => "true or false is expected here".to_owned(),
        Error::ExpectedInteger => "a whole number is expected here".to_owned(),
        Error::ExpectedFloat => "a number is expected here".to_owned(),
        Error::IntegerOutOfBounds => "this number is larger than any that may stand here".to_owned(),
        Error::ExpectedIdentifier => "the name of a field is expected here".to_owned(),
        Error::UnexpectedChar(sign) => format!("`{sign}` cannot stand here"),
        Error::UnclosedBlockComment => "the comment that begins with /* is never closed by */".to_owned(),
        Error::ExceededRecursionLimit => {
            format!("brackets stand deeper within one another than in any {noun}")
        }
        Error::InvalidValueForType { expected, found } => {
            let expected = if expected.starts_with("struct ") { "fields in brackets" } else { expected };
            format!("expected {expected}, not {found}")
        }
        other => other.to_string(),
    };
    shortened(&said)
}

/// Both ends of what is too long: it begins with the value and ends with what is wrong with it.
fn shortened(what: &str) -> String {
    let length = what.chars().count();
    if length <= LONGEST {
        return what.to_owned();
    }
    let head: String = what.chars().take(LONGEST / 4).collect();
    let tail: String = what.chars().skip(length - LONGEST / 2).collect();
    format!("{head} ... {tail}")
}

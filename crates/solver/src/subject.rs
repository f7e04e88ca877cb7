//! Which thing of the job something is about, and its text: `door-1`, `door-1.right`, `display-1.hole-3`.

use serde::{Deserialize, Deserializer, Serialize, Serializer};
use std::fmt;
use std::sync::Arc;

/// The word by which an entry of a list in a job is known: unique in the job and never reused.
///
/// Empty only between reading a file that lacks it and `job::ids` giving one.
#[derive(Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Id(Arc<str>);

/// The longest id read: enough for any word, short enough for any label (chosen).
const LONGEST_ID: usize = 40;

impl Id {
    /// An id from a word. What `read` would refuse is kept as it is: use it for words of the program's own.
    #[must_use]
    pub fn new(word: &str) -> Self {
        Self(Arc::from(word))
    }

    /// An id from a file: letters, digits, `-` and `_`, at most 40 of them, not empty.
    #[must_use]
    pub fn read(word: &str) -> Option<Self> {
        let well_formed = !word.is_empty()
            && word.chars().count() <= LONGEST_ID
            && word.chars().all(|c| c.is_alphanumeric() || c == '-' || c == '_');
        well_formed.then(|| Self::new(word))
    }

    /// The word.
    #[must_use]
    pub fn as_str(&self) -> &str {
        &self.0
    }

    /// Whether it still has to be given.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// A part of this thing.
    #[must_use]
    pub fn part(&self, part: &str) -> Subject {
        Subject { id: self.clone(), part: Some(Arc::from(part)) }
    }

    /// This thing as a whole.
    #[must_use]
    pub fn whole(&self) -> Subject {
        Subject { id: self.clone(), part: None }
    }
}

impl Default for Id {
    fn default() -> Self {
        Self::new("")
    }
}

impl fmt::Display for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&self.0)
    }
}

impl fmt::Debug for Id {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{:?}", &*self.0)
    }
}

impl Serialize for Id {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.0)
    }
}

impl<'de> Deserialize<'de> for Id {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let word = String::deserialize(deserializer)?;
        Self::read(&word).ok_or_else(|| {
            serde::de::Error::custom(format!(
                "\"{}\" cannot be an id: use letters, digits, - and _, at most {LONGEST_ID}, as in \"door-1\"",
                word.chars().take(LONGEST_ID).collect::<String>()
            ))
        })
    }
}

/// A thing of the job or a part of it, written `id` or `id.part`. A mark's id is one too.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Subject {
    /// The thing.
    pub id: Id,
    /// The part: an edge (`left`, `right`, `bottom`, `top`), a hole's id, or what a mark strikes.
    pub part: Option<Arc<str>>,
}

impl Subject {
    /// The part as text, empty for the whole thing.
    #[must_use]
    pub fn part_str(&self) -> &str {
        self.part.as_deref().unwrap_or("")
    }

    /// A subject from its text; the part is all after the first dot.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let (id, part) = match text.split_once('.') {
            Some((id, part)) if !part.is_empty() => (id, Some(Arc::from(part))),
            Some(_) => return None,
            None => (text, None),
        };
        Some(Self { id: Id::read(id)?, part })
    }
}

impl fmt::Display for Subject {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match &self.part {
            Some(part) => write!(f, "{}.{part}", self.id),
            None => write!(f, "{}", self.id),
        }
    }
}

impl Serialize for Subject {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.collect_str(self)
    }
}

impl<'de> Deserialize<'de> for Subject {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let text = String::deserialize(deserializer)?;
        Self::read(&text).ok_or_else(|| {
            serde::de::Error::custom(format!(
                "\"{}\" names nothing: write an id and a part, as in \"door-1.right\"",
                text.chars().take(80).collect::<String>()
            ))
        })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_subject_reads_back_as_written() {
        for text in ["door-1", "door-1.right", "display-1.hole-3.probe"] {
            assert_eq!(Subject::read(text).unwrap().to_string(), text);
        }
    }

    #[test]
    fn what_names_nothing_is_refused() {
        for text in ["", ".", "door-1.", "a b", "door/1.left"] {
            assert_eq!(Subject::read(text), None, "{text}");
        }
        assert_eq!(Id::read(&"x".repeat(41)), None);
    }
}

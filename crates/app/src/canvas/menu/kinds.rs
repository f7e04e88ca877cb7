//! What can be added at a place of the wall.

use crate::kinds::{FEATURES, HIDDEN, HITS};
use crate::moves::things::NewThing;
use strikeline_solver::words::capital;

/// A list of kinds that the menu opens.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Kinds {
    /// What is seen on the wall.
    Features,
    /// What is in the wall.
    Hidden,
    /// Readings of what is behind the face.
    Hits,
}

impl Kinds {
    /// All lists, in the menu's order.
    pub(super) const ALL: [Self; 3] = [Self::Features, Self::Hidden, Self::Hits];

    /// The entry that opens it.
    pub(super) fn words(self) -> &'static str {
        match self {
            Self::Features => "Add here, on the wall\u{2026}",
            Self::Hidden => "Add here, in the wall\u{2026}",
            Self::Hits => "Add a hit here\u{2026}",
        }
    }

    /// Its entries.
    pub(super) fn entries(self) -> Vec<(NewThing, String)> {
        match self {
            Self::Features => {
                FEATURES.iter().map(|(kind, words)| (NewThing::Feature(*kind), capital(words))).collect()
            }
            Self::Hidden => {
                HIDDEN.iter().map(|(kind, words)| (NewThing::Hidden(*kind), capital(words))).collect()
            }
            Self::Hits => HITS.iter().map(|(kind, words)| (NewThing::Hit(*kind), capital(words))).collect(),
        }
    }
}

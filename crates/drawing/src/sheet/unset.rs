//! Letters that the bundled typeface lacks, or that need a shaper: told before anything is drawn with empty boxes.

use super::Document;
use crate::font::{self, Weight};
use crate::scene::ItemKind;
use std::fmt;
use strikeline_solver::words::on_paper;

/// A text that cannot be set on paper.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unset {
    /// The text.
    pub text: String,
    /// The first of its letters that is not to be had.
    pub letter: char,
}

impl fmt::Display for Unset {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&on_paper::unset(&self.text, self.letter))
    }
}

impl std::error::Error for Unset {}

/// Looks for such a text.
pub(super) fn check(document: &Document) -> Result<(), Unset> {
    let items = document.pages.iter().flat_map(|page| &page.scene.items);
    for item in items {
        if let ItemKind::Text { text, weight, .. } = &item.kind
            && let Some(letter) = text.chars().find(|&letter| !can_be_set(letter, *weight))
        {
            return Err(Unset { text: text.clone(), letter });
        }
    }
    Ok(())
}

/// Whether a letter is set by its own glyph alone. An accent that is typed apart from its letter would stand beside it.
fn can_be_set(letter: char, weight: Weight) -> bool {
    let is_apart = matches!(u32::from(letter), 0x300..=0x36F);
    !is_apart && font::has_glyph(letter, weight)
}

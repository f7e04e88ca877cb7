//! What draws the sheet's own lines and texts: they are about no thing of the job.

use crate::font::Weight;
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::scene::{Anchor, Item, ItemKind, Lit, Turn};

/// Items put down one after the other.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Strokes {
    pub(crate) items: Vec<Item>,
}

/// How a text of the sheet looks.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Letters {
    /// Its em size.
    pub(crate) height_mm: f64,
    pub(crate) weight: Weight,
    pub(crate) ink: Ink,
}

impl Letters {
    pub(crate) const fn regular(height_mm: f64) -> Self {
        Self { height_mm, weight: Weight::Regular, ink: Ink::SheetText }
    }

    pub(crate) const fn semibold(height_mm: f64) -> Self {
        Self { height_mm, weight: Weight::Semibold, ink: Ink::SheetText }
    }

    /// The same in pencil: what is said beside the main thing.
    pub(crate) const fn quiet(self) -> Self {
        Self { ink: Ink::Label, ..self }
    }
}

impl Strokes {
    pub(crate) fn put(&mut self, ink: Ink, kind: ItemKind) {
        let width_mm = ink.width_mm();
        self.items.push(Item { ink, subject: None, kind, assumed: false, lit: Lit::No, width_mm });
    }

    pub(crate) fn line(&mut self, ink: Ink, from: PaperPoint, to: PaperPoint) {
        self.put(ink, ItemKind::Line { from, to });
    }

    pub(crate) fn rect(&mut self, ink: Ink, rect: PaperRect, filled: bool) {
        self.put(ink, ItemKind::Polygon { points: rect.corners().to_vec(), filled, outlined: true });
    }

    pub(crate) fn text(&mut self, at: PaperPoint, text: &str, letters: Letters, anchor: Anchor) {
        let Letters { height_mm, weight, ink } = letters;
        let turn = Turn::Level;
        self.put(ink, ItemKind::Text { at, text: text.to_owned(), height_mm, anchor, turn, weight });
    }

    /// Takes what others put down, moved.
    pub(crate) fn take(&mut self, items: Vec<Item>, right_mm: f64, down_mm: f64) {
        self.items.extend(items.into_iter().map(|item| item.moved(right_mm, down_mm)));
    }
}

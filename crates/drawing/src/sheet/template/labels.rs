//! Names on a tile: each at the first of its places where it lies on no other and no line runs through it.

use super::super::strokes::{Letters, Strokes};
use super::super::wrap::shortened;
use crate::clip;
use crate::font::{CAPITALS, text_width_mm};
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::scene::Anchor;

const NAME: Letters = Letters::regular(3.2);
const USED: Letters = Letters::semibold(3.2);
/// The widest a name may be: narrower than any paper. What is longer stands in full on the page of instructions.
const WIDEST_MM: f64 = 120.0;
/// Free round a name.
const CLEAR_MM: f64 = 0.6;

/// A name that asks for a place. Places are from the plate's own lines, as all of a template.
#[derive(Clone, Debug)]
pub(super) struct Label {
    text: String,
    letters: Letters,
    /// What it names is here: the name stands on the tiles that show it.
    near: PaperPoint,
    /// Where it may stand, the best first.
    places: Vec<(PaperPoint, Anchor)>,
}

impl Label {
    fn new(text: &str, letters: Letters, near: PaperPoint, places: Vec<(PaperPoint, Anchor)>) -> Self {
        let text = shortened(text, WIDEST_MM, letters.height_mm, letters.weight);
        Self { text, letters, near, places }
    }

    /// Along a line, at either of its ends.
    pub(super) fn along(text: &str, from: PaperPoint, to: PaperPoint) -> Self {
        let is_level = from.y_mm == to.y_mm;
        let places = if is_level {
            vec![
                (from.moved(2.0, -1.6), Anchor::Start),
                (from.moved(2.0, 4.0), Anchor::Start),
                (to.moved(-2.0, -1.6), Anchor::End),
                (to.moved(-2.0, 4.0), Anchor::End),
            ]
        } else {
            let ends = [from.moved(0.0, 4.0), to.moved(0.0, -2.0)];
            ends.into_iter()
                .flat_map(|end| [(end.moved(1.6, 0.0), Anchor::Start), (end.moved(-1.6, 0.0), Anchor::End)])
                .collect()
        };
        Self::new(text, NAME, from, places)
    }

    /// Beside a hole, past what is drawn of it.
    pub(super) fn beside(text: &str, middle: PaperPoint, reach_mm: f64, is_used: bool) -> Self {
        let capitals = NAME.height_mm * CAPITALS;
        let (out, up) = (reach_mm * 0.8, reach_mm * 0.7);
        let places = vec![
            (middle.moved(out, -up), Anchor::Start),
            (middle.moved(out, up + capitals), Anchor::Start),
            (middle.moved(-out, -up), Anchor::End),
            (middle.moved(-out, up + capitals), Anchor::End),
            (middle.moved(0.0, -reach_mm - 1.0), Anchor::Middle),
            (middle.moved(0.0, reach_mm + 1.0 + capitals), Anchor::Middle),
            (middle.moved(0.0, -reach_mm - 5.0), Anchor::Middle),
            (middle.moved(0.0, reach_mm + 5.0 + capitals), Anchor::Middle),
        ];
        Self::new(text, if is_used { USED } else { NAME }, middle, places)
    }

    /// In an opening, else over or under it.
    pub(super) fn inside(text: &str, rect: PaperRect) -> Self {
        let middle = rect.centre();
        let places = vec![
            (middle.moved(0.0, 1.0), Anchor::Middle),
            (PaperPoint::new(rect.left_mm + 2.0, rect.bottom_mm - 2.0), Anchor::Start),
            (PaperPoint::new(rect.left_mm, rect.bottom_mm + 4.0), Anchor::Start),
            (PaperPoint::new(rect.right_mm, rect.bottom_mm + 4.0), Anchor::End),
            (PaperPoint::new(rect.left_mm, rect.top_mm - 2.0), Anchor::Start),
        ];
        Self::new(text, NAME, middle, places)
    }

    /// From a place to the right.
    pub(super) fn under(text: &str, place: PaperPoint) -> Self {
        Self::from_side(text, place, true)
    }

    /// From a place to the right, or ending there.
    pub(super) fn from_side(text: &str, place: PaperPoint, to_right: bool) -> Self {
        let anchor = if to_right { Anchor::Start } else { Anchor::End };
        let places = [0.0, -5.0, 5.0].map(|down_mm| (place.moved(0.0, down_mm), anchor));
        Self::new(text, NAME, place, places.to_vec())
    }
}

/// What names have to keep clear of on one tile.
pub(super) struct Names {
    window: PaperRect,
    /// Straight lines drawn there.
    lines: Vec<(PaperPoint, PaperPoint)>,
    taken: Vec<PaperRect>,
}

impl Names {
    pub(super) fn new(
        window: PaperRect,
        lines: Vec<(PaperPoint, PaperPoint)>,
        taken: Vec<PaperRect>,
    ) -> Self {
        Self { window, lines, taken }
    }

    /// Writes a name where it can stand; not at all where what it names is on another tile, or no place is free.
    pub(super) fn write(&mut self, strokes: &mut Strokes, label: &Label) {
        if !self.window.meets(PaperRect::of(label.near, label.near)) {
            return;
        }
        let letters = label.letters;
        let width = text_width_mm(&label.text, letters.height_mm, letters.weight);
        let bounds = |(at, anchor): (PaperPoint, Anchor)| {
            let left = match anchor {
                Anchor::Start => 0.0,
                Anchor::Middle => -width / 2.0,
                Anchor::End => -width,
            };
            let start = at.moved(left, 0.0);
            // Down to where letters with tails reach.
            let tails = letters.height_mm * 0.25;
            PaperRect::of(start.moved(0.0, tails), start.moved(width, -letters.height_mm * CAPITALS))
        };
        let inner = self.window.grown(-1.5);
        let is_free = |rect: PaperRect| {
            let wide = rect.grown(CLEAR_MM);
            inner.shared(rect) == Some(rect) && !self.taken.iter().any(|other| other.meets(wide))
        };
        let crosses = |rect: PaperRect| {
            let wide = rect.grown(CLEAR_MM);
            self.lines.iter().any(|(from, to)| clip::line(wide, *from, *to).is_some())
        };
        let free: Vec<(PaperPoint, Anchor)> =
            label.places.iter().copied().filter(|&place| is_free(bounds(place))).collect();
        let clear = free.iter().copied().find(|&place| !crosses(bounds(place)));
        let Some(place) = clear.or(free.first().copied()) else { return };
        let rect = bounds(place);
        if clear.is_none() {
            let ground = rect.grown(CLEAR_MM / 2.0).corners().to_vec();
            strokes.put(
                Ink::LabelGroundOff,
                crate::scene::ItemKind::Polygon { points: ground, filled: true, outlined: false },
            );
        }
        strokes.text(place.0, &label.text, letters, place.1);
        self.taken.push(rect);
    }
}

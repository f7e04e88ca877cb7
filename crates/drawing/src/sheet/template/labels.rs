//! Names on a tile: each at the first of its places where it lies on no other and no line runs through it.

use super::super::strokes::{Letters, Strokes};
use crate::clip;
use crate::font::{CAPITALS, shortened, shortened_before, text_width_mm};
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::scene::Anchor;

const NAME: Letters = Letters::regular(3.2);
const USED: Letters = Letters::semibold(3.2);
/// The widest a name may be: narrower than any paper. What is longer stands in full on the page of instructions.
const WIDEST_MM: f64 = 70.0;
/// From one line of a name to the next.
const PITCH_MM: f64 = 4.2;
/// Free round a name.
const CLEAR_MM: f64 = 0.6;

/// A name that asks for a place. Places are from the plate's own lines, as all of a template.
#[derive(Clone, Debug)]
pub(super) struct Label {
    /// Its lines, one under the other.
    lines: Vec<String>,
    letters: Letters,
    /// What it names is here: the name stands on the tiles that show it.
    near: PaperPoint,
    /// Where its first line may stand, the best first.
    places: Vec<(PaperPoint, Anchor)>,
    /// The stretch of paper that what it names is drawn on.
    pub(super) island: usize,
}

impl Label {
    fn new(lines: &[&str], letters: Letters, near: PaperPoint, places: Vec<(PaperPoint, Anchor)>) -> Self {
        let short = |line: &&str| shortened(line, WIDEST_MM, letters.height_mm, letters.weight);
        Self { lines: lines.iter().map(short).collect(), letters, near, places, island: 0 }
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
        Self::new(&[text], NAME, from, places)
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
        Self::new(&[text], if is_used { USED } else { NAME }, middle, places)
    }

    /// The same on another stretch of paper.
    pub(super) fn on(self, island: usize) -> Self {
        Self { island, ..self }
    }

    /// Under an opening, else over or in it.
    pub(super) fn of_opening(lines: &[String; 3], rect: PaperRect) -> Self {
        let [first, second, third] = lines.each_ref().map(String::as_str);
        let capitals = NAME.height_mm * CAPITALS;
        let over_mm = PITCH_MM * 2.0 + 2.0;
        let places = vec![
            (PaperPoint::new(rect.left_mm, rect.bottom_mm + 2.0 + capitals), Anchor::Start),
            (PaperPoint::new(rect.left_mm, rect.top_mm - over_mm), Anchor::Start),
            (PaperPoint::new(rect.right_mm, rect.bottom_mm + 2.0 + capitals), Anchor::End),
            (PaperPoint::new(rect.right_mm, rect.top_mm - over_mm), Anchor::End),
            (PaperPoint::new(rect.left_mm + 2.0, rect.top_mm + 2.0 + capitals), Anchor::Start),
            (PaperPoint::new(rect.right_mm + 2.0, rect.top_mm + capitals), Anchor::Start),
            (PaperPoint::new(rect.left_mm - 2.0, rect.top_mm + capitals), Anchor::End),
        ];
        Self::new(&[first, second, third], NAME, rect.centre(), places)
    }

    /// At the foot of an arrow to a corner: on the side of the plate's middle, else on the other, else farther out.
    /// Of a long name its end is kept, which tells the corner.
    pub(super) fn of_corner(
        lines: &[String; 3],
        tail: &str,
        foot: PaperPoint,
        (top, left): (bool, bool),
    ) -> Self {
        let [first, second, third] = lines.each_ref().map(String::as_str);
        let first = shortened_before(first, tail, WIDEST_MM, NAME.height_mm, NAME.weight);
        let (inward, outward) =
            if left { (Anchor::Start, Anchor::End) } else { (Anchor::End, Anchor::Start) };
        // Three lines, the last of those above and the first of those below next to the foot.
        let first_mm = if top { -2.0 * PITCH_MM } else { NAME.height_mm * CAPITALS };
        let away = if top { -1.0 } else { 1.0 };
        let side = if left { 1.0 } else { -1.0 };
        let at = |right_mm: f64, down_mm: f64| foot.moved(right_mm, first_mm + down_mm);
        let places = vec![
            (at(0.0, 0.0), inward),
            (at(side * 2.0, away * 3.0), inward),
            (at(-side * 18.0, 0.0), outward),
            (at(0.0, away * 15.0), inward),
            (at(-side * 6.0, away * 15.0), outward),
        ];
        Self::new(&[&first, second, third], NAME, foot, places)
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
        let wide = |line: &String| text_width_mm(line, letters.height_mm, letters.weight);
        let width = label.lines.iter().map(wide).fold(0.0, f64::max);
        let further_mm = PITCH_MM * label.lines.len().saturating_sub(1) as f64;
        let bounds = |(at, anchor): (PaperPoint, Anchor)| {
            let left = match anchor {
                Anchor::Start => 0.0,
                Anchor::Middle => -width / 2.0,
                Anchor::End => -width,
            };
            let start = at.moved(left, 0.0);
            // Down to where letters with tails reach.
            let tails = letters.height_mm * 0.25;
            PaperRect::of(
                start.moved(0.0, further_mm + tails),
                start.moved(width, -letters.height_mm * CAPITALS),
            )
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
        for (index, line) in label.lines.iter().enumerate() {
            strokes.text(place.0.moved(0.0, PITCH_MM * index as f64), line, letters, place.1);
        }
        self.taken.push(rect);
    }
}

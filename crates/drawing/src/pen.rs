//! What draws one thing: it knows the thing's subject, and whether it is assumed or lit.

use crate::clip;
use crate::font::Weight;
use crate::ink::Ink;
use crate::look::Look;
use crate::paper::{PaperPoint, PaperRect};
use crate::scale::Scale;
use crate::scene::{Anchor, Item, ItemKind, Lit, Turn};
use strikeline_solver::geometry::{Frame, Point, Rect};
use strikeline_solver::subject::Subject;

/// How far past the paper a shape may run uncut: more than any line is wide (chosen).
const NEAR_MM: f64 = 20.0;

/// Draws one thing after another onto a drawing.
pub(crate) struct Pen<'a> {
    pub(crate) scale: &'a Scale,
    look: &'a Look,
    items: &'a mut Vec<Item>,
    /// Which of the items are a ground that others are written on.
    grounds: Vec<usize>,
    subject: Option<Subject>,
    assumed: bool,
    lit: Lit,
}

impl<'a> Pen<'a> {
    pub(crate) fn new(items: &'a mut Vec<Item>, scale: &'a Scale, look: &'a Look) -> Self {
        Self { scale, look, items, grounds: Vec::new(), subject: None, assumed: false, lit: Lit::No }
    }

    /// Takes up the next thing.
    pub(crate) fn take(&mut self, subject: Subject, assumed: bool) {
        self.lit = lit(self.look, &subject);
        self.subject = Some(subject);
        self.assumed = assumed;
    }

    /// Whether the thing taken up is selected or held.
    pub(crate) fn is_lit(&self) -> bool {
        self.lit != Lit::No
    }

    pub(crate) fn at(&self, place: Point) -> PaperPoint {
        self.scale.paper_from_wall(place)
    }

    /// Adds an item, unless all of it lies off the paper.
    pub(crate) fn add(&mut self, ink: Ink, kind: ItemKind) {
        let item = Item {
            ink,
            subject: self.subject.clone(),
            kind,
            assumed: self.assumed,
            lit: self.lit,
            width_mm: ink.width_mm(),
        };
        let Some(bounds) = item.bounds().filter(|bounds| bounds.meets(self.scale.page())) else { return };
        // What stays near the paper is kept whole; only what runs far past it is cut.
        let near = self.scale.page().grown(NEAR_MM);
        if near.shared(bounds) == Some(bounds) {
            self.items.push(item);
        } else if let Some(kind) = cut(near, &item.kind) {
            self.items.push(Item { kind, ..item });
        } else {
            return;
        }
        if matches!(ink, Ink::WallFace | Ink::Feature | Ink::FeatureProud) {
            self.grounds.push(self.items.len() - 1);
        }
    }

    pub(crate) fn line(&mut self, ink: Ink, from: PaperPoint, to: PaperPoint) {
        self.add(ink, ItemKind::Line { from, to });
    }

    /// An outline that is drawn but not filled.
    pub(crate) fn outline(&mut self, ink: Ink, points: &[PaperPoint]) {
        self.add(ink, ItemKind::Polygon { points: points.to_vec(), filled: false, outlined: true });
    }

    /// An outline that is filled and drawn.
    pub(crate) fn shape(&mut self, ink: Ink, points: &[PaperPoint]) {
        self.add(ink, ItemKind::Polygon { points: points.to_vec(), filled: true, outlined: true });
    }

    /// An outline that is filled and not drawn.
    pub(crate) fn fill(&mut self, ink: Ink, points: &[PaperPoint]) {
        self.add(ink, ItemKind::Polygon { points: points.to_vec(), filled: true, outlined: false });
    }

    /// Keeps a place free of lines under what is written there: in the colour of what is drawn there so far.
    pub(crate) fn ground(&mut self, rect: PaperRect) {
        let middle = rect.centre();
        let grounds = self.grounds.iter().rev().filter_map(|index| self.items.get(*index));
        let under = grounds.into_iter().find(
            |item| matches!(&item.kind, ItemKind::Polygon { points, filled: true, .. } if holds(points, middle)),
        );
        let ink = match under.map(|item| item.ink) {
            None => Ink::LabelGroundOff,
            Some(Ink::FeatureProud) => Ink::LabelGroundProud,
            Some(_) => Ink::LabelGround,
        };
        self.fill(ink, &rect.corners());
    }

    pub(crate) fn circle(&mut self, ink: Ink, centre: PaperPoint, radius_mm: f64, filled: bool) {
        self.add(ink, ItemKind::Circle { centre, radius_mm, filled });
    }

    /// A text that runs to the right.
    pub(crate) fn text(&mut self, ink: Ink, at: PaperPoint, text: &str, height_mm: f64, anchor: Anchor) {
        let (turn, weight) = (Turn::Level, Weight::Regular);
        self.add(ink, ItemKind::Text { at, text: text.to_owned(), height_mm, anchor, turn, weight });
    }

    /// Two lines from corner to corner.
    pub(crate) fn cross(&mut self, ink: Ink, rect: PaperRect) {
        let [lower_left, lower_right, upper_right, upper_left] = rect.corners();
        self.line(ink, lower_left, upper_right);
        self.line(ink, upper_left, lower_right);
    }
}

/// Whether a place is inside of an outline: a line from it to the right meets the outline an odd number of times.
fn holds(outline: &[PaperPoint], at: PaperPoint) -> bool {
    let ends = outline.iter().zip(outline.iter().cycle().skip(1));
    let met = ends.filter(|(from, to)| {
        (from.y_mm > at.y_mm) != (to.y_mm > at.y_mm)
            && at.x_mm < from.x_mm + (at.y_mm - from.y_mm) / (to.y_mm - from.y_mm) * (to.x_mm - from.x_mm)
    });
    met.count() % 2 == 1
}

/// A shape cut to a frame; `None` where nothing is left of it. Circles, texts and the floor's line stay whole.
fn cut(frame: PaperRect, kind: &ItemKind) -> Option<ItemKind> {
    match kind {
        ItemKind::Line { from, to } => {
            clip::line(frame, *from, *to).map(|(from, to)| ItemKind::Line { from, to })
        }
        ItemKind::Polygon { points, filled, outlined } => {
            let points = clip::outline(frame, points);
            (points.len() > 2).then_some(ItemKind::Polygon { points, filled: *filled, outlined: *outlined })
        }
        ItemKind::Polyline { .. } | ItemKind::Circle { .. } | ItemKind::Text { .. } => Some(kind.clone()),
    }
}

/// Whether a thing is selected or held: itself, since a piece and the marks it asks for are lit apart.
pub(crate) fn lit(look: &Look, subject: &Subject) -> Lit {
    if look.held.as_ref() == Some(subject) {
        Lit::Held
    } else if look.selected.as_ref() == Some(subject) {
        Lit::Selected
    } else {
        Lit::No
    }
}

/// The corners of a rectangle on the wall, turned with its frame: lower left, lower right, upper right,
/// upper left.
pub(crate) fn turned(rect: Rect, frame: Frame) -> [Point; 4] {
    let corner = |x, y| frame.to_wall(x - frame.origin.x, y - frame.origin.y);
    [
        corner(rect.left, rect.bottom),
        corner(rect.right, rect.bottom),
        corner(rect.right, rect.top),
        corner(rect.left, rect.top),
    ]
}

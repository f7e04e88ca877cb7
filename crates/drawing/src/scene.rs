//! A drawing as values: ink on paper millimetres, every item with its subject. Painters draw it in order.

use crate::clip;
use crate::dimension::About;
use crate::font::{self, Weight};
use crate::ink::{Ink, Pattern};
use crate::paper::{PaperPoint, PaperRect};
use crate::scale::Scale;
use strikeline_solver::subject::Subject;

/// A drawing.
#[derive(Clone, Debug, PartialEq)]
pub struct Scene {
    /// The paper's width, in paper millimetres.
    pub width_mm: f64,
    /// The paper's height, in paper millimetres.
    pub height_mm: f64,
    /// What is drawn, what lies farthest back first. An item may run past the paper: painters clip it.
    pub items: Vec<Item>,
    /// The figures of its dimensions, in the order in which they are drawn.
    pub figures: Vec<ShownFigure>,
    /// From the wall to the paper and back.
    pub scale: Scale,
}

/// A dimension's figure at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct ShownFigure {
    /// What it tells.
    pub about: About,
    /// The rectangle that it takes.
    pub bounds: PaperRect,
    /// Whether it was measured: it is underlined.
    pub measured: bool,
}

/// A stroke, a fill or a text.
#[derive(Clone, Debug, PartialEq)]
pub struct Item {
    /// What it means.
    pub ink: Ink,
    /// Which thing of the job, or which mark, it is about; `None` for the sheet's own.
    pub subject: Option<Subject>,
    /// Its shape.
    pub kind: ItemKind,
    /// Whether its place hangs on an assumed value: it is drawn lighter, and dashed.
    pub assumed: bool,
    /// Whether its subject is selected or held.
    pub lit: Lit,
    /// The width of its line, in paper millimetres.
    pub width_mm: f64,
}

/// Whether a thing is selected or held.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Lit {
    /// Neither.
    #[default]
    No,
    /// It is selected.
    Selected,
    /// A hand holds it just now.
    Held,
}

/// The shape of an item.
#[derive(Clone, Debug, PartialEq)]
pub enum ItemKind {
    /// A straight line.
    Line {
        /// One end.
        from: PaperPoint,
        /// The other.
        to: PaperPoint,
    },
    /// A line through two or more places.
    Polyline {
        /// The places.
        points: Vec<PaperPoint>,
    },
    /// A closed convex outline of three or more places.
    Polygon {
        /// Its corners.
        points: Vec<PaperPoint>,
        /// Whether it is filled.
        filled: bool,
        /// Whether its outline is drawn.
        outlined: bool,
    },
    /// A circle.
    Circle {
        /// Its middle.
        centre: PaperPoint,
        /// Its radius.
        radius_mm: f64,
        /// Whether it is filled; its outline is always drawn.
        filled: bool,
    },
    /// A text on one line.
    Text {
        /// Where its anchor is on its base line.
        at: PaperPoint,
        /// The text.
        text: String,
        /// Its em size.
        height_mm: f64,
        /// Which place of it `at` is.
        anchor: Anchor,
        /// Which way it runs.
        turn: Turn,
        /// How bold it is.
        weight: Weight,
    },
}

/// Which place of a text is given.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Anchor {
    /// Where it begins.
    Start,
    /// Its middle.
    Middle,
    /// Where it ends.
    End,
}

/// Which way a text or a dimension runs.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Turn {
    /// To the right.
    Level,
    /// Upward: turned a quarter against the clock, to be read from the right.
    Up,
}

impl Turn {
    /// Where a place is that lies so far along the text and so far above its base line.
    #[must_use]
    pub fn place(self, at: PaperPoint, along_mm: f64, above_mm: f64) -> PaperPoint {
        match self {
            Self::Level => at.moved(along_mm, -above_mm),
            Self::Up => at.moved(-above_mm, -along_mm),
        }
    }
}

impl Item {
    /// How its line is broken: what is assumed is dashed.
    #[must_use]
    pub fn pattern(&self) -> Pattern {
        if self.assumed { Pattern::Dashed } else { self.ink.pattern() }
    }

    /// The same item elsewhere on the paper.
    #[must_use]
    pub fn moved(mut self, right_mm: f64, down_mm: f64) -> Self {
        let shift = |place: &mut PaperPoint| *place = place.moved(right_mm, down_mm);
        match &mut self.kind {
            ItemKind::Line { from, to } => [from, to].into_iter().for_each(shift),
            ItemKind::Polyline { points } | ItemKind::Polygon { points, .. } => {
                points.iter_mut().for_each(shift);
            }
            ItemKind::Circle { centre, .. } => shift(centre),
            ItemKind::Text { at, .. } => shift(at),
        }
        self
    }

    /// The smallest rectangle round it, without the width of its line. A text counts from its base line to
    /// the top of its capitals. `None` for an outline of no places.
    #[must_use]
    pub fn bounds(&self) -> Option<PaperRect> {
        match &self.kind {
            ItemKind::Line { from, to } => Some(PaperRect::of(*from, *to)),
            ItemKind::Polyline { points } | ItemKind::Polygon { points, .. } => PaperRect::round(points),
            ItemKind::Circle { centre, radius_mm, .. } => {
                Some(PaperRect::of(*centre, *centre).grown(*radius_mm))
            }
            ItemKind::Text { at, text, height_mm, anchor, turn, weight } => {
                let width = font::text_width_mm(text, *height_mm, *weight);
                let start = match anchor {
                    Anchor::Start => 0.0,
                    Anchor::Middle => -width / 2.0,
                    Anchor::End => -width,
                };
                let top = font::CAPITALS * height_mm;
                Some(PaperRect::of(turn.place(*at, start, 0.0), turn.place(*at, start + width, top)))
            }
        }
    }

    /// Whether its lines or letters go through a rectangle; what it fills alone does not count.
    #[must_use]
    pub fn goes_through(&self, rect: PaperRect) -> bool {
        let crosses = |from: &PaperPoint, to: &PaperPoint| clip::line(rect, *from, *to).is_some();
        match &self.kind {
            ItemKind::Line { from, to } => crosses(from, to),
            ItemKind::Polyline { points } => {
                points.iter().zip(points.iter().skip(1)).any(|(a, b)| crosses(a, b))
            }
            ItemKind::Polygon { points, outlined, .. } => {
                let next = points.iter().cycle().skip(1);
                *outlined && points.iter().zip(next).any(|(a, b)| crosses(a, b))
            }
            ItemKind::Circle { .. } | ItemKind::Text { .. } => {
                self.bounds().is_some_and(|bounds| bounds.meets(rect))
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_drawn_goes_through_a_place_and_what_is_only_filled_does_not() {
        let at = PaperPoint::new;
        let item = |kind: ItemKind| Item {
            ink: Ink::Piece,
            subject: None,
            kind,
            assumed: false,
            lit: Lit::No,
            width_mm: 0.5,
        };
        let here = PaperRect::of(at(10.0, 10.0), at(20.0, 14.0));
        let goes = |kind: ItemKind| item(kind).goes_through(here);
        assert!(goes(ItemKind::Line { from: at(0.0, 0.0), to: at(30.0, 24.0) }));
        // Its box holds the place, the line itself passes it.
        assert!(!goes(ItemKind::Line { from: at(0.0, 20.0), to: at(8.0, 0.0) }));
        let around = vec![at(0.0, 0.0), at(40.0, 0.0), at(40.0, 40.0), at(0.0, 40.0)];
        let shape = |points: &[PaperPoint], outlined| ItemKind::Polygon {
            points: points.to_vec(),
            filled: true,
            outlined,
        };
        assert!(!goes(shape(&around, true)), "its outline is far around");
        let across: Vec<PaperPoint> = around.iter().map(|place| place.moved(15.0, 0.0)).collect();
        assert!(goes(shape(&across, true)));
        assert!(!goes(shape(&across, false)));
        assert!(goes(ItemKind::Circle { centre: at(22.0, 12.0), radius_mm: 3.0, filled: false }));
        assert!(!goes(ItemKind::Polyline { points: Vec::new() }));
    }
}

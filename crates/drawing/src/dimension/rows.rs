//! Which dimension goes into which row beside the drawing: the least important gives way, and no figure lies
//! on another or under an extension line.

use super::figure::STACK;
use super::{About, Dimension, FIGURE_GAP_MM, Figure, OVERSHOOT_MM, TICK_HALF_MM};
use crate::paper::PaperRect;
use crate::scene::{ItemKind, Turn};
use std::cmp::Ordering;
use strikeline_solver::subject::Subject;

/// From the outline to the first row: at least 10 mm (a naval drafting manual).
const FIRST_ROW_MM: f64 = 10.0;
/// Between rows: at least 6 mm (the same manual), and room for a figure and an overshoot.
const NEXT_ROW_MM: f64 = 6.0;
/// No more rows than this on a side; what finds no room is not drawn (chosen: a drawing stays readable).
pub const MOST_ROWS: usize = 3;
/// Shorter than this on paper nothing is dimensioned.
const LEAST_MM: f64 = 0.2;
/// Less than this is the last digit's rounding.
const ROUNDING_MM: f64 = 1e-9;
/// Free on either side of what stands in a row.
const CLEAR_MM: f64 = 0.8;

/// How far out from the outline a row's line is.
fn out_mm(row: usize, text_height_mm: f64) -> f64 {
    // Above a stacked fraction the next row's ticks need their half.
    let step = NEXT_ROW_MM.max(text_height_mm * STACK + FIGURE_GAP_MM + TICK_HALF_MM);
    FIRST_ROW_MM + step * row as f64
}

/// What so many rows take beside the outline at a text height: up to the figures of the outermost, which stand
/// away from the outline above it and to its left, and to the ends of its extension lines. None counts as one.
#[must_use]
pub fn rows_mm(rows: usize, text_height_mm: f64) -> f64 {
    out_mm(rows.saturating_sub(1), text_height_mm) + OVERSHOOT_MM.max(FIGURE_GAP_MM + STACK * text_height_mm)
}

/// On which side of the drawing a dimension stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Side {
    Above,
    Below,
    Left,
    Right,
}

/// A dimension that asks for a row.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Wanted {
    pub(crate) side: Side,
    /// Where it starts and ends, along.
    pub(crate) along_mm: (f64, f64),
    /// Where the objects are at its two ends, cross.
    pub(crate) object_mm: (f64, f64),
    pub(crate) figure: Figure,
    pub(crate) measured: bool,
    pub(crate) assumed: bool,
    pub(crate) subject: Subject,
    pub(crate) about: About,
}

/// A dimension in its row.
struct Placed {
    wanted: Wanted,
    row: usize,
    dimension: Dimension,
}

/// The rows round a drawing.
pub(crate) struct Rows {
    frame: PaperRect,
    page: PaperRect,
    text_height_mm: f64,
    /// Where no figure may lie.
    kept: Vec<PaperRect>,
    placed: Vec<Placed>,
}

impl Rows {
    /// The rows round a frame, as many as the page has room for, with no figure on what is `kept`.
    pub(crate) fn new(frame: PaperRect, page: PaperRect, text_height_mm: f64, kept: Vec<PaperRect>) -> Self {
        Self { frame, page, text_height_mm, kept, placed: Vec::new() }
    }

    /// Gives a dimension the nearest row with room; without one it is left out. The most important come first.
    pub(crate) fn place(&mut self, wanted: Wanted) {
        let (from, to) = wanted.along_mm;
        // What is nothing on paper has no line to be read from.
        if (to - from).abs() < LEAST_MM {
            return;
        }
        // The gap between two pieces is both of theirs: it is told once.
        let same = |a: f64, b: f64| (a - b).abs() < LEAST_MM / 2.0;
        if self.placed.iter().any(|Placed { wanted: told, .. }| {
            let (low, high) = (told.along_mm.0.min(told.along_mm.1), told.along_mm.0.max(told.along_mm.1));
            told.side == wanted.side
                && told.figure == wanted.figure
                && same(low, from.min(to))
                && same(high, from.max(to))
        }) {
            return;
        }
        for row in 0..MOST_ROWS {
            let dimension = self.dimension(&wanted, row);
            if self.has_room(&wanted, row, &dimension) {
                self.placed.push(Placed { wanted, row, dimension });
                return;
            }
        }
    }

    /// Whether nothing found room.
    pub(crate) fn is_empty(&self) -> bool {
        self.placed.is_empty()
    }

    /// Where the line of the first row above the wall is that nothing stands in or beyond; `None` where the page has no
    /// room for one.
    pub(crate) fn free_row_above(&self) -> Option<f64> {
        let above = self.placed.iter().filter(|placed| placed.wanted.side == Side::Above);
        let row = above.map(|placed| placed.row + 1).max().unwrap_or(0);
        let line_mm = self.frame.top_mm - out_mm(row, self.text_height_mm);
        let top = line_mm - OVERSHOOT_MM.max(FIGURE_GAP_MM + STACK * self.text_height_mm);
        (row < MOST_ROWS && self.page.top_mm <= top).then_some(line_mm)
    }

    /// Whether a stroke or a figure of another row may lie there: on the page, on nothing that is kept, and on no
    /// figure.
    pub(crate) fn is_free(&self, rect: PaperRect) -> bool {
        let figures = self.placed.iter().map(|placed| placed.dimension.figure_bounds().grown(CLEAR_MM));
        self.page.shared(rect) == Some(rect)
            && !self.kept.iter().copied().chain(figures).any(|taken| taken.meets(rect))
    }

    /// All that found room, in the order it was placed.
    pub(crate) fn into_dimensions(self) -> impl Iterator<Item = (Wanted, Dimension)> {
        self.placed.into_iter().map(|placed| (placed.wanted, placed.dimension))
    }

    /// The rectangles of all figures and lines that found room.
    pub(crate) fn taken(&self) -> Vec<PaperRect> {
        let mut taken = Vec::new();
        for dimension in self.placed.iter().map(|placed| &placed.dimension) {
            taken.push(dimension.figure_bounds());
            taken.extend(dimension.draw().into_iter().filter_map(|(_, kind)| match kind {
                ItemKind::Line { from, to } => Some(PaperRect::of(from, to)),
                _ => None,
            }));
        }
        taken
    }

    fn dimension(&self, wanted: &Wanted, row: usize) -> Dimension {
        let out = out_mm(row, self.text_height_mm);
        let (turn, line_mm) = match wanted.side {
            Side::Above => (Turn::Level, self.frame.top_mm - out),
            Side::Below => (Turn::Level, self.frame.bottom_mm + out),
            Side::Left => (Turn::Up, self.frame.left_mm - out),
            Side::Right => (Turn::Up, self.frame.right_mm + out),
        };
        Dimension {
            turn,
            from_mm: wanted.along_mm.0,
            to_mm: wanted.along_mm.1,
            from_object_mm: wanted.object_mm.0,
            to_object_mm: wanted.object_mm.1,
            line_mm,
            shown_mm: match turn {
                Turn::Level => (self.page.left_mm, self.page.right_mm),
                Turn::Up => (self.page.top_mm, self.page.bottom_mm),
            },
            figure: wanted.figure.clone(),
            measured: wanted.measured,
        }
    }

    /// Whether all of a row is on the page, the ends of its extension lines included.
    fn has_row(&self, side: Side, dimension: &Dimension) -> bool {
        let (line, page) = (dimension.line_mm, self.page);
        match side {
            Side::Above => page.top_mm <= line - OVERSHOOT_MM,
            Side::Below => line + OVERSHOOT_MM <= page.bottom_mm,
            Side::Left => page.left_mm <= line - OVERSHOOT_MM,
            Side::Right => line + OVERSHOOT_MM <= page.right_mm,
        }
    }

    fn has_room(&self, wanted: &Wanted, row: usize, dimension: &Dimension) -> bool {
        let figure = dimension.figure_bounds();
        // The row and its figure must be on the page.
        let on_page = self.page.shared(figure) == Some(figure) && self.has_row(wanted.side, dimension);
        let (low, high) = dimension.reach_mm();
        let is_kept = self.kept.iter().any(|kept| kept.meets(figure));
        on_page
            && !is_kept
            && self.placed.iter().all(|other| {
                if other.dimension.figure_bounds().grown(CLEAR_MM).meets(figure) {
                    return false;
                }
                if other.wanted.side != wanted.side {
                    // Of what lies off the wall the lines run past its corners.
                    return !runs_through(dimension, other.dimension.figure_bounds())
                        && !runs_through(&other.dimension, figure);
                }
                let (other_low, other_high) = other.dimension.reach_mm();
                // Two may share the tick they meet at, so lines are held against lines by their ends alone.
                let shared = 2.0 * TICK_HALF_MM + ROUNDING_MM;
                let apart = high <= other_low + shared || other_high <= low + shared;
                match other.row.cmp(&row) {
                    // A figure wider than what it tells reaches past the tick that both meet at.
                    Ordering::Equal => {
                        apart
                            && !crosses(dimension, &other.dimension)
                            && !crosses(&other.dimension, dimension)
                    }
                    Ordering::Less => !crosses(dimension, &other.dimension),
                    Ordering::Greater => !crosses(&other.dimension, dimension),
                }
            })
    }
}

/// Whether a line of a dimension runs through a figure that is not its own.
fn runs_through(dimension: &Dimension, figure: PaperRect) -> bool {
    dimension.strokes().into_iter().any(|stroke| stroke.meets(figure))
}

/// Whether an extension line of the outer one runs through the figure of the inner one.
fn crosses(outer: &Dimension, inner: &Dimension) -> bool {
    let figure = inner.figure_bounds().grown(CLEAR_MM / 2.0);
    let (low, high) = match inner.turn {
        Turn::Level => (figure.left_mm, figure.right_mm),
        Turn::Up => (figure.top_mm, figure.bottom_mm),
    };
    [outer.from_mm, outer.to_mm].into_iter().any(|along| low < along && along < high)
}

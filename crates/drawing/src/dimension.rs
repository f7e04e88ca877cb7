//! A dimension as drafting has it: extension lines with a gap, an unbroken line between 45-degree ticks, and
//! the figure above it.
//!
//! Gap and overshoot are those of drafting manuals (1/16 in and 1/8 in, read second-hand); the figure above
//! an unbroken line is that of construction drawings (a naval drafting manual).

mod about;
mod figure;
mod rows;

pub use about::{About, GapSide, ReadPlace};
pub use figure::Figure;
pub use rows::{MOST_ROWS, rows_mm};
pub(crate) use rows::{Rows, Side, Wanted};

use crate::font::Weight;
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::scene::{Anchor, ItemKind, Turn};

/// Between the object and the start of an extension line.
pub const GAP_MM: f64 = 1.5;
/// How far an extension line runs past the dimension line.
pub const OVERSHOOT_MM: f64 = 3.0;
/// Half of a tick's reach either way (from memory: a tick is about as long as a figure is high).
pub const TICK_HALF_MM: f64 = 1.1;
/// Between the dimension line and the foot of its figure, a fraction's included (chosen: room for an underline).
pub const FIGURE_GAP_MM: f64 = 1.0;
/// Between the foot of a measured figure and its underline.
const UNDERLINE_MM: f64 = 0.55;

/// One dimension, on paper. Along is x for a level one, y for an upright one; cross is the other.
#[derive(Clone, Debug, PartialEq)]
pub struct Dimension {
    /// Level, or upright and read from the right.
    pub turn: Turn,
    /// Where it starts, along.
    pub from_mm: f64,
    /// Where it ends, along.
    pub to_mm: f64,
    /// Where the object is that the first extension line comes from, cross.
    pub from_object_mm: f64,
    /// The same of the second.
    pub to_object_mm: f64,
    /// Where the dimension line is, cross.
    pub line_mm: f64,
    /// From where to where the page shows the line, along: the figure stands within.
    pub shown_mm: (f64, f64),
    /// What it says.
    pub figure: Figure,
    /// Whether the figure was measured, so that it is underlined: it can be typed over.
    pub measured: bool,
}

impl Dimension {
    /// A place from its two coordinates.
    fn place(&self, along_mm: f64, cross_mm: f64) -> PaperPoint {
        match self.turn {
            Turn::Level => PaperPoint::new(along_mm, cross_mm),
            Turn::Up => PaperPoint::new(cross_mm, along_mm),
        }
    }

    /// Whether the figure has its place between the ticks.
    #[must_use]
    pub fn figure_fits(&self) -> bool {
        let (low, high) = self.seen_mm();
        self.figure.width_mm() + 2.0 * TICK_HALF_MM <= high - low
    }

    /// The part of it that the page shows, the lower end first; all of it where none is shown.
    fn seen_mm(&self) -> (f64, f64) {
        let (low, high) = (self.from_mm.min(self.to_mm), self.from_mm.max(self.to_mm));
        let (seen_low, seen_high) = (low.max(self.shown_mm.0), high.min(self.shown_mm.1));
        if seen_low < seen_high { (seen_low, seen_high) } else { (low, high) }
    }

    /// Where the figure begins, on its base line: in the middle, or past the end it is read toward.
    #[must_use]
    pub fn figure_start(&self) -> PaperPoint {
        let (low, high) = self.seen_mm();
        let width = self.figure.width_mm();
        let base = self.line_mm - FIGURE_GAP_MM + self.figure.foot_mm();
        // An upright figure runs toward smaller y.
        let (begin, way) = match self.turn {
            Turn::Level => {
                (if self.figure_fits() { f64::midpoint(low, high) } else { high + 2.0 * TICK_HALF_MM }, 1.0)
            }
            Turn::Up => {
                (if self.figure_fits() { f64::midpoint(low, high) } else { low - 2.0 * TICK_HALF_MM }, -1.0)
            }
        };
        let shift = if self.figure_fits() { width / 2.0 } else { 0.0 };
        self.place(begin - way * shift, base)
    }

    /// The rectangle its figure takes.
    #[must_use]
    pub fn figure_bounds(&self) -> PaperRect {
        self.figure.bounds(self.figure_start(), self.turn)
    }

    /// What it takes along its row: its ticks, and its figure where that stands outside.
    #[must_use]
    pub fn reach_mm(&self) -> (f64, f64) {
        let figure = self.figure_bounds();
        let (figure_low, figure_high) = match self.turn {
            Turn::Level => (figure.left_mm, figure.right_mm),
            Turn::Up => (figure.top_mm, figure.bottom_mm),
        };
        let (low, high) = (self.from_mm.min(self.to_mm), self.from_mm.max(self.to_mm));
        ((low - TICK_HALF_MM).min(figure_low), (high + TICK_HALF_MM).max(figure_high))
    }

    /// Where its two extension lines and its own line run.
    pub(crate) fn strokes(&self) -> [PaperRect; 3] {
        let extension = |along: f64, object: f64| {
            let way = if self.line_mm < object { -1.0 } else { 1.0 };
            let (start, end) = (object + way * GAP_MM, self.line_mm + way * OVERSHOOT_MM);
            PaperRect::of(self.place(along, start), self.place(along, end))
        };
        let (low, high) = self.reach_mm();
        [
            extension(self.from_mm, self.from_object_mm),
            extension(self.to_mm, self.to_object_mm),
            PaperRect::of(self.place(low, self.line_mm), self.place(high, self.line_mm)),
        ]
    }

    /// Draws it: ink and shape of each of its parts, in order.
    #[must_use]
    pub fn draw(&self) -> Vec<(Ink, ItemKind)> {
        let line = |ink, from, to| (ink, ItemKind::Line { from, to });
        let mut parts = Vec::new();
        for (along, object) in [(self.from_mm, self.from_object_mm), (self.to_mm, self.to_object_mm)] {
            let way = if self.line_mm < object { -1.0 } else { 1.0 };
            // Too near its object there is nothing to extend.
            if (self.line_mm - object).abs() > GAP_MM {
                let (start, end) = (object + way * GAP_MM, self.line_mm + way * OVERSHOOT_MM);
                parts.push(line(Ink::Extension, self.place(along, start), self.place(along, end)));
            }
        }
        let (mut low, mut high) = (self.from_mm.min(self.to_mm), self.from_mm.max(self.to_mm));
        if !self.figure_fits() {
            // The line goes on under a figure that stands outside.
            let (reach_low, reach_high) = self.reach_mm();
            (low, high) = match self.turn {
                Turn::Level => (low, reach_high),
                Turn::Up => (reach_low, high),
            };
        }
        parts.push(line(Ink::Dimension, self.place(low, self.line_mm), self.place(high, self.line_mm)));
        for along in [self.from_mm, self.to_mm] {
            let at = self.place(along, self.line_mm);
            let (a, b) = (at.moved(-TICK_HALF_MM, TICK_HALF_MM), at.moved(TICK_HALF_MM, -TICK_HALF_MM));
            parts.push(line(Ink::DimensionTick, a, b));
        }
        let start = self.figure_start();
        for run in self.figure.runs() {
            parts.push((
                Ink::DimensionText,
                ItemKind::Text {
                    at: self.turn.place(start, run.along_mm, run.above_mm),
                    text: run.text.clone(),
                    height_mm: run.height_mm,
                    anchor: Anchor::Start,
                    turn: self.turn,
                    weight: Weight::Regular,
                },
            ));
        }
        if let Some((bar_from, bar_to, bar_above)) = self.figure.bar() {
            let bar = |along| self.turn.place(start, along, bar_above);
            parts.push(line(Ink::DimensionText, bar(bar_from), bar(bar_to)));
        }
        if self.measured {
            let under = |along| self.turn.place(start, along, self.figure.foot_mm() - UNDERLINE_MM);
            parts.push(line(Ink::DimensionText, under(0.0), under(self.figure.width_mm())));
        }
        parts
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::tape::{Graduation, Style};
    use strikeline_solver::units::Length;

    fn figure(inches: f64) -> Figure {
        let style = Style { graduation: Graduation::Sixteenth, feet_inches: false };
        Figure::new(style.fraction(Length::inches(inches)), 3.8)
    }

    fn dimension(turn: Turn, to_mm: f64) -> Dimension {
        Dimension {
            turn,
            from_mm: 100.0,
            to_mm,
            from_object_mm: 50.0,
            to_object_mm: 40.0,
            line_mm: 20.0,
            shown_mm: (0.0, 300.0),
            figure: figure(48.5),
            measured: false,
        }
    }

    #[test]
    fn extension_lines_leave_a_gap_and_run_past() {
        let parts = dimension(Turn::Level, 160.0).draw();
        let lines: Vec<_> = parts
            .iter()
            .filter_map(|(ink, kind)| match kind {
                ItemKind::Line { from, to } => Some((*ink, *from, *to)),
                _ => None,
            })
            .collect();
        assert_eq!(lines[0], (Ink::Extension, PaperPoint::new(100.0, 48.5), PaperPoint::new(100.0, 17.0)));
        assert_eq!(lines[1], (Ink::Extension, PaperPoint::new(160.0, 38.5), PaperPoint::new(160.0, 17.0)));
        assert_eq!(lines[2], (Ink::Dimension, PaperPoint::new(100.0, 20.0), PaperPoint::new(160.0, 20.0)));
        let (ink, a, b) = lines[3];
        assert_eq!(ink, Ink::DimensionTick);
        let rise = (b.x_mm - a.x_mm) - (a.y_mm - b.y_mm);
        assert!(rise.abs() < 1e-9, "45 degrees, rising to the right");
    }

    #[test]
    fn the_figure_stands_above_its_line_in_the_middle() {
        for (turn, to_mm) in [(Turn::Level, 160.0), (Turn::Up, 40.0)] {
            let bounds = dimension(turn, to_mm).figure_bounds();
            let middle = f64::midpoint(100.0, to_mm);
            match turn {
                Turn::Level => {
                    assert!((bounds.centre().x_mm - middle).abs() < 1e-9 && bounds.bottom_mm < 20.0);
                }
                Turn::Up => assert!((bounds.centre().y_mm - middle).abs() < 1e-9 && bounds.right_mm < 20.0),
            }
        }
    }

    #[test]
    fn a_figure_stands_where_its_line_is_seen() {
        let mut close = dimension(Turn::Level, 1000.0);
        close.shown_mm = (0.0, 300.0);
        assert!((close.figure_bounds().centre().x_mm - 200.0).abs() < 1e-9, "between 100 and 300");
        close.shown_mm = (400.0, 500.0);
        assert!((close.figure_bounds().centre().x_mm - 450.0).abs() < 1e-9);
    }

    #[test]
    fn a_figure_without_room_stands_outside() {
        let level = dimension(Turn::Level, 104.0);
        assert!(!level.figure_fits() && level.figure_bounds().left_mm > 104.0);
        let upright = dimension(Turn::Up, 96.0);
        assert!(upright.figure_bounds().bottom_mm < 96.0);
    }
}

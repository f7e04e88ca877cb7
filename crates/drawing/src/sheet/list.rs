//! The blocks that lists on sheets are made of: headings, paragraphs, rows of a table, marks with their box to tick.

use super::flow::{Block, Line};
use super::strokes::{Letters, Strokes};
use super::wrap::wrapped;
use crate::font::text_width_mm;
use crate::ink::Ink;
use crate::look::TEXT_HEIGHT_MM;
use crate::paper::{PaperPoint, PaperRect};
use crate::scene::Anchor;

/// Text and readings: capitals of 2.5 mm, as on the drawing.
pub(crate) const TEXT: Letters = Letters::regular(TEXT_HEIGHT_MM);
/// Names of marks, figures, stops.
pub(crate) const STRONG: Letters = Letters::semibold(TEXT_HEIGHT_MM);
const HEADING: Letters = Letters::semibold(5.0);
const SUBHEADING: Letters = Letters::semibold(4.2).quiet();

/// From one base line to the next, in em.
const PITCH: f64 = 1.34;
/// Where the base line lies in its line, in em from its top.
const BASE: f64 = 0.98;
/// The box to tick, and where the words beside it begin.
const BOX_MM: f64 = 4.2;
const BESIDE_BOX_MM: f64 = 7.0;
/// Between the cells of a row.
const CELL_GAP_MM: f64 = 3.0;

/// Blocks in the order in which they are to be read, for columns of one width.
pub(crate) struct List {
    width_mm: f64,
    pub(crate) blocks: Vec<Block>,
}

fn line_of(height_mm: f64, items: Strokes) -> Line {
    Line { height_mm, items: items.items }
}

fn pitch(letters: Letters) -> f64 {
    letters.height_mm * PITCH
}

fn base(letters: Letters) -> f64 {
    letters.height_mm * BASE
}

/// Lines of one text, each from so far right.
fn lines(text: &str, right_mm: f64, room_mm: f64, letters: Letters) -> Vec<Line> {
    let set = |text: &String| {
        let mut strokes = Strokes::default();
        strokes.text(PaperPoint::new(right_mm, base(letters)), text, letters, Anchor::Start);
        line_of(pitch(letters), strokes)
    };
    wrapped(text, room_mm, letters.height_mm, letters.weight).iter().map(set).collect()
}

impl List {
    pub(crate) fn new(width_mm: f64) -> Self {
        Self { width_mm, blocks: Vec::new() }
    }

    /// A heading, found by its bookmark at that depth; the deeper is set smaller.
    pub(crate) fn heading(&mut self, words: &str, depth: usize) {
        let (letters, before_mm) = if depth > 1 { (SUBHEADING, 3.4) } else { (HEADING, 6.0) };
        let mut lines = lines(words, 0.0, self.width_mm, letters);
        if let (Some(last), false) = (lines.last_mut(), depth > 1) {
            last.height_mm += 1.6;
            let y_mm = base(letters) + 1.8;
            let mut rule = Strokes::default();
            rule.line(Ink::Dimension, PaperPoint::new(0.0, y_mm), PaperPoint::new(self.width_mm, y_mm));
            last.items.extend(rule.items);
        }
        let bookmark = Some((words.to_owned(), depth));
        self.blocks.push(Block { lines, before_mm, leads: true, bookmark });
    }

    pub(crate) fn width_mm(&self) -> f64 {
        self.width_mm
    }

    /// A drawing so high, from its upper left corner.
    pub(crate) fn graphic(&mut self, height_mm: f64, strokes: Strokes) {
        let lines = vec![line_of(height_mm, strokes)];
        self.blocks.push(Block { lines, before_mm: 3.0, ..Block::default() });
    }

    /// A paragraph, its lines kept together.
    pub(crate) fn paragraph(&mut self, words: &str, letters: Letters) {
        let lines = lines(words, 0.0, self.width_mm, letters);
        self.blocks.push(Block { lines, before_mm: 1.4, ..Block::default() });
    }

    /// Cells side by side, each so large a share of the width; as high as the highest.
    pub(crate) fn row(&mut self, cells: &[(&str, f64)], letters: Letters, leads: bool) {
        let free = self.width_mm - CELL_GAP_MM * cells.len().saturating_sub(1) as f64;
        let (mut rows, mut left): (Vec<Line>, f64) = (Vec::new(), 0.0);
        for (text, share) in cells {
            for (index, line) in lines(text, left, free * share, letters).into_iter().enumerate() {
                match rows.get_mut(index) {
                    Some(row) => row.items.extend(line.items),
                    None => rows.push(line),
                }
            }
            left += free * share + CELL_GAP_MM;
        }
        self.blocks.push(Block { lines: rows, before_mm: 1.0, leads, bookmark: None });
    }

    /// A mark: its box, its name, its figures at the right where there is room for them, else below, and how it is
    /// done.
    pub(crate) fn mark(&mut self, name: &str, figures: &str, words: &str, is_ticked: bool) {
        let room = self.width_mm - BESIDE_BOX_MM;
        let wide = |text: &str| text_width_mm(text, STRONG.height_mm, STRONG.weight);
        let mut all = lines(name, BESIDE_BOX_MM, room, STRONG);
        let is_beside = all.len() == 1 && wide(name) + wide(figures) + 2.0 * CELL_GAP_MM <= room;
        if let Some(first) = all.first_mut() {
            let mut strokes = Strokes::default();
            ticked_box(&mut strokes, is_ticked);
            if is_beside {
                let at = PaperPoint::new(self.width_mm, base(STRONG));
                strokes.text(at, figures, STRONG, Anchor::End);
            }
            first.items.extend(strokes.items);
        }
        if !is_beside && !figures.is_empty() {
            all.extend(lines(figures, BESIDE_BOX_MM, room, STRONG));
        }
        all.extend(lines(words, BESIDE_BOX_MM, room, TEXT));
        self.blocks.push(Block { lines: all, before_mm: 2.4, ..Block::default() });
    }
}

/// A box to tick; ticked where all is done.
fn ticked_box(strokes: &mut Strokes, is_ticked: bool) {
    let bottom_mm = base(STRONG) + 0.5;
    let rect = PaperRect { left_mm: 0.3, top_mm: bottom_mm - BOX_MM, right_mm: 0.3 + BOX_MM, bottom_mm };
    strokes.rect(Ink::Sheet, rect, false);
    if is_ticked {
        let (low, end) = (rect.at(0.42, 0.82), rect.at(0.95, 0.05));
        strokes.line(Ink::Done, rect.at(0.15, 0.5), low);
        strokes.line(Ink::Done, low, end);
    }
}

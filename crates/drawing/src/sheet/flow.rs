//! Lists that flow down columns and on to further pages. A heading never stands alone at the foot of a column, and what
//! fits a column is not torn apart.

use super::Bookmark;
use super::strokes::Strokes;
use crate::paper::PaperRect;
use crate::scene::Item;

/// One line: its items from its own upper left corner.
#[derive(Clone, Debug, Default)]
pub(crate) struct Line {
    pub(crate) height_mm: f64,
    pub(crate) items: Vec<Item>,
}

/// Lines that stay together where a column has room for them.
#[derive(Clone, Debug, Default)]
pub(crate) struct Block {
    pub(crate) lines: Vec<Line>,
    /// Free above it, but not at the head of a column.
    pub(crate) before_mm: f64,
    /// Whether it is a heading: it stays with what follows.
    pub(crate) leads: bool,
    /// The bookmark it is found by, and how deep that is.
    pub(crate) bookmark: Option<(String, usize)>,
}

impl Block {
    fn height_mm(&self) -> f64 {
        self.lines.iter().map(|line| line.height_mm).sum()
    }
}

/// The columns of a page.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Columns {
    pub(crate) room: PaperRect,
    pub(crate) count: usize,
    pub(crate) gap_mm: f64,
}

impl Columns {
    /// As many columns as are each at least so wide.
    pub(crate) fn of(room: PaperRect, least_mm: f64, gap_mm: f64) -> Self {
        let fit = ((room.width_mm() + gap_mm) / (least_mm + gap_mm)).floor();
        // At most eight: no paper here has room for more.
        let count = (1..=8).rev().find(|&count| f64::from(count) <= fit).unwrap_or(1);
        Self { room, count: usize::try_from(count).unwrap_or(1), gap_mm }
    }

    pub(crate) fn width_mm(&self) -> f64 {
        let count = self.count as f64;
        (self.room.width_mm() - self.gap_mm * (count - 1.0)) / count
    }

    pub(crate) fn left_mm(&self, column: usize) -> f64 {
        self.room.left_mm + (self.width_mm() + self.gap_mm) * column as f64
    }
}

/// A page of a list.
#[derive(Clone, Debug, Default)]
pub(crate) struct FlowPage {
    pub(crate) strokes: Strokes,
    pub(crate) bookmarks: Vec<Bookmark>,
}

/// Puts blocks down the columns of as many pages as they need; at least one page.
pub(crate) fn flow(blocks: &[Block], columns: Columns) -> Vec<FlowPage> {
    let mut hand = Hand { columns, pages: vec![FlowPage::default()], column: 0, y_mm: columns.room.top_mm };
    for (index, block) in blocks.iter().enumerate() {
        let after = blocks.get(index + 1..).unwrap_or_default();
        hand.block(block, after);
    }
    hand.pages
}

/// Where the next line goes.
struct Hand {
    columns: Columns,
    pages: Vec<FlowPage>,
    column: usize,
    y_mm: f64,
}

/// A rounding of the last digit must not cost a line.
const SLACK_MM: f64 = 1e-6;

impl Hand {
    fn is_at_head(&self) -> bool {
        self.y_mm <= self.columns.room.top_mm
    }

    fn next_column(&mut self) {
        self.column += 1;
        self.y_mm = self.columns.room.top_mm;
        if self.column >= self.columns.count {
            self.column = 0;
            self.pages.push(FlowPage::default());
        }
    }

    fn room_mm(&self) -> f64 {
        self.columns.room.bottom_mm - self.y_mm + SLACK_MM
    }

    fn block(&mut self, block: &Block, after: &[Block]) {
        if !self.is_at_head() {
            if block.before_mm + self.least_mm(block, after) > self.room_mm() {
                self.next_column();
            } else {
                self.y_mm += block.before_mm;
            }
        }
        for (index, line) in block.lines.iter().enumerate() {
            if line.height_mm > self.room_mm() && !self.is_at_head() {
                self.next_column();
            }
            let (left, y_mm) = (self.columns.left_mm(self.column), self.y_mm);
            if let Some(page) = self.pages.last_mut() {
                page.strokes.take(line.items.clone(), left, y_mm);
                if let (Some((words, depth)), 0) = (&block.bookmark, index) {
                    page.bookmarks.push(Bookmark { words: words.clone(), depth: *depth, y_mm });
                }
            }
            self.y_mm += line.height_mm;
        }
    }

    /// How much room has to be left for a block to begin here: all of it where a column holds it, else two lines; of a
    /// heading also what follows.
    fn least_mm(&self, block: &Block, after: &[Block]) -> f64 {
        let whole = block.height_mm();
        if block.leads {
            let next = after.split_first();
            return whole + next.map_or(0.0, |(next, rest)| next.before_mm + self.least_mm(next, rest));
        }
        if whole <= self.columns.room.height_mm() {
            whole
        } else {
            block.lines.iter().take(2).map(|line| line.height_mm).sum()
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ink::Ink;
    use crate::paper::PaperPoint;

    fn columns(count: usize) -> Columns {
        let room = PaperRect { left_mm: 10.0, top_mm: 10.0, right_mm: 210.0, bottom_mm: 110.0 };
        Columns { room, count, gap_mm: 10.0 }
    }

    fn block(lines: usize, leads: bool, name: &str) -> Block {
        let line = || {
            let mut strokes = Strokes::default();
            strokes.line(Ink::Sheet, PaperPoint::new(0.0, 0.0), PaperPoint::new(0.0, 5.0));
            Line { height_mm: 5.0, items: strokes.items }
        };
        let lines = (0..lines).map(|_| line()).collect();
        Block { lines, before_mm: 2.0, leads, bookmark: Some((name.to_owned(), 0)) }
    }

    fn check_inside(pages: &[FlowPage], columns: Columns) {
        for item in pages.iter().flat_map(|page| &page.strokes.items) {
            let bounds = item.bounds().unwrap();
            assert_eq!(columns.room.grown(0.001).shared(bounds), Some(bounds), "nothing runs out");
        }
    }

    #[test]
    fn a_heading_goes_on_with_what_it_leads() {
        // 14 lines leave 30 mm: room for the heading, not for the six lines under it.
        let blocks = [block(14, false, "a"), block(1, true, "head"), block(6, false, "b")];
        let pages = flow(&blocks, columns(1));
        let names: Vec<Vec<&str>> =
            pages.iter().map(|page| page.bookmarks.iter().map(|it| it.words.as_str()).collect()).collect();
        assert_eq!(names, [vec!["a"], vec!["head", "b"]]);
        check_inside(&pages, columns(1));
    }

    #[test]
    fn what_is_longer_than_a_column_goes_on_in_the_next() {
        let pages = flow(&[block(3, true, "head"), block(50, false, "long")], columns(2));
        assert_eq!(pages.len(), 2);
        let lines: usize = pages.iter().map(|page| page.strokes.items.len()).sum();
        assert_eq!(lines, 53, "each line once");
        check_inside(&pages, columns(2));
        assert!(pages[0].bookmarks.iter().any(|it| it.words == "long"), "it begins under its heading");
    }

    #[test]
    fn columns_are_as_many_as_fit() {
        let room = columns(1).room;
        for (least, count) in [(95.0, 2), (96.0, 1), (60.0, 3), (500.0, 1)] {
            assert_eq!(Columns::of(room, least, 10.0).count, count, "{least}");
        }
    }

    #[test]
    fn nothing_is_one_empty_page() {
        assert_eq!(flow(&[], columns(2)).len(), 1);
    }
}

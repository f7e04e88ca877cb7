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

/// Puts blocks down the columns of as many pages as they need; at least one page. Where the last column is all but
/// empty the columns of its page are made even, and where the last page is, it takes some lines of the page before
/// it.
pub(crate) fn flow(blocks: &[Block], columns: Columns) -> Vec<FlowPage> {
    let tight = tight(blocks, columns);
    let blocks = tight.as_deref().unwrap_or(blocks);
    let full = columns.room.height_mm();
    let is_orphan = |one: &Laid| one.used_mm < ORPHAN * full;
    let mut laid = Laid::of(blocks, columns, &[]);
    let mut cuts: Vec<(usize, f64)> = Vec::new();
    let last = laid.pages - 1;
    if last > 0 && laid.columns_on(last) == 1 && is_orphan(&laid) {
        let shorter = (1..=STEPS).map(|step| [(last - 1, full * (1.0 - SHORTER * f64::from(step)))]);
        let mut tried = shorter.map(|cut| (Laid::of(blocks, columns, &cut), cut));
        let is_better = |one: &Laid| one.pages == last + 1 && (one.columns_on(last) > 1 || !is_orphan(one));
        if let Some((better, cut)) = tried.find(|(one, _)| is_better(one)) {
            (laid, cuts) = (better, cut.to_vec());
        }
    }
    if laid.columns_on(last) > 1 && is_orphan(&laid) {
        let heights = (1..=STEPS).map(|step| full * SHORTER * f64::from(step));
        let mut even = heights.map(|height| {
            let all: Vec<(usize, f64)> = cuts.iter().copied().chain([(last, height)]).collect();
            Laid::of(blocks, columns, &all)
        });
        let is_even = |one: &Laid| one.pages == last + 1 && one.lines_in_last_column() >= LEAST_LINES;
        laid = even.find(is_even).unwrap_or(laid);
    }
    laid.painted(blocks, columns)
}

/// The blocks nearer to one another, where that spares a last page with little on it; else `None`.
fn tight(blocks: &[Block], columns: Columns) -> Option<Vec<Block>> {
    let laid = Laid::of(blocks, columns, &[]);
    let is_sparse = laid.columns_on(laid.pages - 1) == 1 && laid.used_mm < SPARSE * columns.room.height_mm();
    if laid.pages < 2 || !is_sparse {
        return None;
    }
    let nearer = |block: &Block| Block { before_mm: block.before_mm * NEARER, ..block.clone() };
    let tight: Vec<Block> = blocks.iter().map(nearer).collect();
    (Laid::of(&tight, columns, &[]).pages < laid.pages).then_some(tight)
}

/// A last page whose only column is filled to less than this share is spared where it can be (chosen: a few
/// paragraphs).
const SPARSE: f64 = 0.5;
/// To which share of what is free above them blocks come nearer for that (chosen: still apart at a glance).
const NEARER: f64 = 0.65;

/// The least height of columns at which all is on one page, to a step; `None` where a whole page does not hold it.
pub(crate) fn least_height_mm(blocks: &[Block], columns: Columns) -> Option<f64> {
    let heights = (1..=STEPS).map(|step| columns.room.height_mm() * SHORTER * f64::from(step));
    // No heading is parted from what it leads, and nothing is torn.
    let (mut highest, mut together) = (0.0_f64, 0.0);
    for block in blocks {
        together += block.before_mm + block.height_mm();
        if !block.leads {
            highest = highest.max(together);
            together = 0.0;
        }
    }
    let mut held = heights.filter(|height| Laid::of(blocks, columns, &[(0, *height)]).pages == 1);
    held.find(|height| *height >= highest)
}

/// A column filled to less than this share of its height is an orphan (chosen: an entry or two).
const ORPHAN: f64 = 0.2;
/// The fewest lines in the last of columns that were made even (chosen: two lines read as belonging together).
const LEAST_LINES: usize = 2;
/// In how many steps columns are tried shorter, and by which share of their height each.
const STEPS: u32 = 40;
const SHORTER: f64 = 0.025;

/// Where a line goes.
#[derive(Clone, Copy, Debug)]
struct Spot {
    page: usize,
    column: usize,
    y_mm: f64,
}

/// Where all lines of all blocks go, in their order.
struct Laid {
    pages: usize,
    spots: Vec<Spot>,
    /// How far the last column is filled.
    used_mm: f64,
}

impl Laid {
    /// With the columns of some pages cut to a height.
    fn of(blocks: &[Block], columns: Columns, cuts: &[(usize, f64)]) -> Self {
        let top = Spot { page: 0, column: 0, y_mm: columns.room.top_mm };
        let mut hand = Hand { columns, cuts, at: top, spots: Vec::new() };
        for (index, block) in blocks.iter().enumerate() {
            let after = blocks.get(index + 1..).unwrap_or_default();
            hand.block(block, after);
        }
        let used_mm = hand.at.y_mm - columns.room.top_mm;
        Self { pages: hand.at.page + 1, spots: hand.spots, used_mm }
    }

    fn columns_on(&self, page: usize) -> usize {
        self.spots.iter().filter(|spot| spot.page == page).map(|spot| spot.column + 1).max().unwrap_or(0)
    }

    fn lines_in_last_column(&self) -> usize {
        let Some(last) = self.spots.last() else { return 0 };
        self.spots.iter().filter(|spot| (spot.page, spot.column) == (last.page, last.column)).count()
    }

    fn painted(&self, blocks: &[Block], columns: Columns) -> Vec<FlowPage> {
        let mut pages = vec![FlowPage::default(); self.pages];
        let lines = blocks.iter().flat_map(|block| {
            block.lines.iter().enumerate().map(move |(index, line)| (block, index == 0, line))
        });
        for ((block, is_first, line), spot) in lines.zip(&self.spots) {
            let Some(page) = pages.get_mut(spot.page) else { continue };
            page.strokes.take(line.items.clone(), columns.left_mm(spot.column), spot.y_mm);
            if let (Some((words, depth)), true) = (&block.bookmark, is_first) {
                page.bookmarks.push(Bookmark { words: words.clone(), depth: *depth, y_mm: spot.y_mm });
            }
        }
        pages
    }
}

/// Where the next line goes.
struct Hand<'a> {
    columns: Columns,
    cuts: &'a [(usize, f64)],
    at: Spot,
    spots: Vec<Spot>,
}

/// A rounding of the last digit must not cost a line.
const SLACK_MM: f64 = 1e-6;

impl Hand<'_> {
    fn is_at_head(&self) -> bool {
        self.at.y_mm <= self.columns.room.top_mm
    }

    fn next_column(&mut self) {
        self.at.column += 1;
        self.at.y_mm = self.columns.room.top_mm;
        if self.at.column >= self.columns.count {
            self.at.column = 0;
            self.at.page += 1;
        }
    }

    /// How high the columns of this page are.
    fn height_mm(&self) -> f64 {
        let cut = self.cuts.iter().find(|(page, _)| *page == self.at.page);
        cut.map_or(self.columns.room.height_mm(), |(_, height)| *height)
    }

    fn room_mm(&self) -> f64 {
        self.columns.room.top_mm + self.height_mm() - self.at.y_mm + SLACK_MM
    }

    fn block(&mut self, block: &Block, after: &[Block]) {
        if !self.is_at_head() {
            if block.before_mm + self.least_mm(block, after) > self.room_mm() {
                self.next_column();
            } else {
                self.at.y_mm += block.before_mm;
            }
        }
        for line in &block.lines {
            if line.height_mm > self.room_mm() && !self.is_at_head() {
                self.next_column();
            }
            self.spots.push(self.at);
            self.at.y_mm += line.height_mm;
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

    /// How many lines each column of a page has.
    fn lines_in_columns(page: &FlowPage, columns: Columns) -> Vec<usize> {
        let lefts = page.strokes.items.iter().filter_map(|item| Some(item.bounds()?.left_mm));
        let mut lines = vec![0; columns.count];
        for left in lefts {
            let column = (0..columns.count).rfind(|&column| left >= columns.left_mm(column) - 0.001).unwrap();
            lines[column] += 1;
        }
        lines
    }

    #[test]
    fn no_column_of_the_last_page_holds_one_line() {
        // 14 lines, one a block, fill a column; the 15th would stand alone in the second.
        let blocks: Vec<Block> = (0..15).map(|_| block(1, false, "a")).collect();
        let pages = flow(&blocks, columns(2));
        assert_eq!(pages.len(), 1);
        let lines = lines_in_columns(&pages[0], columns(2));
        assert_eq!(lines, [8, 7]);
        check_inside(&pages, columns(2));
    }

    #[test]
    fn no_page_holds_one_line() {
        let blocks: Vec<Block> = (0..33).map(|_| block(1, false, "a")).collect();
        let pages = flow(&blocks, columns(2));
        assert_eq!(pages.len(), 2);
        assert!(pages[1].strokes.items.len() >= LEAST_LINES);
        let lines: usize = pages.iter().map(|page| page.strokes.items.len()).sum();
        assert_eq!(lines, 33, "each line once");
        check_inside(&pages, columns(2));
    }

    #[test]
    fn a_page_with_little_on_it_is_spared_by_less_free_room() {
        // 29 lines of 5 mm, 2 mm between, fill two columns of 100 mm with 28; at 1.3 mm between they hold 32.
        let blocks: Vec<Block> = (0..31).map(|_| block(1, false, "a")).collect();
        assert!(Laid::of(&blocks, columns(2), &[]).pages > 1);
        let pages = flow(&blocks, columns(2));
        assert_eq!(pages.len(), 1);
        assert_eq!(pages[0].strokes.items.len(), 31, "each line once");
        check_inside(&pages, columns(2));
        // What would need a page all the same keeps its room.
        let more: Vec<Block> = (0..34).map(|_| block(1, false, "a")).collect();
        assert!(tight(&more, columns(2)).is_none());
    }

    #[test]
    fn the_least_height_of_a_page_holds_all_and_no_less_does() {
        let blocks: Vec<Block> = (0..12).map(|_| block(1, false, "a")).collect();
        let high = least_height_mm(&blocks, columns(2)).unwrap();
        // Six to a column: 6 x 5 mm and 5 x 2 mm between.
        assert!((40.0..=42.5).contains(&high), "{high}");
        let whole = columns(2);
        let cut = PaperRect { top_mm: whole.room.bottom_mm - high, ..whole.room };
        let pages = flow(&blocks, Columns { room: cut, ..whole });
        assert_eq!(pages.len(), 1);
        check_inside(&pages, Columns { room: cut, ..whole });
        assert_eq!(least_height_mm(&[block(60, false, "long")], columns(1)), None);
        // A heading stays over the six lines that it leads: 2 + 5 + 2 + 30 mm.
        let led = [block(1, true, "head"), block(6, false, "a")];
        assert!(least_height_mm(&led, columns(4)).unwrap() >= 39.0);
    }

    #[test]
    fn a_list_that_fits_one_column_stays_there() {
        let blocks: Vec<Block> = (0..9).map(|_| block(1, false, "a")).collect();
        assert_eq!(lines_in_columns(&flow(&blocks, columns(2))[0], columns(2)), [9, 0]);
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

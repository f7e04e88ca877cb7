//! A page on the way to be one: drawn, but without its frame and title block, which tell how many there are.

use super::flow::{Columns, FlowPage};
use super::{Bookmark, title_block};
use crate::ink::Ink;
use crate::look::{Look, Margin};
use crate::paper::PaperPoint;
use crate::scale::{Scale, StandardScale};
use crate::scene::Scene;
use strikeline_solver::geometry::{Rect, Span};
use strikeline_solver::units::Length;

/// Between the frame and a list.
const INSET_MM: f64 = 4.0;
/// The least a column of a list is wide: about sixty letters (chosen: easily read).
const COLUMN_MM: f64 = 110.0;
/// Between two columns.
const GAP_MM: f64 = 8.0;

/// To which scale a page is drawn.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Ratio {
    /// To none: it is text.
    None,
    /// To a scale of the trade.
    Standard(StandardScale),
    /// As large as fits.
    Fitted,
    /// At full size.
    Full,
}

/// A page without its title block.
#[derive(Clone, Debug)]
pub(crate) struct Leaf {
    /// Which sheet it is of, in words.
    pub(crate) sheet: &'static str,
    pub(crate) scene: Scene,
    pub(crate) ratio: Ratio,
    pub(crate) bookmarks: Vec<Bookmark>,
}

/// Paper so large with nothing on it, at full size: its scale has its upper left corner at the wall's zero.
pub(crate) fn blank(page_mm: (f64, f64)) -> Scene {
    let span = |mm: f64| Span::new(Length::default(), Length::millimetres(mm));
    let upright = Span::new(Length::millimetres(-page_mm.1), Length::default());
    let look = Look {
        paper_mm_per_wall_mm: 1.0,
        shown: Rect::new(span(page_mm.0), upright),
        margin: Margin::even(0.0),
        text_height_mm: crate::look::TEXT_HEIGHT_MM,
        selected: None,
        held: None,
        next_probe: None,
    };
    let scale = Scale::new(&look);
    Scene { width_mm: page_mm.0, height_mm: page_mm.1, items: Vec::new(), figures: Vec::new(), scale }
}

/// The columns that a list has on a page so large.
pub(crate) fn columns(page_mm: (f64, f64)) -> Columns {
    Columns::of(title_block::room(page_mm).grown(-INSET_MM), COLUMN_MM, GAP_MM)
}

/// A page of a list.
pub(crate) fn listed(sheet: &'static str, page_mm: (f64, f64), page: FlowPage) -> Leaf {
    listed_in(sheet, page_mm, columns(page_mm), page)
}

/// The same in columns that are not as high as the page.
pub(crate) fn listed_in(sheet: &'static str, page_mm: (f64, f64), columns: Columns, page: FlowPage) -> Leaf {
    let mut scene = blank(page_mm);
    let mut strokes = page.strokes;
    for column in 1..columns.count {
        let x = columns.left_mm(column) - GAP_MM / 2.0;
        let rule = (PaperPoint::new(x, columns.room.top_mm), PaperPoint::new(x, columns.room.bottom_mm));
        strokes.line(Ink::Dimension, rule.0, rule.1);
    }
    scene.items = strokes.items;
    Leaf { sheet, scene, ratio: Ratio::None, bookmarks: page.bookmarks }
}

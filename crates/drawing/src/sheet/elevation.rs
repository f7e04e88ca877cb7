//! The elevation alone on a page, at the largest standard scale that fits.

use super::leaf::{Leaf, Ratio};
use super::title_block::{self, BLOCK_MM};
use super::{Ask, Bookmark};
use crate::elevation::elevation;
use crate::look::{Look, MARGIN_MM, Margin};
use crate::scale::{Scale, StandardScale};
use crate::scene::Scene;
use strikeline_solver::words::on_paper;

/// Draws it. A wall too large for the smallest scale is fitted, and the page says that it is not to a standard scale.
pub(crate) fn leaves(ask: &Ask<'_>, sheet: &'static str) -> Vec<Leaf> {
    let room = Room { page_mm: ask.paper.page_mm(true), margin_mm: MARGIN_MM, is_to_scale: true };
    drawn(ask, room, sheet, on_paper::ELEVATION, |look| elevation(ask.job, ask.plan, look))
}

/// How large a page is, what is kept free round the wall on it, and whether it is drawn to a scale of the trade or as
/// large as fits.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Room {
    pub(crate) page_mm: (f64, f64),
    pub(crate) margin_mm: f64,
    pub(crate) is_to_scale: bool,
}

/// The whole wall on a page, as `draw` has it.
pub(crate) fn drawn(
    ask: &Ask<'_>,
    Room { page_mm, margin_mm, is_to_scale }: Room,
    sheet: &'static str,
    bookmark: &str,
    draw: impl Fn(&Look) -> Scene,
) -> Vec<Leaf> {
    let plan = ask.plan;
    let outline = plan.survey.outline;
    // The drawing's room, less what is kept free: the rows of dimensions, for one.
    let room = title_block::room(page_mm);
    let free = (room.width_mm() - 2.0 * margin_mm, room.height_mm() - 2.0 * margin_mm);
    let standard = StandardScale::largest_that_fits(ask.job.units(), outline, free).filter(|_| is_to_scale);
    let per = match standard {
        Some(standard) => standard.paper_mm_per_wall_mm(),
        None => (free.0 / outline.width().mm().max(1.0)).min(free.1 / outline.height().mm().max(1.0)),
    };
    // The part that shows is made as large as the room, so that the wall stands in its middle.
    let mut look = Look::whole_wall(plan, per);
    look.margin = Margin::even(margin_mm);
    let scale = Scale::new(&look);
    let (spare_width, spare_height) =
        (room.width_mm() - scale.page().width_mm(), room.height_mm() - scale.page().height_mm());
    let half = |spare: f64| scale.wall_length(spare.max(0.0) / 2.0);
    let below = scale.wall_length(spare_height.max(0.0) / 2.0 + BLOCK_MM);
    look.shown.left -= half(spare_width);
    look.shown.right += half(spare_width);
    look.shown.top += half(spare_height);
    look.shown.bottom -= below;
    look.margin = Margin::even(margin_mm + room.left_mm);
    let scene = draw(&look);
    let bookmark = Bookmark { words: bookmark.to_owned(), depth: 1, y_mm: room.top_mm };
    let ratio = standard.map_or(Ratio::Fitted, Ratio::Standard);
    vec![Leaf { sheet, scene, ratio, bookmarks: vec![bookmark] }]
}

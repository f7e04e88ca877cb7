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
    drawn(ask, sheet, on_paper::ELEVATION, |look| elevation(ask.job, ask.plan, look))
}

/// The whole wall on a page of its own, as `draw` has it.
pub(crate) fn drawn(
    ask: &Ask<'_>,
    sheet: &'static str,
    bookmark: &str,
    draw: impl Fn(&Look) -> Scene,
) -> Vec<Leaf> {
    let plan = ask.plan;
    let page_mm = ask.paper.page_mm(true);
    let outline = plan.survey.outline;
    // The drawing's room, less the rows of dimensions.
    let room = title_block::room(page_mm);
    let free = (room.width_mm() - 2.0 * MARGIN_MM, room.height_mm() - 2.0 * MARGIN_MM);
    let standard = StandardScale::largest_that_fits(ask.job.units(), outline, free);
    let per = match standard {
        Some(standard) => standard.paper_mm_per_wall_mm(),
        None => (free.0 / outline.width().mm().max(1.0)).min(free.1 / outline.height().mm().max(1.0)),
    };
    // The part that shows is made as large as the room, so that the wall stands in its middle.
    let mut look = Look::whole_wall(plan, per);
    let scale = Scale::new(&look);
    let (spare_width, spare_height) =
        (room.width_mm() - scale.page().width_mm(), room.height_mm() - scale.page().height_mm());
    let half = |spare: f64| scale.wall_length(spare.max(0.0) / 2.0);
    let below = scale.wall_length(spare_height.max(0.0) / 2.0 + BLOCK_MM);
    look.shown.left -= half(spare_width);
    look.shown.right += half(spare_width);
    look.shown.top += half(spare_height);
    look.shown.bottom -= below;
    look.margin = Margin::even(MARGIN_MM + room.left_mm);
    let scene = draw(&look);
    let bookmark = Bookmark { words: bookmark.to_owned(), depth: 1, y_mm: room.top_mm };
    let ratio = standard.map_or(Ratio::Fitted, Ratio::Standard);
    vec![Leaf { sheet, scene, ratio, bookmarks: vec![bookmark] }]
}

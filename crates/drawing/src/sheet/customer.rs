//! For the customer: the wall as it will be seen, and the option in plain words, on one page where the picture stays
//! large enough there.

use super::Ask;
use super::elevation::{self, Room};
use super::flow::{Columns, FlowPage, flow, least_height_mm};
use super::leaf::{self, Leaf};
use super::list::{List, STRONG, TEXT};
use super::size::BORDER_MM;
use super::title_block::BLOCK_MM;
use crate::customer_view::customer_view;
use crate::paper::PaperRect;
use strikeline_solver::words::{self, on_paper};

/// A picture that shares its page is at least so large a part of what it is on a page of its own (chosen: what is seen
/// in it is still seen).
const SMALLEST: f64 = 0.5;

/// Free round the picture: it has no dimensions (chosen: the ground below the wall has room there).
const MARGIN_MM: f64 = 7.0;

/// Between the picture's room and the words under it.
const ABOVE_WORDS_MM: f64 = 1.0;

/// Draws it.
pub(crate) fn leaves(ask: &Ask<'_>) -> Vec<Leaf> {
    let page_mm = ask.paper.page_mm(true);
    let columns = leaf::columns(page_mm);
    let list = listed(ask, columns.width_mm());
    let alone = picture(ask, page_mm, true);
    if let Some(both) = on_one_page(ask, page_mm, columns, &list, alone.as_ref()) {
        return vec![both];
    }
    let words = flow(&list.blocks, columns);
    let words = words.into_iter().map(|page| leaf::listed(on_paper::CUSTOMER, page_mm, page));
    alone.into_iter().chain(words).collect()
}

fn picture(ask: &Ask<'_>, page_mm: (f64, f64), is_to_scale: bool) -> Option<Leaf> {
    let room = Room { page_mm, margin_mm: MARGIN_MM, is_to_scale };
    let draw = |look: &_| customer_view(ask.plan, look);
    elevation::drawn(ask, room, on_paper::CUSTOMER, on_paper::AS_SEEN, draw).into_iter().next()
}

/// Picture, as large as fits, and words together, the way the picture is larger: the words under it or at its right.
/// `None` where the two do not go together.
fn on_one_page(
    ask: &Ask<'_>,
    page_mm: (f64, f64),
    columns: Columns,
    list: &List,
    alone: Option<&Leaf>,
) -> Option<Leaf> {
    let high_mm = least_height_mm(&list.blocks, columns);
    let under = high_mm.map(|high| PaperRect { top_mm: columns.room.bottom_mm - high, ..columns.room });
    // The picture's own room ends a little above the words.
    let part_mm = |room: PaperRect| (page_mm.0, room.top_mm + BLOCK_MM + BORDER_MM - ABOVE_WORDS_MM);
    let under = under.map(|room| (part_mm(room), Columns { room, ..columns }));
    let last = columns.left_mm(columns.count.saturating_sub(1));
    let beside = Columns { room: PaperRect { left_mm: last, ..columns.room }, count: 1, ..columns };
    let beside = (columns.count > 1).then_some(((last, page_mm.1), beside));
    let least = SMALLEST * alone?.scene.scale.paper_mm_per_wall_mm();
    let mut best: Option<(f64, Leaf)> = None;
    for (part_mm, columns) in [beside, under].into_iter().flatten() {
        let Ok([words]) = <[FlowPage; 1]>::try_from(flow(&list.blocks, columns)) else { continue };
        let Some(mut both) = picture(ask, part_mm, false) else { continue };
        let per = both.scene.scale.paper_mm_per_wall_mm();
        if per < least || best.as_ref().is_some_and(|(larger, _)| *larger >= per) {
            continue;
        }
        let words = leaf::listed_in(on_paper::CUSTOMER, page_mm, columns, words);
        (both.scene.width_mm, both.scene.height_mm) = page_mm;
        both.scene.items.extend(words.scene.items);
        both.bookmarks.extend(words.bookmarks);
        best = Some((per, both));
    }
    best.map(|(_, both)| both)
}

/// The option in plain words.
fn listed(ask: &Ask<'_>, width_mm: f64) -> List {
    let (job, plan) = (ask.job, ask.plan);
    let mut list = List::new(width_mm);
    list.paragraph(&on_paper::title(job), STRONG);
    list.paragraph(&on_paper::wall_and_option(job, plan), TEXT);
    list.heading(on_paper::AGREED, 1);
    list.paragraph(&on_paper::agreed(job, plan), TEXT);
    for (part, text) in words::offer(plan) {
        list.heading(words::offer_part(part), 1);
        list.paragraph(&text, TEXT);
    }
    list
}

//! What was planned and what was done, side by side: the wall with what is done in its own ink, then each mark.

use super::flow::flow;
use super::leaf::{self, Leaf};
use super::list::{List, STRONG, TEXT};
use super::{Ask, elevation};
use strikeline_solver::words::{self, on_paper};

/// Draws it.
pub(crate) fn leaves(ask: &Ask<'_>) -> Vec<Leaf> {
    let (job, plan) = (ask.job, ask.plan);
    let page_mm = ask.paper.page_mm(true);
    let columns = leaf::columns(page_mm);
    let mut list = List::new(columns.width_mm());
    list.paragraph(&on_paper::title(job), STRONG);
    list.paragraph(&on_paper::wall_and_option(job, plan), TEXT);
    list.paragraph(on_paper::KEY_DONE, TEXT);
    let handover = words::handover(job, plan);
    list.heading(on_paper::DONE, 1);
    for one in &handover.done {
        list.mark(&one.name, "", &one.told, true);
    }
    if handover.done.is_empty() {
        list.paragraph(on_paper::NOTHING_DONE, TEXT);
    }
    for (heading, told) in [
        (on_paper::NOT_DONE, &handover.left),
        (on_paper::MET, &handover.met),
        (on_paper::TO_FOLLOW, &handover.follows),
        (on_paper::PICTURES, &handover.pictures),
    ] {
        list.heading(heading, 1);
        for line in told {
            list.paragraph(line, TEXT);
        }
        if told.is_empty() {
            list.paragraph(on_paper::NONE, TEXT);
        }
    }
    let pages = flow(&list.blocks, columns);
    let listed = pages.into_iter().map(|page| leaf::listed(on_paper::HANDOVER, page_mm, page));
    elevation::leaves(ask, on_paper::HANDOVER).into_iter().chain(listed).collect()
}

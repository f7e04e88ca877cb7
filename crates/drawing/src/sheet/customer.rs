//! For the customer: the wall as it will be seen, and the option in plain words.

use super::flow::flow;
use super::leaf::{self, Leaf};
use super::list::{List, STRONG, TEXT};
use super::{Ask, elevation};
use crate::customer_view::customer_view;
use strikeline_solver::words::{self, on_paper};

/// Draws it.
pub(crate) fn leaves(ask: &Ask<'_>) -> Vec<Leaf> {
    let (job, plan) = (ask.job, ask.plan);
    let page_mm = ask.paper.page_mm(true);
    let columns = leaf::columns(page_mm);
    let mut list = List::new(columns.width_mm());
    list.paragraph(&on_paper::title(job), STRONG);
    list.paragraph(&on_paper::wall_and_option(job, plan), TEXT);
    list.heading(on_paper::AGREED, 1);
    list.paragraph(&on_paper::agreed(job, plan), TEXT);
    for (part, text) in words::offer(plan) {
        list.heading(words::offer_part(part), 1);
        list.paragraph(&text, TEXT);
    }
    let pages = flow(&list.blocks, columns);
    let listed = pages.into_iter().map(|page| leaf::listed(on_paper::CUSTOMER, page_mm, page));
    let picture =
        elevation::drawn(ask, on_paper::CUSTOMER, on_paper::AS_SEEN, |look| customer_view(plan, look));
    picture.into_iter().chain(listed).collect()
}

//! What to bring, for the whole job, each with its box to tick and what asks for it.

use super::Ask;
use super::flow::flow;
use super::leaf::{self, Leaf};
use super::list::{List, STRONG, TEXT};
use strikeline_solver::carry::carry;
use strikeline_solver::words::{carried, carried_for, carried_why, on_paper};

/// Draws it.
pub(crate) fn leaves(ask: &Ask<'_>) -> Vec<Leaf> {
    let page_mm = ask.paper.page_mm(true);
    let columns = leaf::columns(page_mm);
    let mut list = List::new(columns.width_mm());
    list.paragraph(&on_paper::title(ask.job), STRONG);
    list.paragraph(&carried_for(ask.job, ask.planned), TEXT);
    list.heading(on_paper::CARRY, 1);
    let lines = carry(ask.job, ask.planned);
    for line in &lines {
        list.mark(&carried(ask.plan, line), "", &carried_why(ask.plan, line), false);
    }
    if lines.is_empty() {
        list.paragraph(on_paper::NONE, TEXT);
    }
    flow(&list.blocks, columns).into_iter().map(|page| leaf::listed(on_paper::CARRY, page_mm, page)).collect()
}

//! The mark-out sheet: the elevation to scale, then what is done at the wall in its order, with what it takes.

use super::flow::flow;
use super::leaf::{self, Leaf};
use super::list::{List, STRONG, TEXT};
use super::{Ask, elevation};
use strikeline_solver::error_budget::error_budgets;
use strikeline_solver::finding::Level;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::words::{self, on_paper};

/// How the width of the schedule is shared among its columns.
const SCHEDULE: [f64; 4] = [0.15, 0.41, 0.22, 0.22];

/// A schedule of no more rows than this stays in one column.
const WHOLE_ROWS: usize = 12;

/// Draws it.
pub(crate) fn leaves(ask: &Ask<'_>) -> Vec<Leaf> {
    let page_mm = ask.paper.page_mm(true);
    let columns = leaf::columns(page_mm);
    let mut list = List::new(columns.width_mm());
    head(&mut list, ask);
    marks(&mut list, ask);
    fasteners(&mut list, ask);
    cables(&mut list, ask);
    told(&mut list, ask);
    let pages = flow(&list.blocks, columns);
    let listed = pages.into_iter().map(|page| leaf::listed(on_paper::MARK_OUT, page_mm, page));
    elevation::leaves(ask, on_paper::MARK_OUT).into_iter().chain(listed).collect()
}

/// Job, wall and option in full, where each piece goes, and what to do first.
fn head(list: &mut List, ask: &Ask<'_>) {
    let (job, plan) = (ask.job, ask.plan);
    list.paragraph(&on_paper::title(job), STRONG);
    list.paragraph(&on_paper::wall_and_option(job, plan), TEXT);
    for piece in &plan.pieces {
        list.paragraph(&words::place_line(plan, piece), TEXT);
    }
    if let Some(verdict) = on_paper::verdict(plan) {
        list.paragraph(&verdict, TEXT);
    }
    list.paragraph(on_paper::KEY, TEXT);
    let next = words::next(plan);
    if !next.is_empty() {
        list.paragraph(&on_paper::next(&next), STRONG);
    }
}

fn marks(list: &mut List, ask: &Ask<'_>) {
    let plan = ask.plan;
    list.heading(on_paper::MARKS, 1);
    let mut before = None;
    for (index, mark) in plan.marks.iter().enumerate() {
        if before != Some(mark.stage) {
            before = Some(mark.stage);
            list.heading(words::stage(mark.stage), 2);
        }
        let name = format!("{}. {}", index + 1, words::mark_name(plan, mark));
        let figures = on_paper::figures(plan, mark);
        list.mark(&name, &figures, &words::mark(plan, mark), mark.is_finished());
    }
    if plan.marks.is_empty() {
        list.paragraph(on_paper::NONE, TEXT);
    }
}

fn fasteners(list: &mut List, ask: &Ask<'_>) {
    let plan = ask.plan;
    let mounted = plan.pieces.iter().filter_map(|piece| Some((piece, piece.mount.as_ref()?)));
    for (index, (piece, mount)) in mounted.enumerate() {
        if index == 0 {
            list.heading(on_paper::FASTENERS, 1);
        }
        named(list, plan, piece);
        let schedule = &mount.fastening.fasteners;
        if !schedule.is_empty() {
            list.row(&cells(&on_paper::SCHEDULE.map(str::to_owned)), STRONG, true);
        }
        // A short table is not torn: each row but the last leads on to the next.
        let is_short = schedule.len() <= WHOLE_ROWS;
        for (index, fastener) in schedule.iter().enumerate() {
            let leads = is_short && index + 1 < schedule.len();
            list.row(&cells(&on_paper::schedule_row(plan, fastener)), TEXT, leads);
        }
        for empty in &mount.fastening.left_empty {
            list.paragraph(&words::left_empty(plan, empty), TEXT);
        }
        for sentence in words::verdict(plan, &mount.fastening) {
            list.paragraph(&sentence, TEXT);
        }
        if let Some(asks) = words::asks(ask.job, &mount.id) {
            list.paragraph(&asks, TEXT);
        }
    }
}

fn cells(row: &[String; 4]) -> Vec<(&str, f64)> {
    row.iter().map(String::as_str).zip(SCHEDULE).collect()
}

/// The piece's name over what is told of it, where there are several.
fn named(list: &mut List, plan: &Plan, piece: &PiecePlan) {
    if plan.pieces.len() > 1 {
        list.heading(&words::capital(&words::thing(plan, &piece.id.whole())), 2);
    }
}

fn cables(list: &mut List, ask: &Ask<'_>) {
    let plan = ask.plan;
    let told = plan.pieces.iter().map(|piece| (piece, words::cable(plan, piece)));
    for (index, (piece, sentences)) in told.filter(|(_, sentences)| !sentences.is_empty()).enumerate() {
        if index == 0 {
            list.heading(on_paper::CABLES, 1);
        }
        named(list, plan, piece);
        for sentence in sentences {
            list.paragraph(&sentence, TEXT);
        }
    }
}

/// Findings, what was assumed, what is not checked.
fn told(list: &mut List, ask: &Ask<'_>) {
    let plan = ask.plan;
    list.heading(on_paper::FINDINGS, 1);
    for finding in &plan.findings {
        let letters = if finding.level == Level::Stop { STRONG } else { TEXT };
        list.paragraph(&on_paper::finding(plan, finding), letters);
    }
    if plan.findings.is_empty() {
        list.paragraph(on_paper::NONE, TEXT);
    }
    for (index, sentence) in words::error_budgets(plan, &error_budgets(ask.job, plan)).iter().enumerate() {
        if index == 0 {
            list.heading(on_paper::HOW_TRUE, 1);
        }
        list.paragraph(sentence, TEXT);
    }
    list.heading(on_paper::ASSUMED, 1);
    for assumed in &plan.assumed {
        list.paragraph(&words::assumed(plan, assumed), TEXT);
    }
    if plan.assumed.is_empty() {
        list.paragraph(on_paper::NONE, TEXT);
    }
    list.heading(on_paper::CAUTIONS, 1);
    for caution in words::cautions() {
        list.paragraph(caution, TEXT);
    }
}

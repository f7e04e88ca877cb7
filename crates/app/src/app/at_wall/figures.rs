//! The readings of a mark in figures as large as the window allows, each with its close under it.

use super::sizes::points;
use crate::theme;
use crate::widgets::unbroken::unbroken;
use egui::{Label, RichText, Ui};
use strikeline_drawing::font::Weight;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkWhat, Reading};
use strikeline_solver::words;

/// The least size of a figure, in millimetres: it is read from 2 m (chosen).
const LEAST_MM: f32 = 15.0;
/// The largest: past it the words have no room (chosen).
const MOST: f32 = 150.0;
/// What each reading's words take under its figure, and what the sentence takes at the end, in points.
const WORDS: f32 = 74.0;
const SENTENCE: f32 = 130.0;

/// Shows them. A mark that is assumed shows none: it is not to be struck.
pub(super) fn figures(ui: &mut Ui, plan: &Plan, mark: &Mark) {
    if mark.assumed {
        return;
    }
    let depth = match &mark.what {
        MarkWhat::Probe { depth, .. } => *depth,
        _ => None,
    };
    let hole = bored(plan, mark);
    let count = mark.readings.len() + usize::from(depth.is_some()) + usize::from(hole.is_some());
    let each = (ui.clip_rect().bottom() - ui.cursor().top() - SENTENCE) / count.max(1) as f32 - WORDS;
    let least = points(ui, LEAST_MM);
    // A line is two fifths higher than its letters.
    let size = (each / 1.4).clamp(least, MOST.max(least));
    if let Some(depth) = depth {
        figure(ui, size, &plan.style.print(depth), "the stop on the bit: no deeper", None);
    }
    if let Some((deep, words)) = &hole {
        figure(ui, size, deep, words, None);
    }
    for reading in &mark.readings {
        let shown = plan.style.print_steps(reading.steps);
        let beside = words::beside(plan, reading.direction, &reading.from);
        let beside = match words::line_end(mark, reading) {
            Some(end) => format!("{beside}, at its {end} end"),
            None => beside,
        };
        figure(ui, size, &shown, &beside, close(plan, reading).as_deref());
    }
}

/// The check from the other side, as short as it can be told.
fn close(plan: &Plan, reading: &Reading) -> Option<String> {
    let close = reading.close.as_ref()?;
    let shown = plan.style.print_steps(close.closing.second);
    Some(format!("closes with {shown} {}", words::beside(plan, close.direction, &close.from)))
}

fn figure(ui: &mut Ui, size: f32, shown: &str, beside: &str, close: Option<&str>) {
    let font = theme::font(size, Weight::Semibold);
    ui.add(Label::new(RichText::new(unbroken(shown)).font(font)).wrap());
    ui.add(Label::new(RichText::new(unbroken(beside)).size(22.0)).wrap());
    if let Some(close) = close {
        let quiet = theme::quiet(ui.theme());
        ui.add(Label::new(RichText::new(unbroken(close)).size(22.0).color(quiet)).wrap());
    }
    ui.add_space(8.0);
}

/// How deep a hole is bored, for the bit's stop, and with which bit and for which fastener; `None` for another mark, or
/// where that is not known.
fn bored(plan: &Plan, mark: &Mark) -> Option<(String, String)> {
    let mut mounted = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref());
    let fastener =
        mounted.find_map(|mount| mount.fastening.fasteners.iter().find(|one| one.subject == mark.id))?;
    let deep = plan.style.print(fastener.depth?);
    Some((deep, format!("the stop on the bit. {}", words::fastener_and_bit(plan, fastener))))
}

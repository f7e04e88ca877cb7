//! How a mark is found with a tape, in words.

use super::datum::datum;
use super::phrase::{sentence, way};
use super::things::thing;
use crate::geometry::Axis;
use crate::plan::Plan;
use crate::plan::mark::{Close, How, Mark, MarkWhat, Reading};
use crate::tape::Style;
use crate::units::{Length, LengthUnit};

/// The sentences of a mark's readings: those from lines already struck in one sentence, then one each.
pub(super) fn readings(plan: &Plan, mark: &Mark) -> Vec<String> {
    let lines = mark.readings.iter().filter(|reading| reading.how == How::Line);
    let lines: Vec<String> = lines.map(|reading| reading_clause(plan, reading)).collect();
    let others = mark.readings.iter().filter(|reading| reading.how != How::Line).map(|reading| {
        let clause = reading_clause(plan, reading);
        match line_end(mark, reading) {
            Some(end) => sentence(&format!("at its {end} end {clause}")),
            None => sentence(&clause),
        }
    });
    let first = (!lines.is_empty()).then(|| sentence(&lines.join("; ")));
    first.into_iter().chain(others).collect()
}

/// Which end of a level line a reading is taken at.
pub(super) fn line_end(mark: &Mark, reading: &Reading) -> Option<&'static str> {
    let (left, right) = mark.line.filter(|_| mark.what == MarkWhat::LevelLine)?;
    if reading.direction.axis() != Axis::Upright {
        return None;
    }
    let (to_left, to_right) = ((reading.at - left.x).abs(), (reading.at - right.x).abs());
    Some(if to_left <= to_right { "left" } else { "right" })
}

/// One reading with its close, without a capital or a full stop.
fn reading_clause(plan: &Plan, reading: &Reading) -> String {
    let from = datum(plan, &reading.from);
    let read = way(reading.direction);
    let shown = plan.style.print_steps(reading.steps);
    let mut clause = match reading.how {
        How::Line if reading.steps == 0 => format!("on {from}"),
        How::Line => format!("from {from}, {read} {shown}"),
        How::Butt => format!("butt {from}, read {read} {shown}"),
        How::Hook => format!("hook {from}, read {read} {shown}"),
        How::Corner | How::Level | How::Floor => format!("from {from} read {read} {shown}"),
        How::Meter => format!("distance meter from {from} to a card held on the mark, {read} {shown}"),
        How::Help => format!("with help, from {from} read {read} {shown}"),
    };
    if let Some(close) = &reading.close {
        clause.push_str(&format!(" ({})", close_clause(plan, close)));
    }
    if let Some(over) = &reading.taut_over {
        clause.push_str(&format!("; keep the blade taut over {}", thing(plan, &over.whole())));
    }
    clause
}

/// The check from the other side.
fn close_clause(plan: &Plan, close: &Close) -> String {
    let (style, closing) = (plan.style, close.closing);
    let shown = style.print_steps(closing.second.saturating_abs());
    let mut clause = format!("closes: {shown} to {}", datum(plan, &close.from));
    if closing.differs {
        let span = style.print_steps(closing.span.saturating_abs());
        // A second datum on the mark's own side does not add up: the two differ by the span.
        let adds_up = closing.first.saturating_add(closing.second) == closing.span;
        let both = if adds_up { "both add up to" } else { "the two differ by" };
        clause.push_str(&format!(", one graduation off its own nearest, so that {both} {span}"));
    }
    if let Some(remainder) = remainder(style, closing.remainder) {
        clause.push_str(&format!(", remainder {remainder}"));
    }
    clause
}

/// What the span has over its printed graduation, signed and in decimals, since it is less than a graduation.
fn remainder(style: Style, remainder: Length) -> Option<String> {
    let (value, unit) = match style.graduation.unit() {
        LengthUnit::Millimetre => (format!("{:+.1}", remainder.mm()), " mm"),
        LengthUnit::Inch | LengthUnit::Mil => (format!("{:+.3}", remainder.in_inches()), "\""),
    };
    let digits = value.trim_end_matches('0').trim_end_matches('.');
    let told = digits.contains(|c: char| c.is_ascii_digit() && c != '0');
    told.then(|| format!("{digits}{unit}"))
}

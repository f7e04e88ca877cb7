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
    let others = mark.readings.iter().filter(|reading| reading.how != How::Line).map(|reading| {
        let clause = reading_clause(plan, reading);
        match line_end(mark, reading) {
            Some(end) => sentence(&format!("at its {end} end {clause}")),
            None => sentence(&clause),
        }
    });
    line_readings(plan, &mark.readings).into_iter().chain(others).collect()
}

/// The one sentence of the readings from lines already struck; `None` where there are none.
pub(super) fn line_readings(plan: &Plan, readings: &[Reading]) -> Option<String> {
    let lines = readings.iter().filter(|reading| reading.how == How::Line);
    let lines: Vec<String> = lines.map(|reading| reading_clause(plan, reading)).collect();
    (!lines.is_empty()).then(|| sentence(&lines.join("; ")))
}

/// Which end of a level line a reading is taken at.
#[must_use]
pub fn line_end(mark: &Mark, reading: &Reading) -> Option<&'static str> {
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

#[cfg(test)]
mod tests {
    use super::super::sample::{self, inches, reading, with_close};
    use super::*;
    use crate::geometry::Direction;
    use crate::plan::mark::ReadingDatum;
    use crate::subject::Id;

    fn told(reading: Reading) -> String {
        let plan = sample::plan();
        let mut mark = plan.marks.iter().find(|mark| mark.what == MarkWhat::CentreLine).unwrap().clone();
        mark.readings = vec![reading];
        readings(&plan, &mark).join(" ")
    }

    fn edge(text: &str) -> ReadingDatum {
        ReadingDatum::Edge(crate::subject::Subject::read(text).unwrap())
    }

    #[test]
    fn each_way_of_holding_the_tape_is_told() {
        let (left, right, up) = (Direction::Left, Direction::Right, Direction::Up);
        let cases = [
            (
                reading(edge("window-1.left"), How::Butt, left, "14 3/8"),
                "Butt the window's left edge, read left 14 3/8\".",
            ),
            (
                reading(ReadingDatum::LeftEnd, How::Hook, right, "55"),
                "Hook the left corner, read right 55\".",
            ),
            (reading(ReadingDatum::Floor, How::Floor, up, "64 3/4"), "From the floor read up 64 3/4\"."),
            (
                reading(ReadingDatum::ControlLine, How::Level, up, "17 1/4"),
                "From the control line read up 17 1/4\".",
            ),
            (
                reading(ReadingDatum::RightEnd, How::Meter, left, "75"),
                "Distance meter from the right corner to a card held on the mark, left 75\".",
            ),
            (
                reading(ReadingDatum::Nothing, How::Help, right, "75"),
                "With help, from the middle of the wall's nearest end read right 75\".",
            ),
            (
                reading(ReadingDatum::Struck(Id::new("display-1").part("level_line")), How::Line, up, "0"),
                "On the level line.",
            ),
        ];
        for (reading, words) in cases {
            assert_eq!(told(reading), words);
        }
    }

    #[test]
    fn a_close_is_told_with_its_datum() {
        let first = reading(ReadingDatum::LeftEnd, How::Corner, Direction::Right, "24 1/4");
        assert_eq!(
            told(with_close(first, edge("door-1.left"), "64 3/4")),
            "From the left corner read right 24 1/4\" (closes: 40 1/2\" to Garden door's left trim)."
        );
    }

    #[test]
    fn a_second_off_its_nearest_and_a_remainder_say_so() {
        let first = reading(ReadingDatum::LeftEnd, How::Corner, Direction::Right, "10 1/32");
        assert_eq!(
            told(with_close(first.clone(), ReadingDatum::RightEnd, "20 1/16")),
            "From the left corner read right 10\" (closes: 10 1/16\" to the right corner, one graduation off its \
             own nearest, so that both add up to 20 1/16\")."
        );
        let text = told(with_close(first.clone(), ReadingDatum::RightEnd, "20.02"));
        assert!(text.ends_with("to the right corner, remainder +0.02\")."), "{text}");
        let text = told(with_close(first, ReadingDatum::RightEnd, "19.99"));
        assert!(text.contains("remainder -0.01\""), "{text}");
    }

    #[test]
    fn a_proud_thing_on_the_way_is_named() {
        let mut over = reading(ReadingDatum::Floor, How::Floor, Direction::Up, "65 1/4");
        over.taut_over = Some(Id::new("baseboard-1"));
        assert_eq!(told(over), "From the floor read up 65 1/4\"; keep the blade taut over the baseboard.");
    }

    #[test]
    fn a_remainder_that_rounds_away_is_not_told() {
        assert_eq!(remainder(sample::plan().style, inches("0.0002")), None);
    }
}

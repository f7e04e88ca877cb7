//! How far off the finished piece can be, what makes the most of it, and what would halve that.

use super::called::Called;
use super::phrase::{amount, sentence};
use crate::error_budget::{Budget, ErrorBudget, ErrorFrom};
use crate::handbook::measuring::LINE_LASER_MM_PER_M;
use crate::ledger::Label;
use crate::measuring::level::between_walls;
use crate::plan::Plan;
use crate::units::LengthUnit;

/// The budgets of a plan's pieces: each its middle, its top, how level it is; then what nobody can work out. Nothing
/// where there is none.
#[must_use]
pub fn error_budgets(plan: &Plan, budgets: &[ErrorBudget]) -> Vec<String> {
    let Some(first) = budgets.first() else { return Vec::new() };
    let mut sentences: Vec<String> = budgets.iter().flat_map(|budget| of_piece(plan, budget)).collect();
    sentences.push(format!(
        "A spirit level that it is checked with is itself off by up to {} ({}).",
        degrees(first.level.value.deg()),
        first.level.reason
    ));
    let floor = match plan.survey.floor.readings.len() {
        0 | 1 => ", a floor read at fewer than two places",
        _ => "",
    };
    sentences.push(format!("Not counted: how the mount's own parts give, a face out of plumb{floor}."));
    sentences
}

fn of_piece(plan: &Plan, budget: &ErrorBudget) -> [String; 3] {
    let piece = plan.pieces.iter().find(|piece| piece.id == budget.piece);
    let of = |part: &str| {
        piece.map_or_else(|| format!("the {part}"), |piece| Called::piece(plan, piece).own(part))
    };
    let whole = piece.map_or_else(|| "it".to_owned(), |piece| Called::piece(plan, piece).words);
    let length = |mm: f64| match plan.style.graduation.unit() {
        LengthUnit::Millimetre => format!("{:.1} mm", up(mm, 10.0)),
        _ => format!("{:.2}\"", up(mm / 25.4, 100.0)),
    };
    [
        sentence(&told(plan, &format!("{} can be off sideways", of("middle")), &budget.centre, length)),
        sentence(&told(plan, &format!("{} can be off up or down", of("top edge")), &budget.top, length)),
        sentence(&told(plan, &format!("{whole} can be out of level"), &budget.tilt, degrees)),
    ]
}

fn degrees(deg: f64) -> String {
    format!("{:.2} degrees", up(deg, 100.0))
}

/// Up, so that nothing is told as less than it is.
fn up(value: f64, parts: f64) -> f64 {
    (value * parts - 1e-6).ceil() / parts
}

fn told(plan: &Plan, what: &str, budget: &Budget, print: impl Fn(f64) -> String) -> String {
    let Some(largest) = budget.largest() else { return format!("{what} by nothing that can be worked out") };
    let memory = if budget.label() >= Label::Memory { "; a part of it is from memory" } else { "" };
    format!(
        "{what} by {} at the worst, {} as independent errors add up; most of it is {}: {}, and it is {}{memory}",
        print(budget.stack.worst),
        print(budget.stack.rss),
        error_from(largest),
        halved(plan, budget, largest),
        print(budget.with_half(largest).rss)
    )
}

/// What makes an error.
#[must_use]
pub fn error_from(from: ErrorFrom) -> &'static str {
    match from {
        ErrorFrom::Tape => "the tape itself",
        ErrorFrom::Meter => "the distance meter",
        ErrorFrom::Graduation => "reading to the nearest graduation",
        ErrorFrom::Pencil => "the width of pencil lines",
        ErrorFrom::Corner => "the tape's end in the corner",
        ErrorFrom::ControlLine => "the control line",
        ErrorFrom::Floor => "the floor between its readings",
        ErrorFrom::Plate => "the plate's holes round its fasteners",
        ErrorFrom::Drop => "the drop as it was measured",
    }
}

/// What the hand does so that half of it is left, or less.
fn halved(plan: &Plan, budget: &Budget, from: ErrorFrom) -> String {
    let what = match from {
        ErrorFrom::Tape => "take a tape that is off by half as much",
        ErrorFrom::Meter => "take the mean of four readings",
        ErrorFrom::Graduation => "read to half of a graduation",
        ErrorFrom::Pencil => "strike with a knife or an awl, lines half as wide",
        ErrorFrom::Corner => {
            "hold into the corner a block whose length is known to half of that, and read from it"
        }
        ErrorFrom::Floor => "read the floor once more, midway between its readings to either side",
        ErrorFrom::Plate => {
            "sleeve the fasteners in their holes, or centre them as they are tightened, to half of that room"
        }
        ErrorFrom::Drop => "take the mean of four readings, two at each bracket",
        ErrorFrom::ControlLine if budget.is_measured(from) => {
            "strike it four times, each time set up anew, and take the mean"
        }
        ErrorFrom::ControlLine => {
            let width = plan.survey.outline.width();
            let apart = between_walls(LINE_LASER_MM_PER_M.value, width);
            return format!(
                "strike a laser's line at both ends of the wall, once from beside each, and split the difference, which should \
                 be no more than {} ({})",
                amount(plan, apart),
                LINE_LASER_MM_PER_M.source
            );
        }
    };
    what.to_owned()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{self, well_told};
    use super::*;
    use crate::error_budget::{ERRORS, ErrorPart};
    use crate::ledger::Given;
    use crate::measuring::stack::stack;
    use crate::subject::Id;
    use crate::units::Angle;

    fn budget(parts: &[(ErrorFrom, f64)]) -> Budget {
        let part =
            |&(from, amount): &(ErrorFrom, f64)| ErrorPart { from, amount, label: Label::Chosen, source: "" };
        let amounts: Vec<f64> = parts.iter().map(|(_, amount)| *amount).collect();
        Budget { stack: stack(&amounts), parts: parts.iter().map(part).collect() }
    }

    fn whole(piece: Id, one: Budget) -> ErrorBudget {
        let level = Given::chosen(Angle::degrees(0.05)).because("chosen");
        ErrorBudget { piece, centre: one.clone(), top: one.clone(), tilt: one, level }
    }

    #[test]
    fn the_largest_is_named_with_what_halves_it() {
        let plan = sample::plan();
        let piece = plan.pieces[0].id.clone();
        for from in ERRORS {
            let one = budget(&[(from, 3.0), (ErrorFrom::Graduation, 0.4)]);
            let all = whole(piece.clone(), one);
            let told = error_budgets(&plan, &[all]);
            told.iter().for_each(|line| well_told(line));
            assert!(told[0].contains(error_from(from)), "{}", told[0]);
        }
        let none = whole(piece, budget(&[]));
        error_budgets(&plan, &[none]).iter().for_each(|line| well_told(line));
        assert!(error_budgets(&plan, &[]).is_empty());
    }

    #[test]
    fn several_pieces_share_what_is_told_at_the_end() {
        let plan = sample::plan();
        let of = || whole(plan.pieces[0].id.clone(), budget(&[(ErrorFrom::Floor, 2.0)]));
        let told = error_budgets(&plan, &[of(), of()]);
        assert_eq!(told.len(), 3 + 3 + 2);
        assert_eq!(told.iter().filter(|line| line.contains("spirit level")).count(), 1);
    }

    #[test]
    fn nothing_is_told_as_less_than_it_is() {
        assert_eq!(format!("{:.2}", up(0.101, 100.0)), "0.11");
        assert_eq!(format!("{:.2}", up(0.25, 100.0)), "0.25");
    }
}

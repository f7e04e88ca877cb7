//! How far off a finished piece can be: what each reading of its plate's two lines, the plate on its fasteners and the
//! piece on its plate may add, at the worst and as independent errors add up.

mod chain;
mod onto_plate;

use crate::geometry::Axis;
use crate::job::Job;
use crate::job::piece::PieceKind;
use crate::ledger::{Given, Label};
use crate::measuring::stack::{Stack, stack};
use crate::numeric::slope_angle;
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkWhat};
use crate::plan::piece::PiecePlan;
use crate::subject::Id;
use crate::units::{Angle, Length};

/// What a finished piece can be off by.
#[derive(Clone, Debug, PartialEq)]
pub struct ErrorBudget {
    /// The piece.
    pub piece: Id,
    /// Its middle, sideways: millimetres.
    pub centre: Budget,
    /// Its top edge, up and down: millimetres.
    pub top: Budget,
    /// Out of level: degrees.
    pub tilt: Budget,
    /// How far off the spirit level is that it is checked with: no part of the tilt.
    pub level: Given<Angle>,
}

/// What errors come to, and what they are made of.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Budget {
    /// At the worst, and as independent errors add up.
    pub stack: Stack,
    /// Each error, in the order in which the work makes them.
    pub parts: Vec<ErrorPart>,
}

/// One error, in the unit of its budget.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ErrorPart {
    /// What makes it.
    pub from: ErrorFrom,
    /// How much, to either side.
    pub amount: f64,
    /// How far that is verified.
    pub label: Label,
    /// Where it is from.
    pub source: &'static str,
}

/// What makes an error.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ErrorFrom {
    /// The tape itself.
    Tape,
    /// A distance meter.
    Meter,
    /// Reading to the nearest graduation.
    Graduation,
    /// The width of a pencil line.
    Pencil,
    /// A tape's end in an inside corner.
    Corner,
    /// The control line that heights are read from.
    ControlLine,
    /// The floor between the places at which it was read.
    Floor,
    /// The plate on its fasteners.
    Plate,
    /// The piece on its plate: from where its hooks sit to its edge or middle.
    Drop,
}

/// Every kind of error.
pub const ERRORS: [ErrorFrom; 9] = [
    ErrorFrom::Tape,
    ErrorFrom::Meter,
    ErrorFrom::Graduation,
    ErrorFrom::Pencil,
    ErrorFrom::Corner,
    ErrorFrom::ControlLine,
    ErrorFrom::Floor,
    ErrorFrom::Plate,
    ErrorFrom::Drop,
];

/// A length as an error.
struct Error {
    from: ErrorFrom,
    given: Given<Length>,
}

/// What each display of a plan can be off by that hangs on a plate of its own, else the first piece that does; without
/// those whose lines have no readings.
#[must_use]
pub fn error_budgets(job: &Job, plan: &Plan) -> Vec<ErrorBudget> {
    let mounted = || plan.pieces.iter().filter(|piece| piece.mount.is_some());
    let displays: Vec<&PiecePlan> = mounted().filter(|piece| piece.kind == PieceKind::Display).collect();
    let told = if displays.is_empty() { mounted().take(1).collect() } else { displays };
    told.into_iter().filter_map(|piece| of_piece(job, plan, piece)).collect()
}

fn of_piece(job: &Job, plan: &Plan, piece: &PiecePlan) -> Option<ErrorBudget> {
    let line = |what: MarkWhat| plan.marks.iter().find(|mark| mark.piece == piece.id && mark.what == what);
    let (centre_line, level_line) = (line(MarkWhat::CentreLine)?, line(MarkWhat::LevelLine)?);
    let chain = chain::Chain { job, plan };
    let across = first(centre_line, Axis::Across)?;
    let upright = first(level_line, Axis::Upright)?;
    let mounted = piece.mount.as_ref()?;

    let mut centre = chain.of(centre_line, across);
    centre.extend(onto_plate::sideways(job, plan, mounted));
    let mut top = chain.of(level_line, upright);
    top.extend(onto_plate::up(&chain, mounted));

    let run = level_line.line.map(|(left, right)| right.x - left.x).filter(|run| run.mm() > 0.0)?;
    let ends = level_line.readings.iter().filter(|reading| reading.direction.axis() == Axis::Upright);
    let mut tilt: Vec<(Error, Length)> =
        ends.flat_map(|reading| chain.of(level_line, reading)).map(|error| (error, run)).collect();
    tilt.extend(onto_plate::turned(job, mounted));
    let tilt = tilt.iter().map(|(error, over)| {
        let amount = slope_angle(error.given.value.mm() / over.mm().max(f64::MIN_POSITIVE)).deg();
        part(error, amount)
    });
    let lengths = |errors: &[Error]| budget(errors.iter().map(|error| part(error, error.given.value.mm())));
    Some(ErrorBudget {
        piece: piece.id.clone(),
        centre: lengths(&centre),
        top: lengths(&top),
        tilt: budget(tilt),
        level: chain.level(),
    })
}

fn first(mark: &Mark, axis: Axis) -> Option<&crate::plan::mark::Reading> {
    mark.readings.iter().find(|reading| reading.direction.axis() == axis)
}

fn part(error: &Error, amount: f64) -> ErrorPart {
    ErrorPart { from: error.from, amount, label: error.given.label, source: error.given.reason }
}

fn budget(parts: impl Iterator<Item = ErrorPart>) -> Budget {
    let parts: Vec<ErrorPart> = parts.filter(|part| part.amount > 0.0).collect();
    let amounts: Vec<f64> = parts.iter().map(|part| part.amount).collect();
    Budget { stack: stack(&amounts), parts }
}

impl Budget {
    /// What of it all errors of a kind come to.
    #[must_use]
    pub fn of(&self, from: ErrorFrom) -> Stack {
        let amounts: Vec<f64> =
            self.parts.iter().filter(|part| part.from == from).map(|part| part.amount).collect();
        stack(&amounts)
    }

    /// The kind that makes the most of it, as independent errors add up; `None` where there is no error.
    #[must_use]
    pub fn largest(&self) -> Option<ErrorFrom> {
        let mut largest: Option<(f64, ErrorFrom)> = None;
        for from in ERRORS {
            let rss = self.of(from).rss;
            // Of equals the first.
            if rss > largest.map_or(0.0, |(most, _)| most) {
                largest = Some((rss, from));
            }
        }
        largest.map(|(_, from)| from)
    }

    /// What it comes to where every error of a kind is half of what it is: what the remedy leaves that is told for it.
    #[must_use]
    pub fn with_half(&self, from: ErrorFrom) -> Stack {
        let half = |part: &ErrorPart| if part.from == from { part.amount / 2.0 } else { part.amount };
        let amounts: Vec<f64> = self.parts.iter().map(half).collect();
        stack(&amounts)
    }

    /// Whether all errors of a kind are as the kit says.
    #[must_use]
    pub fn is_measured(&self, from: ErrorFrom) -> bool {
        self.parts.iter().filter(|part| part.from == from).all(|part| part.label == Label::Measured)
    }

    /// The weakest label of all that it is made of; derived where there is no error.
    #[must_use]
    pub fn label(&self) -> Label {
        self.parts.iter().map(|part| part.label).fold(Label::Derived, Label::weaker)
    }
}

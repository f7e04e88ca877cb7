//! What is typed over a dimension, as a change of the job.
//!
//! A dimension that was measured is measured anew. One that starts at the datum of a piece's own rule changes the
//! rule; any other keeps the rule and moves the piece by its nudge. What follows from something else says from what.

mod measured;
mod ruled;
#[cfg(test)]
mod tests;

use ruled::moved;
use strikeline_drawing::dimension::{About, GapSide};
use strikeline_solver::geometry::{Axis, Direction, Rect};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkWhat, Reading, ReadingDatum};
use strikeline_solver::plan::piece::{Gap, PiecePlan};
use strikeline_solver::solve::solve;
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::units::Length;

/// Why a dimension cannot be typed over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Driven {
    /// It follows from the plate's holes and where the plate stands.
    ByThePlate,
    /// It follows from the two edges that were read.
    ByBothEdges,
    /// What it tells of is not there any more.
    ByNothing,
}

impl Driven {
    /// The same for the eye: what to change instead.
    #[must_use]
    pub fn words(self) -> &'static str {
        match self {
            Self::ByThePlate => {
                "This follows from the plate: move the piece, or type the plate's holes or its play."
            }
            Self::ByBothEdges => "This follows from its two edges: type one of those.",
            Self::ByNothing => "This is no longer there.",
        }
    }
}

/// The job with a dimension made to tell another length. The plan is the job's own.
///
/// # Errors
/// What drives it, where it cannot be typed over; the job is then to stay as it is.
pub fn typed(job: &Job, plan: &Plan, about: &About, to: Length) -> Result<Job, Driven> {
    match about {
        About::Width(id) => measured::size(job, id, Axis::Across, to),
        About::Height(id) => measured::size(job, id, Axis::Upright, to),
        About::Read { thing, place } => {
            let mut after = job.clone();
            *measured::read(&mut after, &plan.wall, thing, *place)? = to;
            Ok(after)
        }
        About::Gap { piece, side } => {
            let piece = find(plan, piece)?;
            let gaps = &piece.gaps;
            let (gap, direction) = match side {
                GapSide::Left => (gaps.left.as_ref(), Direction::Right),
                GapSide::Right => (gaps.right.as_ref(), Direction::Left),
                GapSide::Below | GapSide::BelowRight => (gaps.below.as_ref(), Direction::Up),
            };
            let gap = gap.ok_or(Driven::ByNothing)?;
            let now = if *side == GapSide::BelowRight { gap.other } else { gap.from };
            Ok(moved(job, plan, piece, &datum_of(plan, gap), direction, to - now))
        }
        About::Reading { mark, index } | About::Close { mark, index } => {
            let mark = plan.marks.iter().find(|one| one.id == *mark).ok_or(Driven::ByNothing)?;
            let reading = mark.readings.get(*index).ok_or(Driven::ByNothing)?;
            if !moves_with_its_piece(mark) {
                return Err(Driven::ByThePlate);
            }
            let (from, direction, now) = if matches!(about, About::Close { .. }) {
                let close = reading.close.as_ref().ok_or(Driven::ByNothing)?;
                (&close.from, close.direction, close.value)
            } else {
                (&reading.from, reading.direction, reading.value)
            };
            let piece = find(plan, &mark.piece)?;
            let after = moved(job, plan, piece, from, direction, to - now);
            Ok(corrected(after, plan, about, piece, from, direction, to))
        }
    }
}

/// Whether a mark goes wherever its piece goes, by as much.
fn moves_with_its_piece(mark: &Mark) -> bool {
    matches!(mark.what, MarkWhat::CentreLine | MarkWhat::LevelLine | MarkWhat::Corner { .. })
}

fn find<'a>(plan: &'a Plan, id: &Id) -> Result<&'a PiecePlan, Driven> {
    plan.pieces.iter().find(|piece| piece.id == *id).ok_or(Driven::ByNothing)
}

/// What a gap is measured from.
fn datum_of(plan: &Plan, gap: &Gap) -> ReadingDatum {
    match (gap.to.id == plan.wall, gap.to.part_str()) {
        (true, "left") => ReadingDatum::LeftEnd,
        (true, "right") => ReadingDatum::RightEnd,
        _ => ReadingDatum::Edge(gap.to.clone()),
    }
}

/// The plate may stand elsewhere in its play after a move: one more step by what the dimension then lacks.
fn corrected(
    after: Job,
    plan: &Plan,
    about: &About,
    piece: &PiecePlan,
    from: &ReadingDatum,
    direction: Direction,
    to: Length,
) -> Job {
    let lacking = |job: &Job, option: Option<&Id>| {
        let now = solve(job, &plan.wall, option);
        let told = told(&now, about, from);
        (told.map(|told| to - told), now)
    };
    let option = plan.option.as_ref();
    let (first, now) = lacking(&after, option);
    let Some(rest) = first.filter(|rest| rest.abs() > Length::millimetres(1e-6)) else { return after };
    let Some(piece) = now.pieces.iter().find(|one| one.id == piece.id) else { return after };
    let again = moved(&after, &now, piece, from, direction, rest);
    let (second, _) = lacking(&again, option);
    if second.is_some_and(|second| second.abs() < rest.abs()) { again } else { after }
}

/// What a reading or its close tells now, as long as it starts at the same datum.
fn told(plan: &Plan, about: &About, from: &ReadingDatum) -> Option<Length> {
    let (About::Reading { mark, .. } | About::Close { mark, .. }) = about else { return None };
    let mark = plan.marks.iter().find(|one| one.id == *mark)?;
    let readings = mark.readings.iter().filter(|reading| reading.from == *from).map(|reading| reading.value);
    let closes = mark.readings.iter().filter_map(|reading| reading.close.as_ref());
    readings.chain(closes.filter(|close| close.from == *from).map(|close| close.value)).next()
}

/// What a dimension tells now; `None` where it is not there.
#[must_use]
pub fn length_told(job: &Job, plan: &Plan, about: &About) -> Option<Length> {
    let extent = |id: &Id, axis| {
        let piece = plan.pieces.iter().find(|piece| piece.id == *id).map(|piece| piece.outline);
        let feature = plan.survey.features.iter().find(|one| one.id == *id).map(|one| one.rect);
        let hidden = plan.survey.hidden.iter().find(|one| one.id == *id).map(|one| one.rect);
        let wall = (plan.wall == *id).then(|| {
            // A wall's height counts from the level plane.
            Rect { bottom: Length::default(), ..plan.survey.outline }
        });
        piece.or(feature).or(hidden).or(wall).map(|rect| rect.span(axis).length())
    };
    match about {
        About::Width(id) => extent(id, Axis::Across),
        About::Height(id) => extent(id, Axis::Upright),
        About::Read { thing, place } => {
            measured::read(&mut job.clone(), &plan.wall, thing, *place).ok().map(|by| *by)
        }
        About::Gap { piece, side } => {
            let gaps = &find(plan, piece).ok()?.gaps;
            match side {
                GapSide::Left => gaps.left.as_ref().map(|gap| gap.from),
                GapSide::Right => gaps.right.as_ref().map(|gap| gap.from),
                GapSide::Below => gaps.below.as_ref().map(|gap| gap.from),
                GapSide::BelowRight => gaps.below.as_ref().map(|gap| gap.other),
            }
        }
        About::Reading { mark, index } => reading(plan, mark, *index).map(|reading| reading.value),
        About::Close { mark, index } => reading(plan, mark, *index)?.close.as_ref().map(|close| close.value),
    }
}

fn reading<'a>(plan: &'a Plan, mark: &Subject, index: usize) -> Option<&'a Reading> {
    plan.marks.iter().find(|one| one.id == *mark)?.readings.get(index)
}

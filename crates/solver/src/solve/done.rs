//! Step 8: what was done at the marks. What is struck, drilled or cut is told where it stands, beside where the plan
//! would have it now; what was done and is asked for no more is told too.

use super::marks::{PASSAGE, RACEWAY};
use crate::geometry::{Axis, Point};
use crate::job::fact::FactState;
use crate::job::hit::HitKind;
use crate::plan::fact::PlacedFact;
use crate::plan::mark::{Mark, MarkState, MarkWhat, Planned, Reading, Stage};
use crate::plan::piece::PiecePlan;
use crate::plan::survey::Survey;
use crate::subject::Id;
use crate::tape::Style;
use crate::tolerance::{PROBED_BESIDE_MM, PROBED_WITHIN_MM, SAME_PLACE_MM};
use crate::units::Length;

/// Tells at every mark what was done there in the plan's own option.
pub(super) fn done(
    marks: &mut Vec<Mark>,
    facts: &[PlacedFact],
    pieces: &[PiecePlan],
    survey: &Survey,
    style: Style,
) {
    for mark in marks.iter_mut().filter(|mark| matches!(mark.what, MarkWhat::Probe { .. })) {
        if is_probed(mark, survey) {
            mark.state = MarkState::Done;
        }
    }
    let mut before = Vec::new();
    for fact in facts.iter().filter(|fact| fact.is_own) {
        match marks.iter_mut().find(|mark| mark.id == fact.mark) {
            Some(mark) => hold(mark, fact, style),
            None => before.extend(lost(fact, pieces)),
        }
    }
    if !before.is_empty() {
        // What is asked for no more comes first in its stage: the sort keeps equals in their order.
        marks.splice(0..0, before);
        marks.sort_by_key(|mark| mark.stage);
    }
}

fn state(fact: &PlacedFact) -> MarkState {
    match fact.state {
        FactState::Done => MarkState::Done,
        FactState::Struck => MarkState::Struck,
        FactState::Drilled => MarkState::Drilled,
        FactState::Cut => MarkState::Cut,
        FactState::Stripped => MarkState::Stripped,
    }
}

/// Whether a probe met something where this one is asked for.
fn is_probed(mark: &Mark, survey: &Survey) -> bool {
    let Some(place) = mark.place else { return false };
    survey.hits.iter().any(|hit| {
        let probe = matches!(hit.kind, HitKind::Wood | HitKind::Air | HitKind::ShallowWood | HitKind::Metal);
        let near = (hit.x - place.x).mm().abs() <= PROBED_BESIDE_MM;
        probe && near && hit.y.is_some_and(|y| (y - place.y).mm().abs() <= PROBED_WITHIN_MM)
    })
}

/// Puts a mark where its fact stands.
fn hold(mark: &mut Mark, fact: &PlacedFact, style: Style) {
    mark.state = state(fact);
    // What was done stands, whatever was assumed since.
    mark.assumed = mark.assumed && fact.place.is_none();
    let (Some(place), Some(went)) = (mark.place, fact.place) else { return };
    let reads = |axis: Axis| mark.readings.iter().any(|reading| reading.direction.axis() == axis);
    let none = Length::default();
    let by = Point::new(
        if reads(Axis::Across) { went.x - place.x } else { none },
        if reads(Axis::Upright) { went.y - place.y } else { none },
    );
    let right_by = match (fact.right_end, mark.line) {
        (Some(right), Some((_, planned))) => right.y - planned.y,
        _ => by.y,
    };
    // Each of the two is rounded for the tape.
    let graduation = style.length_of(1) + Length::millimetres(SAME_PLACE_MM);
    if [by.x, by.y, right_by].into_iter().any(|off| off.abs() > graduation) {
        mark.planned = Some(Planned { place, line: mark.line, readings: mark.readings.clone() });
    }
    mark.place = Some(moved(place, by));
    let as_cut = fact.opening().filter(|_| fact.size.is_some());
    mark.outline = as_cut.or_else(|| mark.outline.map(|outline| outline.moved(by.x, by.y)));
    mark.line = mark.line.map(|(from, to)| (moved(from, by), moved(to, Point::new(by.x, right_by))));
    let mut uprights = 0;
    for reading in &mut mark.readings {
        let off = match reading.direction.axis() {
            Axis::Across => by.x,
            Axis::Upright => {
                uprights += 1;
                if uprights > 1 { right_by } else { by.y }
            }
        };
        shift(reading, off, style);
    }
}

fn moved(place: Point, by: Point) -> Point {
    Point::new(place.x + by.x, place.y + by.y)
}

/// The reading of a mark that is so far right of, or above, where it was read.
fn shift(reading: &mut Reading, by: Length, style: Style) {
    if by.mm().abs() <= SAME_PLACE_MM {
        return;
    }
    let signed = reading.value + by * reading.direction.sign();
    if signed < Length::default() {
        reading.direction = reading.direction.opposite();
    }
    reading.value = signed.abs();
    let steps = style.steps(reading.value);
    if steps == reading.steps {
        if let Some(close) = &mut reading.close {
            close.value += by * close.direction.sign();
        }
    } else {
        // Its check was made for another figure.
        reading.close = None;
    }
    reading.steps = steps;
}

/// The mark of a fact that the plan asks for no more; `None` where its piece does not hang, or nothing stands there.
fn lost(fact: &PlacedFact, pieces: &[PiecePlan]) -> Option<Mark> {
    let place = fact.place?;
    let piece = pieces.iter().find(|piece| piece.id == fact.mark.id)?;
    let part = fact.mark.part_str();
    let hole = piece.mount.iter().flat_map(|mount| &mount.holes).find(|hole| hole.id.as_str() == part);
    let (stage, what) = match (part, hole) {
        (_, Some(hole)) => (Stage::Fix, MarkWhat::Hole { hole: hole.id.clone(), first: false, held: false }),
        ("level_line", _) => (Stage::Level, MarkWhat::LevelLine),
        ("centre_line", _) => (Stage::Level, MarkWhat::CentreLine),
        ("piece_centre", _) => (Stage::Level, MarkWhat::PieceCentre),
        ("entry", _) => (Stage::Open, MarkWhat::Entry),
        ("exit", _) => (Stage::Open, MarkWhat::Exit),
        (RACEWAY, _) => (Stage::Open, MarkWhat::RacewayEnd),
        (part, None) if part.starts_with(PASSAGE) => (Stage::Open, MarkWhat::Passage),
        (_, None) if part.contains(".help") => (Stage::Level, MarkWhat::Help),
        // A hole of a plate that hung here before is still in the wall.
        (part, None) if matches!(fact.state, FactState::Drilled | FactState::Stripped) => {
            (Stage::Fix, MarkWhat::Hole { hole: Id::new(part), first: false, held: false })
        }
        (_, None) => return None,
    };
    Some(Mark {
        id: fact.mark.clone(),
        piece: piece.id.clone(),
        stage,
        what,
        place: Some(place),
        line: fact.right_end.map(|right| (place, right)),
        outline: fact.opening(),
        readings: Vec::new(),
        assumed: false,
        on_tape: false,
        state: state(fact),
        planned: None,
        is_needed: false,
    })
}

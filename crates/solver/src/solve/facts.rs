//! What was done, where it stands now: found again from what it was read from while that is there, else where it was.
//!
//! A mark that was read from another keeps its place beside it. What went elsewhere than planned keeps that distance.

use crate::geometry::{Axis, Point};
use crate::job::fact::{Fact, Spot, StruckFrom, StruckReading};
use crate::job::place::{Sideways, UpDown};
use crate::job::wall::Wall;
use crate::plan::fact::PlacedFact;
use crate::plan::survey::Survey;
use crate::subject::{Id, Subject};
use crate::tape::Offset;
use crate::units::Length;

/// Every fact of a wall, in the job's order, with the last of a mark's own option as the one that counts: earlier ones
/// of the same mark and option are left out.
pub(super) fn facts(wall: &Wall, survey: &Survey, option: Option<&Id>) -> Vec<PlacedFact> {
    let place = Placing { wall, survey };
    let counts = |(index, fact): &(usize, &Fact)| {
        !wall.facts.iter().skip(index + 1).any(|later| later.mark == fact.mark && later.option == fact.option)
    };
    let facts = wall.facts.iter().enumerate().filter(counts).map(|(_, fact)| fact);
    facts
        .map(|fact| {
            let ends = place.of(fact, MOST_STEPS);
            PlacedFact {
                id: fact.id.clone(),
                mark: fact.mark.subject().clone(),
                option: fact.option.clone(),
                is_own: fact.option.as_ref() == option,
                state: fact.state,
                fastener: fact.fastener.clone(),
                size: fact.size,
                place: ends.map(|(left, _)| left),
                right_end: ends.and_then(|(_, right)| right),
            }
        })
        .collect()
}

/// A mark is read from a line, the line from a helping mark, that from another: more steps are a ring.
const MOST_STEPS: usize = 8;

struct Placing<'a> {
    wall: &'a Wall,
    survey: &'a Survey,
}

impl Placing<'_> {
    /// Where a fact stands, and the right end of a line that was read at both; `None` of a step without a place.
    fn of(&self, fact: &Fact, steps: usize) -> Option<(Point, Option<Point>)> {
        let planned = point(fact.planned?);
        let off = fact.off()?;
        let across = fact.across.as_ref().and_then(|reading| self.across(fact, reading, planned.x, steps));
        let upright = |reading: &Option<StruckReading<UpDown>>, at: Length| {
            reading.as_ref().and_then(|reading| self.upright(fact, reading, at, planned.y, steps))
        };
        let x = across.unwrap_or(planned.x) + off.x;
        let y = upright(&fact.upright, x - off.x).unwrap_or(planned.y) + off.y;
        let right = fact.upright_at_right.as_ref().and_then(|reading| {
            let at = reading.at.length();
            let right_y = self.right_end(fact, reading, steps)?;
            Some(Point::new(at + x - planned.x, right_y + off.y))
        });
        Some((Point::new(x, y), right))
    }

    fn across(
        &self,
        fact: &Fact,
        reading: &StruckReading<Sideways>,
        planned: Length,
        steps: usize,
    ) -> Option<Length> {
        let datum = match &reading.from {
            StruckFrom::LeftEnd => Length::default(),
            // What was read from an end cannot be found from one that nobody measured.
            StruckFrom::RightEnd => self.wall.width.map(|_| self.survey.outline.right)?,
            StruckFrom::Floor | StruckFrom::ControlLine => return None,
            StruckFrom::Thing(thing) => match self.feature(thing) {
                Some(rect) if thing.part_str() == "left" => rect.rect.left,
                Some(rect) if thing.part_str() == "right" => rect.rect.right,
                Some(_) => return None,
                None => {
                    let moved = self.moved(fact, thing, reading.datum, Axis::Across, steps)?;
                    return Some(planned + moved);
                }
            },
        };
        Some(datum + reading.shown * reading.direction.sign())
    }

    fn upright(
        &self,
        fact: &Fact,
        reading: &StruckReading<UpDown>,
        at: Length,
        planned: Length,
        steps: usize,
    ) -> Option<Length> {
        let datum = match &reading.from {
            StruckFrom::Floor => self.survey.floor.y_at(at),
            StruckFrom::ControlLine => self.survey.control_line_y?,
            StruckFrom::LeftEnd | StruckFrom::RightEnd => return None,
            StruckFrom::Thing(thing) => match self.feature(thing) {
                Some(feature) if thing.part_str() == "top" => feature.top_at(at),
                Some(feature) if thing.part_str() == "bottom" => feature.bottom_at(at),
                Some(_) => return None,
                None => {
                    let moved = self.moved(fact, thing, reading.datum, Axis::Upright, steps)?;
                    return Some(planned + moved);
                }
            },
        };
        Some(datum + reading.shown * reading.direction.sign())
    }

    /// How high the right end of a line is, which has no planned height of its own: by what its tape showed. `None`
    /// where what it was read from is not there and left no place.
    fn right_end(&self, fact: &Fact, reading: &StruckReading<UpDown>, steps: usize) -> Option<Length> {
        let up = reading.shown * reading.direction.sign();
        match &reading.from {
            StruckFrom::Thing(thing) if self.feature(thing).is_none() => {
                let was = reading.datum?.length();
                let moved = self.moved(fact, thing, reading.datum, Axis::Upright, steps);
                Some(was + moved.unwrap_or_default() + up)
            }
            // Nothing here is told beside a planned place.
            _ => self.upright(fact, reading, reading.at.length(), Length::default(), steps),
        }
    }

    fn feature(&self, thing: &Subject) -> Option<&crate::plan::survey::PlacedFeature> {
        self.survey.features.iter().find(|feature| feature.id == thing.id)
    }

    /// How far the mark that a fact was read from has moved since: the fact moved with it. `None` where nothing was
    /// done there.
    fn moved(
        &self,
        fact: &Fact,
        mark: &Subject,
        was: Option<Offset>,
        axis: Axis,
        steps: usize,
    ) -> Option<Length> {
        let steps = steps.checked_sub(1)?;
        let mut others = self.wall.facts.iter().rev();
        let other = others.find(|other| other.mark.subject() == mark && other.option == fact.option)?;
        let (now, _) = self.of(other, steps)?;
        let was = was.map_or(point(other.planned?).along(axis), Offset::length);
        Some(now.along(axis) - was)
    }
}

fn point(spot: Spot) -> Point {
    Point::new(spot.x.length(), spot.y.length())
}

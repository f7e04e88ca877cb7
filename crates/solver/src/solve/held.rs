//! Where what was done holds a plate: by its drilled holes, else by its struck lines.
//!
//! A hole is in the wall for good, a line is rubbed out: where both are there the holes hold. The plate is turned as
//! its level line is, else as the rules turn its piece. Holes that do not fit the plate hold it at the least sum of
//! squares.

use super::placement::Placed;
use crate::geometry::{Frame, Point, Rect, Span};
use crate::job::fact::FactState;
use crate::job::mount::Mount;
use crate::job::plate::Plate;
use crate::numeric::slope_angle;
use crate::plan::fact::PlacedFact;
use crate::plan::piece::{Held, HeldBy, Misfit};
use crate::subject::{Id, Subject};
use crate::tape::Style;
use crate::units::{Angle, Length};

/// What was done that holds one plate, in its own option.
pub(super) struct Holds {
    centre_x: Option<Length>,
    level: Option<Level>,
    holes: Vec<Drilled>,
}

/// A struck level line.
struct Level {
    left: Point,
    right: Point,
}

/// A drilled hole of the plate.
struct Drilled {
    subject: Subject,
    /// From the plate's middle and top: right and up.
    in_plate: Point,
    /// How far to either side of that a slot lets its fastener be.
    reach: Point,
    went: Point,
}

/// The plate held at its place.
pub(super) struct HeldPlate {
    /// How far right of the plate's middle the piece is, where that is settled.
    pub(super) offset: Option<Length>,
    pub(super) told: Held,
}

impl Holds {
    /// What holds a piece's plate; `None` where nothing was done that does.
    pub(super) fn of(facts: &[PlacedFact], piece: &Id, plate: Option<&Plate>, style: Style) -> Option<Self> {
        let own = |part: &str| {
            facts.iter().find(|fact| fact.is_own && fact.mark.id == *piece && fact.mark.part_str() == part)
        };
        let struck = |part: &str| own(part).filter(|fact| fact.state == FactState::Struck);
        let level = struck("level_line").and_then(|fact| {
            let left = fact.place?;
            let right = fact.right_end.unwrap_or(left);
            // Both ends are read to the graduation and joined with a level: less than one between them is none.
            let is_level = (right.y - left.y).abs() <= style.length_of(1);
            let middle = (left.y + right.y) / 2.0;
            let at = |end: Point| Point::new(end.x, if is_level { middle } else { end.y });
            Some(Level { left: at(left), right: at(right) })
        });
        let mut holes = Vec::new();
        let mut add = |id: &Id, in_plate: Point, reach: Point| {
            let drilled = own(id.as_str()).filter(|fact| fact.state == FactState::Drilled);
            if let Some(went) = drilled.and_then(|fact| fact.place) {
                holes.push(Drilled { subject: piece.part(id.as_str()), in_plate, reach, went });
            }
        };
        for hole in plate.iter().flat_map(|plate| &plate.holes) {
            add(&hole.id, Point::new(hole.right.length(), -hole.down), Point::default());
        }
        for slot in plate.iter().flat_map(|plate| &plate.slots) {
            let half = slot.travel / 2.0;
            let none = Length::default();
            let reach = if slot.upright { Point::new(none, half) } else { Point::new(half, none) };
            add(&slot.id, Point::new(slot.right.length(), -slot.down), reach);
        }
        let holds =
            Self { centre_x: struck("centre_line").and_then(|fact| fact.place).map(|at| at.x), level, holes };
        (holds.centre_x.is_some() || holds.level.is_some() || !holds.holes.is_empty()).then_some(holds)
    }

    /// Moves a piece to where its plate is held, as far as its play does not take that up. `rise` is from the piece's
    /// middle up to the plate's top.
    pub(super) fn settle(&self, place: &mut Placed, rise: Length, mount: &Mount) -> HeldPlate {
        let wished = place.frame;
        let roll = self.level.as_ref().map_or(wished.roll, |line| line.roll(wished.roll));
        let turned = Frame { origin: Point::default(), roll };
        let (least, most) = mount.offsets();
        let rest = mount.arm.as_ref().and_then(|arm| arm.parked).map(crate::tape::Offset::length);
        let rest = rest.unwrap_or_default();

        // Where the plate would be by the rules and the struck lines.
        let up = turned.to_wall(-rest, rise);
        let lined_x = self.centre_x.unwrap_or(wished.origin.x + up.x);
        let lined_y = match &self.level {
            Some(line) => line.y_at(lined_x),
            None => wished.origin.y + up.y,
        };
        let (plate, misfits, by) = if self.holes.is_empty() {
            (Point::new(lined_x, lined_y), Vec::new(), HeldBy::Lines)
        } else {
            let plate = self.fit(turned, Point::new(lined_x, lined_y));
            (plate, self.misfits(turned, plate), HeldBy::Holes)
        };
        let across = self.centre_x.is_some() || !self.holes.is_empty();
        let upright = self.level.is_some() || !self.holes.is_empty();

        let offset = across.then(|| {
            // What the piece still lacks of its wished place to the right.
            let back = turned.to_wall(rest, -rise);
            (wished.origin.x - plate.x - back.x + rest).max(least).min(most)
        });
        let mut origin = wished.origin;
        if let Some(offset) = offset {
            let back = turned.to_wall(offset, -rise);
            origin.x = plate.x + back.x;
            if upright {
                origin.y = plate.y + back.y;
            }
        } else if upright {
            origin.y = lined_y - up.y;
        }
        place.frame = Frame { origin, roll };
        let outline = place.outline;
        place.outline =
            Rect::new(Span::about(origin.x, outline.width()), Span::about(origin.y, outline.height()));
        HeldPlate { offset, told: Held { by, across, upright, wished: wished.origin, misfits } }
    }

    /// The plate's middle and top that its drilled holes leave the least sum of squares off; where they leave room, the
    /// place nearest to `wished`.
    fn fit(&self, turned: Frame, wished: Point) -> Point {
        let wants = |axis: fn(Point) -> Length| -> Vec<Span> {
            let span = |hole: &Drilled| {
                let in_plate = turned.to_wall(hole.in_plate.x, hole.in_plate.y);
                let at = axis(hole.went) - axis(in_plate);
                Span::about(at, axis(hole.reach) * 2.0)
            };
            self.holes.iter().map(span).collect()
        };
        Point::new(least_squares(&wants(|at| at.x), wished.x), least_squares(&wants(|at| at.y), wished.y))
    }

    /// How far each drilled hole is from where the plate has its own.
    fn misfits(&self, turned: Frame, plate: Point) -> Vec<Misfit> {
        let off = |hole: &Drilled| {
            let in_plate = turned.to_wall(hole.in_plate.x, hole.in_plate.y);
            let past = |off: Length, reach: Length| {
                let beyond = (off.abs() - reach).max(Length::default());
                beyond * off.mm().signum()
            };
            Misfit {
                hole: hole.subject.clone(),
                right: past(hole.went.x - plate.x - in_plate.x, hole.reach.x),
                up: past(hole.went.y - plate.y - in_plate.y, hole.reach.y),
            }
        };
        self.holes.iter().map(off).collect()
    }
}

impl Level {
    /// How far it is turned: as the rules would have it where it is so to the graduation.
    fn roll(&self, ruled: Angle) -> Angle {
        let run_mm = (self.right.x - self.left.x).mm();
        if self.left.y == self.right.y || run_mm <= 0.0 {
            return if run_mm > 0.0 { Angle::default() } else { ruled };
        }
        slope_angle((self.right.y - self.left.y).mm() / run_mm)
    }

    fn y_at(&self, x: Length) -> Length {
        let run_mm = (self.right.x - self.left.x).mm();
        if run_mm <= 0.0 {
            return self.left.y;
        }
        self.left.y + (self.right.y - self.left.y) * ((x - self.left.x).mm() / run_mm)
    }
}

/// The place with the least sum of squared distances to some spans; of all such places the nearest to `wished`, which
/// it also is for none.
fn least_squares(spans: &[Span], wished: Length) -> Length {
    // The sum's slope, halved: continuous, never falling, straight between the spans' ends.
    let slope = |at: f64| {
        let one = |span: &Span| (at - span.to.mm()).max(0.0) - (span.from.mm() - at).max(0.0);
        spans.iter().map(one).sum::<f64>()
    };
    let mut ends: Vec<f64> = spans.iter().flat_map(|span| [span.from.mm(), span.to.mm()]).collect();
    ends.sort_by(f64::total_cmp);
    let mut best: Option<(f64, f64)> = None;
    for pair in ends.windows(2) {
        let [from, to] = pair else { continue };
        let (at_from, at_to) = (slope(*from), slope(*to));
        if at_from > 0.0 || at_to < 0.0 {
            continue;
        }
        let rise = at_to - at_from;
        let (low, high) = if rise > 0.0 {
            let zero = from + (to - from) * (-at_from / rise);
            (zero, zero)
        } else {
            (*from, *to)
        };
        best = Some(best.map_or((low, high), |(least, most): (f64, f64)| (least.min(low), most.max(high))));
    }
    best.map_or(wished, |(low, high)| Length::millimetres(wished.mm().max(low).min(high)))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn mm(value: f64) -> Length {
        Length::millimetres(value)
    }

    #[test]
    fn of_places_alike_the_nearest_to_the_wish_is_taken() {
        let spans = |ends: &[(f64, f64)]| -> Vec<Span> {
            ends.iter().map(|(from, to)| Span::new(mm(*from), mm(*to))).collect()
        };
        for (ends, wished, expected) in [
            (vec![], 7.0, 7.0),
            (vec![(3.0, 3.0)], 7.0, 3.0),
            // The middle of two points.
            (vec![(0.0, 0.0), (10.0, 10.0)], 9.0, 5.0),
            // Within both slots.
            (vec![(0.0, 10.0), (5.0, 20.0)], 7.0, 7.0),
            (vec![(0.0, 10.0), (5.0, 20.0)], 30.0, 10.0),
            // A point within a slot is met; one beyond it shares what is left.
            (vec![(0.0, 10.0), (4.0, 4.0)], 9.0, 4.0),
            (vec![(0.0, 10.0), (14.0, 14.0)], 9.0, 12.0),
            (vec![(0.0, 0.0), (0.0, 0.0), (9.0, 9.0)], 0.0, 3.0),
        ] {
            let found = least_squares(&spans(&ends), mm(wished)).mm();
            assert!((found - expected).abs() < 1e-9, "{ends:?}: {found}");
        }
    }

    #[test]
    fn the_least_sum_of_squares_is_that_of_a_dense_grid() {
        let mut seed = 7_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
            f64::from(u32::try_from(seed >> 40).unwrap()) / f64::from(1_u32 << 24) * 100.0
        };
        for _ in 0..200 {
            let spans: Vec<Span> = (0..3).map(|_| Span::about(mm(next()), mm(next() / 5.0))).collect();
            let found = least_squares(&spans, mm(50.0)).mm();
            let sum = |at: f64| {
                let off = |span: &Span| (span.from.mm() - at).max(at - span.to.mm()).max(0.0);
                spans.iter().map(|span| off(span).powi(2)).sum::<f64>()
            };
            let grid =
                (0..=12_000).map(|step| sum(f64::from(step) / 100.0 - 10.0)).fold(f64::INFINITY, f64::min);
            assert!(sum(found) <= grid + 1e-9, "{spans:?}: {found}");
        }
    }
}

//! A plate's holes and slots as people type them: a first one, a pitch, a count. Pure.

use strikeline_solver::job::plate::{Plate, PlateHole, PlateSlot};
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// The most holes of a row: more than any plate has (chosen).
const MOST: u32 = 60;

/// A row of holes or slots at one height.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoleRow {
    /// The first hole's centre, right of the plate's middle, seen from the front.
    pub right: Length,
    /// Down from the plate's top.
    pub down: Length,
    /// From each hole's centre to the next, to the right; where there is one hole of no account.
    pub pitch: Length,
    /// How many holes; 60 at most.
    pub count: u32,
    /// The diameter of a hole, or the width of a slot.
    pub diameter: Option<Length>,
}

impl HoleRow {
    /// The centres, from the first on, right of the plate's middle.
    fn centres(&self) -> impl Iterator<Item = Length> + '_ {
        (0..self.count.min(MOST)).map(|place| (self.right + self.pitch * f64::from(place)).quantised())
    }
}

/// The holes of rows, in their order and without ids; with each row again on the other side of the plate's
/// middle where they are mirrored. A hole that stands where another does is left out.
#[must_use]
pub fn plate_rows(rows: &[HoleRow], is_mirrored: bool) -> Vec<PlateHole> {
    let mut holes: Vec<PlateHole> = Vec::new();
    for row in rows {
        let right: Vec<Length> = row.centres().collect();
        let left = right.iter().filter(|_| is_mirrored).map(|x| -*x);
        for x in right.iter().copied().chain(left) {
            let hole =
                PlateHole { id: Id::default(), right: Offset(x), down: row.down, diameter: row.diameter };
            if !holes.iter().any(|other| other.right == hole.right && other.down == hole.down) {
                holes.push(hole);
            }
        }
    }
    holes
}

/// The slots of rows, as [`plate_rows`] gives holes: each so far to be moved along, upright or sideways.
#[must_use]
pub fn slot_rows(rows: &[HoleRow], travel: Length, upright: bool, is_mirrored: bool) -> Vec<PlateSlot> {
    let slot = |hole: PlateHole| PlateSlot {
        id: Id::default(),
        right: hole.right,
        down: hole.down,
        travel,
        upright,
        width: hole.diameter,
    };
    plate_rows(rows, is_mirrored).into_iter().map(slot).collect()
}

/// The plate with what lies to the right of its middle again on its left. What is there already is left alone.
#[must_use]
pub fn mirrored(plate: &Plate) -> Plate {
    let mut after = plate.clone();
    let is_there = |x: Offset, down: Length, all: &[(Offset, Length)]| all.contains(&(x, down));
    let holes: Vec<_> = plate.holes.iter().map(|hole| (hole.right, hole.down)).collect();
    let slots: Vec<_> = plate.slots.iter().map(|slot| (slot.right, slot.down)).collect();
    for hole in &plate.holes {
        let right = Offset(-hole.right.length());
        if !is_there(right, hole.down, &holes) {
            after.holes.push(PlateHole { id: Id::default(), right, ..hole.clone() });
        }
    }
    for slot in &plate.slots {
        let right = Offset(-slot.right.length());
        if !is_there(right, slot.down, &slots) {
            after.slots.push(PlateSlot { id: Id::default(), right, ..slot.clone() });
        }
    }
    after
}

/// The two holes that are farthest apart, by their places among the holes, and how far, centre to centre; `None`
/// for fewer than two. Of pairs alike the first.
#[must_use]
pub fn farthest(holes: &[PlateHole]) -> Option<(usize, usize, Length)> {
    let mut best: Option<(usize, usize, f64)> = None;
    for (one, first) in holes.iter().enumerate() {
        for (other, second) in holes.iter().enumerate().skip(one + 1) {
            let right = (first.right.length() - second.right.length()).mm();
            let apart = right.hypot((first.down - second.down).mm());
            if best.is_none_or(|(.., most)| apart > most) {
                best = Some((one, other, apart));
            }
        }
    }
    best.map(|(one, other, apart)| (one, other, Length::millimetres(apart).quantised()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn inches(value: f64) -> Length {
        Length::inches(value).quantised()
    }

    fn row(right: f64, down: f64, pitch: f64, count: u32) -> HoleRow {
        let diameter = Some(inches(0.3125));
        HoleRow { right: inches(right), down: inches(down), pitch: inches(pitch), count, diameter }
    }

    fn places(holes: &[PlateHole]) -> Vec<(f64, f64)> {
        let told = |length: Length| (length.in_inches() * 64.0).round() / 64.0;
        holes.iter().map(|hole| (told(hole.right.length()), told(hole.down))).collect()
    }

    #[test]
    fn a_row_goes_on_by_its_pitch() {
        let holes = plate_rows(&[row(-8.0, 1.0, 4.0, 5)], false);
        assert_eq!(places(&holes), [(-8.0, 1.0), (-4.0, 1.0), (0.0, 1.0), (4.0, 1.0), (8.0, 1.0)]);
        assert_eq!(holes[0].diameter, Some(inches(0.3125)));
        assert_eq!(plate_rows(&[row(0.0, 1.0, 4.0, 0)], true), []);
        assert_eq!(plate_rows(&[row(1.0, 1.0, 0.5, 4_000_000)], false).len(), 60);
    }

    #[test]
    fn mirrored_a_row_stands_on_both_sides_and_its_middle_hole_once() {
        let holes = plate_rows(&[row(0.0, 1.0, 8.0, 2), row(2.5, 6.0, 0.0, 1)], true);
        assert_eq!(places(&holes), [(0.0, 1.0), (8.0, 1.0), (-8.0, 1.0), (2.5, 6.0), (-2.5, 6.0)]);
    }

    #[test]
    fn slots_keep_their_travel() {
        let slots = slot_rows(&[row(3.0, 1.0, 0.0, 1)], inches(0.75), true, true);
        assert_eq!(slots.len(), 2);
        assert_eq!(slots[1].right.length(), inches(-3.0));
        assert!(slots.iter().all(|slot| slot.upright && slot.travel == inches(0.75)));
    }

    #[test]
    fn a_mirrored_plate_mirrored_again_is_the_same() {
        let plate = Plate { holes: plate_rows(&[row(2.0, 1.0, 3.0, 2)], false), ..Plate::default() };
        let once = mirrored(&plate);
        assert_eq!(places(&once.holes), [(2.0, 1.0), (5.0, 1.0), (-2.0, 1.0), (-5.0, 1.0)]);
        assert_eq!(mirrored(&once), once);
    }

    #[test]
    fn the_check_is_between_the_holes_farthest_apart() {
        // A 3-4-5 triangle, ten times as large in sixteenths: 8 across and 6 down leave 10.
        let holes = plate_rows(&[row(-4.0, 1.0, 8.0, 2), row(-4.0, 7.0, 8.0, 2)], false);
        assert_eq!(farthest(&holes), Some((0, 3, inches(10.0))));
        assert_eq!(farthest(&holes[..1]), None);
    }
}

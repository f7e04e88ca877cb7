//! The search: the cheapest first, until the cheapest end is reached.

use super::grid::Grid;
use super::marked::Marked;
use super::{Cost, Field, Place};
use crate::geometry::Axis;
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// The cheapest way.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Found {
    /// Its corners, from the entry to the exit; at least one.
    pub corners: Vec<Place>,
    /// Which of the field's starts it begins in.
    pub start: usize,
    /// Which of its goals it ends in.
    pub goal: usize,
    /// What it costs.
    pub cost: Cost,
}

/// The cheapest way through a field; `None` where no way leads through. Of ways that cost the same always the same.
#[must_use]
pub fn cheapest(field: &Field) -> Option<Found> {
    let grid = Grid::of(field);
    Search { field, grid }.run()
}

struct Search<'a> {
    field: &'a Field,
    grid: Grid<'a>,
}

/// How a place was come to; one for each axis of the last piece.
#[derive(Clone, Copy)]
struct Reached {
    cost: Cost,
    /// The state before; its own for a start.
    from: usize,
    start: usize,
}

impl Search<'_> {
    fn run(&self) -> Option<Found> {
        let (columns, rows) = (self.grid.xs.len(), self.grid.ys.len());
        let mut reached: Vec<Option<Reached>> = vec![None; columns * rows * 2];
        let mut done = vec![false; reached.len()];
        let mut heap: BinaryHeap<Reverse<(Cost, usize)>> = BinaryHeap::new();
        let (xs, ys) = (&self.grid.xs, &self.grid.ys);
        let barred = Marked::places(xs, ys, &self.field.barred);
        for (index, start) in self.field.starts.iter().enumerate() {
            for (column, row) in Marked::zone(xs, ys, &start.zone).all() {
                let Some(place) = self.grid.place(column, row).filter(|_| !barred.has(column, row)) else {
                    continue;
                };
                let cost = start.cost_at(place);
                // Begun along either axis, without a turn.
                let state = 2 * (row * columns + column);
                for state in [state, state + 1] {
                    offer(&mut reached, &mut heap, state, Reached { cost, from: state, start: index });
                }
            }
        }
        let ends: Vec<Marked> =
            self.field.goals.iter().map(|goal| Marked::zone(xs, ys, &goal.zone)).collect();
        let mut best: Option<(Cost, usize, usize)> = None;
        while let Some(Reverse((cost, state))) = heap.pop() {
            if best.as_ref().is_some_and(|(least, ..)| *least <= cost) {
                break;
            }
            match done.get_mut(state) {
                Some(is_done) if !*is_done => *is_done = true,
                _ => continue,
            }
            let (Some(place), Some(Some(here))) = (self.place(state), reached.get(state).copied()) else {
                continue;
            };
            let (column, row) = (state / 2 % columns, state / 2 / columns);
            for (index, (goal, ends)) in self.field.goals.iter().zip(&ends).enumerate() {
                if ends.has(column, row) {
                    let all = cost + goal.cost_at(place);
                    if best.as_ref().is_none_or(|(least, ..)| all < *least) {
                        best = Some((all, state, index));
                    }
                }
            }
            let other = state ^ 1;
            offer(
                &mut reached,
                &mut heap,
                other,
                Reached { cost: cost + Cost::TURN, from: state, start: here.start },
            );
            let axis = if state % 2 == 0 { Axis::Upright } else { Axis::Across };
            // Each with the left or lower end of the piece that leads there.
            let next = match axis {
                Axis::Across => [
                    (column + 1 < columns).then(|| (state + 2, (column, row))),
                    (column > 0).then(|| (state - 2, (column - 1, row))),
                ],
                Axis::Upright => [
                    (row + 1 < rows).then(|| (state + 2 * columns, (column, row))),
                    (row > 0).then(|| (state - 2 * columns, (column, row - 1))),
                ],
            };
            for (next, end) in next.into_iter().flatten() {
                if done.get(next).copied().unwrap_or(true) {
                    continue;
                }
                let Some(to) = self.place(next) else { continue };
                let Some(piece) = self.grid.piece(axis, end, place, to) else { continue };
                offer(
                    &mut reached,
                    &mut heap,
                    next,
                    Reached { cost: cost + piece, from: state, start: here.start },
                );
            }
        }
        let (cost, state, goal) = best?;
        let start = reached.get(state).copied().flatten()?.start;
        Some(Found { corners: self.corners(&reached, state), start, goal, cost })
    }

    fn place(&self, state: usize) -> Option<Place> {
        let columns = self.grid.xs.len();
        self.grid.place((state / 2).checked_rem(columns)?, (state / 2).checked_div(columns)?)
    }

    /// The corners of the way to a state, the places between them left out.
    fn corners(&self, reached: &[Option<Reached>], last: usize) -> Vec<Place> {
        let mut places: Vec<Place> = Vec::new();
        let mut state = last;
        loop {
            if let Some(place) = self.place(state) {
                // Where it turns, a place is told once.
                if places.last() != Some(&place) {
                    let is_between = matches!(places.as_slice(), [.., before, corner]
                        if (before.x == corner.x && corner.x == place.x)
                            || (before.y == corner.y && corner.y == place.y));
                    if is_between {
                        places.pop();
                    }
                    places.push(place);
                }
            }
            match reached.get(state).copied().flatten() {
                Some(here) if here.from != state => state = here.from,
                _ => break,
            }
        }
        places.reverse();
        places
    }
}

/// Takes a way to a state where it is cheaper than the one known.
fn offer(
    reached: &mut [Option<Reached>],
    heap: &mut BinaryHeap<Reverse<(Cost, usize)>>,
    state: usize,
    way: Reached,
) {
    let Some(known) = reached.get_mut(state) else { return };
    if known.is_none_or(|known| way.cost < known.cost) {
        *known = Some(way);
        heap.push(Reverse((way.cost, state)));
    }
}

#[cfg(test)]
mod tests {
    use super::super::{Area, Beside, Crossing, Goal, Start, Zone};
    use super::*;

    fn area(left: i64, right: i64, bottom: i64, top: i64) -> Area {
        Area { left, right, bottom, top }
    }

    fn zone(room: Area) -> Zone {
        Zone { room, barred: Vec::new() }
    }

    /// A bay 100 wide and 1000 high, entered near its top, left at 100.
    fn bay() -> Field {
        Field {
            bounds: area(0, 100, 0, 1000),
            starts: vec![Start {
                zone: zone(area(20, 80, 700, 900)),
                near: Place { x: 30, y: 800 },
                cost: Cost::NONE,
            }],
            goals: vec![Goal { zone: zone(area(10, 90, 50, 600)), wished_y: 100, ..Goal::default() }],
            ..Field::default()
        }
    }

    #[test]
    fn a_free_bay_is_gone_straight_down() {
        let found = cheapest(&bay()).unwrap();
        assert_eq!(found.corners, [Place { x: 30, y: 800 }, Place { x: 30, y: 100 }]);
        assert_eq!(found.cost, Cost { length_nm: 700, ..Cost::NONE });
    }

    #[test]
    fn what_is_barred_is_gone_round_and_a_block_is_passed_at_its_cost() {
        let mut field = bay();
        field.barred.push(area(0, 50, 300, 400));
        let found = cheapest(&field).unwrap();
        assert_eq!(found.corners[0], Place { x: 50, y: 800 }, "behind the piece it shifts for nothing");
        assert_eq!(found.cost.tight_bends, 0);
        let cost = Cost { patches: 1, blocks: 1, ..Cost::NONE };
        field.barred.clear();
        field.crossings.push(Crossing { area: area(-10, 110, 300, 340), axis: Axis::Upright, cost });
        (field.goals[0].zone.room.bottom, field.goals[0].zone.room.top) = (100, 100);
        let found = cheapest(&field).unwrap();
        assert_eq!((found.cost.blocks, found.cost.patches), (1, 1));
        field.crossings[0].axis = Axis::Across;
        field.goals[0].zone.room.top = 600;
        let found = cheapest(&field).unwrap();
        assert_eq!(found.cost.visible_nm, 240, "it comes out above the block, and the rest shows");
    }

    #[test]
    fn the_end_is_beside_what_it_is_to_be_beside() {
        let mut field = bay();
        field.goals[0].beside = Some(Beside { x: 300, bay: (200, 400) });
        let found = cheapest(&field).unwrap();
        assert_eq!(
            (found.cost.visible_nm, found.corners.len()),
            (220, 2),
            "as near as it comes without a turn"
        );
    }

    #[test]
    fn where_nothing_leads_through_there_is_none() {
        assert_eq!(cheapest(&Field::default()), None);
        let mut field = bay();
        field.barred.push(area(-1, 101, 640, 660));
        assert_eq!(cheapest(&field), None);
        field.barred.clear();
        field.starts[0].zone.room = area(80, 20, 700, 900);
        assert_eq!(cheapest(&field), None);
    }
}

//! The lines that a cheapest way lies on, and what each piece between two of them costs.

use super::marked::Marked;
use super::{Area, Cost, Field, Place, Zone};
use crate::geometry::Axis;

/// The lines.
pub(super) struct Grid<'a> {
    field: &'a Field,
    pub(super) xs: Vec<i64>,
    pub(super) ys: Vec<i64>,
    across: Pieces,
    upright: Pieces,
}

/// The pieces along an axis: which lead nowhere, and which lead through something that can be passed.
struct Pieces {
    barred: Marked,
    crossed: Marked,
}

impl<'a> Grid<'a> {
    pub(super) fn of(field: &'a Field) -> Self {
        let (mut xs, mut ys) = (Vec::new(), Vec::new());
        let mut add = |area: &Area| {
            xs.extend([area.left, area.right]);
            ys.extend([area.bottom, area.top]);
        };
        let zones =
            field.starts.iter().map(|start| &start.zone).chain(field.goals.iter().map(|goal| &goal.zone));
        for Zone { room, barred } in zones {
            add(room);
            barred.iter().for_each(&mut add);
        }
        add(&field.bounds);
        field.barred.iter().for_each(&mut add);
        field.crossings.iter().for_each(|crossing| add(&crossing.area));
        field.hides.iter().flatten().for_each(&mut add);
        for start in &field.starts {
            xs.push(start.near.x);
            ys.push(start.near.y);
        }
        for goal in &field.goals {
            ys.push(goal.wished_y);
            if let Some(beside) = goal.beside {
                xs.extend([beside.x, beside.bay.0, beside.bay.1]);
            }
        }
        let bounds = field.bounds;
        xs.retain(|x| bounds.left <= *x && *x <= bounds.right);
        ys.retain(|y| bounds.bottom <= *y && *y <= bounds.top);
        for lines in [&mut xs, &mut ys] {
            lines.sort_unstable();
            lines.dedup();
        }
        let pieces = |axis| Pieces {
            barred: Marked::pieces(axis, &xs, &ys, &field.barred),
            crossed: Marked::pieces(axis, &xs, &ys, field.crossings.iter().map(|crossing| &crossing.area)),
        };
        let (across, upright) = (pieces(Axis::Across), pieces(Axis::Upright));
        Self { field, xs, ys, across, upright }
    }

    /// The place where two lines cross; `None` beyond the last.
    pub(super) fn place(&self, column: usize, row: usize) -> Option<Place> {
        Some(Place { x: *self.xs.get(column)?, y: *self.ys.get(row)? })
    }

    /// What the piece that leads on from a line to the next costs, from one of its ends to the other; `None` where no
    /// way goes. `column` and `row` are of its left or lower end.
    pub(super) fn piece(
        &self,
        axis: Axis,
        (column, row): (usize, usize),
        from: Place,
        to: Place,
    ) -> Option<Cost> {
        let pieces = match axis {
            Axis::Across => &self.across,
            Axis::Upright => &self.upright,
        };
        if pieces.barred.has(column, row) {
            return None;
        }
        let piece = Area {
            left: from.x.min(to.x),
            right: from.x.max(to.x),
            bottom: from.y.min(to.y),
            top: from.y.max(to.y),
        };
        let length_nm = from.away(to);
        let mut cost = Cost { length_nm, ..Cost::NONE };
        if let Some(hides) = &self.field.hides {
            let is_hidden = hides.iter().any(|area| {
                area.left <= piece.left
                    && piece.right <= area.right
                    && area.bottom <= piece.bottom
                    && piece.top <= area.top
            });
            if !is_hidden {
                cost.visible_nm = length_nm;
            }
        }
        if !pieces.crossed.has(column, row) {
            return Some(cost);
        }
        // All edges are lines of the grid: a piece is inside of a rectangle with all of it, or with nothing.
        let is_inside = |area: &Area| match axis {
            Axis::Across => {
                area.bottom < piece.bottom
                    && piece.top < area.top
                    && area.left <= piece.left
                    && piece.right <= area.right
            }
            Axis::Upright => {
                area.left < piece.left
                    && piece.right < area.right
                    && area.bottom <= piece.bottom
                    && piece.top <= area.top
            }
        };
        for crossing in self.field.crossings.iter().filter(|crossing| is_inside(&crossing.area)) {
            if crossing.axis != axis {
                return None;
            }
            // It is passed where it is gone into.
            if !crossing.area.has_inside(from) {
                cost = cost + crossing.cost;
            }
        }
        Some(cost)
    }
}

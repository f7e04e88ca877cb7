//! What is marked of a grid: whatever lies inside of some rectangle, told once for all places or pieces of the grid
//! instead of asked of every rectangle again at each.

use super::{Area, Zone};
use crate::geometry::Axis;
use std::ops::Range;

/// One mark for each place of a grid, row by row from below, each from the left; or for the piece that leads on from
/// it.
pub(super) struct Marked {
    columns: usize,
    marks: Vec<bool>,
}

impl Marked {
    /// The places that are inside of a rectangle, off its edges.
    pub(super) fn places<'a>(xs: &[i64], ys: &[i64], areas: impl IntoIterator<Item = &'a Area>) -> Self {
        Self::filled(xs, ys, areas, |area| {
            (inside(xs, area.left, area.right), inside(ys, area.bottom, area.top))
        })
    }

    /// The pieces along an axis, each by the place that it leads on from, that are inside of a rectangle with all of
    /// their length: its edges are lines of the grid, so that no piece is inside with a part of it.
    pub(super) fn pieces<'a>(
        axis: Axis,
        xs: &[i64],
        ys: &[i64],
        areas: impl IntoIterator<Item = &'a Area>,
    ) -> Self {
        Self::filled(xs, ys, areas, |area| match axis {
            Axis::Across => (along(xs, area.left, area.right), inside(ys, area.bottom, area.top)),
            Axis::Upright => (inside(xs, area.left, area.right), along(ys, area.bottom, area.top)),
        })
    }

    /// The places where the middle of an opening may be.
    pub(super) fn zone(xs: &[i64], ys: &[i64], zone: &Zone) -> Self {
        let mut marked = Self { columns: xs.len(), marks: vec![false; xs.len() * ys.len()] };
        let room = zone.room;
        if room.is_empty() {
            return marked;
        }
        let barred = Self::places(xs, ys, &zone.barred);
        let across = inside(xs, room.left.saturating_sub(1), room.right.saturating_add(1));
        for row in inside(ys, room.bottom.saturating_sub(1), room.top.saturating_add(1)) {
            for column in across.clone() {
                if let Some(mark) = marked.marks.get_mut(row * xs.len() + column) {
                    *mark = !barred.has(column, row);
                }
            }
        }
        marked
    }

    /// All that are marked, in their order: each with its column and row.
    pub(super) fn all(&self) -> impl Iterator<Item = (usize, usize)> {
        let marked = self.marks.iter().enumerate().filter(|(_, mark)| **mark);
        // None where there is no column, since then there is no mark.
        marked.map(|(index, _)| (index % self.columns, index / self.columns))
    }

    fn filled<'a>(
        xs: &[i64],
        ys: &[i64],
        areas: impl IntoIterator<Item = &'a Area>,
        met: impl Fn(&Area) -> (Range<usize>, Range<usize>),
    ) -> Self {
        let columns = xs.len();
        let mut marks = vec![false; columns * ys.len()];
        for area in areas {
            let (across, upright) = met(area);
            for row in upright {
                let row = row * columns;
                if let Some(row) = marks.get_mut(row + across.start..row + across.end) {
                    row.fill(true);
                }
            }
        }
        Self { columns, marks }
    }

    /// Whether a place, or the piece that leads on from it, is marked; not where the grid has none.
    pub(super) fn has(&self, column: usize, row: usize) -> bool {
        self.marks.get(row * self.columns + column).copied().unwrap_or(false)
    }
}

/// Which lines are between two, neither of them counted.
fn inside(lines: &[i64], from: i64, to: i64) -> Range<usize> {
    let first = lines.partition_point(|line| *line <= from);
    first..lines.partition_point(|line| *line < to).max(first)
}

/// Which lines, from two on, lead on to one that is no farther than the other.
fn along(lines: &[i64], from: i64, to: i64) -> Range<usize> {
    let first = lines.partition_point(|line| *line < from);
    let end = lines.partition_point(|line| *line <= to);
    first..end.saturating_sub(1).max(first)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lines_between_edges_are_inside_and_pieces_reach_from_edge_to_edge() {
        let lines = [0, 10, 20, 30, 40];
        assert_eq!(inside(&lines, 10, 40), 2..4);
        assert_eq!(inside(&lines, 40, 10), 5..5, "inside out holds nothing");
        assert_eq!(along(&lines, 10, 40), 1..4);
        assert_eq!(along(&lines, -5, 10), 0..1);
        assert_eq!(along(&lines, 40, 10), 4..4);
        assert_eq!(along(&[], 0, 9), 0..0);
    }

    #[test]
    fn places_and_pieces_are_marked_as_the_rectangles_say_one_by_one() {
        let (xs, ys) = ([0, 3, 7, 9, 12], [-2, 0, 5, 6]);
        let areas =
            [Area { left: 3, right: 12, bottom: -2, top: 6 }, Area { left: -9, right: 7, bottom: 0, top: 6 }];
        let places = Marked::places(&xs, &ys, &areas);
        let across = Marked::pieces(Axis::Across, &xs, &ys, &areas);
        let upright = Marked::pieces(Axis::Upright, &xs, &ys, &areas);
        for (row, y) in ys.iter().enumerate() {
            for (column, x) in xs.iter().enumerate() {
                let is_in = |area: &Area| area.has_inside(super::super::Place { x: *x, y: *y });
                assert_eq!(places.has(column, row), areas.iter().any(is_in), "place {column} {row}");
                let right = xs.get(column + 1);
                let is_in = |area: &Area| {
                    right.is_some_and(|right| area.left <= *x && *right <= area.right)
                        && area.bottom < *y
                        && *y < area.top
                };
                assert_eq!(across.has(column, row), areas.iter().any(is_in), "across {column} {row}");
                let up = ys.get(row + 1);
                let is_in = |area: &Area| {
                    up.is_some_and(|up| area.bottom <= *y && *up <= area.top)
                        && area.left < *x
                        && *x < area.right
                };
                assert_eq!(upright.has(column, row), areas.iter().any(is_in), "upright {column} {row}");
            }
        }
        assert!(!places.has(0, 9));
        let zone = Zone { room: Area { left: 0, right: 9, bottom: 0, top: 5 }, barred: areas.to_vec() };
        let allowed = Marked::zone(&xs, &ys, &zone);
        let all: Vec<(usize, usize)> = allowed.all().collect();
        for (row, y) in ys.iter().enumerate() {
            for (column, x) in xs.iter().enumerate() {
                let is_allowed = zone.allows(super::super::Place { x: *x, y: *y });
                assert_eq!(allowed.has(column, row), is_allowed, "zone {column} {row}");
                assert_eq!(all.contains(&(column, row)), is_allowed);
            }
        }
        assert_eq!(all.len(), 2, "off and on the edges of what is barred");
        let inside_out = Zone { room: Area { left: 9, right: 0, bottom: 0, top: 5 }, ..zone };
        assert_eq!(Marked::zone(&xs, &ys, &inside_out).all().count(), 0);
        assert_eq!(Marked::zone(&[], &ys, &inside_out).all().count(), 0);
    }
}

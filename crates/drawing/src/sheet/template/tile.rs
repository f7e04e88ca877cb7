//! Which stretches of a template go on which pages: a grid of tiles that overlap, without those on which nothing is drawn.

use super::super::size::PaperSize;
use super::super::title_block;
use super::plate::{Drawn, Shape, Stroke};
use crate::clip;
use crate::paper::{PaperPoint, PaperRect};

/// How far two tiles show the same (chosen: room for the register marks, and for a strip of tape).
pub(super) const OVERLAP_MM: f64 = 16.0;

/// So near to a seam a line lies on it.
const ON_SEAM_MM: f64 = 0.01;

/// A tile: a page of a template.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Tile {
    /// Its number, from 1, through all tiles of the wall.
    pub(super) number: usize,
    /// What of the template it shows.
    pub(super) window: PaperRect,
    /// Whether its paper lies on its longer edge.
    pub(super) lying: bool,
    /// Where it stands in its grid: the stretch, the row and the column.
    place: (usize, usize, usize),
}

/// On which side of a tile another one is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Side {
    Left,
    Right,
    Above,
    Below,
}

impl Side {
    pub(super) const ALL: [Self; 4] = [Self::Left, Self::Right, Self::Above, Self::Below];
}

/// The tile on that side, where there is one.
pub(super) fn beside<'a>(tiles: &'a [Tile], tile: &Tile, side: Side) -> Option<&'a Tile> {
    let (island, row, column) = tile.place;
    let place = match side {
        Side::Left => (island, row, column.checked_sub(1)?),
        Side::Right => (island, row, column + 1),
        Side::Above => (island, row.checked_sub(1)?, column),
        Side::Below => (island, row + 1, column),
    };
    tiles.iter().find(|other| other.place == place)
}

/// The tiles of a plate, numbered on from those `before`; of the two ways in which the paper can lie the one that takes
/// fewer.
pub(super) fn tiles(drawn: &Drawn, paper: PaperSize, before: usize) -> Vec<Tile> {
    let mut all: Vec<Tile> = Vec::new();
    for (index, island) in drawn.islands.iter().enumerate() {
        // An opening that a tile of the plate shows whole needs no paper of its own.
        if index > 0 && all.iter().any(|tile| tile.window.shared(*island) == Some(*island)) {
            continue;
        }
        let lying = grid(drawn, index, *island, paper, true);
        let standing = grid(drawn, index, *island, paper, false);
        all.extend(if standing.len() < lying.len() { standing } else { lying });
    }
    for (index, tile) in all.iter_mut().enumerate() {
        tile.number = before + index + 1;
    }
    all
}

/// How many tiles of so much cover a length, and how much they cover together.
fn steps(length_mm: f64, tile_mm: f64) -> (usize, f64) {
    let step = tile_mm - OVERLAP_MM;
    // A plate is never so large that this number matters: past it nothing more is drawn.
    let count = ((length_mm - OVERLAP_MM) / step).ceil().clamp(1.0, 200.0);
    (count as usize, count * step + OVERLAP_MM)
}

fn grid(drawn: &Drawn, index: usize, island: PaperRect, paper: PaperSize, lying: bool) -> Vec<Tile> {
    let room = title_block::room(paper.page_mm(lying));
    let (wide, high) = (room.width_mm(), room.height_mm());
    let (columns, covered_wide) = steps(island.width_mm(), wide);
    let (rows, covered_high) = steps(island.height_mm(), high);
    let middle = island.centre();
    let corner = PaperPoint::new(middle.x_mm - covered_wide / 2.0, middle.y_mm - covered_high / 2.0);
    let mut tiles = Vec::new();
    for row in 0..rows {
        for column in 0..columns {
            let at = corner.moved((wide - OVERLAP_MM) * column as f64, (high - OVERLAP_MM) * row as f64);
            let window = PaperRect::of(at, at.moved(wide, high));
            // From seam to seam: what lies past a seam is the next tile's.
            let half = OVERLAP_MM / 2.0;
            let own = PaperRect {
                left_mm: window.left_mm + if column > 0 { half } else { 0.0 },
                right_mm: window.right_mm - if column + 1 < columns { half } else { 0.0 },
                top_mm: window.top_mm + if row > 0 { half } else { 0.0 },
                bottom_mm: window.bottom_mm - if row + 1 < rows { half } else { 0.0 },
            };
            // What lies on a seam is the tile's before it.
            let open = PaperRect {
                left_mm: own.left_mm + if column > 0 { ON_SEAM_MM } else { 0.0 },
                top_mm: own.top_mm + if row > 0 { ON_SEAM_MM } else { 0.0 },
                ..own
            };
            if drawn.strokes.iter().any(|stroke| shows(open, stroke)) {
                tiles.push(Tile { number: 0, window, lying, place: (index, row, column) });
            }
        }
    }
    tiles
}

/// Whether anything of a stroke is in a window.
fn shows(window: PaperRect, stroke: &Stroke) -> bool {
    straight(stroke).into_iter().any(|(from, to)| clip::line(window, from, to).is_some())
}

/// A stroke as straight pieces; a circle in steps of 5 degrees, off by a thousandth of its radius at most.
pub(super) fn straight(stroke: &Stroke) -> Vec<(PaperPoint, PaperPoint)> {
    let places = match &stroke.shape {
        Shape::Line(places) => places.clone(),
        Shape::Circle(middle, radius) => {
            (0..=72).map(|step| super::plate::round(*middle, *radius, f64::from(step) * 5.0)).collect()
        }
    };
    places.iter().copied().zip(places.iter().copied().skip(1)).collect()
}

//! Which stretches of a template go on which pages: a grid of tiles that overlap, without those on which nothing is
//! drawn.

use super::super::size::PaperSize;
use super::super::title_block;
use super::plate::{Drawn, Shape, Stroke};
use crate::clip;
use crate::ink::Ink;
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

/// Whether a tile shows what is drawn on a stretch of paper: its own, or one that has no tile of its own.
pub(super) fn is_shown(tiles: &[Tile], tile: &Tile, island: usize) -> bool {
    let (own, ..) = tile.place;
    own == island || !tiles.iter().any(|other| other.place.0 == island)
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

/// How far off a seam a hole's middle or a chalk line is kept: half of the overlap, as far as its register marks reach.
const OFF_SEAM_MM: f64 = OVERLAP_MM / 2.0;

/// Past so many places to keep off they are not all told apart (chosen: a plate like a sieve has holes on every seam).
const MOST_KEPT: usize = 60;

/// Tiles side by side along one edge: how many, and where the first begins.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Steps {
    count: usize,
    begin_mm: f64,
}

/// Tiles of so much that cover a stretch, their seams off what is to be `kept` whole, the chalk line first, where one
/// tile more at most lets them.
fn steps(from_mm: f64, to_mm: f64, tile_mm: f64, kept: &[f64]) -> Steps {
    let step = tile_mm - OVERLAP_MM;
    let length = to_mm - from_mm;
    // A plate is never so large that this number matters: past it nothing more is drawn.
    let least = ((length - OVERLAP_MM) / step).ceil().clamp(1.0, 200.0) as usize;
    let (chalk, all) = (kept.get(..1).unwrap_or_default(), kept.get(..MOST_KEPT).unwrap_or(kept));
    let clear =
        |kept: &[f64]| (least..=least + 1).find_map(|count| clear_of(from_mm, to_mm, step, count, kept));
    let centred = Steps { count: least, begin_mm: centred(from_mm, to_mm, step, least) };
    clear(all).or_else(|| clear(chalk)).unwrap_or(centred)
}

/// Where the first of so many tiles begins that are centred on a stretch.
fn centred(from_mm: f64, to_mm: f64, step: f64, count: usize) -> f64 {
    (from_mm + to_mm - step * count as f64 - OVERLAP_MM) / 2.0
}

/// So many tiles moved as little as may be until no seam is near what is kept; `None` where they would not cover the
/// stretch.
fn clear_of(from_mm: f64, to_mm: f64, step: f64, count: usize, kept: &[f64]) -> Option<Steps> {
    let middle = centred(from_mm, to_mm, step, count);
    let spare = (step * count as f64 + OVERLAP_MM - (to_mm - from_mm)) / 2.0;
    let seams: Vec<f64> = (1..count).map(|seam| middle + step * seam as f64 + OVERLAP_MM / 2.0).collect();
    // To just off each place to be kept, from either side.
    let off = OFF_SEAM_MM + ON_SEAM_MM;
    let moves =
        seams.iter().flat_map(|seam| kept.iter().flat_map(move |at| [at - seam - off, at - seam + off]));
    let mut moves: Vec<f64> = moves.chain([0.0]).filter(|by| by.abs() <= spare.max(0.0)).collect();
    moves.sort_by(|a, b| a.abs().total_cmp(&b.abs()));
    let is_clear =
        |by: &f64| seams.iter().all(|seam| kept.iter().all(|at| (seam + by - at).abs() > OFF_SEAM_MM));
    moves.into_iter().find(is_clear).map(|by| Steps { count, begin_mm: middle + by })
}

/// What seams are kept off, across and down: the chalk line first, then the middles of holes.
fn kept(drawn: &Drawn, index: usize) -> [Vec<f64>; 2] {
    if index > 0 {
        return [Vec::new(), Vec::new()];
    }
    let mut kept = [vec![0.0], vec![0.0]];
    for stroke in &drawn.strokes {
        // A hole's middle, of a slot where its fastener goes, is where its cross is.
        if let (Ink::Hole(_), Shape::Line(arm)) = (stroke.ink, &stroke.shape)
            && let [from, to] = arm.as_slice()
        {
            let [across, down] = &mut kept;
            across.push((from.x_mm + to.x_mm) / 2.0);
            down.push((from.y_mm + to.y_mm) / 2.0);
        }
    }
    kept.map(|mut places| {
        places.dedup();
        places
    })
}

fn grid(drawn: &Drawn, index: usize, island: PaperRect, paper: PaperSize, lying: bool) -> Vec<Tile> {
    let room = title_block::room(paper.page_mm(lying));
    let (wide, high) = (room.width_mm(), room.height_mm());
    let [across, down] = kept(drawn, index);
    let Steps { count: columns, begin_mm: left } = steps(island.left_mm, island.right_mm, wide, &across);
    let Steps { count: rows, begin_mm: top } = steps(island.top_mm, island.bottom_mm, high, &down);
    let corner = PaperPoint::new(left, top);
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
            if drawn.strokes.iter().any(|stroke| stroke.island == index && shows(open, stroke)) {
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

#[cfg(test)]
mod tests {
    use super::*;

    fn seams(steps: Steps, tile_mm: f64) -> Vec<f64> {
        let seam = |index: usize| steps.begin_mm + (tile_mm - OVERLAP_MM) * index as f64 + OVERLAP_MM / 2.0;
        (1..steps.count).map(seam).collect()
    }

    #[test]
    fn no_seam_lies_on_the_chalk_line_or_a_hole() {
        // Two tiles of 216 mm centred on nought have their seam on it.
        let kept = [0.0, -60.0, 12.0, 75.0];
        let found = steps(-180.0, 180.0, 216.0, &kept);
        assert_eq!(found.count, 2);
        for seam in seams(found, 216.0) {
            assert!(kept.iter().all(|at| (seam - at).abs() > OFF_SEAM_MM), "{seam}");
        }
        assert!(found.begin_mm <= -180.0 && found.begin_mm + 2.0 * 200.0 + OVERLAP_MM >= 180.0, "{found:?}");
    }

    #[test]
    fn with_nothing_to_spare_there_is_one_tile_more() {
        // 416 mm are all that two tiles cover: their seam cannot move.
        let found = steps(-208.0, 208.0, 216.0, &[0.0]);
        assert_eq!(found.count, 3);
        assert!(seams(found, 216.0).iter().all(|seam| seam.abs() > OFF_SEAM_MM));
    }

    #[test]
    fn where_holes_are_everywhere_the_chalk_line_alone_is_kept_whole() {
        let sieve: Vec<f64> = [0.0].into_iter().chain((-40..40).map(|at| f64::from(at) * 5.0)).collect();
        let found = steps(-190.0, 190.0, 216.0, &sieve);
        assert!(seams(found, 216.0).iter().all(|seam| seam.abs() > OFF_SEAM_MM), "{found:?}");
        assert_eq!(steps(-90.0, 90.0, 216.0, &sieve), Steps { count: 1, begin_mm: -108.0 });
    }
}

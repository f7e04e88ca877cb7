//! One tile on its page: what falls into its window at full size, the register marks that it shares with its
//! neighbours, its number and theirs.

use super::super::Bookmark;
use super::super::leaf::{Leaf, Ratio, blank};
use super::super::size::PaperSize;
use super::super::strokes::{Letters, Strokes};
use super::super::title_block;
use super::labels::Names;
use super::plate::{Drawn, Shape};
use super::tile::{OVERLAP_MM, Side, Tile, beside, is_shown, straight};
use crate::clip;
use crate::font::text_width_mm;
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::scene::{Anchor, Item, ItemKind, Lit};
use strikeline_solver::words::on_paper;

const NUMBER: Letters = Letters::semibold(5.0);
const TO: Letters = Letters::regular(2.8).quiet();
/// A register mark: its circle, and its cross.
const REGISTER_MM: f64 = 2.5;
const REGISTER_CROSS_MM: f64 = 5.0;
/// Where register marks stand along a seam, as shares of the tile's edge.
const ALONG: [f64; 2] = [0.22, 0.78];
/// Where the neighbour's number may stand along it, the best first.
const TO_ALONG: [f64; 5] = [0.5, 0.36, 0.64, 0.1, 0.9];

/// Draws a tile, of so many on the wall.
pub(super) fn leaf(paper: PaperSize, drawn: &Drawn, tiles: &[Tile], tile: &Tile, of: usize) -> Leaf {
    let page_mm = paper.page_mm(tile.lying);
    let mut strokes = Strokes::default();
    let mut taken = Vec::new();
    let joined: Vec<(Side, usize)> =
        Side::ALL.into_iter().filter_map(|side| Some((side, beside(tiles, tile, side)?.number))).collect();
    // Under what is drawn: a chalk line keeps its colour where it crosses a seam.
    for (side, _) in &joined {
        let (from, to) = seam_line(tile.window, *side);
        strokes.line(Ink::Bracket, from, to);
    }
    let lines = shapes(&mut strokes, drawn, tiles, tile);
    for (side, other) in joined {
        seam(&mut strokes, &mut taken, &lines, (tile.window, side, other));
    }
    number(&mut strokes, &mut taken, &lines, tile, of);
    let mut names = Names::new(tile.window, lines, taken);
    for label in drawn.labels.iter().filter(|label| is_shown(tiles, tile, label.island)) {
        names.write(&mut strokes, label);
    }
    let room = title_block::room(page_mm);
    let mut placed = Strokes::default();
    placed.take(strokes.items, room.left_mm - tile.window.left_mm, room.top_mm - tile.window.top_mm);
    let mut scene = blank(page_mm);
    scene.items = placed.items;
    let bookmark = Bookmark { words: on_paper::tile(tile.number, of), depth: 1, y_mm: room.top_mm };
    Leaf { sheet: on_paper::TEMPLATE, scene, ratio: Ratio::Full, bookmarks: vec![bookmark] }
}

/// What falls into a tile's window, cut at its edges: of its own stretch of paper alone, so that nobody lays a tile
/// by what is drawn whole elsewhere. Gives the straight pieces.
fn shapes(
    strokes: &mut Strokes,
    drawn: &Drawn,
    tiles: &[Tile],
    tile: &Tile,
) -> Vec<(PaperPoint, PaperPoint)> {
    let window = tile.window;
    let mut lines = Vec::new();
    for stroke in drawn.strokes.iter().filter(|stroke| is_shown(tiles, tile, stroke.island)) {
        let item = |kind| Item {
            ink: stroke.ink,
            subject: stroke.subject.clone(),
            kind,
            assumed: stroke.assumed,
            lit: Lit::No,
            width_mm: stroke.width_mm,
        };
        let pieces = straight(stroke).into_iter().filter_map(|(from, to)| clip::line(window, from, to));
        let pieces: Vec<(PaperPoint, PaperPoint)> = pieces.collect();
        match &stroke.shape {
            Shape::Circle(centre, radius_mm) if is_whole(window, *centre, *radius_mm) => {
                let (centre, radius_mm) = (*centre, *radius_mm);
                strokes.items.push(item(ItemKind::Circle { centre, radius_mm, filled: false }));
            }
            _ => strokes.items.extend(pieces.iter().map(|&(from, to)| item(ItemKind::Line { from, to }))),
        }
        lines.extend(pieces);
    }
    lines
}

fn is_whole(window: PaperRect, centre: PaperPoint, radius_mm: f64) -> bool {
    let bounds = PaperRect::of(centre, centre).grown(radius_mm);
    window.shared(bounds) == Some(bounds)
}

/// The middle of what two tiles share.
fn seam_line(window: PaperRect, side: Side) -> (PaperPoint, PaperPoint) {
    let half = OVERLAP_MM / 2.0;
    match side {
        Side::Left | Side::Right => {
            let x = if side == Side::Left { window.left_mm + half } else { window.right_mm - half };
            (PaperPoint::new(x, window.top_mm), PaperPoint::new(x, window.bottom_mm))
        }
        Side::Above | Side::Below => {
            let y = if side == Side::Above { window.top_mm + half } else { window.bottom_mm - half };
            (PaperPoint::new(window.left_mm, y), PaperPoint::new(window.right_mm, y))
        }
    }
}

/// The register marks that two tiles have in the same places of their seam, and the other's number.
fn seam(
    strokes: &mut Strokes,
    taken: &mut Vec<PaperRect>,
    lines: &[(PaperPoint, PaperPoint)],
    (window, side, other): (PaperRect, Side, usize),
) {
    let (from, to) = seam_line(window, side);
    for share in ALONG {
        let at = from.moved((to.x_mm - from.x_mm) * share, (to.y_mm - from.y_mm) * share);
        strokes.put(Ink::Sheet, ItemKind::Circle { centre: at, radius_mm: REGISTER_MM, filled: false });
        let reach = REGISTER_CROSS_MM;
        strokes.line(Ink::Sheet, at.moved(-reach, 0.0), at.moved(reach, 0.0));
        strokes.line(Ink::Sheet, at.moved(0.0, -reach), at.moved(0.0, reach));
        taken.push(PaperRect::of(at, at).grown(reach));
    }
    let words = on_paper::to_tile(other);
    let wide = text_width_mm(&words, TO.height_mm, TO.weight) / 2.0;
    // Along the seam or a little aside of it, where nothing runs through; over the middle where that is nowhere.
    let around = |name: PaperPoint| {
        PaperRect::of(name.moved(-wide, 0.8), name.moved(wide, -TO.height_mm * 0.7)).grown(0.3)
    };
    let places = TO_ALONG.iter().flat_map(|share| {
        let at = from.moved((to.x_mm - from.x_mm) * share, (to.y_mm - from.y_mm) * share - 1.2);
        let aside = if from.x_mm == to.x_mm { (wide + 2.0, 0.0) } else { (0.0, TO.height_mm + 1.0) };
        [at, at.moved(aside.0, aside.1), at.moved(-aside.0, -aside.1)]
    });
    let is_free = |name: &PaperPoint| {
        let ground = around(*name);
        window.shared(ground) == Some(ground)
            && !lines.iter().any(|(from, to)| clip::line(ground, *from, *to).is_some())
            && !taken.iter().any(|other| other.meets(ground))
    };
    let places: Vec<PaperPoint> = places.collect();
    let name = places.iter().copied().find(is_free).or(places.first().copied()).unwrap_or(from);
    let ground = around(name);
    let points = ground.corners().to_vec();
    strokes.put(Ink::LabelGroundOff, ItemKind::Polygon { points, filled: true, outlined: false });
    strokes.text(name, &words, TO, Anchor::Middle);
    taken.push(ground);
}

/// The tile's number, in the first corner of its window through which nothing runs, else in the first.
fn number(
    strokes: &mut Strokes,
    taken: &mut Vec<PaperRect>,
    lines: &[(PaperPoint, PaperPoint)],
    tile: &Tile,
    of: usize,
) {
    let words = on_paper::tile(tile.number, of);
    let wide = text_width_mm(&words, NUMBER.height_mm, NUMBER.weight);
    let inner = tile.window.grown(-(OVERLAP_MM + 1.0));
    let high = NUMBER.height_mm;
    let corners = [(0.0, 1.0), (1.0, 1.0), (0.0, 0.0), (1.0, 0.0)].map(|(right, down)| {
        let at = inner.at(right, down).moved(-wide * right, if down > 0.5 { 0.0 } else { high });
        PaperRect::of(at.moved(0.0, 1.2), at.moved(wide, -high * 0.7))
    });
    let is_free = |rect: &&PaperRect| {
        let wide = rect.grown(1.0);
        !lines.iter().any(|(from, to)| clip::line(wide, *from, *to).is_some())
            && !taken.iter().any(|other| other.meets(wide))
    };
    let [first, ..] = corners;
    let rect = corners.iter().find(is_free).copied().unwrap_or(first);
    strokes.text(PaperPoint::new(rect.left_mm, rect.bottom_mm - 1.2), &words, NUMBER, Anchor::Start);
    taken.push(rect);
}

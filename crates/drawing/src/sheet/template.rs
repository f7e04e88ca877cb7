//! The plate at full size, to be laid on the wall: its holes, openings, level line and centre line, and where the
//! piece's corners are; in tiles where the paper is smaller, after a page that tells how to join and check them.
//!
//! Of a plate whose holes nobody measured there are no tiles: a template invites drilling.

mod cover;
mod labels;
mod plate;
mod tile;
mod tile_page;

use super::Ask;
use super::leaf::Leaf;
use plate::Drawn;
use strikeline_solver::plan::piece::{MountedPlan, PiecePlan};
use tile::Tile;

/// A plate to be drawn, and its tiles; none where it was not measured.
struct Template<'a> {
    piece: &'a PiecePlan,
    mount: &'a MountedPlan,
    drawn: Option<Drawn>,
    tiles: Vec<Tile>,
}

/// Draws it: first the page of instructions, then the tiles, numbered through all plates of the wall.
pub(super) fn leaves(ask: &Ask<'_>) -> Vec<Leaf> {
    let mut templates = Vec::new();
    let mut before = 0;
    for piece in &ask.plan.pieces {
        let Some(mount) = &piece.mount else { continue };
        let drawn = plate::drawn(ask, piece, mount);
        let tiles = drawn.as_ref().map(|drawn| tile::tiles(drawn, ask.paper, before)).unwrap_or_default();
        before += tiles.len();
        templates.push(Template { piece, mount, drawn, tiles });
    }
    let mut leaves = cover::leaves(ask, &templates, before);
    for template in &templates {
        if let Some(drawn) = &template.drawn {
            leaves.extend(
                template
                    .tiles
                    .iter()
                    .map(|tile| tile_page::leaf(ask.paper, drawn, &template.tiles, tile, before)),
            );
        }
    }
    leaves
}

#[cfg(test)]
mod tests;

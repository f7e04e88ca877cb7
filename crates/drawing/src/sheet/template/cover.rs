//! The page before the tiles: how they are printed, checked, joined and laid on the wall, with a map of them.

use super::super::Ask;
use super::super::flow::{FlowPage, flow};
use super::super::leaf::{self, Leaf, Ratio};
use super::super::list::{List, STRONG, TEXT};
use super::super::strokes::{Letters, Strokes};
use super::Template;
use super::plate::Drawn;
use super::tile::{Tile, straight};
use crate::font::{CAPITALS, text_width_mm};
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::scene::{Anchor, ItemKind};
use strikeline_solver::plan::piece::HolePlan;
use strikeline_solver::units::Length;
use strikeline_solver::words::{self, on_paper};

const NUMBER: Letters = Letters::semibold(3.8);
/// How high the map may be: the largest of these at which there is no page more than at the least (chosen: at the least
/// its numbers can still be told apart).
const MAP_MM: [f64; 6] = [110.0, 90.0, 70.0, 55.0, 42.0, 32.0];
/// How many distances between holes are asked for, at most (chosen: what one takes the time to measure).
const PAIRS: usize = 6;

/// Draws it, for so many tiles.
pub(super) fn leaves(ask: &Ask<'_>, templates: &[Template<'_>], tiles: usize) -> Vec<Leaf> {
    let page_mm = ask.paper.page_mm(true);
    let columns = leaf::columns(page_mm);
    let listed =
        |map_mm: f64| flow(&listed(ask, templates, tiles, columns.width_mm(), map_mm).blocks, columns);
    let tried: Vec<Vec<FlowPage>> = MAP_MM.into_iter().map(listed).collect();
    let least = tried.iter().map(Vec::len).min();
    let pages = tried.into_iter().find(|pages| Some(pages.len()) == least).unwrap_or_default();
    let full =
        |page: FlowPage| Leaf { ratio: Ratio::Full, ..leaf::listed(on_paper::TEMPLATE, page_mm, page) };
    pages.into_iter().map(full).collect()
}

/// All that is told before the tiles, with maps so high at most.
fn listed(ask: &Ask<'_>, templates: &[Template<'_>], tiles: usize, width_mm: f64, map_mm: f64) -> List {
    let mut list = List::new(width_mm);
    list.paragraph(&on_paper::title(ask.job), STRONG);
    list.paragraph(&on_paper::wall_and_option(ask.job, ask.plan), TEXT);
    if templates.is_empty() {
        list.paragraph(on_paper::NO_PLATE, STRONG);
    }
    if tiles > 0 {
        list.paragraph(&on_paper::tiles(tiles, ask.paper.name()), STRONG);
        list.heading(on_paper::HOW_TO, 1);
        for sentence in on_paper::TEMPLATE_STEPS {
            list.paragraph(sentence, TEXT);
        }
    }
    for template in templates {
        plate(&mut list, ask, template, templates.len() > 1, map_mm);
    }
    list
}

/// One plate: its map, what to measure on the joined tiles, where its holes and the piece's corners are.
fn plate(list: &mut List, ask: &Ask<'_>, template: &Template<'_>, is_named: bool, map_mm: f64) {
    let (plan, piece) = (ask.plan, template.piece);
    if is_named {
        list.heading(&words::capital(&words::thing(plan, &piece.id.whole())), 1);
    }
    // Under a plate's name its parts stand one deeper.
    let depth = if is_named { 2 } else { 1 };
    let Some(drawn) = &template.drawn else {
        list.paragraph(&on_paper::not_measured(plan, piece), STRONG);
        return;
    };
    if piece.assumed || template.mount.assumed {
        list.paragraph(on_paper::PLACE_ASSUMED, STRONG);
    }
    list.heading(on_paper::SECOND_CHECK, depth);
    list.paragraph(&on_paper::second_check(plan), TEXT);
    for (first, second) in pairs(&template.mount.holes) {
        list.mark(&on_paper::pair(plan, first, second), "", "", false);
    }
    // A hole by itself is checked against the level line's ends.
    if let [only] = template.mount.holes.as_slice() {
        for (end, at) in ["left", "right"].into_iter().zip(drawn.level) {
            let (x, y) = (only.in_plate.x.mm() - at.x_mm, only.in_plate.y.mm() + at.y_mm);
            let apart = Length::millimetres(x.hypot(y));
            list.mark(&on_paper::to_level_end(plan, only, end, apart), "", "", false);
        }
    }
    list.heading(&on_paper::corners(plan, piece), depth);
    list.paragraph(&drawn.corners.join(" "), TEXT);
    let is_ringed = !template.mount.fastening.fasteners.is_empty();
    list.heading(if is_ringed { on_paper::HOLES } else { on_paper::HOLES_ALONE }, depth);
    for hole in &template.mount.holes {
        list.paragraph(&on_paper::hole(plan, template.mount, hole), TEXT);
    }
    // Last: what is left of a column is room for it.
    list.heading(on_paper::MAP, depth);
    map(list, drawn, &template.tiles, map_mm);
}

/// Pairs of holes to be measured between: the widest apart first, so that an error of scale shows most.
fn pairs(holes: &[HolePlan]) -> Vec<(&HolePlan, &HolePlan)> {
    // Of a plate like a sieve the first fifty tell enough.
    let some = || holes.iter().take(50).enumerate();
    let mut pairs: Vec<(&HolePlan, &HolePlan)> = some()
        .flat_map(|(index, first)| holes.iter().take(50).skip(index + 1).map(move |second| (first, second)))
        .collect();
    pairs.sort_by(|a, b| on_paper::apart(b.0, b.1).mm().total_cmp(&on_paper::apart(a.0, a.1).mm()));
    pairs.truncate(PAIRS);
    pairs
}

/// All tiles as they lie on the wall, small and at most so high, with their numbers.
fn map(list: &mut List, drawn: &Drawn, tiles: &[Tile], most_mm: f64) {
    let corners: Vec<PaperPoint> = tiles.iter().flat_map(|tile| tile.window.corners()).collect();
    let Some(all) = PaperRect::round(&corners) else { return };
    let share = (list.width_mm() / all.width_mm()).min(most_mm / all.height_mm()).min(1.0);
    let at = |place: PaperPoint| {
        PaperPoint::new((place.x_mm - all.left_mm) * share, (place.y_mm - all.top_mm) * share)
    };
    let mut strokes = Strokes::default();
    for stroke in &drawn.strokes {
        for (from, to) in straight(stroke) {
            let ink = if stroke.ink == Ink::ChalkLine { Ink::Sweep } else { Ink::Hatch };
            strokes.line(ink, at(from), at(to));
        }
    }
    for tile in tiles {
        let rect = tile.window;
        let small = PaperRect::of(at(rect.at(0.0, 0.0)), at(rect.at(1.0, 1.0)));
        strokes.rect(Ink::Dimension, small, false);
        let middle = small.at(0.5, 0.28).moved(0.0, NUMBER.height_mm * 0.33);
        let wide = text_width_mm(&tile.number.to_string(), NUMBER.height_mm, NUMBER.weight) / 2.0;
        let up_mm = NUMBER.height_mm * CAPITALS;
        let ground = PaperRect::of(middle.moved(-wide, 0.0), middle.moved(wide, -up_mm)).grown(0.4);
        let points = ground.corners().to_vec();
        strokes.put(Ink::LabelGroundOff, ItemKind::Polygon { points, filled: true, outlined: false });
        strokes.text(middle, &tile.number.to_string(), NUMBER, Anchor::Middle);
    }
    list.graphic(all.height_mm() * share + 2.0, strokes);
}

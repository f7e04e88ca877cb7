//! Names on the drawing, where there is room for them and nothing else says what a thing is.

use super::clear_labels::{Clear, ground};
use super::wall::GROUND_MM;
use crate::font::{CAPITALS, Weight, shortened, text_width_mm};
use crate::ink::Ink;
use crate::look::Look;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::{Pen, lit};
use crate::scale::Scale;
use crate::scene::{Anchor, Lit};
use strikeline_solver::geometry::{Point, Rect, Span};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Subject;

/// Between a name and the edge it stands at.
const INSET_MM: f64 = 1.8;

/// The same above and below a name in a flat thing: more than is kept free round it.
const LEAST_INSET_MM: f64 = 0.8;

/// How wide a name is made that finds no place in full, the widest first (chosen: of a shorter one nobody knows what it
/// begins).
const SHORT_MM: [f64; 3] = [30.0, 20.0, 12.0];

/// A name that asks for a place.
struct Name<'a> {
    subject: Subject,
    assumed: bool,
    text: &'a str,
    inside: PaperRect,
    /// Its place among the pieces; what is no piece has one past the last.
    index: usize,
}

/// A name at its place.
pub(super) struct Label {
    subject: Subject,
    assumed: bool,
    text: String,
    /// The rectangle it takes, from its base line to the top of its capitals.
    bounds: PaperRect,
}

impl Label {
    /// What is kept free round it.
    pub(super) fn ground(&self) -> PaperRect {
        ground(self.bounds)
    }
}

/// All names: of pieces, then of features, then of what is hidden.
fn names<'a>(plan: &'a Plan, scale: &'a Scale) -> impl Iterator<Item = Name<'a>> {
    let pieces = plan.pieces.iter().map(|it| (it.id.whole(), it.assumed, &it.name, it.outline));
    let features = plan.survey.features.iter().map(|it| (it.id.whole(), it.assumed, &it.name, it.rect));
    let hidden = plan.survey.hidden.iter().map(|it| (it.id.whole(), it.assumed, &it.name, it.rect));
    let all = pieces.chain(features).chain(hidden).enumerate();
    all.filter(|(_, (.., text, _))| !text.is_empty()).map(|(index, (subject, assumed, text, rect))| Name {
        subject,
        assumed,
        text,
        inside: scale.paper_rect(rect),
        index,
    })
}

/// The names of what is selected or held. They come before all else and are never left out on the page.
pub(super) fn lit_labels(plan: &Plan, scale: &Scale, look: &Look) -> Vec<Label> {
    let lit = names(plan, scale).filter(|name| lit(look, &name.subject) != Lit::No);
    placed(lit.collect(), plan, scale, look, Vec::new(), Clear::place_first)
}

/// The names of all else, with so much taken: the last to come gives way.
pub(super) fn other_labels(plan: &Plan, scale: &Scale, look: &Look, taken: Vec<PaperRect>) -> Vec<Label> {
    let others = names(plan, scale).filter(|name| lit(look, &name.subject) == Lit::No);
    placed(others.collect(), plan, scale, look, taken, Clear::place)
}

fn placed(
    names: Vec<Name<'_>>,
    plan: &Plan,
    scale: &Scale,
    look: &Look,
    mut taken: Vec<PaperRect>,
    place: fn(&mut Clear, &[PaperRect], &[PaperRect]) -> Option<PaperRect>,
) -> Vec<Label> {
    taken.extend(holes(plan, scale));
    taken.extend(edges(plan, scale));
    let mut clear = Clear::new(scale.page(), taken);
    let studs = studs(plan, scale);
    let mut labels = Vec::new();
    for name in names {
        // What hangs lies on top: a name under it would be read as its own.
        let others = plan.pieces.iter().enumerate().filter(|(index, _)| *index != name.index);
        let covers: Vec<PaperRect> = others.map(|(_, piece)| scale.paper_rect(piece.outline)).collect();
        let covers_and_studs: Vec<PaperRect> = covers.iter().chain(&studs).copied().collect();
        let height_mm = look.sound_text_height_mm();
        let placed = written(&name, height_mm).into_iter().find_map(|text| {
            let places = places(name.inside, &text, scale.page(), height_mm);
            // Off the studs where it can be; what is held keeps its place while it passes them.
            let is_lit = lit(look, &name.subject) != Lit::No;
            let off_studs = (!is_lit).then(|| clear.place(&places, &covers_and_studs)).flatten();
            Some((off_studs.or_else(|| place(&mut clear, &places, &covers))?, text))
        });
        if let Some((bounds, text)) = placed {
            let Name { subject, assumed, .. } = name;
            labels.push(Label { subject, assumed, text, bounds });
        }
    }
    labels
}

/// A name in full, then shortened to what its thing is wide, then shorter still: one that is cut is better than none.
fn written(name: &Name<'_>, height_mm: f64) -> Vec<String> {
    let full = text_width_mm(name.text, height_mm, Weight::Regular);
    let inside = name.inside.width_mm() - 2.0 * INSET_MM;
    let [.., least] = SHORT_MM;
    let rooms = std::iter::once(inside).chain(SHORT_MM).filter(|room| (least..full).contains(room));
    let short = rooms.map(|room| shortened(name.text, room, height_mm, Weight::Regular));
    std::iter::once(name.text.to_owned()).chain(short).collect()
}

/// Writes names, each on ground of its own.
pub(super) fn draw(pen: &mut Pen<'_>, labels: &[Label], look: &Look) {
    for label in labels {
        pen.take(label.subject.clone(), label.assumed);
        pen.ground(label.ground());
        let at = PaperPoint::new(label.bounds.left_mm, label.bounds.bottom_mm);
        pen.text(Ink::Label, at, &label.text, look.sound_text_height_mm(), Anchor::Start);
    }
}

/// Where a name may stand: in its thing's corners, above it, to either side of it, or below it.
fn places(inside: PaperRect, text: &str, page: PaperRect, height_mm: f64) -> Vec<PaperRect> {
    let width = text_width_mm(text, height_mm, Weight::Regular);
    let capitals = height_mm * CAPITALS;
    let mut starts = Vec::new();
    let centred = inside.centre().x_mm - width / 2.0;
    // In a flat thing it stands in the middle of the height.
    let inset = INSET_MM.min((inside.height_mm() - capitals) / 2.0);
    if width + 2.0 * INSET_MM <= inside.width_mm() && inset >= LEAST_INSET_MM {
        let (left, right) = (inside.left_mm + INSET_MM, inside.right_mm - INSET_MM - width);
        let (upper, lower) = (inside.top_mm + inset + capitals, inside.bottom_mm - inset);
        starts.extend([(left, upper), (left, lower), (right, upper), (right, lower)]);
    }
    // Beside a thing at the page's edge it stands as near its middle as the page allows.
    let beside = centred.min(page.right_mm - INSET_MM - width).max(page.left_mm + INSET_MM);
    starts.push((beside, inside.top_mm - INSET_MM));
    let head = inside.top_mm.max(page.top_mm) + INSET_MM + capitals;
    starts.extend([(inside.right_mm + INSET_MM, head), (inside.left_mm - INSET_MM - width, head)]);
    starts.push((beside, inside.bottom_mm + INSET_MM + capitals));
    let bounds = |(left, base)| {
        let at = PaperPoint::new(left, base);
        PaperRect::of(at, at.moved(width, -capitals))
    };
    starts.into_iter().map(bounds).collect()
}

/// What a name must not hide: the edges of what is on the wall, the wall's own, and the ground under it.
fn edges(plan: &Plan, scale: &Scale) -> Vec<PaperRect> {
    let wall = scale.paper_rect(plan.survey.outline);
    let ground = PaperRect { top_mm: wall.bottom_mm, bottom_mm: wall.bottom_mm + GROUND_MM, ..wall };
    let features = plan.survey.features.iter().map(|feature| scale.paper_rect(feature.rect));
    let pieces = plan.pieces.iter().map(|piece| scale.paper_rect(piece.outline));
    let sides = |rect: PaperRect| {
        [
            PaperRect { right_mm: rect.left_mm, ..rect },
            PaperRect { left_mm: rect.right_mm, ..rect },
            PaperRect { bottom_mm: rect.top_mm, ..rect },
            PaperRect { top_mm: rect.bottom_mm, ..rect },
        ]
    };
    std::iter::once(wall)
        .chain(features)
        .chain(pieces)
        .flat_map(sides)
        .chain(std::iter::once(ground))
        .collect()
}

/// The studs, each from side to side over the wall's height.
fn studs(plan: &Plan, scale: &Scale) -> Vec<PaperRect> {
    let upright = plan.survey.outline.upright();
    let across = plan.framing.studs.iter().map(|stud| Span::new(stud.left, stud.right));
    across.map(|across| scale.paper_rect(Rect::new(across, upright))).collect()
}

/// What a name must not lie on: the holes, and the lines to strike.
fn holes(plan: &Plan, scale: &Scale) -> Vec<PaperRect> {
    let at = |place| scale.paper_from_wall(place);
    let holes = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
    let holes = holes.map(|hole| PaperRect::of(at(hole.place), at(hole.place)).grown(1.0));
    let lines = plan.marks.iter().filter_map(|mark| mark.line);
    let lines = lines.map(|(from, to)| PaperRect::of(at(from), at(to)));
    let cables = plan.pieces.iter().flat_map(|piece| {
        let ports = piece.ports.iter().map(|port| PaperRect::of(at(port.place), at(port.place)).grown(1.0));
        let way = piece.cable.as_ref().and_then(|cable| cable.way.as_ref());
        let run = way.into_iter().flat_map(|way| way.run.windows(2)).filter_map(|pair| match pair {
            [from, to] => Some(PaperRect::of(at(*from), at(*to))),
            _ => None,
        });
        let openings = way.into_iter().flat_map(|way| way.entry.into_iter().chain([way.exit]));
        ports.chain(run).chain(openings.map(|rect| scale.paper_rect(rect))).collect::<Vec<_>>()
    });
    let middle = plan.survey.outline.centre().y;
    let hits = plan.survey.hits.iter().map(|hit| at(Point::new(hit.x, hit.y.unwrap_or(middle))));
    let hits = hits.map(|at| PaperRect::of(at, at).grown(1.0));
    holes.chain(lines).chain(cables).chain(hits).collect()
}

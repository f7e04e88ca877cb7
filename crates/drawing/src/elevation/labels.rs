//! Names on the drawing, where there is room for them and nothing else says what a thing is.

use crate::font::{CAPITALS, Weight, text_width_mm};
use crate::ink::Ink;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::Pen;
use crate::scene::Anchor;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Subject;

/// Between a name and the edge it stands at.
const INSET_MM: f64 = 1.8;
/// Free round a name.
const CLEAR_MM: f64 = 0.6;

/// A name that asks for a place.
struct Name<'a> {
    subject: Subject,
    assumed: bool,
    text: &'a str,
    inside: PaperRect,
}

/// Writes the names of pieces, then of features, then of what is hidden: the last to come gives way.
pub(super) fn labels(pen: &mut Pen<'_>, plan: &Plan, mut taken: Vec<PaperRect>, height_mm: f64) {
    let scale = *pen.scale;
    taken.extend(holes(pen, plan));
    let pieces = plan.pieces.iter().map(|piece| Name {
        subject: piece.id.whole(),
        assumed: piece.assumed,
        text: &piece.name,
        inside: scale.paper_rect(piece.outline),
    });
    let features = plan.survey.features.iter().map(|feature| Name {
        subject: feature.id.whole(),
        assumed: feature.assumed,
        text: &feature.name,
        inside: scale.paper_rect(feature.rect),
    });
    let hidden = plan.survey.hidden.iter().map(|hidden| Name {
        subject: hidden.id.whole(),
        assumed: hidden.assumed,
        text: &hidden.name,
        inside: scale.paper_rect(hidden.rect),
    });
    // What hangs lies on top: a name under it would be read as its own.
    let covers: Vec<PaperRect> = plan.pieces.iter().map(|piece| scale.paper_rect(piece.outline)).collect();
    for (index, name) in pieces.chain(features).chain(hidden).enumerate() {
        if name.text.is_empty() {
            continue;
        }
        let width = text_width_mm(name.text, height_mm, Weight::Regular);
        for at in places(name.inside, width, height_mm) {
            let bounds = PaperRect::of(at, at.moved(width, -height_mm * CAPITALS));
            let on_page = scale.page().shared(bounds) == Some(bounds);
            let wide = bounds.grown(CLEAR_MM);
            let covered = covers.iter().enumerate().any(|(piece, rect)| piece != index && rect.meets(wide));
            if on_page && !covered && !taken.iter().any(|other| other.meets(wide)) {
                pen.take(name.subject.clone(), name.assumed);
                pen.fill(Ink::LabelGround, &bounds.grown(CLEAR_MM).corners());
                pen.text(Ink::Label, at, name.text, height_mm, Anchor::Start);
                taken.push(bounds);
                break;
            }
        }
    }
}

/// Where a name may begin: in its thing's upper left corner, in its lower left one, above it, or below it.
fn places(inside: PaperRect, width: f64, height_mm: f64) -> Vec<PaperPoint> {
    let capitals = height_mm * CAPITALS;
    let mut places = Vec::new();
    if width + 2.0 * INSET_MM <= inside.width_mm() && capitals + 2.0 * INSET_MM <= inside.height_mm() {
        places.push(PaperPoint::new(inside.left_mm + INSET_MM, inside.top_mm + INSET_MM + capitals));
        places.push(PaperPoint::new(inside.left_mm + INSET_MM, inside.bottom_mm - INSET_MM));
    }
    let centred = inside.centre().x_mm - width / 2.0;
    places.push(PaperPoint::new(centred, inside.top_mm - INSET_MM));
    places.push(PaperPoint::new(centred, inside.bottom_mm + INSET_MM + capitals));
    places
}

/// What a name must not lie on: the holes, and the lines to strike.
fn holes(pen: &Pen<'_>, plan: &Plan) -> Vec<PaperRect> {
    let holes = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()).flat_map(|mount| &mount.holes);
    let holes = holes.map(|hole| PaperRect::of(pen.at(hole.place), pen.at(hole.place)).grown(1.0));
    let lines = plan.marks.iter().filter_map(|mark| mark.line);
    holes.chain(lines.map(|(from, to)| PaperRect::of(pen.at(from), pen.at(to)))).collect()
}

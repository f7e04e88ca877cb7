//! The wall as the customer will see it: to scale, nothing of what is behind it or struck on it, with people for size.

use crate::elevation::wall;
use crate::ink::Ink;
use crate::look::Look;
use crate::pen::Pen;
use crate::scale::Scale;
use crate::scene::Scene;
use crate::symbol::{display, feature, figure};
use strikeline_solver::geometry::{Point, Rect, Span};
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::job::seat::Posture;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::cable::{Way, WayBy};
use strikeline_solver::sight::eyes::{Eyes, Who};
use strikeline_solver::subject::Id;
use strikeline_solver::tolerance::RACEWAY_MM;
use strikeline_solver::units::Length;

/// Someone who stands beside what hangs needs so much of the wall, in wall millimetres (chosen: elbows).
const ELBOWS_MM: f64 = 700.0;

/// Draws what will be seen of a plan. Every item bears the subject it is about. Whatever the plan holds, there is a
/// scene; it has no figures.
#[must_use]
pub fn customer_view(plan: &Plan, look: &Look) -> Scene {
    let scale = Scale::new(look);
    let mut items = Vec::new();
    let mut pen = Pen::new(&mut items, &scale, look);
    wall::face(&mut pen, plan);
    let is_breast = |kind: FeatureKind| kind == FeatureKind::ChimneyBreast;
    for breasts in [true, false] {
        for one in plan.survey.features.iter().filter(|one| is_breast(one.kind) == breasts) {
            pen.take(one.id.whole(), one.assumed);
            feature::feature(&mut pen, one);
        }
    }
    wall::edges(&mut pen, plan);
    for piece in &plan.pieces {
        if let Some(way) = piece.cable.as_ref().and_then(|cable| cable.way.as_ref()) {
            pen.take(piece.id.part("run"), piece.assumed);
            cables(&mut pen, way);
        }
        pen.take(piece.id.whole(), piece.assumed);
        display::seen(&mut pen, piece.kind, piece.outline, piece.frame);
    }
    // Nearer than all else: no display cuts off a head.
    people(&mut pen, plan);
    let (width_mm, height_mm) = (scale.page().width_mm(), scale.page().height_mm());
    Scene { width_mm, height_mm, items, figures: Vec::new(), scale }
}

/// What shows of cables: the channel on the face, or the plate where they come out.
fn cables(pen: &mut Pen<'_>, way: &Way) {
    match way.by {
        WayBy::InWall => pen.shape(Ink::Feature, &pen.scale.paper_rect(way.exit).corners()),
        WayBy::OnFace => {
            let half = Length::millimetres(RACEWAY_MM / 2.0);
            for pair in way.run.windows(2) {
                let [from, to] = pair else { continue };
                let run = Rect::new(
                    Span::new(from.x.min(to.x), from.x.max(to.x)),
                    Span::new(from.y.min(to.y), from.y.max(to.y)),
                );
                pen.shape(Ink::FeatureProud, &pen.scale.paper_rect(run.grown(half)).corners());
            }
        }
    }
}

/// Those who look at it, from behind; and someone who stands beside it, where the wall has room.
fn people(pen: &mut Pen<'_>, plan: &Plan) {
    let mut seats: Vec<&Id> = Vec::new();
    for sight in &plan.sight {
        if seats.contains(&&sight.seat) {
            continue;
        }
        seats.push(&sight.seat);
        let floor = sight.eyes_at.y - sight.eyes.height;
        pen.take(sight.seat.whole(), sight.assumed || sight.in_front);
        match sight.posture {
            Posture::Seated => figure::seated(pen, Ink::FeatureDetail, sight.eyes_at, floor),
            Posture::Standing => figure::standing(pen, Ink::FeatureDetail, sight.eyes_at, floor),
        }
    }
    // One who stands is enough to tell how large things are.
    let stands = plan.sight.iter().any(|sight| sight.posture == Posture::Standing);
    if let Some(x) = beside(plan).filter(|_| !stands) {
        let floor = plan.survey.floor.y_at(x);
        let eyes = Point::new(x, floor + Eyes::standing(Who::Anyone).height);
        pen.take(plan.wall.whole(), false);
        figure::standing(pen, Ink::Label, eyes, floor);
    }
}

/// Close beside what hangs, on the side with more free wall; `None` where nobody fits.
fn beside(plan: &Plan) -> Option<Length> {
    let outline = plan.survey.outline;
    let left = plan.pieces.iter().map(|piece| piece.outline.left).reduce(Length::min)?;
    let right = plan.pieces.iter().map(|piece| piece.outline.right).reduce(Length::max)?;
    let (on_left, on_right) = (left - outline.left, outline.right - right);
    let elbows = Length::millimetres(ELBOWS_MM);
    // Near what hangs, so that one is told by the other; on the side with more room, unless something stands there.
    let places = [(on_left, left - elbows / 2.0), (on_right, right + elbows / 2.0)];
    let (first, second) = if on_left > on_right { (places[0], places[1]) } else { (places[1], places[0]) };
    let is_free = |(room, x): (Length, Length)| {
        let stands = Span::about(x, elbows);
        let is_in_the_way = |kind: FeatureKind| {
            matches!(kind, FeatureKind::Mantel | FeatureKind::Shelf | FeatureKind::Radiator)
        };
        let mut features = plan.survey.features.iter();
        room >= elbows && !features.any(|one| is_in_the_way(one.kind) && one.rect.across().overlaps(stands))
    };
    [first, second].into_iter().find(|place| is_free(*place)).map(|(_, x)| x)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;

    fn scene() -> Scene {
        let (_, plan) = sample::inches();
        customer_view(&plan, &Look::whole_wall(&plan, 0.05))
    }

    #[test]
    fn nothing_of_the_work_is_drawn() {
        let scene = scene();
        let work = |ink: Ink| {
            matches!(
                ink,
                Ink::Lumber
                    | Ink::LumberMet
                    | Ink::LumberCentre
                    | Ink::LumberDoubt
                    | Ink::Hidden
                    | Ink::Hatch
                    | Ink::Hit
                    | Ink::Plate
                    | Ink::Hole(_)
                    | Ink::Bracket
                    | Ink::Port
                    | Ink::ChalkLine
                    | Ink::Mark
                    | Ink::Sweep
                    | Ink::Dimension
                    | Ink::Extension
                    | Ink::DimensionText
                    | Ink::ControlLine
                    | Ink::PieceTape
            )
        };
        let wrong: Vec<_> = scene.items.iter().filter(|item| work(item.ink)).collect();
        assert!(wrong.is_empty(), "{wrong:?}");
        assert!(scene.figures.is_empty());
        assert!(scene.items.iter().any(|item| item.ink == Ink::Picture));
    }

    #[test]
    fn a_piece_is_drawn_where_it_hangs_and_as_large_as_it_is() {
        let (_, plan) = sample::inches();
        let scene = scene();
        let display = &plan.pieces[0];
        let face = scene.items.iter().find(|item| item.ink == Ink::PieceFace).unwrap();
        let drawn = scene.scale.wall_rect(face.bounds().unwrap());
        assert!((drawn.width() - display.outline.width()).mm().abs() < 1e-6);
        assert!((drawn.left - display.outline.left).mm().abs() < 1e-6);
        assert!((drawn.top - display.outline.top).mm().abs() < 1e-6);
    }

    #[test]
    fn who_stands_beside_it_is_on_the_wall_and_off_the_pieces() {
        let (_, mut plan) = sample::inches();
        plan.survey
            .features
            .retain(|one| one.kind != FeatureKind::Mantel && one.kind != FeatureKind::Radiator);
        let x = beside(&plan).unwrap();
        let half = Length::millimetres(ELBOWS_MM / 2.0 - 1.0);
        let room = Span::new(x - half, x + half);
        assert!(plan.survey.outline.left <= room.from && room.to <= plan.survey.outline.right);
        let on = |piece: &strikeline_solver::plan::piece::PiecePlan| {
            room.from < piece.outline.right && piece.outline.left < room.to
        };
        assert!(!plan.pieces.iter().any(on));
        plan.pieces[0].outline = plan.survey.outline;
        assert_eq!(beside(&plan), None);
    }
}

//! The room from the side, to scale: the wall in section, the display on it, what stands proud below it, the people at
//! the seats and how they look at the picture. Across runs out from the wall's own face, up is up.
//!
//! Seats are shown at their distance from the wall, whatever place along it they have.

mod person;

use crate::elevation::GROUND_MM;
use crate::font::{CAPITALS, Weight, text_width_mm};
use crate::ink::Ink;
use crate::look::Look;
use crate::paper::{PaperPoint, PaperRect};
use crate::pen::Pen;
use crate::scale::Scale;
use crate::scene::{Anchor, Scene};
use crate::symbol::hatch::{HATCH_MM, hatch};
use crate::symbol::material;
use strikeline_solver::geometry::{Point, Rect, Span};
use strikeline_solver::job::Job;
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::sight::SeatSight;
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;
use strikeline_solver::words;

/// How thick the wall is drawn (chosen: its depth is not what the view tells).
const WALL_MM: f64 = 120.0;
/// Room behind the farthest person (chosen).
const BEHIND_MM: f64 = 500.0;
/// So many lines up a name may stand to be clear of others (chosen: more would be over nobody's head).
const LINES_UP: u8 = 8;

/// What the view shows: from behind the wall's face to behind the farthest person, floor to ceiling.
#[must_use]
pub fn extent(plan: &Plan) -> Rect {
    let mm = Length::millimetres;
    let farthest = plan.sight.iter().map(|sight| sight.from_wall.max(sight.proud));
    let farthest = farthest.fold(mm(1000.0), Length::max);
    let highest = plan.sight.iter().map(|sight| sight.eyes_at.y + mm(200.0));
    let top = highest.fold(plan.survey.outline.top, Length::max);
    Rect::new(Span::new(mm(-WALL_MM), farthest + mm(BEHIND_MM)), Span::new(plan.survey.outline.bottom, top))
}

/// The display of a sight as it is seen from the side: its own stretch out from the wall, and its height.
#[must_use]
pub fn display(plan: &Plan, sight: &SeatSight) -> Option<Rect> {
    let piece = plan.pieces.iter().find(|piece| piece.id == sight.piece)?;
    Some(Rect::new(Span::new(sight.proud - sight.depth, sight.proud), piece.outline.upright()))
}

/// The sights of the displays, each once.
#[must_use]
pub fn displays(plan: &Plan) -> Vec<&SeatSight> {
    let mut seen: Vec<&SeatSight> = Vec::new();
    for sight in &plan.sight {
        if !seen.iter().any(|other| other.piece == sight.piece) {
            seen.push(sight);
        }
    }
    seen
}

/// Draws the view. Without a seat there are the wall and the floor alone. Every item bears its subject.
#[must_use]
pub fn side_view(job: &Job, plan: &Plan, look: &Look) -> Scene {
    let scale = Scale::new(look);
    let mut items = Vec::new();
    let mut pen = Pen::new(&mut items, &scale, look);
    let extent = extent(plan);
    let floor = displays(plan).first().map(|sight| plan.survey.floor.y_at(sight.picture.centre().x));
    let floor = floor.unwrap_or(plan.survey.outline.bottom);
    room(&mut pen, job, plan, extent, floor);
    for sight in displays(plan) {
        below(&mut pen, job, plan, sight);
        if let Some(body) = display(plan, sight) {
            pen.take(sight.piece.whole(), sight.assumed || sight.proud_assumed);
            rect(&mut pen, Ink::Piece, body, false);
        }
    }
    for sight in &plan.sight {
        lines_of_sight(&mut pen, sight);
    }
    let text_mm = look.sound_text_height_mm();
    let mut told: Vec<&Id> = Vec::new();
    let mut names: Vec<(&SeatSight, String)> = Vec::new();
    let mut taken: Vec<PaperRect> = Vec::new();
    for sight in plan.sight.iter().filter(|sight| sight.seen.is_some()) {
        if told.contains(&&sight.seat) {
            continue;
        }
        told.push(&sight.seat);
        pen.take(sight.seat.whole(), sight.assumed);
        let seat = job.walls.iter().flat_map(|wall| &wall.seats).find(|seat| seat.id == sight.seat);
        let seat_height = seat.and_then(|seat| seat.seat_height);
        person::person(&mut pen, sight, seat_height);
        let name = words::capital(&words::thing(plan, &sight.seat.whole()));
        let radius = person::head(&pen);
        let head = pen.at(person::head_at(sight));
        taken.push(PaperRect::of(head, head).grown(radius));
        names.push((sight, name));
    }
    taken
        .extend(displays(plan).into_iter().filter_map(|sight| Some(scale.paper_rect(display(plan, sight)?))));
    for (sight, name) in names {
        pen.take(sight.seat.whole(), sight.assumed);
        let crown = pen.at(person::head_at(sight)).moved(0.0, -person::head(&pen));
        let base = free_above(&mut taken, scale.page(), crown, &name, text_mm);
        pen.text(Ink::Label, base, &name, text_mm, Anchor::Middle);
    }
    let scene = (scale.page().width_mm(), scale.page().height_mm());
    Scene { width_mm: scene.0, height_mm: scene.1, items, figures: Vec::new(), scale }
}

/// Where a name over a head stands clear of heads, displays and the names before it: as low as it can, and on the page.
fn free_above(
    taken: &mut Vec<PaperRect>,
    page: PaperRect,
    crown: PaperPoint,
    name: &str,
    text_mm: f64,
) -> PaperPoint {
    let half = text_width_mm(name, text_mm, Weight::Regular) / 2.0;
    let x_mm = crown.x_mm.clamp(page.left_mm + half, (page.right_mm - half).max(page.left_mm + half));
    let at = |line: f64| PaperPoint::new(x_mm, crown.y_mm - text_mm * (0.4 + 1.2 * line));
    let bounds = |base: PaperPoint| {
        PaperRect::of(base.moved(-half, text_mm * 0.2), base.moved(half, -text_mm * CAPITALS))
    };
    let is_free = |base: &PaperPoint| !taken.iter().any(|one| one.meets(bounds(*base)));
    let base = (0..LINES_UP).map(|line| at(f64::from(line))).find(is_free).unwrap_or(at(0.0));
    taken.push(bounds(base));
    base
}

fn rect(pen: &mut Pen<'_>, ink: Ink, rect: Rect, filled: bool) {
    let corners = pen.scale.paper_rect(rect).corners();
    if filled { pen.shape(ink, &corners) } else { pen.outline(ink, &corners) }
}

/// The wall in section, hatched as what it is made of, and the floor that goes out from it level.
fn room(pen: &mut Pen<'_>, job: &Job, plan: &Plan, extent: Rect, floor: Length) {
    let none = Length::default();
    pen.take(plan.wall.whole(), false);
    let of_job = job.wall(&plan.wall);
    let front =
        of_job.and_then(|wall| wall.front.as_ref()).and_then(|front| front.thickness).unwrap_or_default();
    let behind = (-front).max(extent.left);
    let upright = Span::new(floor, plan.survey.outline.top);
    let framing = pen.scale.paper_rect(Rect::new(Span::new(extent.left, behind), upright));
    material::framing(pen, framing, of_job.and_then(|wall| wall.framing.as_ref()));
    if front > none {
        let board = pen.scale.paper_rect(Rect::new(Span::new(behind, none), upright));
        material::board(pen, board);
        pen.line(Ink::FeatureDetail, board.at(0.0, 0.0), board.at(0.0, 1.0));
    }
    let (foot, head) = (pen.at(Point::new(none, floor)), pen.at(Point::new(none, plan.survey.outline.top)));
    pen.line(Ink::WallEdge, foot, head);
    pen.take(plan.wall.part("floor"), false);
    let end = pen.at(Point::new(extent.right, floor));
    let ground = PaperRect {
        left_mm: foot.x_mm,
        right_mm: end.x_mm,
        top_mm: foot.y_mm,
        bottom_mm: foot.y_mm + GROUND_MM,
    };
    for (from, to) in hatch(ground, HATCH_MM) {
        pen.line(Ink::Ground, from, to);
    }
    pen.line(Ink::Floor, foot, end);
}

/// The breast that a display is on, and what stands proud of it or the wall in its width.
fn below(pen: &mut Pen<'_>, job: &Job, plan: &Plan, sight: &SeatSight) {
    let (across, middle) = (sight.picture.across(), sight.picture.centre());
    let breast = plan.survey.breast_at(middle.x, Some(middle.y));
    let none = Length::default();
    if let Some(breast) = breast {
        pen.take(breast.id.whole(), breast.assumed);
        let section = Rect::new(Span::new(none, breast.proud), breast.rect.upright());
        rect(pen, Ink::FeatureProud, section, true);
        let framing = job.wall(&plan.wall).and_then(|wall| wall.framing_on(Some(&breast.id)));
        material::framing(pen, pen.scale.paper_rect(section), framing);
    }
    let proud = plan.survey.features.iter().filter(|feature| {
        feature.kind != FeatureKind::ChimneyBreast
            && feature.proud > none
            && feature.rect.across().overlaps(across)
    });
    for feature in proud {
        let from = match breast.filter(|breast| feature.on.as_ref() == Some(&breast.id)) {
            Some(breast) => breast.proud,
            None => none,
        };
        pen.take(feature.id.whole(), feature.assumed);
        let out = Rect::new(Span::new(from, from + feature.proud), feature.rect.upright());
        rect(pen, Ink::FeatureProud, out, true);
    }
}

/// From the eyes to the picture's top and bottom, and to its middle with a level line beside it.
fn lines_of_sight(pen: &mut Pen<'_>, sight: &SeatSight) {
    if sight.seen.is_none() {
        return;
    }
    pen.take(sight.seat.whole(), sight.assumed);
    let eyes = pen.at(Point::new(sight.from_wall, sight.eyes_at.y));
    let at = |pen: &Pen<'_>, y: Length| pen.at(Point::new(sight.proud, y));
    for y in [sight.picture.top, sight.picture.bottom] {
        let to = at(pen, y);
        pen.line(Ink::Sweep, eyes, to);
    }
    let (middle, level) = (at(pen, sight.picture.centre().y), at(pen, sight.eyes_at.y));
    pen.line(Ink::Dimension, eyes, middle);
    pen.line(Ink::ControlLine, eyes, level);
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample;
    use crate::scene::{Item, ItemKind};
    use strikeline_solver::job::piece::PieceKind;
    use strikeline_solver::job::seat::{Posture, Seat};
    use strikeline_solver::plan::sight::Seen;
    use strikeline_solver::sight::eyes::Eyes;
    use strikeline_solver::units::Angle;

    fn mm(value: f64) -> Length {
        Length::millimetres(value)
    }

    /// The sample with a seat 3 m from the wall.
    fn seated(posture: Posture) -> (Job, Plan) {
        let (mut job, mut plan) = sample::inches();
        let at = plan.pieces.iter().find(|piece| piece.kind == PieceKind::Display).unwrap();
        let (id, outline) = (at.id.clone(), at.outline);
        job.walls[0].seats = vec![Seat { id: Id::new("seat-1"), ..Seat::away(mm(3000.0)) }];
        plan.sight = vec![SeatSight {
            seat: Id::new("seat-1"),
            piece: id,
            posture,
            eyes: Eyes::measured(mm(1200.0)),
            eyes_at: Point::new(outline.centre().x, mm(1200.0)),
            from_wall: mm(3000.0),
            in_front: true,
            assumed: false,
            picture: outline,
            of_case: true,
            proud: mm(100.0),
            depth: mm(60.0),
            proud_assumed: false,
            seen: Some(Seen {
                distance: mm(2900.0),
                heights: 3.0,
                horizontal: Angle::degrees(30.0),
                up: Angle::degrees(5.0),
                up_lowest: Angle::degrees(5.0),
                top: Angle::degrees(9.0),
                off_axis: Angle::degrees(5.0),
                fills_within: mm(2500.0),
                lines: None,
                tilt: Angle::degrees(5.0),
                tilts: None,
                highest: mm(1900.0),
                mantel: None,
            }),
        }];
        (job, plan)
    }

    fn drawn(job: &Job, plan: &Plan) -> Scene {
        side_view(job, plan, &Look { shown: extent(plan), ..Look::whole_wall(plan, 1.0 / 24.0) })
    }

    fn of<'a>(scene: &'a Scene, ink: Ink, subject: &str) -> Vec<&'a Item> {
        let is_one =
            |item: &&Item| item.ink == ink && item.subject.as_ref().is_some_and(|s| s.to_string() == subject);
        scene.items.iter().filter(is_one).collect()
    }

    #[test]
    fn lines_of_sight_run_to_scale_from_the_eyes_to_the_picture() {
        let (job, plan) = seated(Posture::Seated);
        let scene = drawn(&job, &plan);
        let picture = plan.sight[0].picture;
        let lines = of(&scene, Ink::Sweep, "seat-1");
        assert_eq!(lines.len(), 2);
        for (line, y) in lines.iter().zip([picture.top, picture.bottom]) {
            let ItemKind::Line { from, to } = line.kind else { panic!("{line:?}") };
            let (eyes, end) = (scene.scale.wall_from_paper(from), scene.scale.wall_from_paper(to));
            for (found, expected) in
                [(eyes.x, mm(3000.0)), (eyes.y, mm(1200.0)), (end.x, mm(100.0)), (end.y, y)]
            {
                assert!((found - expected).abs() < mm(1e-6), "{found:?} {expected:?}");
            }
        }
        let body = of(&scene, Ink::Piece, "display-1");
        assert_eq!(body.len(), 1);
        let bounds = scene.scale.wall_rect(body[0].bounds().unwrap());
        assert!((bounds.top - plan.pieces[0].outline.top).abs() < mm(1e-6), "{bounds:?}");
    }

    #[test]
    fn who_sits_and_who_stands_reach_from_the_floor_to_their_eyes() {
        for posture in [Posture::Seated, Posture::Standing] {
            let (job, plan) = seated(posture);
            let scene = drawn(&job, &plan);
            let body: Vec<_> = of(&scene, Ink::Feature, "seat-1");
            assert!(body.len() > 3, "{posture:?}");
            let points =
                body.iter().filter_map(|item| item.bounds()).map(|bounds| scene.scale.wall_rect(bounds));
            let (low, high) = points
                .fold((mm(9e9), mm(-9e9)), |(low, high), rect| (low.min(rect.bottom), high.max(rect.top)));
            assert!(low.abs() < mm(1.0), "{posture:?}: {low:?}");
            assert!(high > mm(1200.0) && high < mm(1400.0), "{posture:?}: {high:?}");
        }
    }

    #[test]
    fn without_a_seat_there_is_still_a_room() {
        let (job, mut plan) = seated(Posture::Seated);
        plan.sight.clear();
        let scene = drawn(&job, &plan);
        assert_eq!(of(&scene, Ink::Floor, "wall-1.floor").len(), 1);
        assert!(scene.items.iter().all(|item| item.ink != Ink::Sweep));
    }
}

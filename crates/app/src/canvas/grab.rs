//! What a press takes hold of: the nearest centre within reach of a fingertip, else the body pressed on. A piece,
//! or what is selected, keeps a press on its body, but for one right on a hit that lies over it.

use crate::moves::{Handle, HandleKind};
use egui::{Pos2, Rect};
use strikeline_solver::subject::Subject;

/// Within this many points of its centre a thing is taken (chosen: half a fingertip).
pub const REACH: f32 = 22.0;

/// Within this many points a hit is taken from the thing it lies over (chosen: the ring drawn round it, and a
/// point more).
pub const ON_IT: f32 = 8.0;

/// Centres nearer to each other than this are alike to a finger, in points (chosen).
const ALIKE: f32 = 1.0;

/// A thing on the canvas that can be taken hold of.
#[derive(Clone, Debug, PartialEq)]
pub struct Grabbable {
    /// What it is: `door-1`, `door-1.left`, `display-1.hole-3`.
    pub subject: Subject,
    /// What moves with it: a hole of a plate moves its piece.
    pub handle: Handle,
    /// Its body on the canvas. May be as small as nothing.
    pub body: Rect,
    /// Where it is taken, if not about its middle: along an edge.
    pub along: Option<Rect>,
    /// Whether it is selected: what is selected is meant before what is not.
    pub is_selected: bool,
}

impl Grabbable {
    /// The narrower of its two sizes.
    fn narrow(&self) -> f32 {
        self.body.width().min(self.body.height())
    }

    /// How far a press is from where it is taken; infinite where it is out of its reach.
    #[must_use]
    pub fn away(&self, press: Pos2) -> f32 {
        match self.along {
            Some(along) if along.contains(press) => self.body.distance_to_pos(press),
            Some(_) => f32::INFINITY,
            None => self.body.center().distance(press),
        }
    }

    /// Whether it is a hole of a plate.
    fn is_hole(&self) -> bool {
        self.handle.kind == HandleKind::Piece && self.subject.part.is_some()
    }

    /// Whether it is an opening for cables.
    fn is_opening(&self) -> bool {
        matches!(self.handle.kind, HandleKind::Entry | HandleKind::Exit)
    }

    /// Whether it is no larger than a fingertip: nothing that is pressed on its body.
    #[must_use]
    pub fn is_small(&self) -> bool {
        self.narrow() < 2.0 * REACH
    }

    /// Whether a press on its body is meant for it, rather than for what lies behind it or near it.
    fn keeps_its_body(&self) -> bool {
        self.handle.kind == HandleKind::Piece && !self.is_hole() || self.is_selected && self.along.is_none()
    }

    /// From how far its centre is taken, where the press is on the body of `over`.
    fn reach(&self, over: Option<&Self>) -> f32 {
        match over {
            None if self.is_hole() => ON_IT,
            None => REACH,
            Some(over) if self == over => REACH,
            // An edge of what the press is on.
            Some(over) if self.along.is_some() && self.handle.id == over.handle.id => REACH,
            Some(_) if self.along.is_some() => ON_IT,
            // A wall unit behind the display is not narrower: its middle is not for the taking.
            Some(over) if self.narrow() >= over.narrow() => -1.0,
            Some(_) if self.is_selected => REACH,
            Some(_) if self.handle.kind == HandleKind::Hit || self.is_hole() || self.is_opening() => ON_IT,
            Some(_) => -1.0,
        }
    }
}

/// What a press takes hold of: the nearest centre within reach, of two alike the narrower; else the narrowest
/// body pressed on; else nothing.
///
/// On the body of a piece or of what is selected, only a hit or what is selected has a reach beside it.
#[must_use]
pub fn grab(press: Pos2, handles: &[Grabbable]) -> Option<&Grabbable> {
    let narrowest = |meant: fn(&Grabbable) -> bool| {
        let pressed_on = handles.iter().filter(|one| meant(one) && one.body.contains(press));
        pressed_on.min_by(|a, b| a.narrow().total_cmp(&b.narrow()))
    };
    let over = narrowest(Grabbable::keeps_its_body);
    let mut best: Option<(&Grabbable, f32)> = None;
    for candidate in handles {
        let away = candidate.away(press);
        if away > candidate.reach(over) || !away.is_finite() {
            continue;
        }
        let better = best.is_none_or(|(held, least)| {
            away < least - ALIKE || (away <= least + ALIKE && candidate.narrow() < held.narrow())
        });
        if better {
            best = Some((candidate, away));
        }
    }
    best.map(|(held, _)| held).or(over).or_else(|| narrowest(|_| true))
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::{pos2, vec2};
    use strikeline_solver::subject::Id;

    fn kind(kind: HandleKind, id: &str, centre: (f32, f32), size: (f32, f32)) -> Grabbable {
        let handle = Handle { id: Id::new(id), kind };
        let body = Rect::from_center_size(pos2(centre.0, centre.1), vec2(size.0, size.1));
        Grabbable { subject: handle.subject(), handle, body, along: None, is_selected: false }
    }

    fn thing(id: &str, centre: (f32, f32), size: (f32, f32)) -> Grabbable {
        kind(HandleKind::Feature, id, centre, size)
    }

    /// A breast and an outlet behind a display, a hit over it and one beside it.
    fn about_a_display() -> Vec<Grabbable> {
        vec![
            kind(HandleKind::Feature, "breast", (3.0, 40.0), (300.0, 600.0)),
            kind(HandleKind::Feature, "outlet", (40.0, 0.0), (8.0, 12.0)),
            kind(HandleKind::Piece, "display", (0.0, 0.0), (200.0, 120.0)),
            kind(HandleKind::Hit, "over", (-60.0, 0.0), (0.0, 0.0)),
            kind(HandleKind::Hit, "beside", (115.0, 0.0), (0.0, 0.0)),
        ]
    }

    fn select<'a>(things: &'a mut [Grabbable], id: &str) -> &'a [Grabbable] {
        for thing in things.iter_mut() {
            thing.is_selected = thing.handle.id.as_str() == id;
        }
        things
    }

    fn taken(press: (f32, f32), things: &[Grabbable]) -> Option<&str> {
        grab(pos2(press.0, press.1), things).map(|taken| taken.handle.id.as_str())
    }

    #[test]
    fn the_nearest_centre_within_reach_is_taken() {
        let things = [thing("a", (0.0, 0.0), (0.0, 0.0)), thing("b", (30.0, 0.0), (0.0, 0.0))];
        assert_eq!(taken((12.0, 0.0), &things), Some("a"));
        assert_eq!(taken((18.0, 0.0), &things), Some("b"));
        assert_eq!(taken((52.0, 0.0), &things), Some("b"));
        assert_eq!(taken((52.1, 0.0), &things), None);
    }

    #[test]
    fn ties_go_to_the_narrower() {
        let things = [thing("wide", (0.0, 0.0), (400.0, 200.0)), thing("narrow", (0.5, 0.0), (10.0, 10.0))];
        assert_eq!(taken((0.0, 0.0), &things), Some("narrow"));
        let turned = [things[1].clone(), things[0].clone()];
        assert_eq!(taken((0.0, 0.0), &turned), Some("narrow"));
    }

    #[test]
    fn away_from_all_centres_the_narrowest_body_pressed_on_is_taken() {
        let things =
            [thing("wall unit", (0.0, 0.0), (400.0, 400.0)), thing("shelf", (0.0, 100.0), (380.0, 8.0))];
        assert_eq!(taken((150.0, 101.0), &things), Some("shelf"));
        assert_eq!(taken((150.0, 150.0), &things), Some("wall unit"));
        assert_eq!(taken((150.0, 250.0), &things), None);
    }

    #[test]
    fn an_empty_canvas_gives_nothing() {
        assert_eq!(taken((0.0, 0.0), &[]), None);
    }

    #[test]
    fn a_piece_keeps_its_body_but_for_a_press_right_on_a_hit() {
        let mut things = about_a_display();
        for selected in ["none", "display"] {
            let things = select(&mut things, selected);
            assert_eq!(taken((-60.0, 7.0), things), Some("over"));
            assert_eq!(taken((-60.0, 9.0), things), Some("display"), "its body near a hit");
            assert_eq!(taken((95.0, 0.0), things), Some("display"), "near a hit that lies beside it");
            assert_eq!(taken((40.0, 0.0), things), Some("display"), "an outlet behind it");
            assert_eq!(taken((3.0, 40.0), things), Some("display"), "a breast behind it");
            assert_eq!(taken((115.0, 21.0), things), Some("beside"), "off it a fingertip is enough");
            assert_eq!(taken((0.0, 100.0), things), Some("breast"));
        }
    }

    #[test]
    fn what_is_selected_is_taken_with_a_fingertip_through_a_piece() {
        let mut things = about_a_display();
        assert_eq!(taken((-60.0, 20.0), select(&mut things, "over")), Some("over"));
        assert_eq!(taken((-60.0, 23.0), select(&mut things, "over")), Some("display"));
        assert_eq!(taken((40.0, 15.0), select(&mut things, "outlet")), Some("outlet"));
        // A wider one behind the piece is no handle on it.
        assert_eq!(taken((3.0, 40.0), select(&mut things, "breast")), Some("display"));
        // On its own body it keeps off what is near.
        assert_eq!(taken((115.0, 9.0), select(&mut things, "breast")), Some("breast"));
        assert_eq!(taken((115.0, 7.0), select(&mut things, "breast")), Some("beside"));
    }

    #[test]
    fn the_middle_of_a_piece_is_nearer_than_a_hit_beside_it() {
        let display = kind(HandleKind::Piece, "display", (0.0, 0.0), (200.0, 120.0));
        let things = [display, kind(HandleKind::Hit, "hit", (7.0, 0.0), (0.0, 0.0))];
        assert_eq!(taken((0.0, 0.0), &things), Some("display"));
        assert_eq!(taken((4.0, 0.0), &things), Some("hit"));
    }

    #[test]
    fn an_edge_is_taken_along_all_of_it_and_a_hole_only_where_the_press_is_on_it() {
        let mut door = thing("door", (0.0, 0.0), (100.0, 200.0));
        door.is_selected = true;
        let edge = Grabbable {
            subject: Id::new("door").part("left"),
            handle: Handle { id: Id::new("door"), kind: HandleKind::Edge(crate::moves::edge::Side::Left) },
            body: Rect::from_min_max(pos2(-50.0, -100.0), pos2(-50.0, 100.0)),
            along: Some(Rect::from_min_max(pos2(-72.0, -100.0), pos2(-30.0, 100.0))),
            is_selected: false,
        };
        let hole = Grabbable {
            subject: Id::new("door").part("hole-1"),
            ..kind(HandleKind::Piece, "door", (20.0, 80.0), (0.0, 0.0))
        };
        let things = [door, edge, hole];
        let taken = |x, y| grab(pos2(x, y), &things).map(|taken| taken.subject.to_string());
        for (x, y) in [(-71.0, 90.0), (-31.0, -90.0), (-50.0, 0.0)] {
            assert_eq!(taken(x, y).as_deref(), Some("door.left"), "{x} {y}");
        }
        assert_eq!(taken(-29.0, 90.0).as_deref(), Some("door"));
        assert_eq!(taken(-73.0, 0.0), None);
        assert_eq!(taken(26.0, 80.0).as_deref(), Some("door.hole-1"));
        assert_eq!(taken(30.0, 80.0).as_deref(), Some("door"));
    }
}

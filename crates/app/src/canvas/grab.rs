//! What a press takes hold of: the nearest centre within reach of a fingertip, else the body pressed on.

use crate::moves::Handle;
use egui::{Pos2, Rect};

/// Within this many points of its centre a thing is taken (chosen: half a fingertip).
pub const REACH: f32 = 22.0;

/// Centres nearer to each other than this are alike to a finger, in points (chosen).
const ALIKE: f32 = 1.0;

/// A thing on the canvas that can be taken hold of.
#[derive(Clone, Debug, PartialEq)]
pub struct Grabbable {
    /// Which thing.
    pub handle: Handle,
    /// Its body on the canvas. May be as small as nothing.
    pub body: Rect,
}

impl Grabbable {
    /// The narrower of its two sizes.
    fn narrow(&self) -> f32 {
        self.body.width().min(self.body.height())
    }
}

/// What a press takes hold of: the nearest centre within reach, of two alike the narrower; else the narrowest
/// body pressed on; else nothing.
#[must_use]
pub fn grab(press: Pos2, handles: &[Grabbable]) -> Option<&Handle> {
    let mut best: Option<(&Grabbable, f32)> = None;
    for candidate in handles {
        let away = candidate.body.center().distance(press);
        if away > REACH || away.is_nan() {
            continue;
        }
        let better = best.is_none_or(|(held, least)| {
            away < least - ALIKE || (away <= least + ALIKE && candidate.narrow() < held.narrow())
        });
        if better {
            best = Some((candidate, away));
        }
    }
    let pressed_on = || {
        handles
            .iter()
            .filter(|candidate| candidate.body.contains(press))
            .min_by(|a, b| a.narrow().total_cmp(&b.narrow()))
    };
    best.map(|(held, _)| held).or_else(pressed_on).map(|held| &held.handle)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::moves::HandleKind;
    use egui::{pos2, vec2};
    use strikeline_solver::subject::Id;

    fn thing(id: &str, centre: (f32, f32), size: (f32, f32)) -> Grabbable {
        let handle = Handle { id: Id::new(id), kind: HandleKind::Feature };
        Grabbable { handle, body: Rect::from_center_size(pos2(centre.0, centre.1), vec2(size.0, size.1)) }
    }

    fn taken(press: (f32, f32), things: &[Grabbable]) -> Option<&str> {
        grab(pos2(press.0, press.1), things).map(|handle| handle.id.as_str())
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
}

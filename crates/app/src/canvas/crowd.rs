//! Where a fingertip covers several handles: which they are, and where they stand enlarged, each with room for a
//! second tap.

use super::grab::{Grabbable, REACH, grab};
use egui::{Pos2, Vec2};

/// The handles that a press may mean, the nearest first: those no larger than a fingertip within its reach, and what
/// it takes hold of. Empty where there is no doubt.
#[must_use]
pub fn crowd(press: Pos2, handles: &[Grabbable]) -> Vec<&Grabbable> {
    let taken = grab(press, handles);
    let is_near = |one: &&Grabbable| one.is_small() && one.away(press) <= REACH;
    let mut choices: Vec<&Grabbable> = handles.iter().filter(is_near).collect();
    choices.sort_by(|a, b| a.away(press).total_cmp(&b.away(press)));
    if let Some(taken) = taken
        && !choices.iter().any(|one| one.subject == taken.subject)
    {
        choices.push(taken);
    }
    if choices.len() < 2 { Vec::new() } else { choices }
}

/// How often places that still touch are pushed apart. A dozen in one spot need about as many.
const ROUNDS: usize = 60;

/// Places pushed apart until no two are nearer than `least` (as near as a few rounds bring them), each about where it
/// was. Two in one spot part level.
#[must_use]
pub fn spread(places: &[Vec2], least: f32) -> Vec<Vec2> {
    let mut spread = places.to_vec();
    for _ in 0..ROUNDS {
        let mut is_apart = true;
        for index in 1..spread.len() {
            let (before, after) = spread.split_at_mut(index);
            let Some(one) = after.first_mut() else { continue };
            for (earlier, other) in before.iter_mut().enumerate() {
                let between = *one - *other;
                let away = between.length();
                if away >= least - 0.01 {
                    continue;
                }
                is_apart = false;
                // In one spot each pair parts its own way, so that three do not end in a row on top of each other.
                let turn = (earlier * 7 + index * 3) as f32;
                let way = if away > 0.01 { between / away } else { Vec2::angled(turn - 3.0) };
                *one += way * ((least - away) / 2.0);
                *other -= way * ((least - away) / 2.0);
            }
        }
        if is_apart {
            break;
        }
    }
    spread
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::moves::{Handle, HandleKind};
    use egui::{Rect, pos2, vec2};
    use strikeline_solver::subject::Id;

    fn one(kind: HandleKind, id: &str, x: f32, size: f32) -> Grabbable {
        let handle = Handle { id: Id::new(id), kind };
        let body = Rect::from_center_size(pos2(x, 0.0), vec2(size, size));
        Grabbable { subject: handle.subject(), handle, body, along: None, is_selected: false }
    }

    fn near(x: f32, handles: &[Grabbable]) -> Vec<String> {
        crowd(pos2(x, 0.0), handles).into_iter().map(|one| one.subject.to_string()).collect()
    }

    #[test]
    fn hits_within_a_fingertip_are_a_crowd_and_one_alone_is_none() {
        let hits = [
            one(HandleKind::Hit, "a", 0.0, 0.0),
            one(HandleKind::Hit, "b", 10.0, 0.0),
            one(HandleKind::Hit, "c", 60.0, 0.0),
        ];
        assert_eq!(near(7.0, &hits), ["b", "a"]);
        assert!(near(60.0, &hits).is_empty());
        assert!(near(-13.0, &hits).is_empty(), "b is out of reach");
        assert!(near(200.0, &hits).is_empty());
    }

    #[test]
    fn what_the_press_is_on_is_a_choice_beside_a_small_one() {
        let things = [one(HandleKind::Piece, "display", 0.0, 200.0), one(HandleKind::Hit, "hit", 60.0, 0.0)];
        assert_eq!(near(72.0, &things), ["hit", "display"]);
        assert!(near(0.0, &things).is_empty(), "a display alone");
        // Two large ones, one behind the other, are told apart by where they are pressed.
        let large =
            [one(HandleKind::Feature, "breast", 3.0, 400.0), one(HandleKind::Piece, "display", 0.0, 200.0)];
        assert!(near(0.0, &large).is_empty());
    }

    #[test]
    fn spread_apart_no_two_touch_and_each_keeps_its_side() {
        let places = [vec2(0.0, 0.0), vec2(10.0, 0.0), vec2(100.0, 50.0)];
        let apart = spread(&places, 34.0);
        assert!((apart[1] - apart[0]).length() > 33.9);
        assert!(apart[0].x < apart[1].x);
        assert_eq!(apart[2], places[2]);
        let heap = spread(&[Vec2::ZERO; 6], 34.0);
        for (index, place) in heap.iter().enumerate() {
            for other in heap.iter().skip(index + 1) {
                assert!((*place - *other).length() > 33.0, "{heap:?}");
            }
        }
    }
}

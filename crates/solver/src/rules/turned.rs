//! The room that something turned takes up: a piece that follows a crooked mantel, and its plate.

use crate::geometry::{Frame, Point, Rect};
use crate::units::Angle;

/// The upright rectangle round a rectangle that is turned about its frame's origin.
pub(super) fn bounds(frame: Frame, rect: Rect) -> Rect {
    if frame.roll == Angle::default() {
        return rect;
    }
    let corner = |x, y| frame.to_wall(x - frame.origin.x, y - frame.origin.y);
    let first = corner(rect.left, rect.bottom);
    let others = [corner(rect.left, rect.top), corner(rect.right, rect.bottom), corner(rect.right, rect.top)];
    let whole = Rect { left: first.x, right: first.x, bottom: first.y, top: first.y };
    others.into_iter().fold(whole, |whole, place: Point| Rect {
        left: whole.left.min(place.x),
        right: whole.right.max(place.x),
        bottom: whole.bottom.min(place.y),
        top: whole.top.max(place.y),
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::geometry::Span;
    use crate::units::Length;

    #[test]
    fn a_turned_rectangle_needs_more_room_on_every_side_alike() {
        let mm = Length::millimetres;
        let rect = Rect::new(Span::about(mm(100.0), mm(60.0)), Span::about(mm(50.0), mm(40.0)));
        for degrees in [-2.0, 2.0] {
            let frame = Frame { origin: rect.centre(), roll: Angle::degrees(degrees) };
            let round = bounds(frame, rect);
            // 60 cos 2 + 40 sin 2 = 61.359; 60 sin 2 + 40 cos 2 = 42.070.
            assert!((round.width().mm() - 61.359).abs() < 1e-3, "{round:?}");
            assert!((round.height().mm() - 42.070).abs() < 1e-3, "{round:?}");
            assert!((round.centre().x.mm() - 100.0).abs() < 1e-9);
        }
        assert_eq!(bounds(Frame { origin: rect.centre(), roll: Angle::default() }, rect), rect);
    }
}

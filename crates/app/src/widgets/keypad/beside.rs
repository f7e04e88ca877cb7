//! Where the keypad opens: beside its field, never over it, and inside the window.

use egui::{Pos2, Rect, Vec2, pos2};

/// Between the field and the keypad, and between the keypad and the window's edge, in points.
const GAP: f32 = 6.0;

/// The upper left corner of a keypad of this size beside a field.
///
/// To the right where there is room, else to the left, below or above. Where there is room on no side (a window
/// smaller than the program allows) it stays in the window and covers as little as it can.
pub(super) fn beside(field: Rect, keypad: Vec2, window: Rect) -> Pos2 {
    let window = window.shrink(GAP);
    let most = (window.max - keypad).max(window.min);
    let inside = |at: Pos2| at.clamp(window.min, most);
    let candidates = [
        pos2(field.right() + GAP, field.top()),
        pos2(field.left() - GAP - keypad.x, field.top()),
        pos2(field.left(), field.bottom() + GAP),
        pos2(field.left(), field.top() - GAP - keypad.y),
    ]
    .map(inside);
    let covered = |at: &Pos2| Rect::from_min_size(*at, keypad).intersect(field);
    let area = |at: &Pos2| {
        let covered = covered(at);
        if covered.is_positive() { covered.area() } else { 0.0 }
    };
    // The first of those that cover the least.
    candidates.into_iter().min_by(|a, b| area(a).total_cmp(&area(b))).unwrap_or(window.min)
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::vec2;

    #[test]
    fn it_never_covers_its_field_nor_leaves_the_window() {
        let keypad = vec2(430.0, 340.0);
        for size in [vec2(1280.0, 800.0), vec2(800.0, 600.0), vec2(720.0, 480.0)] {
            let window = Rect::from_min_size(Pos2::ZERO, size);
            for left in [10.0, 90.0, size.x - 130.0] {
                for row in 0..40 {
                    let top = size.y / 40.0 * row as f32;
                    let field = Rect::from_min_size(pos2(left, top), vec2(110.0, 30.0)).intersect(window);
                    let shown = Rect::from_min_size(beside(field, keypad, window), keypad);
                    assert!(window.contains_rect(shown), "{size:?} {field:?} {shown:?}");
                    assert!(!shown.intersect(field).is_positive(), "{size:?} {field:?} {shown:?}");
                }
            }
        }
    }

    #[test]
    fn it_opens_to_the_right_where_there_is_room() {
        let window = Rect::from_min_size(Pos2::ZERO, vec2(800.0, 600.0));
        let field = Rect::from_min_size(pos2(100.0, 100.0), vec2(110.0, 30.0));
        assert_eq!(beside(field, vec2(430.0, 340.0), window), pos2(216.0, 100.0));
    }
}

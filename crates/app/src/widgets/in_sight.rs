//! A part of a long list that is worked out and laid out only where it is in sight, while a hand is down: what is
//! dragged on the drawing changes every line of the list, and most of them nobody can see.

use egui::{Id, Rect, Ui, vec2};

/// Shows a part of a list; `None` where it was left out. While a hand is down, a part that is out of sight keeps the
/// room that it had, so that nothing moves; with no hand down every part is shown, for tests and screen readers too.
pub fn in_sight<R>(ui: &mut Ui, id: Id, add: impl FnOnce(&mut Ui) -> R) -> Option<R> {
    let id = id.with("room");
    let is_touched = ui.input(|input| input.pointer.any_down() || input.any_touches());
    let width = ui.available_width();
    let known: Option<(f32, f32)> = ui.data(|data| data.get_temp(id));
    if let Some((_, height)) = known.filter(|(known, _)| is_touched && *known == width) {
        let room = vec2(width, height);
        if !ui.clip_rect().intersects(Rect::from_min_size(ui.cursor().min, room)) {
            // It counts as one widget, as what is shown does: the names of those that follow stay theirs.
            ui.allocate_space(room);
            return None;
        }
    }
    let shown = ui.scope(add);
    ui.data_mut(|data| data.insert_temp(id, (width, shown.response.rect.height())));
    Some(shown.inner)
}

//! A plate drawn small as it is typed: its solids, holes and slots, and the check between two far holes.

use super::plate_rows::farthest;
use crate::theme;
use egui::{Rect, Sense, Shape, Stroke, StrokeKind, Ui, WidgetInfo, pos2, vec2};
use strikeline_solver::job::plate::Plate;
use strikeline_solver::tape::Style;
use strikeline_solver::units::Length;

/// How high the picture is at most, in points (chosen).
const HEIGHT: f32 = 110.0;
/// A hole of which no diameter is known, in millimetres (chosen: a middling one, drawn only).
const USUAL_HOLE_MM: f64 = 8.0;

/// Draws a plate as wide as there is room, and says what a tape shows between its two farthest holes.
pub(super) fn plate_picture(ui: &mut Ui, plate: &Plate, style: Style) {
    let Some(bounds) = bounds_mm(plate) else { return };
    let room = vec2(ui.available_width() - 10.0, HEIGHT);
    let (_, shown) = ui.allocate_space(room);
    let inner = shown.shrink(8.0);
    let scale = (inner.width() / bounds.width().max(1.0)).min(inner.height() / bounds.height().max(1.0));
    let at = |x_mm: f64, down_mm: f64| {
        inner.center() + vec2(x_mm as f32 - bounds.center().x, down_mm as f32 - bounds.center().y) * scale
    };
    let theme = ui.theme();
    let painter = ui.painter_at(shown);
    let visuals = ui.visuals();
    let line = Stroke::new(1.0, visuals.text_color());
    painter.rect_filled(shown, 2.0, visuals.extreme_bg_color);
    for solid in &plate.solids {
        let (left, right) = (solid.left.length().mm(), solid.right.length().mm());
        let (top, bottom) = (solid.down.mm(), (solid.down + solid.height).mm());
        let rect = Rect::from_two_pos(at(left, top), at(right, bottom));
        painter.rect(rect, 1.0, visuals.faint_bg_color, line, StrokeKind::Middle);
    }
    let middle = at(0.0, 0.0).x;
    let dashes = [pos2(middle, shown.top()), pos2(middle, shown.bottom())];
    painter.extend(Shape::dashed_line(&dashes, Stroke::new(1.0, theme::quiet(theme)), 4.0, 3.0));
    for hole in &plate.holes {
        let radius = (radius_mm(hole.diameter) as f32 * scale).max(1.5);
        painter.circle(at(hole.right.length().mm(), hole.down.mm()), radius, visuals.extreme_bg_color, line);
    }
    for slot in &plate.slots {
        let (half, along) = (radius_mm(slot.width), slot.travel.mm() / 2.0);
        let (x, y) = (slot.right.length().mm(), slot.down.mm());
        let (across, down) = if slot.upright { (half, half + along) } else { (half + along, half) };
        let rect = Rect::from_two_pos(at(x - across, y - down), at(x + across, y + down));
        let radius = half as f32 * scale;
        painter.rect(rect, radius, visuals.extreme_bg_color, line, StrokeKind::Middle);
    }
    let check = farthest(&plate.holes);
    if let Some((one, other, _)) = check
        && let (Some(one), Some(other)) = (plate.holes.get(one), plate.holes.get(other))
    {
        let ends = [one, other].map(|hole| at(hole.right.length().mm(), hole.down.mm()));
        painter.line_segment(ends, Stroke::new(1.5, theme::accent(theme)));
    }
    let words = format!("Plate with {} holes and {} slots", plate.holes.len(), plate.slots.len());
    let response = ui.interact(shown, ui.next_auto_id(), Sense::hover());
    response.widget_info(|| WidgetInfo::labeled(egui::accesskit::Role::Image, true, &words));
    if let Some((.., apart)) = check {
        let told =
            format!("Far holes, centre to centre: measure it: {}", style.print(apart).replace(' ', "\u{a0}"));
        ui.add(egui::Label::new(told).wrap());
    }
}

fn radius_mm(diameter: Option<Length>) -> f64 {
    diameter.map_or(USUAL_HOLE_MM, Length::mm) / 2.0
}

/// The rectangle round everything, right of the plate's middle and down from its top; `None` for nothing.
fn bounds_mm(plate: &Plate) -> Option<Rect> {
    let point = |x: Length, down: Length| pos2(x.mm() as f32, down.mm() as f32);
    let solids = plate.solids.iter().map(|solid| {
        Rect::from_two_pos(
            point(solid.left.length(), solid.down),
            point(solid.right.length(), solid.down + solid.height),
        )
    });
    let holes = plate.holes.iter().map(|hole| {
        Rect::from_center_size(point(hole.right.length(), hole.down), vec2(1.0, 1.0) * USUAL_HOLE_MM as f32)
    });
    let slots = plate.slots.iter().map(|slot| {
        let size = (slot.travel.mm() + USUAL_HOLE_MM) as f32;
        Rect::from_center_size(point(slot.right.length(), slot.down), vec2(size, size))
    });
    let all = solids.chain(holes).chain(slots).reduce(Rect::union)?;
    all.is_finite().then_some(all)
}

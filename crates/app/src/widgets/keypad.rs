//! A keypad for quantities, for gloved fingers: a desktop window gets no reliable keyboard on a tablet's screen,
//! and nobody types fractions with gloves. It writes the text that its field reads, and nothing else.

mod beside;
pub mod entry;
pub mod keys;

use crate::theme;
use egui::accesskit::Role;
use egui::text::{CCursor, CCursorRange};
use egui::text_edit::TextEditState;
use egui::{Area, Button, Event, Id, Order, Rect, Response, RichText, Sense, Ui, Vec2, WidgetInfo, vec2};
use entry::Entry;
use keys::{Act, Key, Writes};

/// A key's side, in points (a gloved fingertip; 44 is common practice, no source).
const KEY: f32 = 46.0;
/// Between two keys, in points.
const BETWEEN: f32 = 4.0;
/// Around the keys, in points.
const MARGIN: f32 = 10.0;
/// The line that says which field is written to, in points.
const TITLE: f32 = 22.0;
/// The width of the button at a field's end, in points.
pub const BUTTON: f32 = 26.0;
/// For how many passes the keypad waits to be taken over by the next field.
const HANDED_OVER: u64 = 4;

/// Which field has the keypad.
#[derive(Clone, Copy, Debug)]
struct Held {
    field: Id,
    /// When it was last shown.
    pass: u64,
    /// Whether the field has yet to take the focus: the click that gave it the keypad was elsewhere, and would
    /// take the focus from it again in the same pass.
    is_awaited: bool,
}

/// A field that a keypad can write to.
#[derive(Clone, Copy, Debug)]
pub struct Field<'a> {
    /// Its id.
    pub id: Id,
    /// What it is called.
    pub name: &'a str,
    /// What it can be written with.
    pub writes: Writes,
    /// The field that comes after it, where it has its place in an order.
    pub next: Option<Id>,
}

/// Shows the button at a field's end, and the keypad where it is open for that field. Whether it wrote.
///
/// It opens by its button, by a finger on the field, and where it was open for the field before. It closes when
/// the field loses the focus; a press on it leaves the focus where it is.
pub fn keypad(ui: &mut Ui, field: Field<'_>, response: &Response, text: &mut String) -> bool {
    let id = field.id;
    let pass = ui.cumulative_pass_nr();
    let held = ui.data(|data| data.get_temp::<Held>(held_id()));
    let is_held = held.is_some_and(|held| held.field == id);
    let is_handed_over = held.is_some_and(|held| held.pass + HANDED_OVER > pass) && response.gained_focus();
    let by_finger = (response.clicked() || response.gained_focus()) && is_touched(ui);
    let by_button = button(ui, field, response).is_some_and(|button| button.clicked());

    let is_awaited = is_held && held.is_some_and(|held| held.is_awaited && held.pass < pass);

    if by_button && is_held && response.lost_focus() {
        close(ui);
        return false;
    }
    if by_button || is_awaited || !is_held && (by_finger || is_handed_over) {
        open(ui, id, text);
        ui.memory_mut(|memory| memory.request_focus(id));
    } else if !is_held || !(response.has_focus() || response.lost_focus()) {
        return false;
    }
    ui.data_mut(|data| data.insert_temp(held_id(), Held { field: id, pass, is_awaited: false }));
    show(ui, field, response, text)
}

/// Whether a field so wide has room for the button at all times; a narrower one has it while it is in use.
#[must_use]
pub fn has_button(width: f32) -> bool {
    width >= 4.0 * BUTTON
}

/// Forgets what was typed into a field by its keypad.
pub fn forget(ui: &Ui, id: Id) {
    ui.data_mut(|data| data.insert_temp(entry_id(id), Entry::on("")));
}

fn held_id() -> Id {
    Id::unique("keypad held by")
}

fn entry_id(field: Id) -> Id {
    field.with("keypad")
}

fn open(ui: &Ui, field: Id, text: &str) {
    ui.data_mut(|data| data.insert_temp(entry_id(field), Entry::on(text)));
}

fn close(ui: &Ui) {
    ui.data_mut(|data| data.remove::<Held>(held_id()));
}

/// Whether what the pointer does just now is done by a finger.
fn is_touched(ui: &Ui) -> bool {
    ui.input(|input| input.events.iter().any(|event| matches!(event, Event::Touch { .. })))
}

/// The button within a field's right end: a few keys, painted.
fn button(ui: &Ui, field: Field<'_>, response: &Response) -> Option<Response> {
    let room = response.rect;
    let is_used = response.has_focus() || response.lost_focus() || response.contains_pointer();
    if !has_button(room.width()) && !is_used {
        return None;
    }
    let rect = Rect::from_min_max(room.max - vec2(BUTTON, room.height()), room.max);
    // It takes no focus: Tab goes from field to field.
    let button = ui.interact(rect, field.id.with("keypad button"), Sense::CLICK);
    let name = format!("Keypad: {}", field.name);
    button.widget_info(|| WidgetInfo::labeled(Role::Button, true, &name));
    let theme = ui.theme();
    let colour = if button.hovered() { theme::accent(theme) } else { theme::quiet(theme) };
    for column in -1..=1_i8 {
        for row in -1..=1_i8 {
            let middle = rect.center() + 5.0 * vec2(f32::from(column), f32::from(row));
            ui.painter().rect_filled(Rect::from_center_size(middle, Vec2::splat(2.5)), 0.0, colour);
        }
    }
    Some(button.on_hover_cursor(egui::CursorIcon::PointingHand))
}

/// Shows the keys. Whether one of them wrote.
fn show(ui: &mut Ui, field: Field<'_>, response: &Response, text: &mut String) -> bool {
    let mut entry: Entry =
        ui.data(|data| data.get_temp(entry_id(field.id))).unwrap_or_else(|| Entry::on(text));
    entry.follow(text);
    let (keys, (columns, rows)) = keys::keys(field.writes, field.next.is_some());
    let step = KEY + BETWEEN;
    let grid = vec2(f32::from(columns), f32::from(rows)) * step - Vec2::splat(BETWEEN);
    let size = grid + vec2(2.0 * MARGIN, 2.0 * MARGIN + TITLE);
    let at = beside::beside(response.rect, size, ui.content_rect());

    let shown = Area::new(Id::unique("keypad"))
        .order(Order::Foreground)
        .fixed_pos(at)
        .constrain(false)
        .fade_in(false)
        .accessible_name(format!("Keypad for {}", field.name))
        .show(ui, |ui| {
            let rect = Rect::from_min_size(at, size);
            // What is under it gets none of what is pressed between two keys.
            let ground = ui.interact(rect, Id::unique("keypad ground"), Sense::CLICK);
            let visuals = ui.visuals();
            let frame = egui::epaint::RectShape::new(
                rect,
                3.0,
                visuals.window_fill,
                visuals.widgets.hovered.bg_stroke,
                egui::StrokeKind::Inside,
            );
            ui.painter().add(visuals.window_shadow.as_shape(rect, 3.0));
            ui.painter().add(frame);
            let line = Rect::from_min_size(at + Vec2::splat(MARGIN), vec2(grid.x, TITLE - 6.0));
            let title = RichText::new(field.name).color(theme::quiet(ui.theme()));
            ui.put(line, egui::Label::new(title).truncate().selectable(false));
            let origin = at + vec2(MARGIN, MARGIN + TITLE);
            let pressed = keys.iter().filter(|key| {
                let corner = origin + vec2(f32::from(key.at.0), f32::from(key.at.1)) * step;
                let size = vec2(f32::from(key.size.0), f32::from(key.size.1)) * step - Vec2::splat(BETWEEN);
                let is_enabled = key.act != Act::Undo || entry.can_undo();
                put_key(ui, key, Rect::from_min_size(corner, size), is_enabled).clicked()
            });
            let pressed: Vec<Act> = pressed.map(|key| key.act).collect();
            ui.expand_to_include_rect(rect);
            (pressed.last().copied(), ground.clicked())
        });
    let (pressed, on_ground) = shown.inner;
    if pressed.is_some() || on_ground {
        // The press was a click elsewhere to the field.
        ui.memory_mut(|memory| memory.request_focus(field.id));
        ui.request_repaint();
    }
    match pressed {
        Some(Act::Write(stroke)) => entry.press(stroke),
        Some(Act::Undo) => entry.undo(),
        Some(Act::Clear) => entry.clear(),
        Some(Act::Next) => {
            if let Some(next) = field.next {
                let held = Held { field: next, pass: ui.cumulative_pass_nr(), is_awaited: true };
                ui.data_mut(|data| data.insert_temp(held_id(), held));
            }
            ui.memory_mut(|memory| memory.surrender_focus(field.id));
        }
        Some(Act::Done) => {
            close(ui);
            ui.memory_mut(|memory| memory.surrender_focus(field.id));
        }
        None => {}
    }
    let has_written = entry.text() != text;
    if has_written {
        entry.text().clone_into(text);
        cursor_to_end(ui, field.id, text);
    }
    ui.data_mut(|data| data.insert_temp(entry_id(field.id), entry));
    has_written
}

fn put_key(ui: &mut Ui, key: &Key, rect: Rect, is_enabled: bool) -> Response {
    let is_digit = matches!(key.act, Act::Write(entry::Stroke::Digit(_)));
    let size = if is_digit { 20.0 } else { 15.0 };
    let label = RichText::new(key.label()).size(size);
    // Keys take no focus: it stays with the field, so that the keyboard goes on working.
    let button = Button::new(label).sense(Sense::CLICK).min_size(rect.size());
    let response = ui.scope(|ui| {
        ui.spacing_mut().button_padding = Vec2::ZERO;
        if !is_enabled {
            ui.disable();
        }
        ui.put(rect, button)
    });
    let name = key.name();
    response.inner.widget_info(|| WidgetInfo::labeled(Role::Button, is_enabled, &name));
    response.inner
}

/// Puts the cursor behind a text that something else than the keyboard wrote.
fn cursor_to_end(ui: &Ui, field: Id, text: &str) {
    let mut state = TextEditState::load(ui, field).unwrap_or_default();
    state.cursor.set_char_range(Some(CCursorRange::one(CCursor::new(text.chars().count()))));
    state.store(ui, field);
}

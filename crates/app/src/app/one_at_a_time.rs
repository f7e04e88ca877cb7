//! A key that moves the focus has a frame of its own. Where frames are slow several keys come in one, and what is
//! typed after Enter or Tab would go to the field before it, to both, or nowhere.

use egui::{Context, Event, Key, RawInput};

/// Holds events back for the next frame.
#[derive(Default)]
pub(super) struct OneAtATime {
    waiting: Vec<Event>,
}

impl egui::Plugin for OneAtATime {
    fn debug_name(&self) -> &'static str {
        "one at a time"
    }

    fn input_hook(&mut self, context: &Context, input: &mut RawInput) {
        let mut events = std::mem::take(&mut self.waiting);
        events.append(&mut input.events);
        self.waiting = events.split_off(first_frame(&events));
        input.events = events;
        if !self.waiting.is_empty() {
            context.request_repaint();
        }
    }
}

/// How many of the events belong to one frame: those up to a key that moves the focus, or that key alone.
fn first_frame(events: &[Event]) -> usize {
    let types =
        |event: &Event| matches!(event, Event::Text(_) | Event::Paste(_) | Event::Ime(_)) || is_press(event);
    let mut is_typed = false;
    for (place, event) in events.iter().enumerate() {
        if moves_focus(event) {
            if is_typed {
                return place;
            }
            let more = events.iter().skip(place + 1).position(types);
            return more.map_or(events.len(), |more| place + 1 + more);
        }
        is_typed |= types(event);
    }
    events.len()
}

fn is_press(event: &Event) -> bool {
    matches!(event, Event::Key { pressed: true, .. })
}

fn moves_focus(event: &Event) -> bool {
    match event {
        Event::Key { key: Key::Enter | Key::Tab | Key::Escape | Key::F1, pressed: true, .. } => true,
        // What it asks for may show a field.
        Event::Key { pressed: true, modifiers, .. } => modifiers.command,
        _ => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use egui::Modifiers;

    fn key(key: Key, pressed: bool) -> Event {
        Event::Key { key, physical_key: None, pressed, repeat: false, modifiers: Modifiers::NONE }
    }

    fn text(text: &str) -> Event {
        Event::Text(text.to_owned())
    }

    /// How many events each frame gets.
    fn frames(mut events: Vec<Event>) -> Vec<usize> {
        let mut frames = Vec::new();
        while !events.is_empty() {
            let first = first_frame(&events);
            assert!(first > 0, "it goes on");
            frames.push(first);
            events.drain(..first);
        }
        frames
    }

    #[test]
    fn what_is_typed_stays_together_and_a_key_that_moves_the_focus_stands_alone() {
        let enter = || [key(Key::Enter, true), key(Key::Enter, false)];
        assert_eq!(frames(vec![text("4"), text("8")]), [2]);
        assert_eq!(
            frames([vec![text("4")], enter().into(), vec![text("3")], enter().into()].concat()),
            [1, 2, 1, 2]
        );
        assert_eq!(frames([enter(), enter()].concat()), [2, 2]);
        assert_eq!(frames(vec![key(Key::Tab, true), text("3")]), [1, 1]);
        assert_eq!(frames(vec![Event::PointerGone, key(Key::Tab, true)]), [2]);
        let command = |key| Event::Key {
            key,
            physical_key: None,
            pressed: true,
            repeat: false,
            modifiers: Modifiers::COMMAND,
        };
        assert_eq!(frames(vec![text("4"), command(Key::K), text("s"), text("a")]), [1, 1, 2]);
        assert_eq!(frames(Vec::new()), [0; 0]);
    }
}

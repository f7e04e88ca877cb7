//! What hand and keys do to a job through the window: before, gesture, after. No screen and no graphics.

#![expect(
    clippy::unwrap_used,
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "a room that is not as written here fails its test"
)]

#[path = "gestures/at_wall.rs"]
mod at_wall;
#[path = "gestures/at_wall_whole.rs"]
mod at_wall_whole;
#[path = "gestures/by_hand.rs"]
mod by_hand;
#[path = "gestures/cable.rs"]
mod cable;
#[path = "gestures/choosing.rs"]
mod choosing;
#[path = "gestures/commands.rs"]
mod commands;
#[path = "gestures/dialogs.rs"]
mod dialogs;
#[path = "gestures/drags.rs"]
mod drags;
#[path = "gestures/enter.rs"]
mod enter;
#[path = "gestures/fit.rs"]
mod fit;
#[path = "gestures/hand.rs"]
mod hand;
#[path = "gestures/hand_lists.rs"]
mod hand_lists;
#[path = "gestures/hand_touch.rs"]
mod hand_touch;
#[path = "gestures/form.rs"]
mod form;
#[path = "gestures/keys.rs"]
mod keys;
#[path = "gestures/mends.rs"]
mod mends;
#[path = "gestures/offers.rs"]
mod offers;
#[path = "gestures/one_pull.rs"]
mod one_pull;
#[path = "gestures/on_paper.rs"]
mod on_paper;
#[path = "gestures/panels.rs"]
mod panels;
#[path = "gestures/room.rs"]
mod room;
#[path = "gestures/rules.rs"]
mod rules;
#[path = "gestures/shelf.rs"]
mod shelf;
#[path = "gestures/side_view.rs"]
mod side_view;
#[path = "gestures/touch.rs"]
mod touch;
#[path = "gestures/working.rs"]
mod working;

//! What can be asked for: pushed by buttons and keys, done in `App::logic`, never inside a panel.

mod hand;
mod listed;
mod shelf;

pub use hand::{HandKeys, hand_keys};
pub use listed::{keys_of, listed, words};
pub use shelf::{FromShelf, Kept, ToShelf};

use egui::{Context, Key, KeyboardShortcut, Modifiers, ThemePreference};
use std::path::PathBuf;
use strikeline_solver::subject::{Id, Subject};

/// Something asked for.
#[derive(Clone, Debug, PartialEq)]
pub enum Command {
    /// Begin a job in which nothing is measured.
    New,
    /// Ask for a file to open.
    AskOpen,
    /// Open this file.
    Open(PathBuf),
    /// Choose a file to open in the system's own dialog.
    BrowseOpen,
    /// Save to the job's own file, or ask for one.
    Save,
    /// Save as [`Command::Save`] does, and do something else once that is done.
    SaveThen(Box<Self>),
    /// Ask for a file to save to.
    AskSave,
    /// Save to this file.
    SaveTo(PathBuf),
    /// Save to this file, although it was written by hand and will be written anew.
    SaveByHand(PathBuf),
    /// Save to this file, whatever it holds now.
    Replace(PathBuf),
    /// Let go of what was not saved.
    Discard,
    /// Choose a file to save to in the system's own dialog.
    BrowseSave,
    /// Ask what is to become of what a crash left.
    AskLeftOver,
    /// Take up again what a crash left, by its name in the journal.
    TakeUp(String),
    /// Throw away what a crash left.
    ThrowAway(String),
    /// Take a job off the list of recent ones.
    Forget(PathBuf),
    /// One step back.
    Undo,
    /// One step forward again.
    Redo,
    /// Show all of the wall.
    Fit,
    /// Show this.
    Show(Pane),
    /// Put something of my shelf into the job.
    PutFromShelf(FromShelf),
    /// Keep something of the job on my shelf.
    KeepOnShelf(ToShelf),
    /// Take something off my shelf, by its file's name.
    RemoveFromShelf(String),
    /// Take the light or the dark theme, or follow the system's.
    SetTheme(ThemePreference),
    /// Ask for pictures of this, or of the job as a whole.
    AskPictures(Option<Subject>),
    /// Ask for pictures of what is selected.
    AskPicturesOfSelected,
    /// Copy pictures of this, or of the job as a whole, into the job's folder.
    AddPictures(Option<Subject>, Vec<PathBuf>),
    /// Take a picture away.
    RemovePicture(Id),
    /// Keep how large a pixel of this screen is, in millimetres.
    KeepScreenSize(f32),
    /// Ask for a file to save the sheets to.
    AskSheets,
    /// Choose a file to save the sheets to in the system's own dialog.
    BrowseSheets,
    /// Save the sheets to this file, and those numbered after it.
    SaveSheets(PathBuf),
    /// The same, whatever is there.
    ReplaceSheets(PathBuf),
    /// Close the window.
    Close,
}

/// Something of the window that is shown when it is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pane {
    /// Reading a wall in one pull, in the place of what was measured.
    OnePull,
    /// One mark at a time over the whole window.
    AtWall,
    /// The options with the customer, over the whole window.
    Choosing,
    /// My shelf, in the place of what was measured.
    Shelf,
    /// Which mounts of my shelf suit the piece where it is, in the place of what was measured.
    Mine,
    /// What is taken to the wall on paper, over the whole window.
    OnPaper,
    /// The room from the side, beside the elevation; asked for again it goes.
    SideView,
    /// What this wall offers, beside the elevation; asked for again it goes.
    Offers,
    /// All that can be asked for, with a search.
    CommandList,
    /// All keys.
    KeyPage,
}

/// What is asked for and not yet done, first come first.
pub type Queue = Vec<Command>;

/// The keys of a command, whichever of them.
///
/// Of two that share a key the one with more modifiers stands first, since a modifier too many is ignored.
#[must_use]
pub fn shortcuts() -> Vec<(KeyboardShortcut, Command)> {
    let keys = |modifiers, key| KeyboardShortcut::new(modifiers, key);
    let command = Modifiers::COMMAND;
    let shifted = Modifiers::COMMAND | Modifiers::SHIFT;
    vec![
        (keys(shifted, Key::Z), Command::Redo),
        (keys(shifted, Key::S), Command::AskSave),
        (keys(command, Key::Z), Command::Undo),
        (keys(command, Key::Y), Command::Redo),
        (keys(command, Key::S), Command::Save),
        (keys(command, Key::O), Command::AskOpen),
        (keys(command, Key::N), Command::New),
        (keys(command, Key::Num0), Command::Fit),
        (keys(command, Key::L), Command::Show(Pane::OnePull)),
        (keys(command, Key::B), Command::Show(Pane::Shelf)),
        (keys(command, Key::M), Command::Show(Pane::AtWall)),
        (keys(command, Key::E), Command::Show(Pane::SideView)),
        (keys(command, Key::G), Command::Show(Pane::Choosing)),
        (keys(command, Key::P), Command::Show(Pane::OnPaper)),
        (keys(command, Key::D), Command::Show(Pane::Offers)),
        (keys(command, Key::K), Command::Show(Pane::CommandList)),
        (keys(Modifiers::NONE, Key::F1), Command::Show(Pane::KeyPage)),
    ]
}

/// Pushes what the keys ask for. Undo and redo are left to a text field that has the focus.
pub fn from_keys(context: &Context, queue: &mut Queue) {
    let is_typing = context.text_edit_focused();
    for (shortcut, command) in shortcuts() {
        let is_the_fields = is_typing && matches!(command, Command::Undo | Command::Redo);
        if !is_the_fields && context.input_mut(|input| input.consume_shortcut(&shortcut)) {
            queue.push(command);
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_two_commands_share_their_keys() {
        let all = shortcuts();
        for (index, (keys, command)) in all.iter().enumerate() {
            for (later_keys, later) in all.iter().skip(index + 1) {
                assert_ne!(keys, later_keys, "{command:?} and {later:?}");
            }
        }
    }

    #[test]
    fn of_two_with_one_key_the_one_with_more_modifiers_is_tested_first() {
        let all = shortcuts();
        for (index, (keys, _)) in all.iter().enumerate() {
            for (later, command) in all.iter().skip(index + 1) {
                let hides =
                    later.logical_key == keys.logical_key && later.modifiers.shift && !keys.modifiers.shift;
                assert!(!hides, "{command:?} is never reached");
            }
        }
    }
}

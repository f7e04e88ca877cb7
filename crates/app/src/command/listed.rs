//! What can be asked for from the list of commands, in words, and the keys of each.

use super::{Command, Pane, shortcuts};
use egui::{Context, ThemePreference};

/// What a command does, in words; `None` for one that only answers a question, and is not asked for by itself.
#[must_use]
pub fn words(command: &Command) -> Option<&'static str> {
    match command {
        Command::New => Some("New job"),
        Command::AskOpen => Some("Open a job"),
        Command::Save => Some("Save the job"),
        Command::AskSave => Some("Save the job as another file"),
        Command::Undo => Some("Undo: one step back"),
        Command::Redo => Some("Redo: one step forward again"),
        Command::Fit => Some("Show the whole wall"),
        Command::Show(Pane::OnePull) => Some("One pull: read a wall from one datum"),
        Command::Show(Pane::AtWall) => Some("At the wall: one mark at a time"),
        Command::Show(Pane::Choosing) => Some("Choosing: the options with the customer"),
        Command::Show(Pane::OnPaper) => Some("On paper: the sheets, to look at and to save"),
        Command::Show(Pane::Shelf) => Some("My shelf: put in or keep what was measured once"),
        Command::Show(Pane::Mine) => Some("Which of mine: the mounts of my shelf at this place"),
        Command::Show(Pane::SideView) => Some("Side view: how the display is seen from the seats"),
        Command::Show(Pane::Offers) => Some("What this wall offers: every place to either side, and heights"),
        Command::Show(Pane::CommandList) => Some("List of commands"),
        Command::Show(Pane::KeyPage) => Some("Page of keys"),
        Command::SetTheme(ThemePreference::System) => Some("Theme: as the system's"),
        Command::SetTheme(ThemePreference::Light) => Some("Theme: light"),
        Command::SetTheme(ThemePreference::Dark) => Some("Theme: dark"),
        Command::AskPicturesOfSelected => Some("Add pictures of what is selected, or of the job"),
        Command::Close => Some("Close the window"),
        Command::Open(_)
        | Command::BrowseOpen
        | Command::SaveThen(_)
        | Command::SaveTo(_)
        | Command::SaveByHand(_)
        | Command::Replace(_)
        | Command::Discard
        | Command::BrowseSave
        | Command::AskLeftOver
        | Command::TakeUp(_)
        | Command::ThrowAway(_)
        | Command::Forget(_)
        | Command::PutFromShelf(_)
        | Command::KeepOnShelf(_)
        | Command::RemoveFromShelf(_)
        | Command::AskPictures(_)
        | Command::AddPictures(..)
        | Command::RemovePicture(_)
        | Command::KeepScreenSize(_)
        | Command::AskSheets
        | Command::BrowseSheets
        | Command::SaveSheets(_)
        | Command::ReplaceSheets(_) => None,
    }
}

/// Every command that can be asked for, in the order in which the list shows them.
#[must_use]
pub fn listed() -> Vec<Command> {
    vec![
        Command::New,
        Command::AskOpen,
        Command::Save,
        Command::AskSave,
        Command::Undo,
        Command::Redo,
        Command::Fit,
        Command::Show(Pane::OnePull),
        Command::Show(Pane::AtWall),
        Command::Show(Pane::Choosing),
        Command::Show(Pane::OnPaper),
        Command::Show(Pane::Shelf),
        Command::Show(Pane::Mine),
        Command::Show(Pane::SideView),
        Command::Show(Pane::Offers),
        Command::Show(Pane::CommandList),
        Command::Show(Pane::KeyPage),
        Command::AskPicturesOfSelected,
        Command::SetTheme(ThemePreference::System),
        Command::SetTheme(ThemePreference::Light),
        Command::SetTheme(ThemePreference::Dark),
        Command::Close,
    ]
}

/// The keys of a command as they are called on this system, such as `Ctrl+Shift+Z or Ctrl+Y`; empty for none.
#[must_use]
pub fn keys_of(context: &Context, command: &Command) -> String {
    let all = shortcuts();
    let of = all.iter().filter(|(_, other)| other == command);
    of.map(|(keys, _)| context.format_shortcut(keys)).collect::<Vec<_>>().join(" or ")
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::collections::BTreeSet;

    /// The names of the variants, read off the enum itself: a new one has to be put somewhere.
    fn variants() -> Vec<&'static str> {
        let source = include_str!("../command.rs");
        let body =
            source.split("pub enum Command {").nth(1).and_then(|rest| rest.split("\n}").next()).unwrap();
        let lines = body.lines().map(str::trim).filter(|line| !line.is_empty() && !line.starts_with("///"));
        lines.map(|line| line.split(['(', ',']).next().unwrap()).collect()
    }

    #[test]
    fn every_command_that_can_be_asked_for_is_listed_and_has_words() {
        let answers = [
            "Open",
            "BrowseOpen",
            "SaveThen",
            "SaveTo",
            "SaveByHand",
            "Replace",
            "Discard",
            "BrowseSave",
            "AskLeftOver",
            "TakeUp",
            "ThrowAway",
            "Forget",
            "PutFromShelf",
            "KeepOnShelf",
            "RemoveFromShelf",
            "KeepScreenSize",
            "AskPictures",
            "AddPictures",
            "RemovePicture",
            "AskSheets",
            "BrowseSheets",
            "SaveSheets",
            "ReplaceSheets",
        ];
        let listed = listed();
        let named: Vec<String> = listed.iter().map(|command| format!("{command:?}")).collect();
        let variants = variants();
        assert!(variants.len() > 15, "{variants:?}");
        for variant in variants {
            let is_listed = named.iter().any(|name| name.split('(').next() == Some(variant));
            assert_ne!(is_listed, answers.contains(&variant), "{variant} is either listed or an answer");
        }
        for command in &listed {
            assert!(words(command).is_some_and(|words| !words.is_empty()), "{command:?}");
        }
        for pane in [
            Pane::OnePull,
            Pane::OnPaper,
            Pane::Choosing,
            Pane::Shelf,
            Pane::Mine,
            Pane::SideView,
            Pane::Offers,
            Pane::CommandList,
            Pane::KeyPage,
        ] {
            assert!(listed.contains(&Command::Show(pane)), "{pane:?}");
        }
        let distinct: BTreeSet<_> = listed.iter().filter_map(words).collect();
        assert_eq!(distinct.len(), listed.len(), "no two share their words");
    }

    #[test]
    fn every_shortcut_is_of_a_listed_command() {
        for (keys, command) in shortcuts() {
            assert!(listed().contains(&command), "{keys:?}");
        }
        let context = Context::default();
        assert!(keys_of(&context, &Command::Redo).contains(" or "));
        assert_eq!(keys_of(&context, &Command::Close), "");
    }
}

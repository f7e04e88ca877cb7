//! A new job's display, mount and wall from the shelf, a tap each.

use crate::command::{Command, FromShelf, Queue};
use crate::panels::shelf::{Kind, Stored};
use crate::widgets::chips::chips;
use egui::Ui;
use strikeline_solver::subject::Id;

/// Shows what is on the shelf of a kind, where there is any. Whether one was tapped: it goes in the place of `over`.
pub(super) fn ui(ui: &mut Ui, shelf: &[Stored], kind: Kind, over: &Id, queue: &mut Queue) -> bool {
    let such: Vec<&Stored> = shelf.iter().filter(|one| one.kind == kind).collect();
    if such.is_empty() {
        return false;
    }
    let label = match kind {
        Kind::Piece => "Display from my shelf",
        Kind::Mount => "Mount from my shelf",
        Kind::Wall | Kind::Kit | Kind::Defaults => "Built as one from my shelf",
    };
    let held = such.iter().position(|one| one.is_held);
    let tapped = chips(ui, label, such.iter().map(|one| one.name.as_str()), held);
    let Some(one) = tapped.and_then(|index| such.get(index)) else { return false };
    queue.push(Command::PutFromShelf(FromShelf { file: one.file.clone(), over: Some(over.clone()) }));
    true
}

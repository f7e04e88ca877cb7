//! Which of mine: the mounts of my shelf that suit the piece where it is, best first; a tap hangs it on one. Shows what
//! it is given and pushes commands; it knows no file.

use super::holding::MINE;
use super::measured::section;
use super::shelf::Shown;
use crate::command::{Command, FromShelf, Queue};
use crate::session::Session;
use crate::theme;
use crate::widgets::row::{Row, row_to_take};
use egui::accesskit::Role;
use egui::{Id, Label, RichText, ScrollArea, Ui, WidgetInfo};
use strikeline_solver::capacity::group::Word;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::plan::Plan;
use strikeline_solver::words;

/// Shows the list. Whether it stays open.
#[must_use]
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan, shelf: &Shown, queue: &mut Queue) -> bool {
    ui.add_space(4.0);
    let is_closed = ui
        .horizontal_wrapped(|ui| {
            ui.heading(MINE);
            ui.button("Close the list").clicked()
        })
        .inner;
    ui.separator();
    let is_resting =
        ui.input(|input| !input.pointer.any_down() && !input.any_touches() && input.keys_down.is_empty());
    ScrollArea::vertical().id_salt("which of mine").auto_shrink(false).show(ui, |ui| {
        ui.spacing_mut().item_spacing.y = 4.0;
        let quiet = theme::quiet(ui.theme());
        let say = |ui: &mut Ui, text: &str| ui.add(Label::new(RichText::new(text).color(quiet)).wrap());
        if let Some(why) = &shelf.no_folder {
            say(ui, why);
            return;
        }
        let Some(piece) = session.meant_piece(plan).map(|piece| piece.id.clone()) else {
            say(ui, "Nothing hangs on this wall yet.");
            return;
        };
        let mounts: Vec<Mount> = shelf.mounts.iter().map(|(_, mount)| mount.clone()).collect();
        section(ui, &words::capital(&words::thing(plan, &piece.whole())));
        if mounts.is_empty() {
            say(ui, "No mount is on my shelf yet: measure one in a job and keep it there.");
            return;
        }
        let Some(of) = session.which_of_mine(&piece, &mounts, is_resting) else {
            ui.request_repaint();
            return;
        };
        say(
            ui,
            "Where it is now, within rating and pattern as far as both are known, best first. A tap hangs it on a \
             copy; the old mount stays in the job.",
        );
        for one in &of.suits {
            let Some((file, _)) = shelf.mounts.get(one.mount) else { continue };
            let (name, text) = (words::suits_name(one), words::suits(plan, one));
            let colour = (one.if_probed == Word::Short).then(|| theme::accent(ui.theme()));
            let shown = Row { title: &name, colour, text: &text, is_selected: false };
            let response = row_to_take(ui, Id::unique(("mine", file)), shown);
            let called = format!("Hang it on: {name}");
            response.widget_info(|| WidgetInfo::labeled(Role::Button, true, &called));
            if response.clicked() {
                queue.push(Command::PutFromShelf(FromShelf { file: file.clone(), over: None }));
            }
        }
        if let Some(left_out) = words::left_out(&of) {
            say(ui, &left_out);
        }
        ui.add_space(theme::TOUCH);
    });
    !is_closed
}

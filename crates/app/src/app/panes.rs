//! What is shown of the window only when it is asked for: one pull, my shelf, the side view, the working of a verdict,
//! the list of commands, the page of keys.

use super::App;
use super::at_wall::{self, Asked, AtWall};
use super::choosing::{self, Choosing};
use super::on_paper::{self, OnPaper};
use crate::canvas::side_view::SideView;
use crate::command::{Command, Pane, Queue};
use crate::files::screens;
use crate::panels::command_list::CommandList;
use crate::panels::shelf::Shown;
use crate::panels::{key_page, measured, mine, one_pull, shelf, short_form, working};
use crate::session::Session;
use crate::view_state::Side;
use egui::{Context, Ui};
use strikeline_solver::plan::Plan;

/// What of it is open.
#[derive(Debug, Default)]
pub(super) struct Panes {
    at_wall: Option<AtWall>,
    choosing: Option<Choosing>,
    pub(super) on_paper: Option<OnPaper>,
    one_pull: Option<one_pull::Panel>,
    pub(super) shelf: Option<shelf::Panel>,
    mine: bool,
    pub(super) side_view: Option<SideView>,
    command_list: Option<CommandList>,
    key_page: bool,
    pub(super) working: working::Panel,
}

impl App {
    /// Opens what was asked for.
    pub(super) fn show(&mut self, context: &Context, pane: Pane) {
        match pane {
            Pane::OnePull => {
                self.view_state.side = Side::Measured;
                self.panes.shelf = None;
                self.panes.mine = false;
                if self.panes.one_pull.is_none() {
                    self.panes.one_pull = Some(one_pull::Panel::begin(&mut self.session));
                }
            }
            Pane::AtWall => {
                let kept = self.screens.as_ref();
                let kept = kept.and_then(|list| screens::mm_per_pixel(list, &at_wall::screen(context)));
                if let Some(mm_per_pixel) = kept {
                    at_wall::make_true(context, mm_per_pixel);
                }
                self.panes.on_paper = None;
                self.panes.choosing = None;
                self.panes.at_wall = Some(AtWall::begin(&mut self.session));
            }
            Pane::Choosing => {
                self.panes.at_wall = None;
                self.panes.on_paper = None;
                self.panes.choosing = Some(Choosing::default());
            }
            Pane::OnPaper => {
                self.panes.at_wall = None;
                self.panes.choosing = None;
                self.panes.on_paper = Some(OnPaper::begin(&self.session));
            }
            Pane::Shelf => {
                self.view_state.side = Side::Measured;
                // What was read until now is in the job.
                self.panes.one_pull = None;
                self.panes.mine = false;
                self.panes.shelf = Some(shelf::Panel::default());
                self.my_shelf.read();
            }
            Pane::Mine => {
                self.view_state.side = Side::Measured;
                self.panes.one_pull = None;
                self.panes.shelf = None;
                self.panes.mine = true;
                self.my_shelf.read();
            }
            Pane::SideView => {
                self.panes.side_view = self.panes.side_view.is_none().then(SideView::default);
            }
            Pane::Offers => self.view_state.is_swept = !self.view_state.is_swept,
            Pane::CommandList => self.panes.command_list = Some(CommandList::default()),
            Pane::KeyPage => self.panes.key_page = true,
        }
    }
}

impl Panes {
    /// Shows what takes the whole window: the options with the customer, the sheets, or the mark at which one is at the
    /// wall; false for none of them.
    pub(super) fn whole(
        &mut self,
        ui: &mut Ui,
        session: &mut Session,
        queue: &mut Queue,
        closes: bool,
    ) -> bool {
        if let Some(choosing) = &mut self.choosing {
            match choosing.ui(ui, session, closes) {
                choosing::Asked::Nothing => return true,
                choosing::Asked::Leave => {}
                choosing::Asked::Picture => self.on_paper = Some(OnPaper::picture(session)),
            }
            self.choosing = None;
            ui.request_repaint();
            return true;
        }
        if let Some(sheets) = &mut self.on_paper {
            match sheets.ui(ui, session, closes) {
                on_paper::Asked::Nothing => {}
                on_paper::Asked::Save => queue.push(Command::AskSheets),
                on_paper::Asked::Leave => {
                    self.on_paper = None;
                    ui.request_repaint();
                }
            }
            return true;
        }
        let Some(at_wall) = &mut self.at_wall else { return false };
        match at_wall.ui(ui, session) {
            Asked::Nothing => return true,
            Asked::Picture(mark) => {
                queue.push(Command::AskPictures(Some(mark)));
                return true;
            }
            Asked::TakeAway(picture) => {
                queue.push(Command::RemovePicture(picture));
                return true;
            }
            Asked::KeepSize(mm_per_pixel) => {
                queue.push(Command::KeepScreenSize(mm_per_pixel));
                return true;
            }
            Asked::OnePull => queue.push(Command::Show(Pane::OnePull)),
            Asked::Leave => {}
        }
        self.at_wall = None;
        ui.request_repaint();
        true
    }

    /// Whether something takes the whole window, so that the drawing is out of reach.
    pub(super) fn is_whole(&self) -> bool {
        self.at_wall.is_some() || self.choosing.is_some() || self.on_paper.is_some()
    }

    /// Whether something stands before the window.
    pub(super) fn is_modal(&self) -> bool {
        self.command_list.is_some() || self.key_page
    }

    /// Whether a piece is held on the side view, or with the customer.
    pub(super) fn is_side_held(&self) -> bool {
        self.side_view.as_ref().is_some_and(SideView::is_held)
            || self.choosing.as_ref().is_some_and(Choosing::is_held)
    }

    /// Whether a pull is being taken: it becomes one step when it is done, and nothing is dragged meanwhile.
    pub(super) fn is_pulling(&self) -> bool {
        self.one_pull.is_some()
    }

    /// Takes a command that means the pull: what is undone there is its last entry.
    pub(super) fn takes(&mut self, command: &Command, session: &mut Session) -> bool {
        let Some(pull) = &mut self.one_pull else { return false };
        match command {
            Command::Undo => pull.take_back(session),
            Command::Redo => {}
            _ => return false,
        }
        true
    }

    /// Shows the panel of what was measured, or what stands in its place.
    pub(super) fn measured(
        &mut self,
        ui: &mut Ui,
        session: &mut Session,
        plan: &Plan,
        on_shelf: &Shown,
        queue: &mut Queue,
    ) {
        if let Some(pull) = &mut self.one_pull {
            if !pull.ui(ui, session, plan) {
                self.one_pull = None;
                ui.request_repaint();
            }
        } else if let Some(shelf) = &mut self.shelf {
            if !shelf.ui(ui, session, plan, on_shelf, queue) {
                self.shelf = None;
                ui.request_repaint();
            }
        } else if self.mine {
            if !mine::ui(ui, session, plan, on_shelf, queue) {
                self.mine = false;
                ui.request_repaint();
            }
        } else if session.short_form {
            short_form::ui(ui, session, plan, &on_shelf.things, queue);
        } else {
            measured::ui(ui, session, plan);
        }
    }

    /// Shows what stands before the window.
    pub(super) fn over(&mut self, ui: &Ui, queue: &mut Queue) {
        if let Some(list) = &mut self.command_list
            && !list.ui(ui, queue)
        {
            self.command_list = None;
        }
        self.key_page = self.key_page && key_page::ui(ui);
    }
}

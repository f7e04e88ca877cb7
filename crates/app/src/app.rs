//! The window: one frame is what was asked for (`logic`), then what the hand does, then
//! panels, then the canvas (`ui`).

mod at_wall;
mod choosing;
mod commands;
mod dialog;
mod left_over;
mod on_paper;
mod one_at_a_time;
mod open_job;
mod panes;
mod pictures;
mod shelf;
mod sheets;

use crate::canvas::Canvas;
use crate::command::{self, Command, Queue};
use crate::files::home::{Home, VARIABLE};
use crate::files::journal::{self, Journal, LeftOver};
use crate::files::viewer::{self, Viewer};
use crate::panels::shelf::Shown;
use crate::panels::{bar, follows, top_line};
use crate::session::Session;
use crate::strip::Strip;
use crate::theme;
use crate::view_state::{Side, ViewState};
use dialog::Dialog;
use egui::{CentralPanel, Context, Frame, Id, Panel, Ui, ViewportCommand};
use one_at_a_time::OneAtATime;
use panes::Panes;
use shelf::MyShelf;
use std::path::PathBuf;
use std::time::{Duration, Instant, SystemTime};
use strikeline_solver::job::Job;

/// The window's own state.
pub struct App {
    session: Session,
    view_state: ViewState,
    canvas: Canvas,
    strip: Strip,
    /// When the work of this frame began.
    began: Instant,
    queue: Queue,
    dialog: Option<Dialog>,
    panes: Panes,
    my_shelf: MyShelf,
    /// What is done once the job is saved; nothing once the question for that was let go.
    after_save: Option<Command>,
    /// Whether another job was begun since the last frame: what was half typed or opened belongs to the one before.
    is_begun: bool,
    /// The field that gets the focus when the panels are shown next.
    focus: Option<Id>,
    /// The text of the file as it was read or last saved.
    as_read: Option<String>,
    /// Whether the file is as this program writes it.
    is_canonical: bool,
    /// The job as it was when its owner said that its changes may be lost.
    discarded: Option<Job>,
    /// Where unsaved work is kept for the case of a crash.
    journal: Option<Journal>,
    /// The list of recent jobs.
    recents: Option<PathBuf>,
    /// How large the pixels of each screen are.
    screens: Option<PathBuf>,
    /// What shows a saved sheet, to be printed.
    viewer: Viewer,
    /// What crashes left and nobody took up or threw away.
    left_overs: Vec<LeftOver>,
    /// What stands before the window when it is free, the first last.
    waiting: Vec<Dialog>,
}

/// Opens the window on a job, or on one in which nothing is measured yet.
///
/// # Errors
/// What the window system says where no window can be opened.
pub fn run(path: Option<PathBuf>) -> Result<(), String> {
    let create: eframe::AppCreator<'_> = Box::new(|created| {
        let mut app = App::new(&created.egui_ctx, path);
        match Home::of_user() {
            Some(home) => app = app.at_home(&created.egui_ctx, &home),
            None => app.waiting.push(Dialog::Message(format!(
                "Unsaved work cannot be kept for the case of a crash: the system knows no folder of yours. \
                 Save from time to time, or name a folder in {VARIABLE}."
            ))),
        }
        Ok(Box::new(app))
    });
    eframe::run_native("strikeline", native_options(), create).map_err(|why| {
        // Before what went wrong the window system names the place in its own source.
        let why = why.to_string();
        why.rsplit(": ").next().unwrap_or_default().to_owned()
    })
}

/// Makes a context ready for the window: its type and colours, and how keys come to it.
pub fn install(context: &Context) {
    theme::install(context);
    context.add_plugin(OneAtATime::default());
}

/// How the window is opened.
#[must_use]
pub fn native_options() -> eframe::NativeOptions {
    let viewport = egui::ViewportBuilder::default()
        .with_title("Strikeline")
        .with_app_id("strikeline")
        .with_inner_size([1280.0, 800.0])
        .with_min_inner_size([720.0, 480.0]);
    eframe::NativeOptions { viewport, renderer: eframe::Renderer::Glow, ..eframe::NativeOptions::default() }
}

impl App {
    /// The window's state on a job's file, or on a job in which nothing is measured yet.
    ///
    /// A file that cannot be read is told of in a dialog.
    #[must_use]
    pub fn new(context: &Context, path: Option<PathBuf>) -> Self {
        install(context);
        let mut app = Self::on(Session::fresh());
        match path {
            Some(path) => app.open(&path),
            None => app.begin(Session::fresh()),
        }
        app
    }

    /// The window's state on an open job, for a context that is made ready.
    #[must_use]
    pub fn on(session: Session) -> Self {
        Self {
            session,
            view_state: ViewState::default(),
            canvas: Canvas::default(),
            strip: Strip::default(),
            began: Instant::now(),
            queue: Queue::new(),
            dialog: None,
            panes: Panes::default(),
            my_shelf: MyShelf::default(),
            after_save: None,
            is_begun: false,
            focus: None,
            as_read: None,
            is_canonical: true,
            discarded: None,
            journal: None,
            recents: None,
            screens: None,
            viewer: viewer::open,
            left_overs: Vec::new(),
            waiting: Vec::new(),
        }
    }

    /// Takes another viewer of what is printed.
    pub fn set_viewer(&mut self, viewer: Viewer) {
        self.viewer = viewer;
    }

    /// The same with a home: it keeps unsaved work, recent jobs and my shelf there, offers what a crash left, and
    /// begins a new job with what is kept for that.
    #[must_use]
    pub fn at_home(mut self, context: &Context, home: &Home) -> Self {
        self.my_shelf = MyShelf::at(home.shelf());
        if self.session.short_form && !self.session.is_changed() {
            self.begin_fresh();
        }
        let left = journal::left_overs(&home.journal());
        if !left.unsaved.is_empty() {
            let offered = left_over::offered(&left.unsaved, SystemTime::now());
            self.waiting.push(Dialog::LeftOver { offered });
        }
        self.waiting.extend(left.troubles.into_iter().map(Dialog::Message));
        self.left_overs = left.unsaved;
        self.recents = Some(home.recent());
        self.screens = Some(home.screens());
        self.note_recent();
        let context = context.clone();
        self.journal = Some(Journal::begin(home.journal(), move || context.request_repaint()));
        self
    }

    /// What is open.
    #[must_use]
    pub fn session(&self) -> &Session {
        &self.session
    }

    /// What is open, to be changed as a field or a move would.
    pub fn session_mut(&mut self) -> &mut Session {
        &mut self.session
    }

    /// How it is looked at.
    #[must_use]
    pub fn view_state(&self) -> &ViewState {
        &self.view_state
    }

    /// What this wall offers, as far as it is shown.
    #[must_use]
    pub fn strip(&self) -> &Strip {
        &self.strip
    }

    /// Whether there are changes that may not be lost unasked.
    fn has_to_ask(&self) -> bool {
        self.session.is_changed() && self.discarded.as_ref() != Some(&self.session.job)
    }

    /// What may not be lost unasked is kept for the case of a crash.
    fn hand_to_journal(&mut self) {
        let may_be_lost = !self.has_to_ask();
        let Some(journal) = &mut self.journal else { return };
        if may_be_lost {
            journal.clear();
        } else {
            journal.keep(&self.session.job, self.session.path.as_deref(), self.as_read.as_deref());
        }
    }

    /// Whether nobody is touching anything, so that what changed is a step of its own.
    fn is_quiet(&self, context: &Context) -> bool {
        let is_touched = context
            .input(|input| input.pointer.any_down() || input.any_touches() || !input.keys_down.is_empty());
        !is_touched
            && !self.canvas.is_held()
            && !self.panes.is_side_held()
            && !self.strip.is_held()
            && !self.panes.is_pulling()
            && !context.text_edit_focused()
    }

    /// Whether a hand or a key is on something that makes another plan of it.
    fn is_moving(&self, ui: &Ui) -> bool {
        let is_key_down = ui.input(|input| !input.keys_down.is_empty());
        is_key_down || self.canvas.is_held() || self.panes.is_side_held()
    }

    /// Takes places of what this wall offers in what is left of the frame.
    fn sweep_on(&mut self, ui: &Ui, is_quiet: bool) {
        if !self.view_state.is_swept || self.panes.is_whole() {
            return;
        }
        let is_held = self.is_moving(ui);
        let began = self.began;
        let has_time = || began.elapsed() < FRAME;
        self.strip.pull(ui, &mut self.session, is_held, is_quiet, has_time);
    }

    /// Shows the drawing between what was measured and what follows.
    fn drawing(&mut self, ui: &mut Ui) {
        let is_moving = self.is_moving(ui);
        let session = &mut self.session;
        Panel::top("bar").show(ui, |ui| bar::ui(ui, session, &mut self.queue));
        let on_shelf = self.my_shelf.shown(session);
        sides(ui, session, &mut self.view_state, &mut self.panes, on_shelf, &mut self.queue);
        let canvas = &mut self.canvas;
        let strip = &mut self.strip;
        let view_state = &mut self.view_state;
        let side_view = &mut self.panes.side_view;
        CentralPanel::default().frame(Frame::NONE).show(ui, |ui| {
            let plan = session.plan();
            let height = top_line::height(session, &plan, ui.available_width());
            Panel::top("top line")
                .exact_size(height)
                .show(ui, |ui| top_line::ui(ui, session, &plan, &mut self.queue));
            if let Some(side_view) = side_view {
                let (least, width) = (160.0, ui.available_width());
                Panel::right("side view")
                    .default_size((width * 0.45).max(least))
                    .size_range(least..=(width * 0.7).max(least))
                    .show(ui, |ui| side_view.ui(ui, session));
            }
            if view_state.is_swept {
                strip.ui(ui, session, view_state, is_moving);
            }
            canvas.ui(ui, session, view_state);
        });
    }
}

/// The work of a frame, sweep included.
const FRAME: Duration = Duration::from_millis(4);

/// Narrower than this a window has room for one side panel beside the drawing, in points (chosen: the drawing keeps
/// the most of it).
const NARROW: f32 = 1000.0;

/// Shows what was measured and what follows, on either side of the drawing; on a narrow window one of them at a time.
fn sides(
    ui: &mut Ui,
    session: &mut Session,
    view_state: &mut ViewState,
    panes: &mut Panes,
    on_shelf: &Shown,
    queue: &mut Queue,
) {
    let width = ui.available_width();
    let side = (width * 0.24).clamp(210.0, 330.0);
    let most = (width * 0.4).max(200.0);
    let plan = session.plan();
    if width < NARROW {
        Panel::left("one side").default_size(side.max(240.0)).size_range(180.0..=most).show(ui, |ui| {
            ui.horizontal(|ui| {
                for (shown, name) in [(Side::Measured, "Measured"), (Side::Follows, "What follows")] {
                    ui.selectable_value(&mut view_state.side, shown, name);
                }
            });
            match view_state.side {
                Side::Measured => panes.measured(ui, session, &plan, on_shelf, queue),
                Side::Follows => follows::ui(ui, session, view_state, &plan, queue),
            }
        });
        return;
    }
    Panel::left("measured")
        .default_size(side)
        .size_range(180.0..=most)
        .show(ui, |ui| panes.measured(ui, session, &plan, on_shelf, queue));
    let plan = session.plan();
    Panel::right("follows")
        .default_size(side)
        .size_range(180.0..=most)
        .show(ui, |ui| follows::ui(ui, session, view_state, &plan, queue));
}

impl eframe::App for App {
    fn logic(&mut self, context: &Context, _frame: &mut eframe::Frame) {
        self.began = Instant::now();
        if self.dialog.is_none() && !self.panes.is_modal() {
            command::from_keys(context, &mut self.queue);
        }
        self.take_dropped(context);
        for command in std::mem::take(&mut self.queue) {
            if !self.panes.takes(&command, &mut self.session) {
                self.perform(context, command);
            }
        }
        if let Some(trouble) = self.journal.as_mut().and_then(Journal::trouble) {
            self.waiting.push(Dialog::Message(trouble));
        }
        if self.dialog.is_none() {
            self.dialog = self.waiting.pop();
        }
        let is_closing = context.input(|input| input.viewport().close_requested());
        if is_closing && self.has_to_ask() {
            context.send_viewport_cmd(ViewportCommand::CancelClose);
            self.dialog = Some(Dialog::Unsaved { then: Command::Close });
        }
    }

    fn ui(&mut self, ui: &mut Ui, _frame: &mut eframe::Frame) {
        if std::mem::take(&mut self.is_begun) {
            // All that fields and lists keep from frame to frame goes by ids, and another job may have the same.
            ui.data_mut(egui::util::IdTypeMap::clear);
        }
        if let Some(field) = self.focus.take() {
            ui.memory_mut(|memory| memory.request_focus(field));
        }
        // Asked before the hand: what Escape lets go of is held no more after it.
        let closes = self.dialog.is_none()
            && !self.panes.is_modal()
            && !self.canvas.is_held()
            && !self.panes.is_side_held()
            && !ui.text_edit_focused()
            && !egui::Popup::is_any_open(ui);
        let session = &mut self.session;
        if !self.panes.is_pulling() && !self.panes.is_whole() {
            self.canvas.listen(ui, session, &mut self.view_state);
            if let Some(side_view) = &mut self.panes.side_view {
                side_view.listen(ui, session);
            }
            if self.view_state.is_swept {
                self.strip.listen(ui, session, &self.view_state);
            }
        }
        if !self.panes.whole(ui, session, &mut self.queue, closes) {
            self.drawing(ui);
            self.panes.working.ui(ui, &mut self.session, &mut self.view_state, closes);
        }
        self.panes.over(ui, &mut self.queue);
        if let Some(dialog) = self.dialog.take() {
            self.dialog = dialog.ui(ui, &mut self.queue);
        }
        // Nothing asked and nothing to be done: the save that something waits for is not to be.
        if self.dialog.is_none() && self.queue.is_empty() {
            self.after_save = None;
        }
        let is_quiet = self.is_quiet(ui);
        self.session.note(is_quiet);
        self.hand_to_journal();
        self.sweep_on(ui, is_quiet);
        if !self.queue.is_empty() {
            ui.request_repaint();
        }
    }

    fn on_exit(&mut self, _graphics: Option<&eframe::glow::Context>) {
        self.hand_to_journal();
    }
}

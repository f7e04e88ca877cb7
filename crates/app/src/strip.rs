//! What this wall offers, drawn beside the elevation on its own scale: sideways places under it, heights to its right.
//! A press goes to the place under it, and a drag from place to place.

mod rows;

use crate::canvas::{self, canvas_id};
use crate::moves::{self, Handle, HandleKind};
use crate::session::Session;
use crate::swept::Swept;
use crate::theme::TOUCH;
use crate::view_state::{Sweeping, ViewState};
use egui::accesskit::Role;
use egui::{Frame, Key, Label, Modifiers, Panel, Rect, RichText, Sense, Ui, WidgetInfo, pos2};
use rows::Rows;
use std::rc::Rc;
use std::time::Duration;
use strikeline_solver::geometry::{Axis, Point};
use strikeline_solver::job::Job;
use strikeline_solver::plan::Plan;
use strikeline_solver::sweep::Reach;
use strikeline_solver::words;

/// The height of the rows under the elevation, in points; beside it their width (chosen: five rows that a name fits
/// in).
const ROWS: f32 = 132.0;
/// In a low window they take no more than this share of the height (chosen: the elevation keeps the most).
const ROWS_SHARE: f32 = 0.25;
/// But never less than this (chosen: what five names need).
const ROWS_LEAST: f32 = 80.0;
/// Narrower than this what it is called is left out, in points (chosen: so that all buttons show).
const NARROW: f32 = 600.0;
/// The next frame while places are still wanted: not at once, so that a hand always comes first.
const NEXT_FRAME: Duration = Duration::from_millis(1);

/// What is kept of it from frame to frame.
#[derive(Debug, Default)]
pub struct Strip {
    swept: Option<Swept>,
    held: Option<Held>,
    is_pale: bool,
}

/// A hand on it: always worked from where it began, so that nothing adds up.
#[derive(Debug)]
struct Held {
    start_job: Job,
    start_plan: Rc<Plan>,
    handle: Handle,
    swept: Swept,
    /// The place that it is on.
    at: Option<usize>,
}

impl Strip {
    /// Whether a hand is on it just now.
    #[must_use]
    pub fn is_held(&self) -> bool {
        self.held.is_some()
    }

    /// Whether what it shows waits for a hand that makes another plan of it.
    #[must_use]
    pub fn is_pale(&self) -> bool {
        self.is_pale
    }

    /// What it shows; nothing before it is first asked for.
    #[must_use]
    pub fn swept(&self) -> Option<&Swept> {
        self.swept.as_ref()
    }

    /// What the hand does there: asked before anything is shown.
    pub fn listen(&mut self, ui: &Ui, session: &mut Session, view_state: &ViewState) {
        let (Some(response), Some(canvas)) = (ui.read_response(strip_id()), ui.read_response(canvas_id()))
        else {
            return;
        };
        let is_down = ui.input(|input| input.pointer.any_down());
        if self.held.is_some() && ui.input_mut(|input| input.consume_key(Modifiers::NONE, Key::Escape)) {
            if let Some(held) = self.held.take() {
                session.job = held.start_job;
            }
            return;
        }
        // A quick tap comes and goes within one frame: that is no drag to the toolkit.
        let is_quick = response.contains_pointer()
            && ui.input(|input| input.pointer.primary_pressed() && input.pointer.primary_released());
        if response.drag_started_by(egui::PointerButton::Primary) || is_quick {
            self.begin(session);
        }
        let pointer =
            response.interact_pointer_pos().or_else(|| ui.input(|input| input.pointer.latest_pos()));
        if let (Some(held), Some(pointer)) = (&mut self.held, pointer) {
            let window = canvas::shown(&held.start_plan, canvas.rect, view_state);
            held.follow(session, window.wall_from_pointer(pointer));
        }
        if !is_down {
            self.held = None;
        }
    }

    fn begin(&mut self, session: &mut Session) {
        let plan = session.plan();
        let Some(swept) = self.swept.as_ref().filter(|swept| !swept.line().is_empty()) else { return };
        let Some((_, piece)) = swept.piece() else { return };
        let handle = Handle { id: piece.id.clone(), kind: HandleKind::Piece };
        if !plan.pieces.iter().any(|one| one.id == handle.id) {
            return;
        }
        session.selected = Some(handle.id.whole());
        let start_job = session.job.clone();
        self.held = Some(Held { start_job, start_plan: plan, handle, swept: swept.clone(), at: None });
    }

    /// Shows it: a line of what it tells, and the rows.
    pub fn ui(&mut self, ui: &mut Ui, session: &mut Session, view_state: &mut ViewState, is_held: bool) {
        let plan = session.plan();
        let Some(piece) = session.meant_piece(&plan).map(|piece| piece.id.clone()) else {
            // Nothing is pulled for what is there no more.
            self.swept = None;
            self.is_pale = false;
            Panel::bottom("offers").show(ui, |ui| ui.label(words::sweep_nothing(None)));
            return;
        };
        let asked = view_state.sweeping;
        let is_current = self.swept.as_ref().is_some_and(|swept| swept.is_of(&plan, &piece, asked));
        let is_touched = is_held || self.is_held();
        if !is_current && !is_touched {
            self.swept = Some(Swept::begin(&session.job, &plan, &piece, asked));
        }
        self.is_pale =
            is_touched || !self.swept.as_ref().is_some_and(|swept| swept.is_of(&plan, &piece, asked));
        let Some(swept) = self.swept.as_ref() else { return };
        let axis = swept.axis();
        let empty = swept.places().is_empty();

        // The line of words and the rows take their room before the elevation does, and are drawn on its scale.
        let whole = ui.available_rect_before_wrap();
        let head = 2.0 * TOUCH + 6.0;
        let high = ROWS.min((whole.height() * ROWS_SHARE).max(ROWS_LEAST));
        let (right, bottom) = match axis {
            _ if empty => (0.0, head),
            Axis::Across => (0.0, head + high),
            Axis::Upright => (ROWS, head),
        };
        let canvas = Rect::from_min_max(whole.min, pos2(whole.max.x - right, whole.max.y - bottom));
        let window = canvas::shown(&plan, canvas, view_state);
        let now = plan.pieces.iter().find(|one| one.id == piece).map(|one| one.outline.centre());
        let rows = Rows { swept, window: &window, now, is_pale: self.is_pale };
        let mut pointed = None;
        let paper = Frame::NONE.fill(ui.visuals().panel_fill);
        Panel::bottom("offers").frame(paper).exact_size(bottom).show(ui, |ui| {
            if axis == Axis::Across && !empty {
                pointed = shown(ui, &rows, high);
            }
            let margin = egui::Margin::symmetric(8, 0);
            Frame::NONE.inner_margin(margin).show(ui, |ui| {
                head_ui(ui, &rows, &mut view_state.sweeping, &mut view_state.is_swept);
                let told = told(&rows, pointed);
                ui.add(Label::new(&told).truncate()).on_hover_text(told);
            });
        });
        if axis == Axis::Upright && !empty {
            Panel::right("heights")
                .frame(Frame::NONE)
                .exact_size(right)
                .show(ui, |ui| shown(ui, &rows, high));
        }
    }

    /// Takes places while there is time; at least one where nobody touches anything, so that a slow machine gets there
    /// too. Nothing while a hand is on what would make another sweep of it.
    pub fn pull(
        &mut self,
        ui: &Ui,
        session: &mut Session,
        is_held: bool,
        is_quiet: bool,
        has_time: impl Fn() -> bool,
    ) {
        if is_held || self.is_held() {
            return;
        }
        let plan = session.plan();
        let piece = session.meant_piece(&plan).map(|piece| piece.id.clone()).unwrap_or_default();
        let Some(swept) = &mut self.swept else { return };
        if !swept.is_of(&plan, &piece, swept.asked()) {
            // Another one is begun as soon as it is shown.
            ui.request_repaint_after(NEXT_FRAME);
            return;
        }
        let mut may = is_quiet || has_time();
        while may && swept.pull() {
            may = has_time();
        }
        if !swept.is_all() {
            ui.request_repaint_after(NEXT_FRAME);
        }
    }
}

impl Held {
    /// Goes to the place that is nearest to where the pointer is on the wall.
    fn follow(&mut self, session: &mut Session, pointer: Point) {
        let Some(index) = self.swept.nearest(pointer) else { return };
        if self.at == Some(index) {
            return;
        }
        self.at = Some(index);
        let is_back = self.swept.present() == Some(index);
        let place = self.swept.line().get(index).copied();
        session.job = match place.filter(|_| !is_back || !self.is_of_start()) {
            Some(place) => moves::moved(&self.start_job, &self.start_plan, &self.handle, place),
            None => self.start_job.clone(),
        };
    }

    /// Whether the piece was at the sweep's present place when the hand came.
    fn is_of_start(&self) -> bool {
        let now = self.start_plan.pieces.iter().find(|piece| piece.id == self.handle.id);
        let was = self.swept.present().and_then(|present| self.swept.line().get(present));
        now.map(|piece| piece.outline.centre()) == was.copied()
    }
}

/// The buttons over the line of words.
fn head_ui(ui: &mut Ui, rows: &Rows<'_>, sweeping: &mut Sweeping, is_open: &mut bool) {
    ui.horizontal(|ui| {
        if ui.available_width() >= NARROW {
            ui.strong(words::SWEEP);
        }
        for (axis, name) in [(Axis::Across, "Sideways"), (Axis::Upright, "Heights")] {
            ui.selectable_value(&mut sweeping.axis, axis, name);
        }
        ui.separator();
        for (reach, name) in [(Reach::Bay, "One bay"), (Reach::Wall, "To the ends")] {
            ui.selectable_value(&mut sweeping.reach, reach, name);
        }
        if ui.button("Close").clicked() {
            *is_open = false;
        }
        let (known, all) = (rows.swept.known(), rows.swept.places().len());
        if known < all {
            ui.add(Label::new(RichText::new(words::sweep_known(known, all)).weak()).truncate());
        }
    });
}

/// The line of words: what the place that is pointed at gives, else the best.
fn told(rows: &Rows<'_>, pointed: Option<usize>) -> String {
    let swept = rows.swept;
    let Some((plan, piece)) = swept.piece() else { return words::sweep_nothing(None) };
    if swept.places().is_empty() {
        return words::sweep_nothing(Some(piece));
    }
    let place = pointed.and_then(|index| swept.places().get(index)).and_then(Option::as_ref);
    match place {
        Some(place) => words::sweep_place(plan, piece, place, swept.axis()),
        None => words::sweep_best(plan, piece, swept.best(), swept.axis(), swept.is_all()),
    }
}

/// Shows the rows, so high where they stand under the elevation; the place that is pointed at.
fn shown(ui: &mut Ui, rows: &Rows<'_>, high: f32) -> Option<usize> {
    let whole = ui.available_rect_before_wrap();
    let rect = match rows.swept.axis() {
        Axis::Across => Rect::from_min_size(whole.min, egui::vec2(whole.width(), high)),
        Axis::Upright => whole,
    };
    ui.scope_builder(egui::UiBuilder::new().max_rect(rect), |ui| rows.ui(ui, rect));
    ui.advance_cursor_after_rect(rect);
    let response = ui.interact(rect, strip_id(), Sense::drag());
    let value = told(rows, rows.now.and_then(|now| rows.swept.nearest(now)));
    response.widget_info(|| WidgetInfo {
        current_text_value: Some(value.clone()),
        ..WidgetInfo::labeled(Role::Slider, true, words::SWEEP)
    });
    let pointer = response.hover_pos().or_else(|| response.interact_pointer_pos())?;
    ui.set_cursor_icon(match rows.swept.axis() {
        Axis::Across => egui::CursorIcon::ResizeHorizontal,
        Axis::Upright => egui::CursorIcon::ResizeVertical,
    });
    rows.swept.nearest(rows.window.wall_from_pointer(pointer))
}

/// The id of the rows in the window.
#[must_use]
pub fn strip_id() -> egui::Id {
    egui::Id::unique("what this wall offers")
}

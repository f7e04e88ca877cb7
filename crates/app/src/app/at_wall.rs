//! At the wall: one mark at a time over the whole window, to be read at arm's length and worked with gloves on.

mod answers;
mod figures;
mod follow;
mod sizes;
mod went;

use crate::canvas::paint::paint;
use crate::session::Session;
use crate::theme;
use crate::thumbs::thumb;
use crate::view_state::{View, Window};
use crate::widgets::unbroken::unbroken;
use answers::{Answers, Wanted};
use egui::{Button, Frame, Key, Label, Modifiers, Panel, RichText, ScrollArea, Sense, Ui, vec2};
use sizes::{Measured, Sizes, points};
pub(super) use sizes::{make_true, screen};
use std::path::Path;
use std::rc::Rc;
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::font::Weight;
use strikeline_solver::geometry::Point;
use strikeline_solver::plan::mark::{Mark, MarkWhat, Stage};
use strikeline_solver::plan::{Next, Plan};
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::tolerance::PROBED_BESIDE_MM;
use strikeline_solver::words;

/// The height of what is tapped here, in millimetres: a thumb in a glove (chosen).
pub(super) const GLOVE_MM: f32 = 15.0;

/// The height of a picture beside its mark, in points (chosen: seen what it is of).
const PICTURE: f32 = 110.0;

/// The width of the two steps where they stand beside the path, in points (chosen: two thumbs).
const STEPS_BESIDE: f32 = 208.0;

/// A window with less height than this, in points, has its steps beside the path and its seldom answers folded away
/// (chosen: a figure and its words keep half of it).
const LOW: f32 = 700.0;

/// Whether the window is a low one.
fn is_low(ui: &Ui) -> bool {
    ui.ctx().content_rect().height() < LOW
}

/// What a hand asked for.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Asked {
    /// To stay.
    Nothing,
    /// To go back to the drawing.
    Leave,
    /// To read the hits of a sweep in one pull.
    OnePull,
    /// To add a picture of this mark.
    Picture(Subject),
    /// To take a picture away.
    TakeAway(Id),
    /// To keep how large a pixel of this screen is, in millimetres.
    KeepSize(f32),
}

/// The mark that is shown.
#[derive(Clone, Debug, Default)]
pub(super) struct AtWall {
    mark: Option<Subject>,
    /// Where among all it was shown last.
    at: usize,
    answers: Answers,
    /// The bar that a tape is laid on, while it is open.
    sizes: Option<Sizes>,
}

impl AtWall {
    /// The view, on the selected mark, else on the one to be taken next.
    pub(super) fn begin(session: &mut Session) -> Self {
        let plan = session.plan();
        let selected = session.selected.as_ref().filter(|id| plan.marks.iter().any(|mark| mark.id == **id));
        let next = match &plan.next {
            Some(Next::Take(mark)) => Some(mark.clone()),
            _ => plan.marks.iter().find(|mark| !mark.is_finished()).map(|mark| mark.id.clone()),
        };
        let mark = selected.cloned().or(next);
        Self { mark, ..Self::default() }
    }

    /// Shows the mark and takes what the wall answered.
    pub(super) fn ui(&mut self, ui: &mut Ui, session: &mut Session) -> Asked {
        let is_touched = ui.input(|input| input.pointer.any_down() || input.any_touches());
        let plan = with_next_probe(session, !is_touched);
        let mut asked = Asked::Nothing;
        let Some(index) = self.place(&plan) else {
            ui.centered_and_justified(|ui| {
                if ui.button("Nothing is to be marked here. Back to the drawing").clicked() {
                    asked = Asked::Leave;
                }
            });
            return asked;
        };
        Panel::top("stages").show(ui, |ui| {
            if self.path(ui, &plan, index) {
                asked = Asked::Leave;
            }
        });
        if let Some(sizes) = &mut self.sizes {
            let bare = plan.style.graduation.unit();
            let measured = egui::CentralPanel::default().show(ui, |ui| sizes.ui(ui, bare)).inner;
            match measured {
                Measured::Open => {}
                Measured::Left => self.sizes = None,
                Measured::MmPerPixel(mm) => {
                    self.sizes = None;
                    asked = Asked::KeepSize(mm);
                }
            }
            return asked;
        }
        let Some(mark) = plan.marks.get(index) else { return asked };
        Panel::bottom("answers").show(ui, |ui| {
            ui.add_space(6.0);
            match self.answers.ui(ui, session, &plan, mark) {
                Wanted::Nothing => {}
                Wanted::OnePull => asked = Asked::OnePull,
                Wanted::Picture => asked = Asked::Picture(mark.id.clone()),
            }
            if !is_low(ui) {
                ui.add_space(4.0);
                self.steps(ui, &plan, index, ui.available_width());
            }
            ui.add_space(6.0);
        });
        let room = ui.available_size();
        let frame = Frame::new().fill(theme::desk(ui.theme()));
        let (panel, size) = if room.x > room.y {
            (Panel::right("where beside"), room.x * 0.36)
        } else {
            (Panel::bottom("where below"), room.y * 0.4)
        };
        panel.exact_size(size).resizable(false).frame(frame).show(ui, |ui| {
            self.small_elevation(ui, session, &plan, mark);
        });
        let is_answered = self.answers.is_answered();
        let central = egui::CentralPanel::default();
        let (tapped, taken) = central.show(ui, |ui| told(ui, session, &plan, mark, is_answered)).inner;
        if let Some(picture) = taken {
            asked = Asked::TakeAway(picture);
        }
        if let Some(to) = tapped {
            self.go(&plan, plan.marks.iter().position(|mark| mark.id == to));
        }
        if self.keys(ui, &plan, index) {
            asked = Asked::Leave;
        }
        session.selected = self.mark.clone();
        asked
    }

    /// The place of the shown mark among all; where it is no more, that of the one which took its place.
    fn place(&mut self, plan: &Plan) -> Option<usize> {
        let place = self.mark.as_ref().and_then(|id| plan.marks.iter().position(|mark| mark.id == *id));
        let last = plan.marks.len().checked_sub(1)?;
        self.at = place.unwrap_or(self.at.min(last));
        self.mark = plan.marks.get(self.at).map(|mark| mark.id.clone());
        Some(self.at)
    }

    fn go(&mut self, plan: &Plan, to: Option<usize>) {
        if let Some(mark) = to.and_then(|to| plan.marks.get(to)) {
            self.mark = Some(mark.id.clone());
            self.answers = Answers::default();
        }
    }

    /// The stages as a path, with where one is. Whether the view is to be left.
    fn path(&mut self, ui: &mut Ui, plan: &Plan, index: usize) -> bool {
        if !is_low(ui) {
            return self.stages(ui, plan, index);
        }
        // Where there is little height the steps stand beside the path.
        let mut leaves = false;
        ui.horizontal(|ui| {
            self.steps(ui, plan, index, STEPS_BESIDE);
            leaves = ui.vertical(|ui| self.stages(ui, plan, index)).inner;
        });
        leaves
    }

    fn stages(&mut self, ui: &mut Ui, plan: &Plan, index: usize) -> bool {
        let mut leaves = false;
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().interact_size.y = if is_low(ui) { 26.0 } else { theme::TOUCH + 8.0 };
            leaves = ui.button("Back to the drawing").clicked();
            if ui.button("True sizes").clicked() {
                self.sizes = Some(Sizes::default());
            }
            ui.separator();
            let here = plan.marks.get(index).map(|mark| mark.stage);
            let mut stages: Vec<Stage> = plan.marks.iter().map(|mark| mark.stage).collect();
            stages.dedup();
            for stage in stages {
                let all = || plan.marks.iter().filter(|mark| mark.stage == stage);
                let done = all().filter(|mark| mark.is_finished()).count();
                let text = format!("{} {done}/{}", words::stage(stage), all().count());
                if ui.selectable_label(here == Some(stage), text).clicked() {
                    self.go(plan, plan.marks.iter().position(|mark| mark.stage == stage));
                }
            }
        });
        leaves
    }

    fn steps(&mut self, ui: &mut Ui, plan: &Plan, index: usize, wide: f32) {
        let last = plan.marks.len().saturating_sub(1);
        let half = vec2((wide - 8.0) / 2.0, points(ui, GLOVE_MM));
        ui.horizontal(|ui| {
            let big = |text: &str| Button::new(RichText::new(text).size(20.0)).min_size(half);
            if ui.add_enabled(index > 0, big("Back")).clicked() {
                self.go(plan, index.checked_sub(1));
            }
            if ui.add_enabled(index < last, big("Next")).clicked() {
                self.go(plan, Some(index + 1));
            }
        });
    }

    /// The whole wall, as small as there is room, with the mark lit; a close look while it is told where it went.
    fn small_elevation(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan, mark: &Mark) {
        let went = self.answers.went();
        let sense = if went.is_some() { Sense::drag() } else { Sense::hover() };
        let (canvas, response) = ui.allocate_exact_size(ui.available_size(), sense);
        let window = match went {
            Some(went) => {
                let window = went.view(canvas);
                went.drag(&response, session, plan, window.view);
                window
            }
            None => Window { canvas, view: View::fit(plan.survey.outline, canvas.size()) },
        };
        let mut look = window.look();
        look.selected = Some(mark.id.clone());
        let scene = elevation(&session.job, plan, &look);
        paint(&ui.painter_at(canvas), canvas.min, ui.theme(), &scene);
    }

    /// Arrows and the space bar go on and back, where no button has the focus. Whether Escape leaves the view.
    fn keys(&mut self, ui: &Ui, plan: &Plan, index: usize) -> bool {
        if ui.memory(|memory| memory.focused().is_some()) {
            return false;
        }
        let pressed = |key| ui.input_mut(|input| input.consume_key(Modifiers::NONE, key));
        if pressed(Key::ArrowRight) || pressed(Key::Space) {
            self.go(plan, Some(index + 1));
        } else if pressed(Key::ArrowLeft) {
            self.go(plan, index.checked_sub(1));
        }
        pressed(Key::Escape)
    }
}

/// The plan with the next probe among its marks, after those of the holes' own; as it is where that says stop, or asks
/// for one of them. Not asked anew while a finger is down.
fn with_next_probe(session: &mut Session, is_asked: bool) -> Rc<Plan> {
    let plan = session.plan();
    let Some(probe) = session.next_probe(is_asked) else { return plan };
    let is_probe = |mark: &Mark| matches!(mark.what, MarkWhat::Probe { .. });
    let near = |mark: &Mark| {
        let off = |at: Point| (at.x - probe.place.x).mm().abs().max((at.y - probe.place.y).mm().abs());
        mark.place.is_some_and(|at| off(at) <= PROBED_BESIDE_MM)
    };
    if plan.marks.iter().any(|mark| is_probe(mark) && !mark.is_finished() && near(mark)) {
        return plan;
    }
    let last = plan.marks.iter().rposition(is_probe);
    let at =
        last.map(|last| last + 1).or_else(|| plan.marks.iter().position(|mark| mark.stage > Stage::Level));
    let Some(at) = at else { return plan };
    let mut with = (*plan).clone();
    with.marks.splice(at..at, probe.helps.iter().chain([&probe.mark]).cloned());
    Rc::new(with)
}

/// What follows from the last answer, then the mark's name, its readings in large figures, and how they are taken. The
/// mark that was tapped in the list.
fn told(
    ui: &mut Ui,
    session: &Session,
    plan: &Plan,
    mark: &Mark,
    is_answered: bool,
) -> (Option<Subject>, Option<Id>) {
    let area = ScrollArea::vertical().id_salt(("told", mark.id.to_string())).auto_shrink(false);
    area.show(ui, |ui| {
        ui.add_space(4.0);
        let tapped = if is_answered { follow::follow(ui, plan) } else { None };
        let name = RichText::new(words::mark_name(plan, mark)).font(theme::font(26.0, Weight::Semibold));
        ui.add(Label::new(name).wrap());
        let taken = pictures(ui, session, plan, mark);
        ui.add_space(8.0);
        figures::figures(ui, plan, mark);
        ui.add(Label::new(RichText::new(unbroken(&words::mark(plan, mark))).size(19.0)).wrap());
        (tapped, taken)
    })
    .inner
}

/// The pictures of a mark, or of what was done there, each with a way to take it away. The one that was.
fn pictures(ui: &mut Ui, session: &Session, plan: &Plan, mark: &Mark) -> Option<Id> {
    let fact = plan.facts.iter().find(|fact| fact.is_own && fact.mark == mark.id).map(|fact| fact.id.whole());
    let is_here = |of: &Option<Subject>| of.as_ref() == Some(&mark.id) || of.is_some() && *of == fact;
    let folder = session.path.as_deref().and_then(Path::parent)?;
    let mut taken = None;
    ui.horizontal_wrapped(|ui| {
        for picture in session.job.pictures.iter().filter(|picture| is_here(&picture.of)) {
            thumb(ui, &folder.join(&picture.file), &picture.file, PICTURE);
            let away = Button::new(RichText::new("Take away").size(18.0)).min_size(vec2(0.0, theme::TOUCH));
            if ui.add(away).clicked() {
                taken = Some(picture.id.clone());
            }
        }
    });
    taken
}

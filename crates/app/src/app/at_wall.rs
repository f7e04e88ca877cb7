//! At the wall: one mark at a time over the whole window, to be read at arm's length and worked with gloves on.

mod answers;
mod figures;

use crate::canvas::paint::paint;
use crate::moves;
use crate::session::Session;
use crate::theme;
use crate::view_state::{View, Window};
use crate::widgets::unbroken::unbroken;
use answers::Answers;
use egui::{Button, Frame, Key, Label, Modifiers, Panel, RichText, ScrollArea, Sense, Ui, vec2};
use strikeline_drawing::elevation::elevation;
use strikeline_drawing::font::Weight;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, Stage};
use strikeline_solver::subject::Subject;
use strikeline_solver::words;

/// The height of what is tapped here, in points: a thumb in a glove (chosen, 15 mm at 96 points to the inch).
pub(super) const GLOVE: f32 = 57.0;

/// What a hand asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Asked {
    /// To stay.
    Nothing,
    /// To go back to the drawing.
    Leave,
    /// To read the hits of a sweep in one pull.
    OnePull,
}

/// The mark that is shown.
#[derive(Clone, Debug, Default)]
pub(super) struct AtWall {
    mark: Option<Subject>,
    /// Where among all it was shown last.
    at: usize,
    answers: Answers,
}

impl AtWall {
    /// The view, on the selected mark, else on the one after the last that is done.
    pub(super) fn begin(session: &mut Session) -> Self {
        let plan = session.plan();
        let selected = session.selected.as_ref().filter(|id| plan.marks.iter().any(|mark| mark.id == **id));
        let last =
            plan.marks.iter().rposition(|mark| moves::fact_of(&session.job, &plan, &mark.id).is_some());
        let next = plan.marks.get(last.map_or(0, |last| last + 1));
        let mark = selected.cloned().or_else(|| next.map(|mark| mark.id.clone()));
        Self { mark, at: 0, answers: Answers::default() }
    }

    /// Shows the mark and takes what the wall answered.
    pub(super) fn ui(&mut self, ui: &mut Ui, session: &mut Session) -> Asked {
        let plan = session.plan();
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
            if self.path(ui, session, &plan, index) {
                asked = Asked::Leave;
            }
        });
        let Some(mark) = plan.marks.get(index) else { return asked };
        Panel::bottom("answers").show(ui, |ui| {
            ui.add_space(6.0);
            if self.answers.ui(ui, session, &plan, mark) {
                asked = Asked::OnePull;
            }
            ui.add_space(4.0);
            self.steps(ui, &plan, index);
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
            small_elevation(ui, session, &plan, mark);
        });
        egui::CentralPanel::default().show(ui, |ui| told(ui, &plan, mark));
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
    fn path(&mut self, ui: &mut Ui, session: &Session, plan: &Plan, index: usize) -> bool {
        let mut leaves = false;
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().interact_size.y = theme::TOUCH + 8.0;
            leaves = ui.button("Back to the drawing").clicked();
            ui.separator();
            let here = plan.marks.get(index).map(|mark| mark.stage);
            let mut stages: Vec<Stage> = plan.marks.iter().map(|mark| mark.stage).collect();
            stages.dedup();
            for stage in stages {
                let all = || plan.marks.iter().filter(|mark| mark.stage == stage);
                let done =
                    all().filter(|mark| moves::fact_of(&session.job, plan, &mark.id).is_some()).count();
                let strikes = all().filter(|mark| !moves::doable(mark).is_empty()).count();
                let name = words::stage(stage);
                let text = if strikes > 0 { format!("{name} {done}/{strikes}") } else { name.to_owned() };
                if ui.selectable_label(here == Some(stage), text).clicked() {
                    self.go(plan, plan.marks.iter().position(|mark| mark.stage == stage));
                }
            }
        });
        leaves
    }

    fn steps(&mut self, ui: &mut Ui, plan: &Plan, index: usize) {
        let last = plan.marks.len().saturating_sub(1);
        let half = vec2((ui.available_width() - 8.0) / 2.0, GLOVE);
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

/// The mark's name, its readings in large figures, and how they are taken.
fn told(ui: &mut Ui, plan: &Plan, mark: &Mark) {
    ScrollArea::vertical().id_salt(("told", mark.id.to_string())).auto_shrink(false).show(ui, |ui| {
        ui.add_space(4.0);
        let name = RichText::new(words::mark_name(plan, mark)).font(theme::font(26.0, Weight::Semibold));
        ui.add(Label::new(name).wrap());
        ui.add_space(8.0);
        figures::figures(ui, plan, mark);
        ui.add(Label::new(RichText::new(unbroken(&words::mark(plan, mark))).size(19.0)).wrap());
    });
}

/// The whole wall, as small as there is room, with the mark lit.
fn small_elevation(ui: &mut Ui, session: &Session, plan: &Plan, mark: &Mark) {
    let (canvas, _) = ui.allocate_exact_size(ui.available_size(), Sense::hover());
    let mut look = Window { canvas, view: View::fit(plan.survey.outline, canvas.size()) }.look();
    look.selected = Some(mark.id.clone());
    let scene = elevation(&session.job, plan, &look);
    paint(&ui.painter_at(canvas), canvas.min, ui.theme(), &scene);
}

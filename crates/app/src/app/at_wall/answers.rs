//! What was done at a mark, or what the wall answered there: a tap each, and each with its consequence in the job.

use super::sizes::points;
use super::went::Went;
use super::{GLOVE_MM, is_low};
use crate::moves;
use crate::session::Session;
use crate::widgets::unbroken::unbroken;
use egui::{Button, Id, Label, RichText, TextEdit, Ui, vec2};
use strikeline_solver::geometry::Point;
use strikeline_solver::job::fact::FactState;
use strikeline_solver::job::framing::WallFraming;
use strikeline_solver::job::hidden::HiddenKind;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkState, MarkWhat};
use strikeline_solver::words;

/// What a probe or a look can meet, and what it is called.
const MET: [(Met, &str); 9] = [
    (Met::Hit(HitKind::Wood), "Wood"),
    (Met::Hit(HitKind::Air), "Air"),
    (Met::Hit(HitKind::ShallowWood), "Shallow wood"),
    (Met::Hit(HitKind::Metal), "Metal"),
    (Met::Hidden(HiddenKind::Cable), "Cable seen"),
    (Met::Hidden(HiddenKind::Pipe), "Pipe seen"),
    (Met::Hidden(HiddenKind::FireBlock), "Block"),
    (Met::BlockBelow, "Block below"),
    (Met::Insulation, "Insulation"),
];

/// The longest word on something else, in characters (chosen: a line).
const LONGEST: usize = 200;

#[derive(Clone, Copy)]
enum Met {
    Hit(HitKind),
    Hidden(HiddenKind),
    /// A fire block somewhere between the entry and the exit: where the tape stops.
    BlockBelow,
    Insulation,
}

/// What a hand wants of the window beside an answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Wanted {
    /// Nothing.
    Nothing,
    /// The hits of a sweep read in one pull.
    OnePull,
    /// A picture of the mark.
    Picture,
}

/// What was answered at the mark that is shown.
#[derive(Clone, Debug, Default)]
pub(super) struct Answers {
    /// What the last answer did, in words.
    told: Option<String>,
    /// Whether something was answered since the mark is shown.
    is_answered: bool,
    /// The close look at where the mark went, while it is open.
    went: Option<Went>,
    /// Whether the seldom answers are unfolded in a low window.
    is_unfolded: bool,
    /// What else was found, while it is being written.
    else_found: Option<String>,
}

impl Answers {
    /// Whether something was answered since the mark is shown: then it is told what follows.
    pub(super) fn is_answered(&self) -> bool {
        self.is_answered
    }

    /// The close look at where the mark went, while it is open.
    pub(super) fn went(&mut self) -> Option<&mut Went> {
        self.went.as_mut()
    }

    /// Shows them; what they want of the window.
    pub(super) fn ui(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan, mark: &Mark) -> Wanted {
        let mut wanted = Wanted::Nothing;
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing = vec2(8.0, 6.0);
            let is_sweep = matches!(mark.what, MarkWhat::Sweep { .. });
            if is_sweep && big(ui, "Read the hits in one pull", true, false) {
                wanted = Wanted::OnePull;
            }
            self.met(ui, session, plan, mark);
            self.done(ui, session, plan, mark);
            let folds = is_low(ui);
            if folds && big(ui, "More", true, self.is_unfolded) {
                self.is_unfolded = !self.is_unfolded;
            }
            if folds && !self.is_unfolded {
                return;
            }
            self.went_button(ui, session, plan, mark);
            if mark.place.is_some() && big(ui, "Something else", true, self.else_found.is_some()) {
                self.else_found = if self.else_found.is_some() { None } else { Some(String::new()) };
            }
            if big(ui, "Picture", true, false) {
                wanted = Wanted::Picture;
            }
        });
        if let Some(went) = &self.went {
            went.fields(ui, session, plan);
        }
        self.something_else(ui, session, plan, mark);
        if let Some(told) = &self.told {
            ui.add(Label::new(RichText::new(unbroken(told)).size(19.0)).wrap());
        }
        wanted
    }

    fn answered(&mut self, told: Option<&str>) {
        self.is_answered = true;
        self.told = told.map(str::to_owned);
    }

    /// What was found in the wall, and what of the cables' way that changes.
    fn found(&mut self, session: &mut Session, before: &Plan, told: &str) {
        let after = session.plan();
        let changes = words::cable_changes(before, &after);
        let told = std::iter::once(told.to_owned()).chain(changes).collect::<Vec<_>>().join(" ");
        self.answered(Some(&told));
    }

    fn met(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan, mark: &Mark) {
        let is_probe = matches!(mark.what, MarkWhat::Probe { .. });
        let is_opening = matches!(mark.what, MarkWhat::Entry | MarkWhat::Exit | MarkWhat::Passage);
        let is_fishing = mark.what == MarkWhat::Feed;
        if !is_probe && !is_opening && !is_fishing && mark.what != MarkWhat::Look {
            return;
        }
        let below = halfway_down(plan, mark);
        let Some(place) = mark.place.or(below) else { return };
        let wall = session.job.wall(&plan.wall);
        let framing = wall.and_then(|wall| wall.framing.as_ref());
        let is_steel = matches!(framing, Some(WallFraming::Steel(_)));
        let magnet = is_steel.then_some((Met::Hit(HitKind::Magnet), "Magnet holds"));
        for (met, name) in MET.into_iter().chain(magnet) {
            // A look goes into a bay: it meets no stud. Where the cables are fished nothing is seen but that they stop.
            let is_asked = match met {
                Met::Hit(_) => is_probe,
                Met::Hidden(_) | Met::Insulation => !is_fishing,
                Met::BlockBelow => below.is_some() && !is_probe,
            };
            if !is_asked || !big(ui, name, true, false) {
                continue;
            }
            match met {
                Met::Hit(kind) => {
                    session.job = moves::probed(&session.job, plan, place, kind);
                    self.answered(Some("Noted as a hit: the studs follow."));
                }
                Met::Hidden(kind) => {
                    session.job = moves::seen(&session.job, plan, place, kind);
                    self.found(session, plan, "Noted in the wall at this place: the plan keeps clear of it.");
                }
                Met::BlockBelow => {
                    let below = below.unwrap_or(place);
                    session.job = moves::supposed(&session.job, plan, below, HiddenKind::FireBlock);
                    self.found(
                        session,
                        plan,
                        "Supposed halfway down: measure how high it is, and type that in with how it is known.",
                    );
                }
                Met::Insulation => {
                    let wall = session.job.walls.iter_mut().find(|wall| wall.id == plan.wall);
                    wall.into_iter().for_each(|wall| wall.insulated = Some(true));
                    self.answered(Some("Noted: the wall is insulated."));
                }
            }
        }
    }

    /// What was done: a tap notes it, a tap on what is noted takes it back.
    fn done(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan, mark: &Mark) {
        let held = moves::fact_of(&session.job, plan, &mark.id).map(|fact| fact.state);
        for state in moves::doable(mark) {
            let is_held = held == Some(*state);
            if !big(ui, name(*state), !mark.assumed || is_held, is_held) {
                continue;
            }
            self.went = None;
            if is_held {
                session.job = moves::without_fact(&session.job, plan, &mark.id);
                self.answered(None);
            } else {
                session.job = moves::with_fact(&session.job, plan, mark, *state);
                let is_stripped = *state == FactState::Stripped;
                self.answered(
                    is_stripped.then_some("Noted: no fastener counts there; the plan takes other holes."),
                );
            }
        }
    }

    /// Opens and closes the close look at where the mark went.
    fn went_button(&mut self, ui: &mut Ui, session: &Session, plan: &Plan, mark: &Mark) {
        let is_held = moves::fact_of(&session.job, plan, &mark.id).is_some();
        let stands = !matches!(mark.state, MarkState::ToDo | MarkState::Done);
        if stands && is_held && big(ui, "It went elsewhere", true, self.went.is_some()) {
            self.went = if self.went.is_some() { None } else { Went::at(mark) };
            self.is_answered = true;
        }
    }

    /// What else was found, in the user's own words: something in the wall at this place.
    fn something_else(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan, mark: &Mark) {
        let (Some(text), Some(place)) = (&mut self.else_found, mark.place) else { return };
        let question = "What is there? The plan keeps clear of it.";
        let question = ui.add(Label::new(RichText::new(question).size(19.0)).wrap());
        let mut is_noted = false;
        ui.horizontal(|ui| {
            let height = points(ui, GLOVE_MM);
            let edit = TextEdit::singleline(text)
                .id(else_id())
                .char_limit(LONGEST)
                .font(egui::FontId::proportional(20.0))
                .min_size(vec2(0.0, height))
                .align(egui::Align2::LEFT_CENTER)
                .desired_width((ui.available_width() - 150.0).max(120.0));
            ui.add(edit).labelled_by(question.id);
            is_noted = big(ui, "Note it", !text.trim().is_empty(), false);
        });
        if is_noted {
            session.job = moves::seen_otherwise(&session.job, plan, place, text);
            self.else_found = None;
            self.found(session, plan, "Noted in the wall at this place: the plan keeps clear of it.");
        }
    }
}

/// Halfway down from the entry of a mark's cables to their exit; `None` of cables that run on the face, or of none.
fn halfway_down(plan: &Plan, mark: &Mark) -> Option<Point> {
    let piece = plan.pieces.iter().find(|piece| piece.id == mark.piece)?;
    let way = piece.cable.as_ref()?.way.as_ref()?;
    let (entry, exit) = (way.entry?.centre(), way.exit.centre());
    Some(Point::new(entry.x, (entry.y + exit.y) / 2.0))
}

/// The id of the field for something else in the window.
#[must_use]
pub(super) fn else_id() -> Id {
    Id::unique("something else")
}

fn name(state: FactState) -> &'static str {
    match state {
        FactState::Done => "Done",
        FactState::Struck => "Struck",
        FactState::Drilled => "Drilled",
        FactState::Cut => "Cut",
        FactState::Stripped => "Stripped: it spins",
    }
}

fn big(ui: &mut Ui, text: &str, is_enabled: bool, is_selected: bool) -> bool {
    let height = points(ui, GLOVE_MM);
    let button = Button::new(RichText::new(text).size(20.0)).selected(is_selected);
    ui.add_enabled(is_enabled, button.min_size(vec2(110.0, height))).clicked()
}

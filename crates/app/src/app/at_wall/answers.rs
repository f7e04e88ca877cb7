//! What was done at a mark, or what the wall answered there: a tap each, and each with its consequence in the job.

use super::GLOVE;
use crate::moves;
use crate::session::Session;
use egui::{Button, RichText, Ui, vec2};
use strikeline_solver::job::fact::FactState;
use strikeline_solver::job::hidden::HiddenKind;
use strikeline_solver::job::hit::HitKind;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::{Mark, MarkWhat};

/// What a probe or a look can meet, and what it is called.
const MET: [(Met, &str); 8] = [
    (Met::Hit(HitKind::Wood), "Wood"),
    (Met::Hit(HitKind::Air), "Air"),
    (Met::Hit(HitKind::ShallowWood), "Shallow wood"),
    (Met::Hit(HitKind::Metal), "Metal"),
    (Met::Hidden(HiddenKind::Cable), "Cable seen"),
    (Met::Hidden(HiddenKind::Pipe), "Pipe seen"),
    (Met::Hidden(HiddenKind::FireBlock), "Block"),
    (Met::Insulation, "Insulation"),
];

#[derive(Clone, Copy)]
enum Met {
    Hit(HitKind),
    Hidden(HiddenKind),
    Insulation,
}

/// What was answered at the mark that is shown.
#[derive(Clone, Debug, Default)]
pub(super) struct Answers {
    /// What the last answer did, in words.
    told: Option<&'static str>,
}

impl Answers {
    /// Shows them. Whether the hits of a sweep are to be read in one pull.
    pub(super) fn ui(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan, mark: &Mark) -> bool {
        let mut reads = false;
        ui.horizontal_wrapped(|ui| {
            ui.spacing_mut().item_spacing = vec2(8.0, 6.0);
            match mark.what {
                MarkWhat::Sweep { .. } => reads = ui.add(big("Read the hits in one pull", false)).clicked(),
                MarkWhat::Probe { .. } | MarkWhat::Look => self.met(ui, session, plan, mark),
                _ => self.done(ui, session, plan, mark),
            }
        });
        if let Some(told) = self.told {
            ui.label(RichText::new(told).size(19.0));
        }
        reads
    }

    fn met(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan, mark: &Mark) {
        let Some(place) = mark.place else { return };
        let is_probe = matches!(mark.what, MarkWhat::Probe { .. });
        for (met, name) in MET {
            // A look goes into a bay: it meets no stud.
            if !is_probe && matches!(met, Met::Hit(_)) || !ui.add(big(name, false)).clicked() {
                continue;
            }
            match met {
                Met::Hit(kind) => {
                    session.job = moves::probed(&session.job, plan, place, kind);
                    self.told = Some("Noted as a hit: the studs follow.");
                }
                Met::Hidden(kind) => {
                    session.job = moves::seen(&session.job, plan, place, kind);
                    self.told = Some("Noted in the wall at this place: the plan keeps clear of it.");
                }
                Met::Insulation => {
                    let wall = session.job.walls.iter_mut().find(|wall| wall.id == plan.wall);
                    wall.into_iter().for_each(|wall| wall.insulated = Some(true));
                    self.told = Some("Noted: the wall is insulated.");
                }
            }
        }
    }

    /// What was done: a tap notes it, a tap on what is noted takes it back.
    fn done(&mut self, ui: &mut Ui, session: &mut Session, plan: &Plan, mark: &Mark) {
        let held = moves::fact_of(&session.job, plan, &mark.id).map(|fact| fact.state);
        for state in moves::doable(mark) {
            let is_held = held == Some(*state);
            if !ui.add_enabled(!mark.assumed || is_held, big(name(*state), is_held)).clicked() {
                continue;
            }
            if is_held {
                session.job = moves::without_fact(&session.job, plan, &mark.id);
                self.told = None;
            } else {
                session.job = moves::with_fact(&session.job, plan, mark, *state);
                let is_stripped = *state == FactState::Stripped;
                self.told =
                    is_stripped.then_some("Noted: no fastener counts there; the plan takes other holes.");
            }
        }
    }
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

fn big(text: &str, is_selected: bool) -> Button<'_> {
    Button::new(RichText::new(text).size(20.0)).selected(is_selected).min_size(vec2(110.0, GLOVE))
}

//! Where the piece should go: its rules, and how far it is moved from there.

mod across;
mod upright;

use super::measured::{field_id, section};
use super::measured_field;
use crate::moves;
use crate::session::Session;
use crate::widgets::choice::choice;
use crate::widgets::quantity_field::{Allowed, quantity_field};
use egui::Ui;
use strikeline_solver::job::option::{Hanging, Nudge};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::words;

/// Shows where each piece of the option goes. An assumed option is written down at the first change.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    section(ui, "Placement");
    let allowed = measured_field(&session.job);
    // An assumed option is edited on a copy of the job in which it is written down.
    let mut job = match plan.option {
        Some(_) => session.job.clone(),
        None => moves::with_option(&session.job, plan),
    };
    let before = job.clone();
    let many = plan.pieces.len() > 1;
    let options = job
        .walls
        .iter_mut()
        .filter(|wall| wall.id == plan.wall)
        .flat_map(|wall| &mut wall.options)
        .filter(|option| plan.option.as_ref().is_none_or(|shown| *shown == option.id));
    for option in options {
        let hangings = option.hangings.clone();
        for hanging in &mut option.hangings {
            if many {
                ui.strong(words::thing(plan, &hanging.piece.whole()));
            }
            let things = moves::things(plan, &hangings, &hanging.piece);
            let mut rules = Rules { ui, plan, allowed, piece: hanging.piece.clone(), things };
            rules.across(hanging);
            rules.upright(hanging);
            nudge(ui, hanging, allowed);
        }
    }
    if job != before {
        session.job = job;
    }
}

/// What the rules of one piece are shown with.
struct Rules<'a> {
    ui: &'a mut Ui,
    plan: &'a Plan,
    allowed: Allowed,
    piece: Id,
    /// What it can be placed by.
    things: Vec<Id>,
}

impl Rules<'_> {
    /// Lets one of some things be chosen, each in words. `None` where it stays as it is.
    fn choose<T: PartialEq + Clone>(
        &mut self,
        what: &'static str,
        label: &str,
        held: &T,
        all: &[T],
        said: impl Fn(&T) -> String,
    ) -> Option<T> {
        let entries: Vec<String> = all.iter().map(|one| bare(&said(one))).collect();
        let index = all.iter().position(|one| one == held);
        let id = field_id(&self.piece, what);
        let chosen = choice(self.ui, id, label, &bare(&said(held)), &entries, index)?;
        all.get(chosen).cloned()
    }

    /// Lets one of the features and other pieces be chosen.
    fn choose_thing(&mut self, what: &'static str, label: &str, held: &Id) -> Option<Id> {
        let (plan, things) = (self.plan, self.things.clone());
        self.choose(what, label, held, &things, |id| words::thing(plan, &id.whole()))
    }
}

/// Words as they stand in a list: without an article.
fn bare(words: &str) -> String {
    words.strip_prefix("the ").unwrap_or(words).to_owned()
}

fn nudge(ui: &mut Ui, hanging: &mut Hanging, allowed: Allowed) {
    let signed = Allowed { signed: true, ..allowed };
    let id = hanging.piece.clone();
    let field = |ui: &mut Ui, what, label, offset: &mut Offset| {
        let mut value = (*offset != Offset::default()).then_some(offset.length());
        let before = value;
        quantity_field(ui, field_id(&id, what), label, &mut value, signed);
        if value != before {
            *offset = Offset(value.unwrap_or_default());
        }
    };
    let Nudge { right, up } = &mut hanging.nudge;
    field(ui, "nudge_right", "Moved right", right);
    field(ui, "nudge_up", "Moved up", up);
}

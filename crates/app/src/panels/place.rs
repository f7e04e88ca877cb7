//! Where the piece should go: its rules, and how far it is moved from there.

use super::measured::{field_id, section};
use super::{across_datum, measured_field, upright_datum};
use crate::moves;
use crate::session::Session;
use crate::widgets::choice::choice;
use crate::widgets::quantity_field::{Allowed, length_field, quantity_field};
use egui::Ui;
use strikeline_solver::job::option::{Hanging, Nudge};
use strikeline_solver::job::place::{UpDown, UprightDatum};
use strikeline_solver::job::rule::{AcrossRule, PieceHeight, UprightRule};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::words;

/// Shows where each piece of the option goes. An assumed option is written down at the first change.
pub fn ui(ui: &mut Ui, session: &mut Session, plan: &Plan) {
    section(ui, "Placement");
    let allowed = measured_field(&session.job);
    let features = plan.survey.features.iter().map(|feature| &feature.id);
    let things = features.chain(plan.pieces.iter().map(|piece| &piece.id));
    let things: Vec<(Id, String)> = things
        .map(|id| (id.clone(), words::thing(plan, &id.whole()).trim_start_matches("the ").to_owned()))
        .collect();
    // An assumed option is edited on a copy of the job in which it is written down.
    let mut job = match plan.option {
        Some(_) => session.job.clone(),
        None => moves::with_option(&session.job, plan),
    };
    let before = job.clone();
    let many = plan.pieces.len() > 1;
    let hangings = job
        .walls
        .iter_mut()
        .filter(|wall| wall.id == plan.wall)
        .flat_map(|wall| &mut wall.options)
        .filter(|option| plan.option.as_ref().is_none_or(|shown| *shown == option.id))
        .flat_map(|option| &mut option.hangings);
    for hanging in hangings {
        if many {
            ui.strong(words::thing(plan, &hanging.piece.whole()));
        }
        let others: Vec<_> = things.iter().filter(|(id, _)| *id != hanging.piece).cloned().collect();
        across(ui, hanging, &others, allowed, plan);
        upright(ui, hanging, &others, allowed, plan);
        nudge(ui, hanging, allowed);
    }
    if job != before {
        session.job = job;
    }
}

fn across(ui: &mut Ui, hanging: &mut Hanging, things: &[(Id, String)], allowed: Allowed, plan: &Plan) {
    let mut entries = vec!["centred on the wall".to_owned()];
    entries.extend(things.iter().map(|(_, name)| format!("centred on the {name}")));
    let held = match &hanging.across {
        AcrossRule::OnWall => Some(0),
        AcrossRule::On(id) => things.iter().position(|(thing, _)| thing == id).map(|index| index + 1),
        AcrossRule::Between(..) | AcrossRule::Beside { .. } => None,
    };
    let shown = match &hanging.across {
        AcrossRule::OnWall => "centred on the wall".to_owned(),
        AcrossRule::On(id) => format!("centred on {}", words::thing(plan, &id.whole())),
        AcrossRule::Between(a, b) => {
            format!("centred between {} and {}", across_datum(plan, a), across_datum(plan, b))
        }
        AcrossRule::Beside { from, .. } => format!("beside {}", across_datum(plan, from)),
    };
    let id = hanging.piece.clone();
    if let Some(index) = choice(ui, field_id(&id, "across"), "Sideways", &shown, &entries, held) {
        let feature = index.checked_sub(1).and_then(|index| things.get(index));
        hanging.across = feature.map_or(AcrossRule::OnWall, |(id, _)| AcrossRule::On(id.clone()));
        hanging.nudge.right = Offset::default();
    }
    if let AcrossRule::Beside { by, .. } = &mut hanging.across {
        length_field(ui, field_id(&id, "across_by"), "Distance from it", by, allowed);
    }
}

/// The heights that a piece can be placed by.
const HEIGHTS: [(PieceHeight, &str); 3] = [
    (PieceHeight::Centre, "middle above the floor"),
    (PieceHeight::Bottom, "lower edge above the floor"),
    (PieceHeight::Top, "top edge above the floor"),
];

fn upright(ui: &mut Ui, hanging: &mut Hanging, things: &[(Id, String)], allowed: Allowed, plan: &Plan) {
    let mut entries: Vec<String> = HEIGHTS.iter().map(|(_, name)| (*name).to_owned()).collect();
    entries.extend(things.iter().map(|(_, name)| format!("gap above the {name}")));
    let held = match &hanging.upright {
        UprightRule::Height { of, from: UprightDatum::Floor, toward: None | Some(UpDown::Up), .. } => {
            HEIGHTS.iter().position(|(height, _)| height == of)
        }
        UprightRule::Gap { side: UpDown::Up, of, .. } => {
            things.iter().position(|(thing, _)| thing == of).map(|index| index + HEIGHTS.len())
        }
        UprightRule::Height { .. } | UprightRule::Gap { .. } | UprightRule::Aligned { .. } => None,
    };
    let shown = match &hanging.upright {
        UprightRule::Height { from, .. } => format!("a height from {}", upright_datum(plan, from)),
        UprightRule::Gap { side: UpDown::Up, of, .. } => {
            format!("gap above {}", words::thing(plan, &of.whole()))
        }
        UprightRule::Gap { of, .. } => format!("gap below {}", words::thing(plan, &of.whole())),
        UprightRule::Aligned { with, .. } => format!("level with {}", words::thing(plan, with)),
    };
    let id = hanging.piece.clone();
    if let Some(index) = choice(ui, field_id(&id, "upright"), "Height", &shown, &entries, held) {
        hanging.upright = match HEIGHTS.get(index) {
            Some((of, _)) => moves::height_rule(plan, &hanging.piece, *of),
            None => {
                let feature = index.checked_sub(HEIGHTS.len()).and_then(|index| things.get(index));
                let Some((of, _)) = feature else { return };
                moves::gap_rule(plan, &hanging.piece, of)
            }
        };
        hanging.nudge.up = Offset::default();
    }
    match &mut hanging.upright {
        UprightRule::Height { by, .. } => {
            length_field(ui, field_id(&id, "upright_by"), "Height of it", by, allowed);
        }
        UprightRule::Gap { by, .. } => {
            length_field(ui, field_id(&id, "upright_by"), "Gap", by, allowed);
        }
        UprightRule::Aligned { .. } => {}
    }
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

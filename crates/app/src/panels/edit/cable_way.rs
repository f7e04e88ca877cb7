//! The editor of how a piece's cables should go.

use super::{Around, Form, kinds};
use egui::Ui;
use strikeline_solver::job::option::{CableWay, OnPiece, OnWall, Opening};
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// What the lists of a way offer.
pub(super) struct WayLists<'a> {
    /// Boxes and brackets on the truck.
    boxes: Vec<(Id, String)>,
    furniture: &'a [(Id, String)],
}

impl<'a> WayLists<'a> {
    pub(super) fn of(around: &Around<'_>, furniture: &'a [(Id, String)]) -> Self {
        let boxes = around.job.kit.boxes.iter().map(|stock| {
            (stock.id.clone(), stock.name.clone().unwrap_or_else(|| format!("Box {}", stock.id)))
        });
        Self { boxes: boxes.collect(), furniture }
    }
}

/// Shows the fields of a way.
pub(super) fn cable_way(ui: &mut Ui, form: &Form<'_>, way: &mut CableWay, lists: &WayLists<'_>) {
    opening(ui, form, "entry_kind", "Entry behind the piece", &mut way.entry_kind, lists);
    opening(ui, form, "exit_kind", "Opening at the exit", &mut way.exit_kind, lists);
    form.quantity(ui, "bay", "Only the bay at (from left end)", &mut way.bay);
    if !lists.furniture.is_empty() || way.behind.is_some() {
        form.named(ui, "behind", "Exit behind", &mut way.behind, lists.furniture, "anything or nothing");
    }
    form.quantity(ui, "from_power", "Exit from power, at least", &mut way.from_power);
    form.maybe(
        ui,
        "surface",
        "On the wall's face",
        &mut way.surface,
        kinds::SURFACES,
        "where none is inside",
    );
    form.yes_no(ui, "on_face", "Taken: a way on the face", &mut way.on_face);
    form.yes_no(ui, "bore", "Studs may be bored", &mut way.bore);
    form.quantity(ui, "slack", "Left over at each end", &mut way.slack);
    form.quantity(ui, "held_off", "Held off while plugged", &mut way.held_off);
    form.quantity(ui, "tube", "Bore of their tube", &mut way.tube);
    if way.tube.is_some() || way.tube_outside.is_some() {
        form.quantity(ui, "tube_outside", "Tube, outside", &mut way.tube_outside);
    }
    let none = OnPiece { right: Offset::default(), up: Offset::default() };
    form.part(ui, "entry_at", "Entry kept at", &mut way.entry_at, &none, |ui, form, at| {
        form.must_offset(ui, "right", "Right of piece's middle", &mut at.right);
        form.must_offset(ui, "up", "Above piece's middle", &mut at.up);
    });
    let none = OnWall { across: Length::default(), up: Length::default() };
    form.part(ui, "exit_at", "Exit kept at", &mut way.exit_at, &none, |ui, form, at| {
        form.must(ui, "across", "From wall's left end", &mut at.across);
        form.must(ui, "up", "Up from the floor", &mut at.up);
    });
}

/// What the wall is opened for: a hole, a bracket, or a box on the truck.
fn opening(
    ui: &mut Ui,
    form: &Form<'_>,
    name: &str,
    label: &str,
    value: &mut Option<Opening>,
    lists: &WayLists<'_>,
) {
    let usual = [
        (Opening::PlainHole, "plain hole"),
        (Opening::OneGang, "one-gang bracket"),
        (Opening::TwoGang, "two-gang bracket"),
    ];
    let mut all: Vec<(Option<Opening>, String)> = vec![(None, "one-gang bracket, not told".to_owned())];
    all.extend(usual.map(|(opening, words)| (Some(opening), words.to_owned())));
    all.extend(lists.boxes.iter().map(|(id, words)| (Some(Opening::Stocked(id.clone())), words.clone())));
    if !all.iter().any(|(one, _)| one == value) {
        all.push((value.clone(), "a box that is not on the truck".to_owned()));
    }
    let entries: Vec<String> = all.iter().map(|(_, words)| words.clone()).collect();
    let held = all.iter().position(|(one, _)| one == value);
    let field = form.field(name);
    if let Some(Opening::Stocked(_)) = value {
        form.under(name).field("stocked");
    }
    let chosen = crate::widgets::choice::choice(ui, field, label, "", &entries, held);
    if let Some((one, _)) = chosen.and_then(|index| all.get(index)) {
        value.clone_from(one);
    }
}

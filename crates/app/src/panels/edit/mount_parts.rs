//! The parts of a mount besides its plate.

use super::draft::{forget, together};
use super::{Form, fold, kinds};
use egui::Ui;
use strikeline_solver::job::mount::{Arm, Brackets, Lift, LiftDirection, Mount, Rating, Required, Tilt};
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;

/// The two uprights on the display's back: all four measures come together.
pub(super) fn brackets(ui: &mut Ui, form: &Form<'_>, value: &mut Option<Brackets>) {
    form.field("brackets");
    fold(ui, (form.id.as_str(), "brackets"), "Brackets", value.is_some(), |ui| {
        let part = form.under("brackets");
        let labels = ["Between middles", "Width of each", "Above plate's top", "Length"];
        let Some(brackets) = value else {
            let wanted = [
                ("apart", labels[0], false),
                ("width", labels[1], false),
                ("top", labels[2], true),
                ("length", labels[3], false),
            ];
            let all = together(ui, form.around, |name| part.field(name), wanted);
            *value =
                all.map(|[apart, width, top, length]| Brackets { apart, width, top: Offset(top), length });
            return;
        };
        part.must(ui, "apart", labels[0], &mut brackets.apart);
        part.must(ui, "width", labels[1], &mut brackets.width);
        part.must_offset(ui, "top", labels[2], &mut brackets.top);
        part.must(ui, "length", labels[3], &mut brackets.length);
        if ui.button("Not measured").clicked() {
            forget(ui, |name| part.field(name), &["apart", "width", "top", "length"]);
            *value = None;
        }
    });
}

/// How far it tilts.
pub(super) fn tilt(ui: &mut Ui, form: &Form<'_>, value: &mut Option<Tilt>) {
    form.part(ui, "tilt", "Tilt", value, &Tilt::default(), |ui, form, tilt| {
        form.quantity(ui, "down", "Facing down", &mut tilt.down);
        form.quantity(ui, "up", "Facing up", &mut tilt.up);
        form.quantity(ui, "pivot_down", "Pivot below top", &mut tilt.pivot_down);
    });
}

/// Its arm.
pub(super) fn arm(ui: &mut Ui, form: &Form<'_>, value: &mut Option<Arm>) {
    form.part(ui, "arm", "Arm", value, &Arm::default(), |ui, form, arm| {
        form.quantity(ui, "reach", "Reach", &mut arm.reach);
        form.quantity(ui, "hinge", "Swings each way", &mut arm.hinge);
        form.quantity(ui, "head", "Head turns each way", &mut arm.head);
        form.offset(ui, "parked", "Parked, right of plate's middle", &mut arm.parked);
        form.quantity(ui, "lowers", "Comes down (pull-down)", &mut arm.lowers);
        form.quantity(ui, "droop", "Droop", &mut arm.droop);
    });
}

/// How the piece is put on: the way it moves last, and from how far.
pub(super) fn lift(ui: &mut Ui, form: &Form<'_>, value: &mut Option<Lift>) {
    form.field("lift");
    fold(ui, (form.id.as_str(), "lift"), "Putting it on", value.is_some(), |ui| {
        let part = form.under("lift");
        let kept = part.field("direction").with("kept");
        let usual: LiftDirection = ui.data(|data| data.get_temp(kept)).unwrap_or(LiftDirection::Down);
        let mut direction = value.as_ref().map_or(usual, |lift| lift.direction);
        part.choose(ui, "direction", "Last move", &mut direction, kinds::LIFTS);
        ui.data_mut(|data| data.insert_temp(kept, direction));
        let mut by = value.as_ref().map(|lift| lift.by);
        part.quantity(ui, "by", "Brought in from", &mut by);
        *value = by.map(|by| Lift { direction, by });
    });
}

/// What its maker says it can carry.
pub(super) fn rating(ui: &mut Ui, form: &Form<'_>, value: &mut Option<Rating>) {
    form.part(ui, "rating", "Maker's rating", value, &Rating::default(), |ui, form, rating| {
        form.quantity(ui, "mass", "Heaviest piece", &mut rating.mass);
        form.quantity(ui, "least_across", "Threads across, least", &mut rating.least_across);
        form.quantity(ui, "most_across", "Threads across, most", &mut rating.most_across);
        form.quantity(ui, "least_upright", "Threads upright, least", &mut rating.least_upright);
        form.quantity(ui, "most_upright", "Threads upright, most", &mut rating.most_upright);
    });
}

/// What its maker requires: in words, and the holes that must be used, as ticks.
pub(super) fn required(ui: &mut Ui, form: &Form<'_>, mount: &mut Mount) {
    let plate = mount.plate.as_ref();
    let holes = plate.map(|plate| plate.holes.as_slice()).unwrap_or_default().iter().map(|hole| &hole.id);
    let slots = plate.map(|plate| plate.slots.as_slice()).unwrap_or_default().iter().map(|slot| &slot.id);
    let mut places: Vec<(Id, bool)> = holes.chain(slots).map(|id| (id.clone(), true)).collect();
    let named = mount.required.iter().flat_map(|required| &required.holes);
    for id in named {
        if !places.iter().any(|(place, _)| place == id) {
            places.push((id.clone(), false));
        }
    }
    form.part(
        ui,
        "required",
        "Maker requires",
        &mut mount.required,
        &Required::default(),
        |ui, form, required| {
            form.notes(ui, "fasteners", "In the maker's words", &mut required.fasteners);
            form.field("holes");
            for (place, is_there) in &places {
                let mut is_used = required.holes.contains(place);
                let gone = if *is_there { "" } else { ", not there" };
                let label = format!("Must use {}{gone}", place.as_str().replace('-', " "));
                form.tick(ui, &format!("holes.{place}"), &label, &mut is_used);
                required.holes.retain(|hole| hole != place);
                if is_used {
                    required.holes.push(place.clone());
                }
            }
        },
    );
}

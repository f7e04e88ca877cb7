//! What a wall or a chimney breast is made of.

use super::Form;
use super::kinds::LAYERS;
use crate::widgets::choice::choice;
use crate::widgets::pick::menu;
use egui::Ui;
use strikeline_solver::job::framing::{Concrete, Front, Masonry, SteelStuds, WallFraming, WoodStuds};

/// What can be chosen, in the order of the list.
const KINDS: [&str; 8] = [
    "not told",
    "wood studs",
    "steel studs",
    "brick or block",
    "concrete",
    "thin veneer",
    "no framing at all",
    "don't know",
];

fn place(framing: Option<&WallFraming>) -> usize {
    match framing {
        None => 0,
        Some(WallFraming::Wood(_)) => 1,
        Some(WallFraming::Steel(_)) => 2,
        Some(WallFraming::Masonry(_)) => 3,
        Some(WallFraming::Concrete(_)) => 4,
        Some(WallFraming::Veneer) => 5,
        Some(WallFraming::NoFraming) => 6,
        Some(WallFraming::NotKnown) => 7,
    }
}

fn of_place(place: usize) -> Option<WallFraming> {
    match place {
        1 => Some(WallFraming::Wood(WoodStuds::default())),
        2 => Some(WallFraming::Steel(SteelStuds::default())),
        3 => Some(WallFraming::Masonry(Masonry::default())),
        4 => Some(WallFraming::Concrete(Concrete::default())),
        5 => Some(WallFraming::Veneer),
        6 => Some(WallFraming::NoFraming),
        7 => Some(WallFraming::NotKnown),
        _ => None,
    }
}

/// Shows what something is made of, and what is known of that.
pub(super) fn framing(ui: &mut Ui, form: &Form<'_>, label: &str, framing: &mut Option<WallFraming>) {
    let entries = KINDS.map(str::to_owned);
    let held = Some(place(framing.as_ref()));
    if let Some(chosen) = choice(ui, form.field("framing"), label, "", &entries, held) {
        *framing = of_place(chosen);
    }
    let form = form.under("framing");
    match framing {
        Some(WallFraming::Wood(studs)) => {
            let form = form.under("wood");
            form.quantity(ui, "face", "Stud face", &mut studs.face);
            form.quantity(ui, "depth", "Stud depth", &mut studs.depth);
            form.quantity(ui, "gravity", "Wood's gravity", &mut studs.gravity);
            form.yes_no(ui, "furring", "Furring", &mut studs.furring);
        }
        Some(WallFraming::Steel(studs)) => {
            let form = form.under("steel");
            form.quantity(ui, "thickness", "Steel, as 18 mil", &mut studs.thickness);
            form.quantity(ui, "face", "Flange", &mut studs.face);
            form.quantity(ui, "depth", "Web depth", &mut studs.depth);
        }
        Some(WallFraming::Masonry(masonry)) => {
            form.under("masonry").yes_no(ui, "solid", "Solid units", &mut masonry.solid);
        }
        Some(WallFraming::Concrete(concrete)) => {
            let form = form.under("concrete");
            form.quantity(ui, "strength", "Strength", &mut concrete.strength);
            form.yes_no(ui, "normal_weight", "Normal weight", &mut concrete.normal_weight);
        }
        Some(WallFraming::Veneer | WallFraming::NoFraming | WallFraming::NotKnown) | None => {}
    }
}

/// Shows what stands in front of the framing.
pub(super) fn front(ui: &mut Ui, form: &Form<'_>, front: &mut Option<Front>) {
    form.part(ui, "front", "In front of the framing", front, &Front::default(), |ui, form, front| {
        form.quantity(ui, "thickness", "Thickness", &mut front.thickness);
        form.field("layers");
        let mut gone = None;
        for (index, layer) in front.layers.iter_mut().enumerate() {
            ui.horizontal(|ui| {
                let entries: Vec<String> = LAYERS.iter().map(|(_, words)| (*words).to_owned()).collect();
                let held = LAYERS.iter().position(|(one, _)| one == layer);
                let id = form.field(&format!("layers.{index}"));
                let name = format!("Layer {} from the framing", index + 1);
                let chosen = ui
                    .scope(|ui| {
                        ui.set_max_width(ui.available_width() - 74.0);
                        crate::widgets::pick::pick(ui, id, &name, "", &entries, held)
                    })
                    .inner;
                if let Some((one, _)) = chosen.and_then(|index| LAYERS.get(index)) {
                    *layer = *one;
                }
                if ui.button("Delete").clicked() {
                    gone = Some(index);
                }
            });
        }
        if let Some(index) = gone {
            front.layers.remove(index);
        }
        let entries: Vec<&str> = LAYERS.iter().map(|(_, words)| *words).collect();
        if let Some((layer, _)) = menu(ui, "Add layer\u{2026}", &entries).and_then(|index| LAYERS.get(index))
        {
            front.layers.push(*layer);
        }
    });
}

//! The editor of an option: what it is called, what hangs in it on what, and its cables. Where its pieces go is
//! the placement's.

use super::cable_way::{WayLists, cable_way};
use super::{Around, Ask, Form, fold};
use crate::widgets::choice::choice;
use crate::widgets::pick::menu;
use egui::Ui;
use strikeline_solver::job::option::{CableWish, Hanging, WallOption, Wanted};
use strikeline_solver::job::wall::Wall;
use strikeline_solver::subject::Id;
use strikeline_solver::words;

/// What the menu of pieces to hang is called.
pub(in crate::panels) const HANG: &str = "Hang a piece\u{2026}";

/// Shows the fields of an option of a wall.
pub(in crate::panels) fn option(ui: &mut Ui, around: &Around<'_>, wall: &mut Wall, id: &Id) {
    let form = around.form(id);
    let mut is_chosen = wall.chosen.as_ref() == Some(id);
    let was_chosen = is_chosen;
    let outlets = ends(around, wall);
    let furniture = furniture(around, wall);
    let Some(option) = wall.options.iter_mut().find(|option| option.id == *id) else { return };
    form.text(ui, "name", "Name", &mut option.name);
    form.notes(ui, "notes", "Notes", &mut option.notes);
    if let Some(agreed) = &mut option.agreed {
        form.line(ui, "agreed.words", "The customer agreed to", &mut agreed.words);
    }
    around.form(&wall.id).tick(ui, "chosen", "Chosen by the customer", &mut is_chosen);
    if is_chosen != was_chosen {
        wall.chosen = is_chosen.then(|| id.clone());
    }
    for hanging in &mut option.hangings {
        let name = piece_name(around, &hanging.piece);
        let id = hanging.id.clone();
        fold(ui, (id.as_str(), "hanging"), &name, true, |ui| hung(ui, around, hanging, &outlets, &furniture));
    }
    add_hanging(ui, around, option);
    form.copy_and_delete(ui);
}

fn piece_name(around: &Around<'_>, id: &Id) -> String {
    around.job.piece(id).map_or_else(|| format!("\"{id}\", not there"), |piece| around.names().piece(piece))
}

/// What a cable can come out beside: outlets, and boxes on the other side.
fn ends(around: &Around<'_>, wall: &Wall) -> Vec<(Id, String)> {
    use strikeline_solver::job::feature::FeatureKind as Kind;
    let is_end = |kind: Kind| matches!(kind, Kind::Outlet | Kind::Other);
    let ends = wall.features.iter().filter(|feature| is_end(feature.kind));
    ends.map(|feature| (feature.id.clone(), around.names().thing(&feature.id))).collect()
}

/// What an exit can be hidden behind.
fn furniture(around: &Around<'_>, wall: &Wall) -> Vec<(Id, String)> {
    use strikeline_solver::job::feature::FeatureKind as Kind;
    let hides = |kind: Kind| matches!(kind, Kind::Shelf | Kind::Bench | Kind::Curtain | Kind::Other);
    let things = wall.features.iter().filter(|feature| hides(feature.kind));
    things.map(|feature| (feature.id.clone(), around.names().thing(&feature.id))).collect()
}

/// The cables on the truck.
fn stocked(around: &Around<'_>) -> Vec<(Id, String)> {
    let name = |name: &Option<String>, id: &Id| name.clone().unwrap_or_else(|| id.to_string());
    around.job.kit.cables.iter().map(|cable| (cable.id.clone(), name(&cable.name, &cable.id))).collect()
}

fn hung(
    ui: &mut Ui,
    around: &Around<'_>,
    hanging: &mut Hanging,
    outlets: &[(Id, String)],
    furniture: &[(Id, String)],
) {
    let form = around.form(&hanging.id);
    let pieces: Vec<(Id, String)> =
        around.job.pieces.iter().map(|piece| (piece.id.clone(), around.names().piece(piece))).collect();
    let mut piece = Some(hanging.piece.clone());
    form.named(ui, "piece", "Piece", &mut piece, &pieces, "choose");
    if let Some(piece) = piece {
        hanging.piece = piece;
    }
    let mut mount = hanging.mount.clone();
    let mounts: Vec<(Id, String)> =
        around.job.mounts.iter().map(|mount| (mount.id.clone(), around.names().mount(mount))).collect();
    form.named(ui, "mount", "On mount", &mut mount, &mounts, "none");
    let others: Vec<(Id, String)> = pieces.into_iter().filter(|(id, _)| *id != hanging.piece).collect();
    if !others.is_empty() || hanging.hung_on.is_some() {
        form.named(ui, "hung_on", "Hung on", &mut hanging.hung_on, &others, "the wall");
    }
    if hanging.mount != mount {
        hanging.hang_on(mount);
    }
    by_hand(ui, &form, around, hanging);
    cables(ui, &form, around, hanging, outlets);
    fold(ui, (hanging.id.as_str(), "way"), "The cables' way", false, |ui| {
        cable_way(ui, &form.under("way"), &mut hanging.way, &WayLists::of(around, furniture));
    });
    if ui.button("Take off this option").clicked() {
        around.ask(Ask::Delete(hanging.id.clone()));
    }
}

/// What was chosen by hand of its mount's holes: each choice can be changed or let go.
fn by_hand(ui: &mut Ui, form: &Form<'_>, around: &Around<'_>, hanging: &mut Hanging) {
    form.field("holes.hole");
    form.field("holes.wanted");
    form.field("holes.along");
    let mut all = vec![
        (None, "as the plan likes".to_owned()),
        (Some(Wanted::Used), "used".to_owned()),
        (Some(Wanted::Empty), "left empty".to_owned()),
    ];
    let kit = around.job.kit.fasteners.iter();
    all.extend(kit.map(|stock| (Some(Wanted::UsedWith(stock.id.clone())), around.names().fastener(stock))));
    let entries: Vec<String> = all.iter().map(|(_, words)| words.clone()).collect();
    let mut let_go = None;
    for (index, one) in hanging.holes.iter_mut().enumerate() {
        let held = all.iter().position(|(wanted, _)| wanted.as_ref() == Some(&one.wanted));
        let gone = if let Wanted::UsedWith(stock) = &one.wanted {
            format!("\"{stock}\", not there")
        } else {
            String::new()
        };
        let label = format!("{}, your choice", words::capital(&one.hole.as_str().replace('-', " ")));
        let id = form.field(&format!("holes.{}", one.hole));
        if let Some((wanted, _)) = choice(ui, id, &label, &gone, &entries, held).and_then(|at| all.get(at)) {
            match wanted {
                Some(wanted) => one.wanted = wanted.clone(),
                None => let_go = Some(index),
            }
        }
    }
    let slots = hanging.mount.as_ref().and_then(|mount| around.job.mount(mount)?.plate.as_ref());
    let slots: Vec<&Id> = slots.iter().flat_map(|plate| &plate.slots).map(|slot| &slot.id).collect();
    for one in &mut hanging.holes {
        if one.wanted != Wanted::Empty && (slots.contains(&&one.hole) || one.along.is_some()) {
            let name = words::capital(&one.hole.as_str().replace('-', " "));
            let label = format!("{name}, along from its middle");
            form.offset(ui, &format!("holes.{}.along", one.hole), &label, &mut one.along);
        }
    }
    if let Some(index) = let_go {
        hanging.holes.remove(index);
    }
}

/// Which ports are used: all of them until one is ticked or unticked. Of each that is used, where its cable ends.
fn cables(
    ui: &mut Ui,
    form: &Form<'_>,
    around: &Around<'_>,
    hanging: &mut Hanging,
    outlets: &[(Id, String)],
) {
    form.field("cables");
    let mut ports = around.names().ports(&hanging.piece);
    for wish in &hanging.cables {
        if !ports.iter().any(|(port, _)| *port == wish.port) {
            ports.push((wish.port.clone(), format!("\"{}\", not there", wish.port)));
        }
    }
    let wish = |port: &Id| CableWish { id: Id::default(), port: port.clone(), ends_at: None, cable: None };
    for (port, name) in &ports {
        let all = hanging.cables.is_empty();
        let held = hanging.cables.iter().position(|wish| wish.port == *port);
        let mut is_used = all || held.is_some();
        let was_used = is_used;
        form.tick(ui, &format!("uses.{port}"), &format!("Uses {name}"), &mut is_used);
        if is_used != was_used {
            if all {
                hanging.cables =
                    ports.iter().filter(|(other, _)| other != port).map(|(id, _)| wish(id)).collect();
            } else if is_used {
                hanging.cables.push(wish(port));
            } else if hanging.cables.len() > 1 {
                // The last one stays: a hanging of which no port is named uses all.
                hanging.cables.retain(|wish| wish.port != *port);
            }
        }
        let stocked = stocked(around);
        if is_used && was_used && !(outlets.is_empty() && stocked.is_empty()) {
            let wished = held.and_then(|index| hanging.cables.get(index));
            let mut ends_at = wished.and_then(|wish| wish.ends_at.clone());
            let mut cable = wished.and_then(|wish| wish.cable.clone());
            let before = (ends_at.clone(), cable.clone());
            let part = match held.and_then(|index| hanging.cables.get(index)) {
                Some(wish) => around.form(&wish.id),
                None => form.under(port.as_str()),
            };
            part.field("port");
            part.named(ui, "ends_at", "Cable ends at", &mut ends_at, outlets, "anywhere");
            part.named(ui, "cable", "Its cable", &mut cable, &stocked, "any that fits");
            if (&ends_at, &cable) != (&before.0, &before.1) {
                if all {
                    hanging.cables = ports.iter().map(|(id, _)| wish(id)).collect();
                }
                for wish in hanging.cables.iter_mut().filter(|wish| wish.port == *port) {
                    wish.ends_at.clone_from(&ends_at);
                    wish.cable.clone_from(&cable);
                }
            }
        }
    }
}

/// A menu of the pieces that do not hang in the option.
fn add_hanging(ui: &mut Ui, around: &Around<'_>, option: &WallOption) {
    let hangs = |id: &Id| option.hangings.iter().any(|hanging| hanging.piece == *id);
    let free: Vec<(Id, String)> = around
        .job
        .pieces
        .iter()
        .filter(|piece| !hangs(&piece.id))
        .map(|piece| (piece.id.clone(), around.names().piece(piece)))
        .collect();
    if free.is_empty() {
        return;
    }
    let entries: Vec<&str> = free.iter().map(|(_, name)| name.as_str()).collect();
    if let Some((piece, _)) = menu(ui, HANG, &entries).and_then(|index| free.get(index)) {
        around.ask(Ask::Hang { option: Some(option.id.clone()), piece: piece.clone() });
    }
}

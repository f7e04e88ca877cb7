//! The walls in the list, and of the shown one what is seen on it, found behind it and hidden in it, and its
//! options.

use super::edit;
use super::measured::{List, section};
use crate::kinds;
use crate::moves::things::NewThing;
use egui::Ui;
use strikeline_solver::job::Job;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::words;

/// Shows the walls.
pub(super) fn walls(ui: &mut Ui, list: &mut List<'_>, job: &mut Job, shown: &Id) {
    section(ui, if job.walls.len() > 1 { "Walls" } else { "Wall" });
    for wall in &mut job.walls {
        let names = list.around.names();
        let mut text = names.size(wall.width, wall.height);
        if wall.id != *shown {
            text.push_str(", not shown");
        }
        list.entry(ui, &wall.id.clone(), &names.wall(wall), &text, |ui, around| edit::wall(ui, around, wall));
    }
    list.add_one(ui, "Add wall", NewThing::Wall);
}

/// Shows what was read of the shown wall, and its options.
pub(super) fn ui(ui: &mut Ui, list: &mut List<'_>, job: &mut Job, shown: &Id) {
    let Some(wall) = job.walls.iter_mut().find(|wall| wall.id == *shown) else { return };
    let names = list.around.names();
    let (plan, style) = (list.around.plan, list.around.plan.style);

    section(ui, "On the wall");
    for one in &mut wall.features {
        let (title, text) = (names.thing(&one.id), names.extent(&one.id));
        list.entry(ui, &one.id.clone(), &title, &text, |ui, around| edit::feature(ui, around, one));
    }
    let kinds: Vec<&str> = kinds::FEATURES.iter().map(|(_, words)| *words).collect();
    list.add(ui, "Add on the wall\u{2026}", &kinds, |place| {
        kinds::FEATURES.get(place).map(|(kind, _)| NewThing::Feature(*kind))
    });

    section(ui, "Floor and flatness");
    for one in &mut wall.floor {
        let from = super::across_datum(plan, &one.at.from);
        let title = format!("Floor {} from {from}", style.print(one.at.by));
        let text = format!("{} below the line", style.print(one.down));
        list.entry(ui, &one.id.clone(), &title, &text, |ui, around| edit::floor_reading(ui, around, one));
    }
    for one in &mut wall.flatness {
        let from = super::across_datum(plan, &one.at.from);
        let title = format!("Face {} from {from}", style.print(one.at.by));
        let text = format!("stands out {}", style.print(one.proud.length()));
        list.entry(ui, &one.id.clone(), &title, &text, |ui, around| edit::flatness_reading(ui, around, one));
    }
    edit::fold(ui, (shown.as_str(), "new floor"), "Add a floor reading", false, |ui| {
        edit::new_floor(ui, list.around, wall);
    });
    edit::fold(ui, (shown.as_str(), "new flat"), "Add a flatness reading", false, |ui| {
        edit::new_flatness(ui, list.around, wall);
    });

    section(ui, "Hits");
    for one in &mut wall.hits {
        let (title, text) = (names.hit(one), words::thing(plan, &one.id.whole()));
        let text = text.trim_start_matches("the hit ");
        list.entry(ui, &one.id.clone(), &title, text, |ui, around| edit::hit(ui, around, one));
    }
    edit::fold(ui, (shown.as_str(), "new hit"), "Add hits", false, |ui| {
        edit::new_hit(ui, list.around, wall);
    });

    section(ui, "In the wall");
    for one in &mut wall.hidden {
        let (title, text) = (names.thing(&one.id), names.extent(&one.id));
        list.entry(ui, &one.id.clone(), &title, &text, |ui, around| edit::hidden(ui, around, one));
    }
    let kinds: Vec<&str> = kinds::HIDDEN.iter().map(|(_, words)| *words).collect();
    list.add(ui, "Add in the wall\u{2026}", &kinds, |place| {
        kinds::HIDDEN.get(place).map(|(kind, _)| NewThing::Hidden(*kind))
    });

    seats(ui, list, wall);
    options(ui, list, job, shown, plan);
}

fn seats(ui: &mut Ui, list: &mut List<'_>, wall: &mut Wall) {
    section(ui, "Seats");
    let style = list.around.plan.style;
    for one in &mut wall.seats {
        let (title, text) = (list.around.names().seat(one), style.print(one.distance));
        let text = format!("{text} from the wall");
        list.entry(ui, &one.id.clone(), &title, &text, |ui, around| edit::seat(ui, around, one));
    }
    edit::fold(ui, (wall.id.clone().as_str(), "new seat"), "Add seats", false, |ui| {
        edit::new_seat(ui, list.around, wall);
    });
}

fn options(ui: &mut Ui, list: &mut List<'_>, job: &mut Job, shown: &Id, plan: &Plan) {
    let Some(wall) = job.walls.iter_mut().find(|wall| wall.id == *shown) else { return };
    section(ui, "Options");
    let ids: Vec<Id> = wall.options.iter().map(|option| option.id.clone()).collect();
    for id in &ids {
        let Some(option) = wall.options.iter().find(|option| option.id == *id) else { continue };
        let title = list.around.names().option(wall, option);
        let is_chosen = wall.chosen.as_ref() == Some(id);
        let text = match (is_chosen, plan.option.as_ref() == Some(id)) {
            (true, true) => "chosen, shown",
            (true, false) => "chosen",
            (false, true) => "shown",
            (false, false) => "",
        };
        list.entry(ui, id, &title, text, |ui, around| edit::option(ui, around, wall, id));
    }
    list.add_one(ui, "Add option", NewThing::Arrangement);
}

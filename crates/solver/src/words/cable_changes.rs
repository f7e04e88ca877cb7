//! What a plan made anew changes of the cables' way, beside the plan before: what to close, the new marks, the new
//! lengths to cut, the patches.

use super::cable::up_to_graduation;
use super::mark_name::in_words;
use super::phrase::sentence;
use super::things::{above_floor, along, port_words};
use crate::geometry::{Point, Rect};
use crate::plan::Plan;
use crate::plan::cable::{Crosses, Way, WayBy};
use crate::plan::mark::{MarkState, MarkWhat};
use crate::plan::piece::PiecePlan;

/// Sentences, piece by piece; empty where nothing of a way changed. Both plans are of one wall and option.
#[must_use]
pub fn cable_changes(before: &Plan, after: &Plan) -> Vec<String> {
    let both = after.pieces.iter().filter_map(|now| {
        let was = before.pieces.iter().find(|was| was.id == now.id)?;
        Some((was, now))
    });
    both.flat_map(|(was, now)| of_piece(before, after, was, now)).collect()
}

fn of_piece(before: &Plan, after: &Plan, was: &PiecePlan, now: &PiecePlan) -> Vec<String> {
    let way = |piece: &'_ PiecePlan| piece.cable.as_ref().and_then(|cable| cable.way.clone());
    let (old, new) = match (way(was), way(now)) {
        (Some(old), Some(new)) => (old, new),
        (Some(_), None) => return vec!["No way is left for the cables.".to_owned()],
        (None, _) => return Vec::new(),
    };
    let at = |place: Point| format!("{}, {}", along(after, place.x), above_floor(after, place));
    let moved = |a: Point, b: Point| after.style.steps(a.x - b.x) != 0 || after.style.steps(a.y - b.y) != 0;
    let middle = |way: &Way| way.entry.map(Rect::centre);
    let mut told = Vec::new();
    match (old.by, new.by) {
        (WayBy::InWall, WayBy::OnFace) => told.push("The cables now run on the wall's face.".to_owned()),
        (WayBy::OnFace, WayBy::InWall) => told.push("The cables now run inside the wall.".to_owned()),
        (WayBy::InWall, WayBy::InWall) | (WayBy::OnFace, WayBy::OnFace) => {}
    }
    let has_moved = match (middle(&old), middle(&new)) {
        (Some(old), Some(new)) => moved(old, new),
        (old, new) => old.is_some() != new.is_some(),
    };
    let passages = |way: &Way| way.crosses.iter().filter_map(Crosses::passage).collect::<Vec<_>>();
    let (known, wanted) = (passages(&old), passages(&new));
    let has = |all: &[Point], place: Point| all.iter().any(|one| !moved(*one, place));
    // What was looked into, struck or cut where nothing is opened any more is of no use.
    let undone = before.marks.iter().filter(|mark| {
        let Some(place) = mark.place.filter(|_| mark.piece == was.id && mark.state != MarkState::ToDo) else {
            return false;
        };
        match mark.what {
            MarkWhat::Look | MarkWhat::Entry => has_moved,
            MarkWhat::Exit => moved(new.exit.centre(), place),
            MarkWhat::Passage => !has(&wanted, place),
            _ => false,
        }
    });
    told.extend(undone.filter_map(|mark| {
        let place = mark.place?;
        let what = match mark.state {
            MarkState::Struck => format!("rub out {}", in_words(before, mark)),
            _ => format!("close the hole of {}", in_words(before, mark)),
        };
        Some(sentence(&format!("{what} at {}", at(place))))
    }));
    if has_moved {
        told.extend(middle(&new).map(|place| sentence(&format!("the entry is now at {}", at(place)))));
    }
    if moved(old.exit.centre(), new.exit.centre()) {
        told.push(sentence(&format!("the cables now come out at {}", at(new.exit.centre()))));
    }
    for place in wanted {
        if !has(&known, place) {
            told.push(sentence(&format!("the face is opened and patched at {}", at(place))));
        }
    }
    told.extend(lengths(after, was, now));
    told
}

/// The cables whose length to cut or take is another.
fn lengths(after: &Plan, was: &PiecePlan, now: &PiecePlan) -> Vec<String> {
    let (Some(was), Some(now)) = (&was.cable, &now.cable) else { return Vec::new() };
    let changed = now.leads.iter().filter_map(|lead| {
        let old = was.leads.iter().find(|old| old.id == lead.id)?.cut_length?;
        let new = lead.cut_length?;
        let (old, new) = (up_to_graduation(after, old), up_to_graduation(after, new));
        let name = if now.leads.len() > 1 {
            format!("the cable of {}", port_words(after, &lead.port))
        } else {
            "the cable".to_owned()
        };
        (old != new).then(|| sentence(&format!("{name} is now {new} to cut, not {old}")))
    });
    changed.collect()
}

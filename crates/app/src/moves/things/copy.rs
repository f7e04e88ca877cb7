//! A thing once more: as it is but for ids and place.

use super::{free_letter, hands_breadth};
use crate::moves::{self, Handle, HandleKind};
use std::collections::BTreeMap;
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::{Hanging, WallOption};
use strikeline_solver::job::references::{Named, each_reference, hanging_names};
use strikeline_solver::job::wall::Wall;
use strikeline_solver::plan::Plan;
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;
use strikeline_solver::units::Length;

/// New ids by the old ones.
type NewIds = BTreeMap<Id, Id>;

/// The job with a thing copied, and the copy's id; `None` for what cannot be copied or is not there. The plan
/// is the job's own.
///
/// What has a place stands a hand's breadth to the side, so that it is seen. A piece hangs in the shown option
/// at once, on a copy of its mount. A wall is copied without what was done to it.
#[must_use]
pub fn copied(job: &Job, plan: &Plan, id: &Id) -> Option<(Job, Id)> {
    let mut after = job.clone();
    let copy = piece(&mut after, plan, id)
        .or_else(|| mount(&mut after, id))
        .or_else(|| wall(&mut after, id))
        .or_else(|| option(&mut after, id))
        .or_else(|| of_the_kit(&mut after, id))
        .or_else(|| on_the_wall(&mut after, plan, id))?;
    Some((after, copy))
}

/// A part of a job with new ids for all its entries, and which became which.
fn renamed(job: &mut Job, mut part: Job) -> (Job, NewIds) {
    let mut new_ids = NewIds::new();
    part.each_entry(&mut |what, id| {
        // An id keeps its word: `door-1` becomes `door-12`.
        let word = id.as_str().rsplit_once('-').map_or(what, |(word, _)| word).to_owned();
        let new = job.give_id(&word);
        new_ids.insert(std::mem::replace(id, new.clone()), new);
    });
    (part, new_ids)
}

fn rename_named(named: Named<'_>, new_ids: &NewIds) {
    named.id().into_iter().for_each(|id| rename(id, new_ids));
}

fn rename(id: &mut Id, new_ids: &NewIds) {
    if let Some(new) = new_ids.get(id) {
        *id = new.clone();
    }
}

fn piece(job: &mut Job, plan: &Plan, id: &Id) -> Option<Id> {
    let piece = job.piece(id)?.clone();
    let name = piece.name.as_deref().map(again);
    *job = moves::with_option(job, plan);
    let (part, mut new_ids) = renamed(job, Job { pieces: vec![piece], ..Job::default() });
    let mut piece = part.pieces.into_iter().next()?;
    piece.name = name;
    let copy = piece.id.clone();
    job.pieces.push(piece);
    let option = plan.option.clone().or_else(|| Some(job.wall(&plan.wall)?.options.last()?.id.clone()));
    let hangings: Vec<Hanging> = shown(job, plan, option.as_ref())
        .map(|option| option.hangings.iter().filter(|hanging| hanging.piece == *id).cloned().collect())
        .unwrap_or_default();
    for mut hanging in hangings {
        hanging.id = job.give_id("hanging");
        let on = hanging.mount.as_ref().and_then(|old| mount_and_holes(job, old));
        if let Some((_, hole_ids)) = &on {
            hanging.holes.iter_mut().for_each(|one| rename(&mut one.hole, hole_ids));
        }
        hanging.mount = on.map(|(copy, _)| copy);
        for wish in &mut hanging.cables {
            wish.id = job.give_id("wish");
        }
        hanging_names(&mut hanging, &mut |named| rename_named(named, &new_ids));
        rename(&mut hanging.piece, &new_ids);
        let right = hanging.nudge.right.length();
        hanging.nudge.right = Offset((hands_breadth(plan) + right).quantised());
        new_ids.insert(hanging.piece.clone(), copy.clone());
        if let Some(option) = shown(job, plan, option.as_ref()) {
            option.hangings.push(hanging);
        }
    }
    Some(copy)
}

fn shown<'a>(job: &'a mut Job, plan: &Plan, option: Option<&Id>) -> Option<&'a mut WallOption> {
    let wall = job.walls.iter_mut().find(|wall| wall.id == plan.wall)?;
    wall.options.iter_mut().find(|candidate| Some(&candidate.id) == option)
}

/// A name that tells a copy from the first.
fn again(name: &str) -> String {
    format!("{name} (copy)")
}

fn mount(job: &mut Job, id: &Id) -> Option<Id> {
    mount_and_holes(job, id).map(|(copy, _)| copy)
}

/// A mount once more, and which of its parts became which.
fn mount_and_holes(job: &mut Job, id: &Id) -> Option<(Id, NewIds)> {
    let mount = job.mount(id)?.clone();
    let (part, new_ids) = renamed(job, Job { mounts: vec![mount], ..Job::default() });
    let mut mount: Mount = part.mounts.into_iter().next()?;
    mount.name = mount.name.as_deref().map(again);
    for hole in mount.required.iter_mut().flat_map(|required| &mut required.holes) {
        rename(hole, &new_ids);
    }
    let copy = mount.id.clone();
    job.mounts.push(mount);
    Some((copy, new_ids))
}

fn wall(job: &mut Job, id: &Id) -> Option<Id> {
    let wall = Wall { facts: Vec::new(), ..job.wall(id)?.clone() };
    let (part, new_ids) = renamed(job, Job { walls: vec![wall], ..Job::default() });
    let mut wall = part.walls.into_iter().next()?;
    wall.name = Some(match wall.name.as_deref() {
        Some(name) => again(name),
        None => format!("Wall {}", job.walls.len().saturating_add(1)),
    });
    each_reference(&mut wall, &mut |named| rename_named(named, &new_ids));
    let copy = wall.id.clone();
    job.walls.push(wall);
    Some(copy)
}

fn option(job: &mut Job, id: &Id) -> Option<Id> {
    let wall = job.walls.iter().find(|wall| wall.options.iter().any(|option| option.id == *id))?.id.clone();
    let option = job.wall(&wall)?.options.iter().find(|option| option.id == *id)?.clone();
    let name = free_letter(job, &wall);
    let holder = Wall { id: wall.clone(), options: vec![option], ..Wall::default() };
    let (part, _) = renamed(job, Job { walls: vec![holder], ..Job::default() });
    let mut option = part.walls.into_iter().next()?.options.into_iter().next()?;
    option.name = Some(name);
    // To the copy nobody agreed.
    option.agreed = None;
    let copy = option.id.clone();
    job.walls.iter_mut().find(|candidate| candidate.id == wall)?.options.push(option);
    Some(copy)
}

/// Copies the entry of a list, behind it.
fn entry<T: Clone>(list: &mut Vec<T>, of: impl Fn(&mut T) -> &mut Id, id: &Id, new: &Id) -> Option<Id> {
    let place = list.iter_mut().position(|entry| *of(entry) == *id)?;
    let mut copy = list.get(place)?.clone();
    *of(&mut copy) = new.clone();
    list.insert(place + 1, copy);
    Some(new.clone())
}

/// An entry of the kit, or a port.
fn of_the_kit(job: &mut Job, id: &Id) -> Option<Id> {
    let word = id.as_str().rsplit_once('-').map_or("entry", |(word, _)| word).to_owned();
    let before = job.last_id;
    let new = job.give_id(&word);
    let kit = &mut job.kit;
    let copy = entry(&mut kit.fasteners, |entry| &mut entry.id, id, &new)
        .or_else(|| entry(&mut kit.bits, |entry| &mut entry.id, id, &new))
        .or_else(|| entry(&mut kit.cables, |entry| &mut entry.id, id, &new))
        .or_else(|| entry(&mut kit.boxes, |entry| &mut entry.id, id, &new))
        .or_else(|| entry(&mut kit.measures, |entry| &mut entry.id, id, &new))
        .or_else(|| job.pieces.iter_mut().find_map(|p| entry(&mut p.ports, |port| &mut port.id, id, &new)));
    if copy.is_none() {
        job.last_id = before;
    }
    copy
}

/// Something measured on a wall.
fn on_the_wall(job: &mut Job, plan: &Plan, id: &Id) -> Option<Id> {
    let word = id.as_str().rsplit_once('-').map_or("entry", |(word, _)| word).to_owned();
    let new = job.give_id(&word);
    let breadth = hands_breadth(plan);
    let (wall, kind) = job.walls.iter_mut().find_map(|wall| {
        let kind = if entry(&mut wall.features, |entry| &mut entry.id, id, &new).is_some() {
            Some(HandleKind::Feature)
        } else if entry(&mut wall.hidden, |entry| &mut entry.id, id, &new).is_some() {
            Some(HandleKind::Hidden)
        } else if entry(&mut wall.hits, |entry| &mut entry.id, id, &new).is_some() {
            Some(HandleKind::Hit)
        } else if entry(&mut wall.floor, |entry| &mut entry.id, id, &new).is_some() {
            wall.floor.iter_mut().filter(|entry| entry.id == new).for_each(|entry| entry.at.by += breadth);
            None
        } else if entry(&mut wall.flatness, |entry| &mut entry.id, id, &new).is_some() {
            wall.flatness.iter_mut().filter(|entry| entry.id == new).for_each(|entry| entry.at.by += breadth);
            None
        } else if entry(&mut wall.seats, |entry| &mut entry.id, id, &new).is_some() {
            let copy = wall.seats.iter_mut().filter(|entry| entry.id == new);
            copy.filter_map(|entry| entry.at.as_mut()).for_each(|at| at.by += breadth);
            None
        } else {
            return None;
        };
        for name in wall
            .features
            .iter_mut()
            .map(|feature| (&feature.id, &mut feature.name))
            .chain(wall.hidden.iter_mut().map(|hidden| (&hidden.id, &mut hidden.name)))
            .chain(wall.seats.iter_mut().map(|seat| (&seat.id, &mut seat.name)))
            .filter(|(of, _)| **of == new)
            .map(|(_, name)| name)
        {
            *name = name.as_deref().map(again);
        }
        Some((wall.id.clone(), kind))
    })?;
    if let Some(kind) = kind {
        put_aside(job, &wall, Handle { id: new.clone(), kind }, breadth);
    }
    Some(new)
}

/// Moves a copy to the right, or to the left where that takes it farther: what stands at the right end cannot
/// go on.
fn put_aside(job: &mut Job, wall: &Id, handle: Handle, breadth: Length) {
    let seen = solve(job, wall, None);
    let usual = seen.survey.outline.centre().y;
    let Some(from) = moves::place(&seen, &handle, usual) else { return };
    let after = |by: Length| {
        let moved = moves::moved(job, &seen, &handle, Point::new(from.x + by, from.y));
        let to = moves::place(&solve(&moved, wall, None), &handle, usual).unwrap_or(from);
        (moved, (to.x - from.x).abs())
    };
    let ((right, far_right), (left, far_left)) = (after(breadth), after(-breadth));
    let is_farther = far_left > far_right + Length::millimetres(1.0);
    *job = if is_farther { left } else { right };
}

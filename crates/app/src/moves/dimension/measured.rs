//! What was measured, measured anew.

use super::Driven;
use strikeline_drawing::dimension::ReadPlace;
use strikeline_solver::geometry::Axis;
use strikeline_solver::job::Job;
use strikeline_solver::job::place::{AcrossExtent, UprightExtent};
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// Measures a width or height anew.
pub(super) fn size(job: &Job, id: &Id, axis: Axis, to: Length) -> Result<Job, Driven> {
    let mut after = job.clone();
    if let Some(piece) = after.pieces.iter_mut().find(|piece| piece.id == *id) {
        *side(axis, &mut piece.width, &mut piece.height) = Some(to);
        return Ok(after);
    }
    for wall in &mut after.walls {
        if wall.id == *id {
            *side(axis, &mut wall.width, &mut wall.height) = Some(to);
            return Ok(after);
        }
        let features = wall.features.iter_mut().map(|one| (&one.id, &mut one.across, &mut one.upright));
        let hidden = wall.hidden.iter_mut().map(|one| (&one.id, &mut one.across, &mut one.upright));
        if let Some((_, across, upright)) = features.chain(hidden).find(|(own, ..)| *own == id) {
            let held = side(axis, &mut across.width, &mut upright.height);
            if held.is_none() {
                return Err(Driven::ByBothEdges);
            }
            *held = Some(to);
            return Ok(after);
        }
    }
    Err(Driven::ByNothing)
}

fn side<T>(axis: Axis, across: T, upright: T) -> T {
    match axis {
        Axis::Across => across,
        Axis::Upright => upright,
    }
}

/// The length that a place of a thing on or in the wall, or of a hit, was read at.
pub(super) fn read<'a>(
    job: &'a mut Job,
    wall: &Id,
    thing: &Id,
    place: ReadPlace,
) -> Result<&'a mut Length, Driven> {
    let wall = job.walls.iter_mut().find(|one| one.id == *wall).ok_or(Driven::ByNothing)?;
    let features = wall.features.iter_mut().map(|one| (&one.id, &mut one.across, &mut one.upright));
    let hidden = wall.hidden.iter_mut().map(|one| (&one.id, &mut one.across, &mut one.upright));
    let by = match features.chain(hidden).find(|(id, ..)| *id == thing) {
        Some((_, across, upright)) => reading_of(across, upright, place),
        None => {
            let hit = wall.hits.iter_mut().find(|hit| hit.id == *thing).ok_or(Driven::ByNothing)?;
            match place {
                ReadPlace::Middle => Some(&mut hit.x.by),
                ReadPlace::MiddleHeight => hit.y.as_mut().map(|y| &mut y.by),
                _ => None,
            }
        }
    };
    by.ok_or(Driven::ByNothing)
}

fn reading_of<'a>(
    across: &'a mut AcrossExtent,
    upright: &'a mut UprightExtent,
    place: ReadPlace,
) -> Option<&'a mut Length> {
    match place {
        ReadPlace::Left => across.left.as_mut().map(|reading| &mut reading.by),
        ReadPlace::Right => across.right.as_mut().map(|reading| &mut reading.by),
        ReadPlace::Middle => across.centre.as_mut().map(|reading| &mut reading.by),
        ReadPlace::Bottom => upright.bottom.as_mut().map(|reading| &mut reading.by),
        ReadPlace::Top => upright.top.as_mut().map(|reading| &mut reading.by),
        ReadPlace::MiddleHeight => upright.centre.as_mut().map(|reading| &mut reading.by),
    }
}

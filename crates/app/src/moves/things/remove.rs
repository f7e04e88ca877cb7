//! Taking a thing out of a job.

use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::Wanted;
use strikeline_solver::subject::Id;

/// The job without the thing of this id: any entry of any of its lists; as it is where there is none.
///
/// A piece takes its hangings with it, and the mount that they alone used where nothing is known of that. A
/// mount or a port is no longer used by anything. What was read from a thing that is gone, or placed by it,
/// goes on naming it, and the plan says that it is not there.
#[must_use]
pub fn without(job: &Job, id: &Id) -> Job {
    let mut after = job.clone();
    if after.piece(id).is_some() {
        without_piece(&mut after, id);
    }
    let kit = &mut after.kit;
    kit.fasteners.retain(|entry| entry.id != *id);
    kit.bits.retain(|entry| entry.id != *id);
    kit.cables.retain(|entry| entry.id != *id);
    kit.boxes.retain(|entry| entry.id != *id);
    kit.measures.retain(|entry| entry.id != *id);
    after.mounts.retain(|mount| mount.id != *id);
    for piece in &mut after.pieces {
        piece.ports.retain(|port| port.id != *id);
    }
    for plate in after.mounts.iter_mut().filter_map(|mount| mount.plate.as_mut()) {
        plate.solids.retain(|solid| solid.id != *id);
        plate.holes.retain(|hole| hole.id != *id);
        plate.slots.retain(|slot| slot.id != *id);
    }
    after.walls.retain(|wall| wall.id != *id);
    for wall in &mut after.walls {
        wall.floor.retain(|entry| entry.id != *id);
        wall.flatness.retain(|entry| entry.id != *id);
        wall.features.retain(|entry| entry.id != *id);
        wall.hidden.retain(|entry| entry.id != *id);
        wall.hits.retain(|entry| entry.id != *id);
        wall.seats.retain(|entry| entry.id != *id);
        wall.facts.retain(|entry| entry.id != *id);
        wall.options.retain(|entry| entry.id != *id);
        if wall.chosen.as_ref() == Some(id) {
            wall.chosen = None;
        }
        for option in &mut wall.options {
            option.hangings.retain(|hanging| hanging.id != *id);
            for hanging in &mut option.hangings {
                if hanging.mount.as_ref() == Some(id) {
                    hanging.mount = None;
                    hanging.holes.clear();
                }
                hanging.holes.retain(|one| one.hole != *id);
                for one in &mut hanging.holes {
                    if one.wanted == Wanted::UsedWith(id.clone()) {
                        one.wanted = Wanted::Used;
                    }
                }
                hanging.cables.retain(|wish| wish.id != *id && wish.port != *id);
            }
        }
    }
    after
}

fn without_piece(job: &mut Job, id: &Id) {
    job.pieces.retain(|piece| piece.id != *id);
    let mut left: Vec<Id> = Vec::new();
    for option in job.walls.iter_mut().flat_map(|wall| &mut wall.options) {
        left.extend(option.hangings.iter().filter(|h| h.piece == *id).filter_map(|h| h.mount.clone()));
        option.hangings.retain(|hanging| hanging.piece != *id);
        if let Some(agreed) = &mut option.agreed {
            agreed.places.retain(|place| place.piece != *id);
        }
    }
    let is_used = |job: &Job, mount: &Id| {
        let mut hangings =
            job.walls.iter().flat_map(|wall| &wall.options).flat_map(|option| &option.hangings);
        hangings.any(|hanging| hanging.mount.as_ref() == Some(mount))
    };
    for mount in left {
        let blank = Mount { id: mount.clone(), ..Mount::default() };
        if job.mount(&mount) == Some(&blank) && !is_used(job, &mount) {
            job.mounts.retain(|other| other.id != mount);
        }
    }
}

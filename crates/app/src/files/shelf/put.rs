//! From the shelf to a job. Pure. What is put is a copy with ids of its own: whatever becomes of the shelf
//! changes no job, and a value of the shelf counts as measured.

mod cables;

use super::entry::{Entry, Thing, construction};
use super::pairs;
use std::collections::BTreeMap;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::port::Port;
use strikeline_solver::subject::Id;

/// A job with something of the shelf in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Put {
    /// The job.
    pub job: Job,
    /// The id of what was added; `None` for a kit and for defaults, which a job has once.
    pub id: Option<Id>,
}

/// Adds a thing of the shelf to a job: a mount, a piece or a wall as another one; a kit or defaults in place of
/// those of the job.
#[must_use]
pub fn put(job: &Job, entry: &Entry) -> Put {
    let mut job = job.clone();
    let id = match own(&mut job, entry) {
        Thing::Mount(mount) => {
            let id = mount.id.clone();
            job.mounts.push(*mount);
            Some(id)
        }
        Thing::Piece(piece) => {
            let id = piece.id.clone();
            job.pieces.push(*piece);
            Some(id)
        }
        Thing::Wall(wall) => {
            let id = wall.id.clone();
            job.walls.push(*wall);
            Some(id)
        }
        Thing::Kit(kit) => {
            job.kit = kit;
            None
        }
        Thing::Defaults(defaults) => {
            job.units = defaults.units;
            job.graduation = defaults.graduation;
            job.codes = defaults.codes;
            job.settings = defaults.settings;
            None
        }
    };
    Put { job, id }
}

/// A job with something of the shelf in the place of what it had.
#[derive(Clone, Debug, PartialEq)]
pub struct PutOver {
    /// The job.
    pub job: Job,
    /// Ports of the old piece whose cables went with it, since the new one has no one port for them.
    pub unplugged: Vec<Port>,
    /// Whether a drop to the plate is to be measured again, since it was measured with the old piece or mount.
    pub drop_went: bool,
}

/// Puts a thing of the shelf in the place of one of the job, which keeps its id and whatever hangs on that; a
/// wall is only built of something else. `None` where the job has none of this kind with this id.
///
/// The parts of a mount or piece (holes, ports) have new ids: what was done to a hole of the old one finds it
/// gone. Cables go over to the new ports where it is plain to which, and a drop stays only where it was measured with
/// what is there now.
#[must_use]
pub fn put_over(job: &Job, id: &Id, entry: &Entry) -> Option<PutOver> {
    let before = job;
    let mut job = job.clone();
    let mut unplugged = Vec::new();
    let mut drop_went = false;
    match own(&mut job, entry) {
        Thing::Mount(mount) => {
            let old = job.mounts.iter_mut().find(|mount| mount.id == *id)?;
            let mut new = Mount { id: id.clone(), ..*mount };
            pairs::take_over(&mut new, old);
            let had_drop = std::mem::replace(old, new.clone()).drop.is_some();
            drop_went = had_drop && pairs::lacks_drop(&job, &new);
        }
        Thing::Piece(mut piece) => {
            let old = job.pieces.iter_mut().find(|piece| piece.id == *id)?;
            piece.id = id.clone();
            let was = std::mem::replace(old, *piece);
            let ports = old.ports.clone();
            unplugged = cables::replug(&mut job, id, &was.ports, &ports);
            drop_went = pairs::part(&mut job, before, &was);
        }
        Thing::Wall(new) => {
            let wall = job.walls.iter_mut().find(|wall| wall.id == *id)?;
            wall.left_end = new.left_end;
            wall.right_end = new.right_end;
            wall.front = new.front;
            wall.framing = new.framing;
            wall.insulated = new.insulated;
            wall.vapour_barrier = new.vapour_barrier;
        }
        Thing::Kit(_) | Thing::Defaults(_) => return None,
    }
    Some(PutOver { job, unplugged, drop_went })
}

/// A copy of the thing in which every id is one that the job gave.
fn own(job: &mut Job, entry: &Entry) -> Thing {
    let mut alone = entry.thing.alone();
    let mut given: BTreeMap<Id, Id> = BTreeMap::new();
    alone.each_entry(&mut |what, id| {
        let new = job.give_id(what);
        given.insert(std::mem::replace(id, new.clone()), new);
    });
    // What had no id was named by nobody.
    given.remove(&Id::default());
    match &entry.thing {
        Thing::Mount(kept) => {
            let mut mount = alone.mounts.pop().unwrap_or_else(|| (**kept).clone());
            mount.name.get_or_insert_with(|| entry.name.clone());
            if let Some(required) = &mut mount.required {
                required.holes = required.holes.iter().filter_map(|id| given.get(id).cloned()).collect();
            }
            Thing::Mount(Box::new(mount))
        }
        Thing::Piece(kept) => {
            let mut piece = alone.pieces.pop().unwrap_or_else(|| (**kept).clone());
            piece.name.get_or_insert_with(|| entry.name.clone());
            Thing::Piece(Box::new(piece))
        }
        Thing::Wall(kept) => {
            let wall = alone.walls.pop().unwrap_or_else(|| (**kept).clone());
            let built = construction(&wall);
            Thing::Wall(Box::new(strikeline_solver::job::wall::Wall { id: wall.id, ..built }))
        }
        Thing::Kit(_) => Thing::Kit(alone.kit),
        Thing::Defaults(defaults) => Thing::Defaults(defaults.clone()),
    }
}

//! From a job to the shelf. Pure.

use super::entry::{Defaults, Entry, Thing, construction};
use super::pairs::by_itself;
use strikeline_solver::job::Job;
use strikeline_solver::subject::Id;

/// A copy of a mount, a piece or a wall of a job, for the shelf: a wall's construction alone, a mount without
/// its drop. `None` where the job has none of this id.
#[must_use]
pub fn keep(job: &Job, id: &Id) -> Option<Entry> {
    let named = |name: &Option<String>, otherwise: &str| name.clone().unwrap_or_else(|| otherwise.to_owned());
    if let Some(mount) = job.mount(id) {
        let mut mount = by_itself(job, mount);
        mount.id = Id::default();
        return Some(Entry { name: named(&mount.name, "Mount"), thing: Thing::Mount(Box::new(mount)) });
    }
    if let Some(piece) = job.piece(id) {
        let mut piece = piece.clone();
        piece.id = Id::default();
        return Some(Entry { name: named(&piece.name, "Display"), thing: Thing::Piece(Box::new(piece)) });
    }
    let wall = job.wall(id)?;
    Some(Entry { name: named(&wall.name, "Wall"), thing: Thing::Wall(Box::new(construction(wall))) })
}

/// A copy of a job's kit.
#[must_use]
pub fn keep_kit(job: &Job) -> Entry {
    Entry { name: "My kit".to_owned(), thing: Thing::Kit(job.kit.clone()) }
}

/// A copy of a job's units and settings.
#[must_use]
pub fn keep_defaults(job: &Job) -> Entry {
    let defaults = Defaults {
        units: job.units,
        graduation: job.graduation,
        codes: job.codes,
        settings: job.settings.clone(),
    };
    Entry { name: "My defaults".to_owned(), thing: Thing::Defaults(defaults) }
}

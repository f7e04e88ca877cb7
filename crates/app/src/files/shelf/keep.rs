//! From a job to the shelf. Pure.

use super::entry::{Defaults, Entry, Thing, construction};
use std::collections::BTreeSet;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::solve::assumed_option;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;

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

/// A mount without what was measured of it and a display together. The drop to the plate is another under
/// another display; where it is known how far down the display's threads are, what it says of the mount alone is
/// kept: how far the plate's top is above them.
fn by_itself(job: &Job, mount: &Mount) -> Mount {
    let mut alone = mount.clone();
    let drop = alone.drop.take();
    let down = hung_on(job, &mount.id)
        .and_then(|piece| job.piece(&piece))
        .and_then(|piece| piece.pattern.as_ref()?.down);
    if let (None, Some(drop), Some(down)) = (alone.hook_rise, drop, down) {
        alone.hook_rise = Some(Offset((down - drop).quantised().with_unit(drop.unit())));
    }
    alone
}

/// The piece that hangs on a mount, where it is everywhere the same one.
fn hung_on(job: &Job, mount: &Id) -> Option<Id> {
    let assumed = assumed_option(job);
    let options: Vec<_> = job.walls.iter().flat_map(|wall| &wall.options).collect();
    let options = if options.is_empty() { vec![&assumed] } else { options };
    let hangings = options.iter().flat_map(|option| &option.hangings);
    let mut pieces: BTreeSet<&Id> = hangings
        .filter(|hanging| hanging.mount.as_ref() == Some(mount))
        .map(|hanging| &hanging.piece)
        .collect();
    let piece = pieces.pop_first()?;
    pieces.is_empty().then(|| piece.clone())
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

//! What of a mount was measured with the display that hangs on it: the drop to the plate is another under another
//! display, and no drop is ever taken over to one that it was not measured with.

use std::collections::BTreeSet;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::WallOption;
use strikeline_solver::job::piece::Piece;
use strikeline_solver::solve::assumed_option;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Offset;

/// A mount and a piece that hangs on it, in any option of any wall, also where that is assumed.
struct Pair {
    mount: Id,
    piece: Id,
}

fn pairs(job: &Job) -> Vec<Pair> {
    let bare = job.walls.iter().filter(|wall| wall.options.is_empty());
    let assumed: Vec<WallOption> = bare.map(|wall| assumed_option(job, &wall.id)).collect();
    let options = job.walls.iter().flat_map(|wall| &wall.options).chain(&assumed);
    let hangings = options.flat_map(|option| &option.hangings);
    let pair = hangings
        .filter_map(|hanging| Some(Pair { mount: hanging.mount.clone()?, piece: hanging.piece.clone() }));
    pair.collect()
}

/// A mount without its drop. Where the same piece hangs on it everywhere, and how far down its threads are is
/// known, what the drop says of the mount alone stays: how far the plate's top is above the threads.
pub(super) fn by_itself(job: &Job, mount: &Mount) -> Mount {
    let mut alone = mount.clone();
    let drop = alone.drop.take();
    let pairs = pairs(job);
    let mut pieces: BTreeSet<&Id> =
        pairs.iter().filter(|pair| pair.mount == mount.id).map(|pair| &pair.piece).collect();
    let piece = pieces.pop_first().filter(|_| pieces.is_empty()).and_then(|id| job.piece(id));
    let down = piece.and_then(|piece| piece.pattern.as_ref()?.down);
    if let (None, Some(drop), Some(down)) = (alone.hook_rise, drop, down) {
        alone.hook_rise = Some(Offset((down - drop).quantised().with_unit(drop.unit())));
    }
    alone
}

/// Takes the drop from the mounts that a piece hung on, now that another piece has its place. Whether one is to be
/// measured again, since the new piece's threads do not give it. Of a piece of which nothing was measured the drop
/// stays: it was measured with the one that is named now.
pub(super) fn part(job: &mut Job, before: &Job, old: &Piece) -> bool {
    let Piece { id, kind, name, diagonal, .. } = old.clone();
    if *old == (Piece { id, kind, name, diagonal, ..Piece::default() }) {
        return false;
    }
    let mut is_lacking = false;
    for pair in pairs(before).iter().filter(|pair| pair.piece == old.id) {
        let Some(mount) = job.mount(&pair.mount).filter(|mount| mount.drop.is_some()) else { continue };
        let alone = by_itself(before, mount);
        is_lacking |= lacks_drop(job, &alone);
        job.mounts.iter_mut().filter(|mount| mount.id == pair.mount).for_each(|mount| *mount = alone.clone());
    }
    is_lacking
}

/// Whether the drop to a mount's plate is neither measured nor given by the threads of what hangs on it.
pub(super) fn lacks_drop(job: &Job, mount: &Mount) -> bool {
    let down = |piece: &Id| job.piece(piece)?.pattern.as_ref()?.down;
    let is_given = || {
        mount.hook_rise.is_some()
            && pairs(job).iter().filter(|pair| pair.mount == mount.id).all(|pair| down(&pair.piece).is_some())
    };
    mount.drop.is_none() && !is_given()
}

/// The drop that a mount put over an old one takes from it: that of an old one of which no plate was known, since it
/// was measured with the one that is named now.
pub(super) fn take_over(new: &mut Mount, old: &Mount) {
    if old.plate.is_none() && new.drop.is_none() {
        new.drop = old.drop;
    }
}

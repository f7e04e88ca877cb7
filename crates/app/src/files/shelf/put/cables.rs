//! What becomes of a display's cables when another is put in its place.

use strikeline_solver::job::Job;
use strikeline_solver::job::port::{Carries, Port};
use strikeline_solver::subject::Id;

/// Lets the cables of a piece use its new ports. One whose kind is plain (the only cable of its hanging that
/// carries such, and one new port that does) goes over to that port; any other goes, since which port it would
/// use is nobody's to guess. The old ports whose cables went.
pub(super) fn replug(job: &mut Job, piece: &Id, old: &[Port], new: &[Port]) -> Vec<Port> {
    let mut gone: Vec<Port> = Vec::new();
    let hangings = job.walls.iter_mut().flat_map(|wall| &mut wall.options);
    for hanging in hangings.flat_map(|option| &mut option.hangings).filter(|hung| hung.piece == *piece) {
        let old_port = |id: &Id| old.iter().find(|port| port.id == *id);
        let carried: Vec<Carries> =
            hanging.cables.iter().filter_map(|wish| old_port(&wish.port)).map(|port| port.carries).collect();
        hanging.cables.retain_mut(|wish| {
            // What named no port of the old one is as it was.
            let Some(was) = old_port(&wish.port) else { return true };
            let is_alone = carried.iter().filter(|carries| **carries == was.carries).count() == 1;
            match only_port(new, was.carries).filter(|_| is_alone) {
                Some(port) => wish.port = port.id.clone(),
                None if gone.contains(was) => return false,
                None => {
                    gone.push(was.clone());
                    return false;
                }
            }
            true
        });
    }
    gone
}

/// The port that carries this, where there is exactly one.
fn only_port(ports: &[Port], carries: Carries) -> Option<&Port> {
    let mut such = ports.iter().filter(|port| port.carries == carries);
    such.next().filter(|_| such.next().is_none())
}

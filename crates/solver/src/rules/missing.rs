//! What matters and nobody gave. Nothing is silently left out of a plan: it says what it does not know
//! (chosen). The framing, the holes and the mount are cautions, since without them nothing can be drilled.

use super::breaking_in;
use super::hung::{self, Hung};
use crate::finding::{Finding, Level, Mend, MissingWhat, What};
use crate::job::Job;
use crate::job::mount::MountKind;
use crate::job::piece::PieceKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::mark::MarkWhat;
use crate::subject::Subject;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = hung::all(job, wall, plan);
    let mut told = Vec::new();
    let mut tell = |subject: Subject, level: Level, what: MissingWhat| {
        told.push(Finding { level, subject, what: What::Missing { what }, mend: Mend::Measure });
    };
    if !plan.framing.known && all.iter().any(|hung| hung.mount.is_some()) {
        tell(wall.id.whole(), Level::Caution, MissingWhat::Hits);
    }
    for hung in &all {
        for (level, what) in of_piece(hung) {
            tell(hung.at.id.whole(), level, what);
        }
    }
    let thickness = wall.front.as_ref().and_then(|front| front.thickness);
    let probed = breaking_in::marks(plan).any(|mark| matches!(mark.what, MarkWhat::Probe { .. }));
    if thickness.is_none() && probed {
        tell(wall.id.whole(), Level::Note, MissingWhat::Thickness);
    }
    told
}

/// What is missing of a piece and its mount.
fn of_piece(hung: &Hung<'_>) -> Vec<(Level, MissingWhat)> {
    let mut missing = Vec::new();
    let hung_on = hung.hanging.and_then(|hanging| hanging.hung_on.as_ref());
    if hung.mount.is_none() && hung_on.is_none() {
        missing.push((Level::Caution, MissingWhat::Mount));
    }
    if hung.piece.mass.is_none() {
        missing.push((Level::Note, MissingWhat::Mass));
    }
    let Some((_, mount)) = hung.mount else { return missing };
    if mount.plate.as_ref().is_none_or(|plate| plate.holes.is_empty() && plate.slots.is_empty()) {
        missing.push((Level::Caution, MissingWhat::Holes));
    }
    // Only a display has a pattern of threads; a shelf or box brings its own holes.
    if hung.piece.kind == PieceKind::Display && hung.piece.pattern.is_none() {
        missing.push((Level::Note, MissingWhat::Pattern));
    }
    if mount.rating.as_ref().is_none_or(|rating| rating.mass.is_none()) {
        missing.push((Level::Note, MissingWhat::Rating));
    }
    let droop = mount.arm.as_ref().and_then(|arm| arm.droop);
    if (mount.arm.is_some() || mount.kind == MountKind::Arm) && droop.is_none() {
        missing.push((Level::Note, MissingWhat::Droop));
    }
    missing
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::mount::Arm;
    use crate::subject::Id;

    fn lacking(lack: impl Fn(&mut Sample)) -> Vec<(Level, String, What)> {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        lack(&mut room);
        room.told(check)
    }

    fn told(level: Level, subject: &str, what: MissingWhat) -> Vec<(Level, String, What)> {
        vec![(level, subject.to_owned(), What::Missing { what })]
    }

    #[test]
    fn what_is_missing_of_the_piece() {
        let display = |level, what| told(level, "display-1", what);
        let mass = lacking(|room| room.job.pieces[0].mass = None);
        assert_eq!(mass, display(Level::Note, MissingWhat::Mass));
        let pattern = lacking(|room| room.job.pieces[0].pattern = None);
        assert_eq!(pattern, display(Level::Note, MissingWhat::Pattern));
        let mount = lacking(|room| room.plan.pieces[0].mount = None);
        assert_eq!(mount, display(Level::Caution, MissingWhat::Mount));
        let hung_on = lacking(|room| {
            room.plan.pieces[0].mount = None;
            room.hanging().hung_on = Some(Id::new("shelf-1"));
        });
        assert!(hung_on.is_empty(), "it hangs on another piece");
    }

    #[test]
    fn what_is_missing_of_the_mount() {
        let display = |level, what| told(level, "display-1", what);
        let no_plate = lacking(|room| room.job.mounts[0].plate = None);
        assert_eq!(no_plate, display(Level::Caution, MissingWhat::Holes));
        let bare = lacking(|room| room.job.mounts[0].plate.as_mut().unwrap().holes.clear());
        assert_eq!(bare, display(Level::Caution, MissingWhat::Holes));
        let rating = lacking(|room| room.job.mounts[0].rating.as_mut().unwrap().mass = None);
        assert_eq!(rating, display(Level::Note, MissingWhat::Rating));
        let arm = lacking(|room| room.job.mounts[0].arm = Some(Arm::default()));
        assert_eq!(arm, display(Level::Note, MissingWhat::Droop));
        let kind = lacking(|room| room.job.mounts[0].kind = MountKind::Arm);
        assert_eq!(kind, display(Level::Note, MissingWhat::Droop));
    }

    #[test]
    fn what_is_missing_of_the_wall() {
        let hits = lacking(|room| room.plan.framing.known = false);
        assert_eq!(hits, told(Level::Caution, "wall-1", MissingWhat::Hits));
        let thickness = lacking(|room| room.wall_mut().front = None);
        assert_eq!(thickness, told(Level::Note, "wall-1", MissingWhat::Thickness));
        let not_probed = lacking(|room| {
            room.wall_mut().front = None;
            room.plan.marks.clear();
        });
        assert!(not_probed.is_empty());
    }
}

//! A piece of the plan together with what the job says of it: its measures, its mount, its hanging.

use super::turned::bounds;
use crate::geometry::Rect;
use crate::job::Job;
use crate::job::mount::Mount;
use crate::job::option::Hanging;
use crate::job::piece::Piece;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::piece::{HolePlan, MountedPlan, PiecePlan};
use crate::plan::verdict::Required;
use crate::units::Length;

/// A piece at its place, with what the job says of it.
#[derive(Clone, Copy)]
pub(super) struct Hung<'a> {
    /// Where it is.
    pub(super) at: &'a PiecePlan,
    /// Its measures.
    pub(super) piece: &'a Piece,
    /// Its hanging; `None` in an assumed option.
    pub(super) hanging: Option<&'a Hanging>,
    /// Its own mount at its place, and the mount's measures; `None` for a piece that hangs on another.
    pub(super) mount: Option<(&'a MountedPlan, &'a Mount)>,
}

impl Hung<'_> {
    /// The upright rectangle round its outline as it is turned.
    pub(super) fn bounds(&self) -> Rect {
        bounds(self.at.frame, self.at.outline)
    }

    /// From the wall to its back. Not measured counts as none: then whatever stands proud is in its way.
    pub(super) fn stand_off(&self) -> Length {
        self.mount.and_then(|(_, mount)| mount.stand_off).unwrap_or_default()
    }

    /// Whether it hangs on the other, and so goes wherever that goes.
    pub(super) fn hangs_on(&self, other: &Hung<'_>) -> bool {
        self.hanging.and_then(|hanging| hanging.hung_on.as_ref()) == Some(&other.at.id)
    }
}

/// Whether a hole is left empty for good: others hold the plate, nobody chose this one, and all is met that its maker
/// requires.
pub(super) fn stays_empty(mounted: &MountedPlan, hole: &HolePlan) -> bool {
    let fastening = &mounted.fastening;
    let is_empty = fastening.left_empty.iter().any(|one| one.hole == hole.id && !one.wanted);
    is_empty && !fastening.fasteners.is_empty() && fastening.verdict.required == Required::Met
}

/// Every piece of a plan, in its order.
pub(super) fn all<'a>(job: &'a Job, wall: &'a Wall, plan: &'a Plan) -> Vec<Hung<'a>> {
    let option = wall.options.iter().find(|option| Some(&option.id) == plan.option.as_ref());
    let hangings = option.map(|option| option.hangings.as_slice()).unwrap_or_default();
    let hung = plan.pieces.iter().filter_map(|at| {
        let mount = at.mount.as_ref().and_then(|mounted| Some((mounted, job.mount(&mounted.id)?)));
        let hanging = hangings.iter().find(|hanging| hanging.id == at.hanging);
        Some(Hung { at, piece: job.piece(&at.id)?, hanging, mount })
    });
    hung.collect()
}

/// The same without those that hang on another piece or whose mount the job does not have.
pub(super) fn mounted<'a>(
    job: &'a Job,
    wall: &'a Wall,
    plan: &'a Plan,
) -> impl Iterator<Item = (Hung<'a>, &'a MountedPlan, &'a Mount)> {
    all(job, wall, plan).into_iter().filter_map(|hung| {
        let (at, mount) = hung.mount?;
        Some((hung, at, mount))
    })
}

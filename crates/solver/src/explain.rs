//! The working behind the numbers of a verdict: the plan is made again by the same functions, with a ledger that keeps
//! every step, so that both give the same bits.

use crate::job::Job;
use crate::plan::explained::Explained;
use crate::solve::explained;
use crate::subject::Id;

/// The working behind the verdict of a piece, as [`crate::solve::solve`] plans it on a wall with an option.
///
/// `None` where the piece hangs on no mount there. No sections where no hole takes a fastener, and where fasteners of
/// more than one type were chosen by hand; nothing of what the fasteners are asked where a load is not measured, since
/// the plan has no number of it either.
#[must_use]
pub fn explain(job: &Job, wall: &Id, option: Option<&Id>, piece: &Id) -> Option<Explained> {
    explained(job, wall, option, piece)
}

//! The marks at which the wall's face is broken: probes, looks, openings, holes.

use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkWhat};

/// The marks at which the face is broken, in the order of work.
pub(super) fn marks(plan: &Plan) -> impl Iterator<Item = &Mark> {
    plan.marks.iter().filter(|mark| {
        matches!(
            mark.what,
            MarkWhat::Probe { .. }
                | MarkWhat::Look
                | MarkWhat::Entry
                | MarkWhat::Exit
                | MarkWhat::Passage
                | MarkWhat::Hole { .. }
        )
    })
}

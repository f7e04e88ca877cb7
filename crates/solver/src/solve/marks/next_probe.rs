//! The mark of a probe that is asked for beside the plan.

use super::{Site, mark};
use crate::geometry::{Axis, Point};
use crate::job::Job;
use crate::plan::Plan;
use crate::plan::mark::{Mark, MarkWhat, Stage};
use crate::plan::piece::{HolePlan, PiecePlan};
use crate::tolerance::PROBE_BITE_MM;
use crate::units::Length;

/// A probe for a hole at a place of its own, read from the wall as any mark is; before it the helping marks it needs.
/// Empty for a wall that the job does not have.
pub(crate) fn probe_mark(
    job: &Job,
    plan: &Plan,
    piece: &PiecePlan,
    hole: &HolePlan,
    place: Point,
    name: &str,
) -> Vec<Mark> {
    let Some(wall) = job.wall(&plan.wall) else { return Vec::new() };
    let (survey, framing) = (&plan.survey, &plan.framing);
    let site = Site { job, wall, settings: &job.settings, survey, framing, style: plan.style };
    let (thickness, thickness_measured) = site.thickness(place);
    let depth = Some(thickness + Length::millimetres(PROBE_BITE_MM));
    let what = MarkWhat::Probe { hole: hole.id.clone(), depth, thickness_measured };
    let probe = mark(piece, name, Stage::Probe, what, place);
    let mut marks = Vec::new();
    site.read(probe, &[Axis::Across, Axis::Upright], piece, &mut marks);
    marks
}

//! The one thing to do now.

use crate::finding::{Level, What};
use crate::plan::mark::Stage;
use crate::plan::{Next, Plan};

/// Measure what marks hang on; else mend what stops the job or leaves every hole off the studs; else take
/// the first mark, past the finding of studs where hits tell of them.
pub(super) fn next(plan: &Plan) -> Option<Next> {
    if plan.pieces.is_empty() {
        return None;
    }
    if let Some(assumed) = plan.assumed.iter().find(|assumed| assumed.moves_marks) {
        return Some(Next::Measure(assumed.clone()));
    }
    let blocks = |level: Level, what: &What| level == Level::Stop || matches!(what, What::NoStudMet);
    if let Some(place) = plan.findings.iter().position(|finding| blocks(finding.level, &finding.what)) {
        return Some(Next::Mend(place));
    }
    let found = plan.framing.known;
    let mark = plan.marks.iter().find(|mark| !found || mark.stage != Stage::Find)?;
    Some(Next::Take(mark.id.clone()))
}

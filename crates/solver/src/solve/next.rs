//! The one thing to do now.

use crate::finding::{Level, What};
use crate::plan::mark::{MarkState, Stage};
use crate::plan::{Next, Plan};

/// Measure what marks hang on; else mend what stops the job or leaves every hole off the studs; else take
/// the first mark that is not done yet, past the finding of studs where hits tell of them.
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
    let mut to_do = plan.marks.iter().filter(|mark| mark.is_needed && !mark.is_finished());
    // What is struck stays, once it is drilled there the tape is gone: no corner is asked for after the first hole.
    let farthest = plan.marks.iter().filter(|mark| binds(mark.state)).map(|mark| mark.stage).max();
    let is_past = |stage: Stage| {
        stage == Stage::Find && found
            || stage == Stage::Agree && farthest.is_some_and(|far| far > Stage::Agree)
    };
    let mark = to_do.find(|mark| !is_past(mark.stage))?;
    Some(Next::Take(mark.id.clone()))
}

/// Whether something was struck, drilled or cut.
fn binds(state: MarkState) -> bool {
    matches!(state, MarkState::Struck | MarkState::Drilled | MarkState::Cut | MarkState::Stripped)
}

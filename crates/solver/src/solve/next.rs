//! The one thing to do now.

use crate::capacity::group::Word;
use crate::finding::{Level, What};
use crate::plan::mark::{MarkState, Stage};
use crate::plan::verdict::Want;
use crate::plan::{Next, Plan};
use crate::subject::Id;

/// Measure what marks hang on; else mend what stops the job; else measure what a verdict wants; else mend what leaves
/// every hole off the studs; else take the first mark that is not done yet, past the finding of studs where hits tell
/// of them.
pub(super) fn next(plan: &Plan) -> Option<Next> {
    if plan.pieces.is_empty() {
        return None;
    }
    if let Some(assumed) = plan.assumed.iter().find(|assumed| assumed.moves_marks) {
        return Some(Next::Measure(assumed.clone()));
    }
    if let Some(place) = plan.findings.iter().position(|finding| finding.level == Level::Stop) {
        return Some(Next::Mend(place));
    }
    // Of equals the first.
    let measured = wanted(plan).filter_map(|(piece, want)| Some((turn(want)?, piece, want)));
    if let Some((_, piece, want)) = measured.min_by_key(|(turn, ..)| *turn) {
        return Some(Next::Settle { piece: piece.clone(), want: want.clone() });
    }
    if let Some(place) = plan.findings.iter().position(|finding| matches!(finding.what, What::NoStudMet)) {
        return Some(Next::Mend(place));
    }
    let found = plan.framing.known;
    let mut to_do = plan.marks.iter().filter(|mark| !mark.is_finished());
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

/// What the verdicts want that nobody knows yet, each with its piece.
fn wanted(plan: &Plan) -> impl Iterator<Item = (&Id, &Want)> {
    let unknown = plan.pieces.iter().filter_map(|piece| {
        let verdict = &piece.mount.as_ref()?.fastening.verdict;
        (verdict.word == Word::NotKnown).then_some((&piece.id, &verdict.wanted))
    });
    unknown.flat_map(|(piece, wanted)| wanted.iter().map(move |want| (piece, want)))
}

/// When a measurement comes; `None` for what is done on the wall, mark by mark.
///
/// The mass first: it decides whether the mount may be used at all.
fn turn(want: &Want) -> Option<u8> {
    Some(match want {
        Want::Mass(_) => 0,
        Want::MountMass(_) => 1,
        Want::Size(_) | Want::Place(_) | Want::Drop(_) => 2,
        Want::StandOff(_) | Want::Reach(_) | Want::Tilt(_) | Want::Pivot(_) | Want::Lowering(_) => 3,
        Want::Plate(_) => 4,
        Want::PlateThickness(_) | Want::HoleWidth(_) => 5,
        Want::Front(_) => 6,
        Want::Framing(_)
        | Want::SteelThickness(_)
        | Want::Face(_)
        | Want::StudDepth(_)
        | Want::NormalWeight(_)
        | Want::Solid { .. }
        | Want::WallSize(_) => 7,
        Want::Fasteners | Want::FastenerSize(_) | Want::FastenerHead(_) | Want::FastenerReport(_) => 8,
        Want::Hits(_) | Want::Probe(_) | Want::Edges(_) => return None,
    })
}

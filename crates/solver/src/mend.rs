//! What would clear a finding: real solves of small changes. Beside `solve`, not in it: asked when the hand is off, as
//! a pure function of the job.
//!
//! Each change is a file in `mend` and gives a changed job. It is told only where the job so changed was solved and the
//! finding is gone, or the verdict better, without a new stop and with no piece held worse.

mod fasteners;
mod layer;
mod mount;
mod moving;
mod plate;
mod trying;

use crate::capacity::group::Word;
use crate::finding::{Finding, What};
use crate::geometry::Direction;
use crate::job::Job;
use crate::job::kit::FastenerKind;
use crate::plan::Plan;
use crate::subject::Id;
use crate::units::Length;
use trying::Trying;

/// So many solves answer one finding at most (chosen: under 50 ms in a released program).
pub const MOST_SOLVES: usize = 200;

/// A change that clears a finding.
#[derive(Clone, Debug, PartialEq)]
pub struct MendPlan {
    /// What is changed.
    pub change: Change,
    /// The job so changed; `None` for what has to be found, measured or done first, which no job may hold as measured.
    pub job: Option<Job>,
    /// What it gives.
    pub gives: Gives,
}

/// A small change of a job.
#[derive(Clone, Debug, PartialEq)]
pub enum Change {
    /// The piece is moved.
    Move {
        /// Which way.
        direction: Direction,
        /// How far, in whole graduations.
        by: Length,
    },
    /// Fasteners of another length.
    Length {
        /// Their type.
        kind: FastenerKind,
        /// Their diameter.
        diameter: Length,
        /// Their length.
        length: Length,
    },
    /// More fasteners of a size than there are on the truck.
    More {
        /// Their type.
        kind: FastenerKind,
        /// Their diameter; `None` where not measured.
        diameter: Option<Length>,
        /// Their length; `None` where not measured.
        length: Option<Length>,
        /// How many more.
        more: u32,
    },
    /// A plate with a row of holes between its rows.
    RowBetween,
    /// A higher plate with a row of holes below its rows.
    RowBelow {
        /// How much higher.
        by: Length,
    },
    /// A wider plate with holes on a stud beside it.
    Wider {
        /// To which side; `None` for both.
        side: Option<Direction>,
        /// How much wider.
        by: Length,
    },
    /// Another mount of the job.
    Mount {
        /// The mount.
        mount: Id,
    },
    /// What stands in front of the concrete is cut away under the plate.
    CutAway {
        /// How thick it is.
        thickness: Length,
    },
}

/// What a change gives, read from the plan of the job so changed.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Gives {
    /// The verdict of the piece's plate.
    pub word: Word,
    /// The same if every stud in use is met.
    pub if_probed: Word,
    /// How much of what the fasteners may carry is used; `None` where that is not known.
    pub used: Option<f64>,
    /// How many fasteners.
    pub fasteners: usize,
    /// How many holes meet a stud.
    pub holes: usize,
    /// How many studs are met.
    pub studs: usize,
    /// How many cautions it brings that are not there now.
    pub cautions: usize,
}

/// Whether changes are tried for such a finding: of any other [`for_finding`] knows none, without a solve.
#[must_use]
pub fn answers(what: &What) -> bool {
    matches!(
        what,
        What::PlateShort { .. }
            | What::PlateNotKnown { if_probed: false }
            | What::NoStudMet
            | What::MoreStudsNear { .. }
            | What::HoleOnHidden { .. }
            | What::PlateShows { .. }
            | What::OverFeature { .. }
            | What::OffWall { .. }
    )
}

/// What would clear a finding of a wall and an option, the best of each kind of change, moves first; nothing where
/// nothing that is tried helps, or nothing is to be tried: what is not measured is to be measured.
#[must_use]
pub fn for_finding(job: &Job, wall: &Id, option: Option<&Id>, finding: &Finding) -> Vec<MendPlan> {
    let trying = if answers(&finding.what) { Trying::of(job, wall, option, finding) } else { None };
    let Some(trying) = trying else { return Vec::new() };
    let mut mends = Vec::new();
    match &finding.what {
        What::PlateShort { .. } | What::PlateNotKnown { .. } => {
            if trying.waits_for_a_measurement() {
                return Vec::new();
            }
            let others = [layer::mends, fasteners::mends, plate::mends, mount::mends];
            let rest: Vec<MendPlan> = others.iter().flat_map(|mends| mends(&trying)).collect();
            mends.extend(moving::mends(&trying));
            mends.extend(rest);
        }
        What::HoleOnHidden { .. } | What::PlateShows { .. } | What::NoStudMet => {
            let rest = mount::mends(&trying);
            mends.extend(moving::mends(&trying));
            mends.extend(rest);
        }
        _ => mends.extend(moving::mends(&trying)),
    }
    mends
}

/// What would clear the next finding of a plan, after those of the earlier ones: without what is told already of an
/// earlier finding of the same piece. `None` where the plan has no further finding.
#[must_use]
pub fn of_next(job: &Job, plan: &Plan, earlier: &[&[MendPlan]]) -> Option<Vec<MendPlan>> {
    let finding = plan.findings.get(earlier.len())?;
    let mut mends = for_finding(job, &plan.wall, plan.option.as_ref(), finding);
    let of_piece = plan.findings.iter().zip(earlier).filter(|(one, _)| one.subject.id == finding.subject.id);
    let told: Vec<&MendPlan> = of_piece.flat_map(|(_, mends)| mends.iter()).collect();
    mends.retain(|mend| !told.contains(&mend));
    Some(mends)
}

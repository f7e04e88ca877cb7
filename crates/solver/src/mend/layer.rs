//! On concrete: what stands in front of it is cut away under the plate. In words only: a job holds what is there now.

use super::trying::Trying;
use super::{Change, MendPlan};
use crate::job::Job;
use crate::job::framing::WallFraming;
use crate::units::Length;

/// What helps.
pub(super) fn mends(trying: &Trying<'_>) -> Vec<MendPlan> {
    bared(trying).into_iter().collect()
}

fn bared(trying: &Trying<'_>) -> Option<MendPlan> {
    let wall = trying.job.walls.first()?;
    let thickness = wall.front.as_ref()?.thickness?;
    let concrete = matches!(wall.framing, Some(WallFraming::Concrete(_)));
    if !concrete || thickness <= Length::default() {
        return None;
    }
    let bare = |job: &mut Job| {
        for front in job.walls.iter_mut().filter_map(|wall| wall.front.as_mut()) {
            front.thickness = Some(Length::default());
            front.layers.clear();
        }
    };
    let gives = trying.gives(&bare)?;
    Some(trying.mend(Change::CutAway { thickness }, gives, None))
}

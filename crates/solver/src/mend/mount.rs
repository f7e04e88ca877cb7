//! Another mount of the job.

use super::trying::Trying;
use super::{Change, MendPlan};
use crate::job::Job;

/// So many other mounts are tried (chosen).
const MOST: usize = 12;

/// Every other mount of the job that helps, the one that uses least first.
pub(super) fn mends(trying: &Trying<'_>) -> Vec<MendPlan> {
    let Some(own) = trying.mounted().map(|mounted| &mounted.id) else { return Vec::new() };
    let others = trying.job.mounts.iter().map(|mount| &mount.id).filter(|id| *id != own).take(MOST);
    let mut mends: Vec<MendPlan> = others
        .filter_map(|id| {
            let hang = |job: &mut Job| {
                if let Some(hanging) = trying.hanging(job) {
                    hanging.hang_on(Some(id.clone()));
                }
            };
            let gives = trying.gives(&hang)?;
            Some(trying.mend(Change::Mount { mount: id.clone() }, gives, Some(&hang)))
        })
        .collect();
    let used = |mend: &MendPlan| mend.gives.used.unwrap_or(f64::INFINITY);
    mends.sort_by(|a, b| used(a).total_cmp(&used(b)));
    mends
}

//! Some mounts are locked or released from below: a hand or tool needs room there, then and at every later
//! service (common practice, no source). How much is in the mount's instructions.

use super::hung;
use super::room::room_beside;
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::Direction;
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::tolerance::SAME_PLACE_MM;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = hung::all(job, wall, plan);
    let mut told = Vec::new();
    for (hung, _, mount) in hung::mounted(job, wall, plan) {
        let Some(needs) = mount.access_below else { continue };
        let Some(room) = room_beside(&plan.survey, &all, &hung, Direction::Down) else { continue };
        if (needs - room).mm() > SAME_PLACE_MM {
            let what = What::NoAccessBelow { room, needs };
            told.push(Finding { level: Level::Caution, subject: hung.at.id.whole(), what, mend: Mend::Move });
        }
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::job::feature::FeatureKind;

    #[test]
    fn a_mantel_close_below_is_told() {
        let mut room = Sample::good();
        room.feature("mantel-1", FeatureKind::Mantel, (1000.0, 3000.0), (1000.0, 1080.0), 150.0);
        room.job.mounts[0].access_below = Some(mm(70.0));
        assert!(room.told(check).is_empty());
        room.job.mounts[0].access_below = Some(mm(75.0));
        let what = What::NoAccessBelow { room: mm(70.0), needs: mm(75.0) };
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), what)]);
    }
}

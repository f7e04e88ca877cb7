//! What stands out of a wall between a cane's reach and a head is walked into (2010 ADA Standards 307.2). A rule for ways
//! that people walk in places of work and open to all; a home is left alone. Whether the wall is at such a way is for the
//! local code: it is told, never passed.

use super::hung;
use super::room::highest_floor;
use crate::clearances::projecting::may_stand_out;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::wall::Wall;
use crate::job::{Job, Purpose};
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    if !matches!(job.purpose, Some(Purpose::Workplace | Purpose::Public)) {
        return Vec::new();
    }
    let told = hung::all(job, wall, plan).into_iter().filter_map(|hung| {
        let bounds = hung.bounds();
        let edge = bounds.bottom - highest_floor(&plan.survey, bounds.across());
        let off = hung
            .mount
            .and_then(|(_, mount)| mount.arm.as_ref().and_then(|arm| arm.reach).or(mount.stand_off));
        let out = off.zip(hung.piece.depth).map(|(off, depth)| off + depth);
        // Out by what nobody measured is out too far.
        let is_told = out.is_none_or(|out| !may_stand_out(edge, out));
        is_told.then(|| Finding {
            level: Level::Caution,
            subject: hung.at.id.whole(),
            what: What::StandsOut { out },
            mend: if out.is_some() { Mend::Move } else { Mend::Measure },
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;

    #[test]
    fn only_where_people_walk_and_only_between_cane_and_head() {
        let mut room = Sample::good();
        room.job.pieces[0].depth = Some(mm(60.0));
        room.job.mounts[0].stand_off = Some(mm(50.0));
        let told = |room: &Sample| room.told(check).into_iter().map(|(_, _, what)| what).collect::<Vec<_>>();
        assert_eq!(told(&room), [], "a home");
        room.job.purpose = Some(Purpose::Public);
        // Its lower edge is at 1150 mm, 45 in; 110 mm are more than 4 in.
        assert_eq!(told(&room), [What::StandsOut { out: Some(mm(110.0)) }]);
        room.job.mounts[0].stand_off = Some(mm(41.0));
        assert_eq!(told(&room), [], "101 mm");
        room.job.pieces[0].depth = None;
        assert_eq!(told(&room), [What::StandsOut { out: None }]);
    }
}

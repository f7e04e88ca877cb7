//! What stands out of a wall between a cane's reach and a head is walked into (2010 ADA Standards 307.2). A rule for
//! ways that people walk in places of work and open to all; a home is left alone. Whether the wall is at such a way is
//! for the local code: it is told, never passed.

use super::hung;
use super::room::{highest_floor, lowest_floor};
use crate::clearances::projecting::may_stand_out;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::mount::MountKind;
use crate::job::wall::Wall;
use crate::job::{Job, Purpose};
use crate::numeric::sine;
use crate::plan::Plan;
use crate::units::{Angle, Length};

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    if !matches!(job.purpose, Some(Purpose::Workplace | Purpose::Public)) {
        return Vec::new();
    }
    let told = hung::all(job, wall, plan).into_iter().filter_map(|hung| {
        let bounds = hung.bounds();
        // On a floor that falls an edge may be too high at one end and too low at the other: any height between counts.
        let floors = [highest_floor, lowest_floor].map(|floor| floor(&plan.survey, bounds.across()));
        let out = out(&hung);
        // Out by what nobody measured is out too far.
        let is_told =
            out.is_none_or(|out| floors.iter().any(|floor| !may_stand_out(bounds.bottom - *floor, out)));
        is_told.then(|| Finding {
            level: Level::Caution,
            subject: hung.at.id.whole(),
            what: What::StandsOut { out },
            mend: if out.is_some() { Mend::Move } else { Mend::Measure },
        })
    });
    told.collect()
}

/// How far it stands out of the wall, tilted as far as it tilts; `None` where a part of that was not measured. What
/// hangs on another piece is as far out as its own depth, at least.
fn out(hung: &hung::Hung<'_>) -> Option<Length> {
    let depth = hung.piece.depth?;
    let Some((_, mount)) = hung.mount else { return Some(depth) };
    let off = mount.arm.as_ref().and_then(|arm| arm.reach).or(mount.stand_off)?;
    let tilts = matches!(mount.kind, MountKind::Tilting | MountKind::Arm | MountKind::PullDown);
    if !tilts && mount.tilt.is_none() {
        return Some(off + depth);
    }
    let tilt = mount.tilt.as_ref()?;
    if tilt.down.is_none() && tilt.up.is_none() {
        return None;
    }
    let height = hung.at.outline.height();
    let above = tilt.pivot_down.unwrap_or(height / 2.0).min(height);
    // Its top comes forward as it faces down, its foot as it faces up.
    let forward = |arm: Length, angle: Option<Angle>| {
        angle.map_or(Length::default(), |angle| arm * sine(Angle::degrees(angle.deg().abs().min(90.0))))
    };
    Some(off + depth + forward(above, tilt.down).max(forward(height - above, tilt.up)))
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
        // Tilted by 2 degrees half of its 700 mm come 12.21 mm farther out.
        room.job.mounts[0].tilt =
            Some(crate::job::mount::Tilt { down: Some(Angle::degrees(2.0)), up: None, pivot_down: None });
        let [What::StandsOut { out: Some(out) }] = told(&room)[..] else { panic!("{:?}", told(&room)) };
        assert!((out.mm() - 113.215).abs() < 0.01, "{out:?}");
        room.job.mounts[0].tilt = None;
        room.job.pieces[0].depth = None;
        assert_eq!(told(&room), [What::StandsOut { out: None }]);
    }
}

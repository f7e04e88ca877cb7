//! Metal behind the face of a wall that is not framed in steel is a pipe, a cable's armour, a nail plate over either,
//! or a strap: no fastener goes there, and what it is may run on up and down. A hole in use above or below it stops the
//! job until somebody knows.

use super::hung;
use crate::finding::{Finding, Level, Mend, What};
use crate::handbook::boring::FASTENER_WITHIN_IN;
use crate::job::Job;
use crate::job::framing::WallFraming;
use crate::job::hit::HitKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::piece::{HolePlan, Meets};
use crate::units::Length;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut told = Vec::new();
    for hit in plan.survey.hits.iter().filter(|hit| hit.kind == HitKind::Metal) {
        let on = plan.survey.breast_at(hit.x, hit.y).map(|breast| &breast.id);
        if matches!(wall.framing_on(on), Some(WallFraming::Steel(_))) {
            continue;
        }
        let mounted = hung::mounted(job, wall, plan);
        let in_line = mounted.flat_map(|(_, mounted, _)| {
            let fasteners = &mounted.fastening.fasteners;
            // Where no fastener is chosen yet, any hole in a stud may be.
            let in_use = |hole: &&HolePlan| match fasteners.is_empty() {
                true => hole.meets == Meets::Stud,
                false => fasteners.iter().any(|one| one.hole == hole.id),
            };
            mounted.holes.iter().filter(in_use).collect::<Vec<_>>()
        });
        let hole = in_line
            .into_iter()
            .find(|hole| (hole.place.x - hit.x).abs() <= Length::inches(FASTENER_WITHIN_IN.value));
        let hole = hole.map(|hole| hole.subject.clone());
        let level = if hole.is_some() { Level::Stop } else { Level::Caution };
        let what = What::MetalMet { hole };
        told.push(Finding { level, subject: hit.id.whole(), what, mend: Mend::OnSite });
    }
    told
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::plan::survey::PlacedHit;
    use crate::subject::Id;

    #[test]
    fn metal_stops_the_holes_in_line_with_it_and_is_told_elsewhere() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let mut told = |x: f64| {
            room.plan.survey.hits =
                vec![PlacedHit { id: Id::new("hit-1"), kind: HitKind::Metal, x: mm(x), y: Some(mm(500.0)) }];
            room.told(check)
        };
        let elsewhere = told(3000.0);
        assert_eq!(elsewhere, [(Level::Caution, "hit-1".to_owned(), What::MetalMet { hole: None })]);
        // The first hole stands at 1800.
        let hole = Some(Id::new("display-1").part("hole-1"));
        assert_eq!(told(1810.0), [(Level::Stop, "hit-1".to_owned(), What::MetalMet { hole })]);
        room.wall_mut().framing = Some(WallFraming::Steel(crate::job::framing::SteelStuds::default()));
        assert!(room.told(check).is_empty(), "on steel it may be a stud");
    }
}

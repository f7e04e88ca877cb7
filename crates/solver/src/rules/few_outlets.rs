//! A wall of a dwelling has receptacles at known spacings (NEC 210.52(A), read second-hand). Where fewer were measured
//! than it has at least, others may be behind furniture, and a cable of power runs to each.

use super::cabled::{all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::wall::Wall;
use crate::job::{CodeSet, Purpose};
use crate::plan::Plan;
use crate::plan::survey::PlacedFeature;
use crate::units::Length;
use crate::wiring::receptacles::{counts, wanted};

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let is_dwelling = !matches!(job.purpose, Some(Purpose::Workplace | Purpose::Public));
    if job.codes != Some(CodeSet::Us) || !is_dwelling {
        return Vec::new();
    }
    let all = all(job, wall, plan);
    let Some(first) = all.iter().find(|of| of.in_wall().is_some()) else { return Vec::new() };
    let floor = &plan.survey.floor;
    let is_one = |one: &&PlacedFeature| {
        let middle = one.rect.centre();
        one.kind == FeatureKind::Outlet && counts(middle.y - floor.y_at(middle.x))
    };
    let found = plan.survey.features.iter().filter(is_one).count();
    let wanted = spaces(plan).into_iter().map(self::wanted).sum();
    let what = CableWhat::FewOutlets { found, wanted };
    (found < wanted).then(|| told(first, Level::Note, Mend::OnSite, what)).into_iter().collect()
}

/// How wide the wall is between its doors, piece by piece.
fn spaces(plan: &Plan) -> Vec<Length> {
    let outline = plan.survey.outline;
    let doors = plan.survey.features.iter().filter(|one| one.kind == FeatureKind::Door);
    let mut doors: Vec<_> = doors.map(|door| (door.rect.left, door.rect.right)).collect();
    doors.sort_by(|a, b| a.0.mm().total_cmp(&b.0.mm()));
    let mut spaces = Vec::new();
    let mut from = outline.left;
    for (left, right) in doors.into_iter().chain([(outline.right, outline.right)]) {
        spaces.push((left - from).max(Length::default()));
        from = from.max(right);
    }
    spaces
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;

    /// The sample's wall is 4000 mm wide, 13.1 ft: two receptacles.
    #[test]
    fn a_wall_with_fewer_outlets_than_it_has_is_told() {
        let mut room = Sample::good();
        room.job.codes = Some(CodeSet::Us);
        let told =
            |room: &Sample| -> Vec<What> { room.told(check).into_iter().map(|(_, _, what)| what).collect() };
        let few = |found, wanted| [What::Cable(CableWhat::FewOutlets { found, wanted })];
        assert_eq!(told(&room), few(0, 2));
        room.feature("outlet-1", FeatureKind::Outlet, (200.0, 270.0), (300.0, 410.0), 5.0);
        // Too high to count: 5 1/2 ft are 1676 mm.
        room.feature("outlet-2", FeatureKind::Outlet, (3200.0, 3270.0), (1700.0, 1810.0), 5.0);
        assert_eq!(told(&room), few(1, 2));
        // A door 900 wide leaves 2600 and 500 mm, 8.5 and 1.6 ft: one.
        room.feature("door-1", FeatureKind::Door, (2600.0, 3500.0), (0.0, 2000.0), 0.0);
        assert_eq!(told(&room), []);
        room.plan.survey.features.clear();
        room.job.purpose = Some(Purpose::Public);
        assert_eq!(told(&room), []);
        (room.job.purpose, room.job.codes) = (None, Some(CodeSet::Uk));
        assert_eq!(told(&room), []);
    }
}

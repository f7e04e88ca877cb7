//! A wall of a dwelling has receptacles at known spacings (NEC 210.52(A), read second-hand). Where fewer were measured
//! than it has at least, others may be behind furniture, and a cable of power runs to each.

use super::cabled::{all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::geometry::Span;
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::wall::{End, Wall};
use crate::job::{CodeSet, Purpose};
use crate::plan::Plan;
use crate::plan::survey::PlacedFeature;
use crate::wiring::receptacles::{counts, surely_wanted};

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
    let outlets: Vec<_> = plan.survey.features.iter().filter(is_one).map(|one| one.rect.centre().x).collect();
    // Space by space: an outlet beyond a door serves another.
    let lacks = |space: &Space| {
        let has = outlets.iter().filter(|x| space.across.holds(**x)).count();
        surely_wanted(space.across.length(), space.corners).saturating_sub(has)
    };
    let lacking: usize = spaces(plan, wall).iter().map(lacks).sum();
    let what = CableWhat::FewOutlets { found: outlets.len(), wanted: outlets.len() + lacking };
    (lacking > 0).then(|| told(first, Level::Note, Mend::OnSite, what)).into_iter().collect()
}

/// The wall between two doors or ends.
struct Space {
    across: Span,
    /// At how many of its ends it goes on round an inside corner.
    corners: usize,
}

fn spaces(plan: &Plan, wall: &Wall) -> Vec<Space> {
    let outline = plan.survey.outline;
    let doors = plan.survey.features.iter().filter(|one| one.kind == FeatureKind::Door);
    let mut doors: Vec<Span> = doors.map(|door| door.rect.across()).collect();
    doors.sort_by(|a, b| a.from.mm().total_cmp(&b.from.mm()));
    // An end of which nobody said what it is may be a corner too.
    let goes_on = |end: Option<End>| end.is_none_or(|end| end == End::InsideCorner);
    let mut spaces = Vec::new();
    let (mut from, mut corners) = (outline.left, usize::from(goes_on(wall.left_end)));
    for door in doors {
        spaces.push(Space { across: Span { from, to: door.from.max(from) }, corners });
        (from, corners) = (from.max(door.to), 0);
    }
    corners += usize::from(goes_on(wall.right_end));
    spaces.push(Space { across: Span { from, to: outline.right.max(from) }, corners });
    spaces
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;

    /// The sample's wall is 4000 mm wide, 13.1 ft: between inside corners 1.1 ft are left that none round them serves,
    /// beside outside corners it has two of its own.
    #[test]
    fn a_wall_with_fewer_outlets_than_it_has_is_told() {
        let mut room = Sample::good();
        room.job.codes = Some(CodeSet::Us);
        let told =
            |room: &Sample| -> Vec<What> { room.told(check).into_iter().map(|(_, _, what)| what).collect() };
        let few = |found, wanted| [What::Cable(CableWhat::FewOutlets { found, wanted })];
        let end = |room: &mut Sample, end| {
            (room.wall_mut().left_end, room.wall_mut().right_end) = (Some(end), Some(end));
        };
        end(&mut room, End::InsideCorner);
        assert_eq!(told(&room), few(0, 1));
        room.feature("outlet-1", FeatureKind::Outlet, (200.0, 270.0), (300.0, 410.0), 5.0);
        assert_eq!(told(&room), []);
        end(&mut room, End::OutsideCorner);
        // Too high to count: 5 1/2 ft are 1676 mm.
        room.feature("outlet-2", FeatureKind::Outlet, (3200.0, 3270.0), (1700.0, 1810.0), 5.0);
        assert_eq!(told(&room), few(1, 2));
        // A door 900 wide leaves 2600 and 500 mm, 8.5 and 1.6 ft: one, and it is there.
        room.feature("door-1", FeatureKind::Door, (2600.0, 3500.0), (0.0, 2000.0), 0.0);
        assert_eq!(told(&room), []);
        // 1000 and 2100 mm, 3.3 and 6.9 ft: one each, and both are on the left.
        let features = &mut room.plan.survey.features;
        features.retain(|one| one.kind != FeatureKind::Door);
        room.feature("door-1", FeatureKind::Door, (1000.0, 1900.0), (0.0, 2000.0), 0.0);
        room.feature("outlet-3", FeatureKind::Outlet, (600.0, 670.0), (300.0, 410.0), 5.0);
        assert_eq!(told(&room), few(2, 3));
        room.plan.survey.features.clear();
        room.job.purpose = Some(Purpose::Public);
        assert_eq!(told(&room), []);
        (room.job.purpose, room.job.codes) = (None, Some(CodeSet::Uk));
        assert_eq!(told(&room), []);
    }
}

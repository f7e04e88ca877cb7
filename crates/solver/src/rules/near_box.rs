//! Cables leave a box straight up or down along a stud, or level through bored studs, and nothing on the
//! face shows which. A hole to be used in those places may meet one: switch off and probe.
//!
//! In line: within 12 in of the box's height, within which a cable is fixed to the stud beside its box (NEC 334.30:
//! within 12 in of each box; read as quoted). The other limits are chosen: 4 in from the stud's face to the box, a box
//! being nailed to a stud or let in close to it; 2 in above and below, a bored cable running about level with its box;
//! the same or the next bay, a bay being 24 in where studs do not tell. In a UK job the zones say where.

use super::boxes::{CabledBox, boxes};
use super::hung;
use super::zones::{in_band, in_line};
use crate::finding::{Finding, Level, Mend, What};
use crate::geometry::{Rect, Span};
use crate::handbook::power_wiring::BESIDE_BOX_IN;
use crate::job::wall::Wall;
use crate::job::{CodeSet, Job};
use crate::plan::Plan;
use crate::plan::framing::Stud;
use crate::plan::piece::{HolePlan, Meets};
use crate::tolerance::{SAME_PLACE_MM, WIDEST_BAY_MM};
use crate::units::Length;

/// 4 in: see above.
const IN_LINE_ACROSS_MM: f64 = 101.6;
/// A hole and a cable beside it meet so far from its middle: half an inch (chosen: half of a fastener and half of a
/// cable).
const HOLE_REACH_MM: f64 = 12.7;
/// 2 in: see above.
const LEVEL_WITHIN_MM: f64 = 50.8;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let boxes: Vec<CabledBox<'_>> = boxes(plan).collect();
    if job.codes == Some(CodeSet::Uk) {
        return in_zones(job, wall, plan, &boxes);
    }
    let studs = &plan.framing.studs;
    let mut told = Vec::new();
    for (_, mounted, _) in hung::mounted(job, wall, plan) {
        for hole in mounted.holes.iter().filter(|hole| hole.meets == Meets::Stud) {
            let Some(stud) = hole.stud.and_then(|index| studs.get(index)) else { continue };
            let at = Span { from: hole.place.y, to: hole.place.y };
            for one in &boxes {
                let up_or_down = apart(at, one.rect.upright());
                let in_line = up_or_down.mm() <= Length::inches(BESIDE_BOX_IN.value).mm() + SAME_PLACE_MM
                    && apart(face(stud), one.rect.across()).mm() <= IN_LINE_ACROSS_MM + SAME_PLACE_MM;
                let level = up_or_down.mm() <= LEVEL_WITHIN_MM + SAME_PLACE_MM
                    && apart(face(stud), one.rect.across()).mm() <= 2.0 * WIDEST_BAY_MM
                    && between(studs, stud, one) <= 1;
                if in_line || level {
                    let what = What::NearBox { feature: Some(one.id.clone()), in_line };
                    let subject = hole.subject.clone();
                    told.push(Finding { level: Level::Caution, subject, what, mend: Mend::OnSite });
                }
            }
        }
    }
    told
}

/// In a UK job: the holes in the zones that cables may run in.
fn in_zones(job: &Job, wall: &Wall, plan: &Plan, boxes: &[CabledBox<'_>]) -> Vec<Finding> {
    let mut told = Vec::new();
    for (_, mounted, _) in hung::mounted(job, wall, plan) {
        let takes = |hole: &&HolePlan| matches!(hole.meets, Meets::Stud | Meets::Masonry);
        for hole in mounted.holes.iter().filter(takes) {
            let at = Rect::at(hole.place).grown(Length::millimetres(HOLE_REACH_MM));
            let lined = boxes.iter().filter(|one| in_line(at, one.rect)).map(|one| What::NearBox {
                feature: Some(one.id.clone()),
                in_line: at.across().overlaps(one.rect.across()),
            });
            let band = in_band(plan, at).then_some(What::NearBox { feature: None, in_line: false });
            for what in lined.chain(band) {
                let subject = hole.subject.clone();
                told.push(Finding { level: Level::Caution, subject, what, mend: Mend::OnSite });
            }
        }
    }
    told
}

/// The stud's face.
fn face(stud: &Stud) -> Span {
    Span::new(stud.left, stud.right)
}

/// The clear distance between two stretches; 0 where they meet.
fn apart(a: Span, b: Span) -> Length {
    (b.from - a.to).max(a.from - b.to).max(Length::default())
}

/// How many studs stand between a stud and a box: none where the box is in a bay beside the stud, one where
/// it is in the bay after.
fn between(studs: &[Stud], stud: &Stud, one: &CabledBox<'_>) -> usize {
    let way = Span::new(stud.centre, one.rect.centre().x);
    studs.iter().filter(|other| way.from < other.centre && other.centre < way.to).count()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::feature::FeatureKind;
    use crate::job::hidden::HiddenKind;
    use crate::subject::Id;

    /// What is told of a box of 70 mm by 110 mm, at `off` to the outside of the outer face of either hole's
    /// stud and with its upper edge at `top`; the same on both sides.
    fn told_beside(off: f64, top: f64) -> Option<bool> {
        let both = [
            ("hole-1", (1800.0 - 19.05 - off - 70.0, 1800.0 - 19.05 - off)),
            ("hole-2", (2200.0 + 19.05 + off, 2200.0 + 19.05 + off + 70.0)),
        ];
        let told = both.map(|(hole, across)| {
            let mut room = Sample::good();
            room.feature("outlet-1", FeatureKind::Outlet, across, (top - 110.0, top), 0.0);
            let told = room.told(check);
            let own = told.into_iter().find(|(_, subject, _)| *subject == format!("display-1.{hole}"));
            own.map(|(level, _, what)| {
                assert_eq!(level, Level::Caution);
                let What::NearBox { feature, in_line } = what else { panic!("{what:?}") };
                assert_eq!(feature, Some(Id::new("outlet-1")));
                in_line
            })
        });
        assert_eq!(told[0], told[1], "left and right are alike");
        told[0]
    }

    #[test]
    fn a_box_on_the_studs_line_is_told_within_12_inches() {
        assert!(Sample::good().told(check).is_empty());
        // The holes are at 1630.
        assert_eq!(told_beside(0.0, 1630.0 - 304.8), Some(true));
        assert_eq!(told_beside(0.0, 1630.0 - 305.0), None);
        assert_eq!(told_beside(0.0, 1630.0 + 110.0 + 304.8), Some(true));
        assert_eq!(told_beside(101.6, 1630.0 - 200.0), Some(true));
        assert_eq!(told_beside(102.0, 1630.0 - 200.0), None);
    }

    #[test]
    fn in_a_uk_job_the_zones_say_where_cables_may_run() {
        let told = |feature: Option<(f64, f64)>| {
            let mut room = Sample::good();
            room.job.codes = Some(CodeSet::Uk);
            if let Some((left, top)) = feature {
                room.feature("outlet-1", FeatureKind::Outlet, (left, left + 70.0), (top - 110.0, top), 0.0);
            }
            let told = room.told(check);
            told.into_iter().map(|(_, subject, what)| (subject, what)).collect::<Vec<_>>()
        };
        assert_eq!(told(None), []);
        // Straight below the hole at 1800, however far.
        let below = What::NearBox { feature: Some(Id::new("outlet-1")), in_line: true };
        assert_eq!(told(Some((1770.0, 400.0))), [("display-1.hole-1".to_owned(), below)]);
        assert_eq!(told(Some((1700.0, 400.0))), [], "30 mm beside its line");
        // Level with both, however far.
        let level = What::NearBox { feature: Some(Id::new("outlet-1")), in_line: false };
        let both = ["hole-1", "hole-2"].map(|hole| (format!("display-1.{hole}"), level.clone()));
        assert_eq!(told(Some((3800.0, 1680.0))), both);
    }

    #[test]
    fn a_box_of_the_other_side_is_cabled_in_the_same_bays() {
        for codes in [None, Some(CodeSet::Uk)] {
            let mut room = Sample::good();
            room.job.codes = codes;
            let hole = room.mounted().holes[0].clone();
            room.hide_behind_first_hole("box-1", HiddenKind::BoxBehind);
            room.mounted().holes[0] = hole;
            room.plan.survey.hidden[0].rect = super::super::sample::rect((1730.0, 1800.0), (1400.0, 1500.0));
            let told = room.told(check);
            let below = What::NearBox { feature: Some(Id::new("box-1")), in_line: true };
            assert_eq!(told, [(Level::Caution, "display-1.hole-1".to_owned(), below)], "{codes:?}");
            room.plan.survey.hidden[0].kind = HiddenKind::Duct;
            assert_eq!(room.told(check), []);
        }
    }

    #[test]
    fn a_box_on_the_holes_level_is_told_within_two_bays() {
        assert_eq!(told_beside(150.0, 1630.0 - 50.8), Some(false));
        assert_eq!(told_beside(150.0, 1630.0 - 51.0), None);
        assert_eq!(told_beside(500.0, 1630.0), Some(false), "the next bay");
        assert_eq!(told_beside(900.0, 1630.0), None, "the bay after that");
    }
}

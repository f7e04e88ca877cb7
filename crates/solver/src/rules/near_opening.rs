//! Cables leave a box up or down, or level through bored studs, where nothing on the face shows it. In a
//! UK job the zones of BS 7671 522.6.202 say where: straight up, down and level from each accessory, within 150 mm of
//! the wall's top (read second-hand) or of an inside corner (from memory). Else within 12 in above or below a box (NEC
//! 334.30, read as quoted).

use super::boxes::{CabledBox, boxes};
use super::cabled::{all, told};
use super::zones::{in_band, in_line};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::geometry::Rect;
use crate::handbook::power_wiring::BESIDE_BOX_IN;
use crate::job::wall::Wall;
use crate::job::{CodeSet, Job};
use crate::plan::Plan;
use crate::subject::Id;
use crate::units::Length;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let mut found = Vec::new();
    for of in all(job, wall, plan) {
        for (rect, exit) in of.openings() {
            let near = near(job, plan, rect);
            let mut add = |feature: Option<Id>| {
                let what = CableWhat::NearOpening { feature, exit };
                found.push(told(&of, Level::Caution, Mend::OnSite, what));
            };
            near.for_each(|one| add(Some(one.id.clone())));
            if job.codes == Some(CodeSet::Uk) && in_band(plan, rect) {
                add(None);
            }
        }
        for rect in of.passages() {
            let near = near(job, plan, rect).map(|one| CableWhat::NearPassage(one.id.clone()));
            found.extend(near.map(|what| told(&of, Level::Caution, Mend::OnSite, what)));
        }
    }
    found
}

/// The boxes of which a cable may be expected there.
fn near<'a>(job: &'a Job, plan: &'a Plan, at: Rect) -> impl Iterator<Item = CabledBox<'a>> {
    boxes(plan).filter(move |one| is_near(job, at, one.rect))
}

/// Whether a cable of a box may be expected at an opening.
fn is_near(job: &Job, opening: Rect, one: Rect) -> bool {
    if job.codes == Some(CodeSet::Uk) {
        return in_line(opening, one);
    }
    let within = Length::inches(BESIDE_BOX_IN.value);
    let reach = Rect { bottom: one.bottom - within, top: one.top + within, ..one };
    reach.overlaps(opening)
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::job::feature::FeatureKind;
    use crate::job::hidden::HiddenKind;
    use crate::job::wall::End;

    /// The same told of another box.
    fn told_of(id: &str, told: Vec<(Level, String, What)>) -> Vec<(Level, String, What)> {
        let of = |what| match what {
            What::Cable(CableWhat::NearOpening { exit, .. }) => {
                What::Cable(CableWhat::NearOpening { feature: Some(Id::new(id)), exit })
            }
            other => other,
        };
        told.into_iter().map(|(level, subject, what)| (level, subject, of(what))).collect()
    }

    #[test]
    fn a_cable_of_a_box_is_expected_beside_it() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        // The exit is from 368 to 444 high and from 1950 to 2000 across.
        room.feature("outlet-1", FeatureKind::Outlet, (1960.0, 2030.0), (748.0, 860.0), 0.0);
        let outlet = Some(Id::new("outlet-1"));
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::NearOpening { feature: outlet.clone(), exit: true })
            )]
        );
        room.plan.survey.features[0].rect = super::super::sample::rect((1960.0, 2030.0), (900.0, 1000.0));
        assert!(room.told(check).is_empty());
        room.job.codes = Some(CodeSet::Uk);
        let told = room.told(check);
        assert_eq!(told.len(), 2, "straight up and down from the box, both openings: {told:?}");
        room.plan.survey.features.clear();
        room.hide_behind_first_hole("box-1", HiddenKind::BoxBehind);
        room.plan.survey.hidden[0].rect = super::super::sample::rect((1960.0, 2030.0), (900.0, 1000.0));
        assert_eq!(room.told(check), told_of("box-1", told), "a box let in from the other side is no other");
        room.plan.survey.hidden.clear();
        room.plan.survey.outline.right = super::super::sample::mm(2100.0);
        room.plan.survey.right_end = End::InsideCorner;
        assert_eq!(room.told(check).len(), 2, "beside an inside corner");
    }
}

//! Outlets and switches that not everyone reaches: in places of work and open to all (2010 ADA Standards 308), and in
//! new dwellings of the United Kingdom (Approved Document M). What a piece covers serves that piece alone, and is left
//! out (an older guideline, A4.27.3).

use crate::clearances::reach::{Reach, is_reached, reached};
use crate::finding::{Finding, Level, Mend, What};
use crate::job::feature::FeatureKind;
use crate::job::wall::Wall;
use crate::job::{CodeSet, Job, Purpose};
use crate::plan::Plan;

pub(super) fn check(job: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let reach = match (job.purpose, job.codes) {
        (Some(Purpose::Workplace | Purpose::Public), _) => Reach::Public,
        (_, Some(CodeSet::Uk)) => Reach::NewDwelling,
        _ => return Vec::new(),
    };
    let served = plan.survey.features.iter().filter(|feature| {
        let is_covered = plan.pieces.iter().any(|piece| piece.outline.overlaps(feature.rect));
        matches!(feature.kind, FeatureKind::Outlet | FeatureKind::Switch) && !is_covered
    });
    let told = served.filter_map(|feature| {
        let middle = feature.rect.centre();
        let height = middle.y - plan.survey.floor.y_at(middle.x);
        // What a tape shows as the limit is the limit.
        let (lowest, highest, _) = reached(reach);
        let on_it =
            [lowest, highest].map(|limit| plan.style.steps(limit)).contains(&plan.style.steps(height));
        (!on_it && !is_reached(reach, height)).then(|| Finding {
            level: Level::Note,
            subject: feature.id.whole(),
            what: What::OutOfReach { height, reach },
            mend: Mend::OnSite,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn an_outlet_too_low_is_told_but_for_one_that_a_piece_covers() {
        let mut room = Sample::good();
        room.feature("outlet-1", FeatureKind::Outlet, (300.0, 370.0), (240.0, 360.0), 0.0);
        room.feature("outlet-2", FeatureKind::Outlet, (500.0, 570.0), (400.0, 520.0), 0.0);
        room.feature("outlet-3", FeatureKind::Outlet, (2000.0, 2070.0), (1500.0, 1620.0), 0.0);
        assert!(room.told(check).is_empty(), "a home");
        room.job.purpose = Some(Purpose::Workplace);
        let told: Vec<String> = room.told(check).into_iter().map(|(_, subject, _)| subject).collect();
        assert_eq!(told, ["outlet-1"]);
        // The second's middle is at 460, the first's at 300: both within what neither set asks for a home elsewhere.
        room.job.purpose = None;
        room.job.codes = Some(CodeSet::Uk);
        let told: Vec<String> = room.told(check).into_iter().map(|(_, subject, _)| subject).collect();
        assert_eq!(told, ["outlet-1"], "a new dwelling");
    }
}

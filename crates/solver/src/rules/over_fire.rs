//! Above a fireplace a display may get hotter than its maker allows. What was read is about combustible trim (IRC
//! R1001.11): shown as an analogy, never a pass.

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::feature::FeatureKind;
use crate::job::piece::PieceKind;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let displays = plan.pieces.iter().filter(|piece| piece.kind == PieceKind::Display);
    let told = displays.filter(|piece| {
        plan.survey.features.iter().any(|feature| {
            let across = feature.rect.across().overlaps(piece.outline.across());
            let is_under = match feature.kind {
                FeatureKind::Mantel => feature.rect.top <= piece.outline.centre().y,
                // A breast without a mantel may have its fire behind any part of it.
                FeatureKind::ChimneyBreast => feature.rect.overlaps(piece.outline),
                _ => false,
            };
            across && is_under
        })
    });
    let finding = |piece: &crate::plan::piece::PiecePlan| Finding {
        level: Level::Caution,
        subject: piece.id.whole(),
        what: What::OverFire,
        mend: Mend::OnSite,
    };
    told.map(finding).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn above_a_mantel_or_on_a_breast_it_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.feature("mantel-1", FeatureKind::Mantel, (3000.0, 3900.0), (1000.0, 1080.0), 150.0);
        assert!(room.told(check).is_empty(), "beside it");
        room.feature("mantel-2", FeatureKind::Mantel, (1500.0, 2500.0), (1000.0, 1080.0), 150.0);
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), What::OverFire)]);
        room.plan.survey.features.clear();
        room.feature("breast-1", FeatureKind::ChimneyBreast, (1200.0, 2800.0), (0.0, 2400.0), 300.0);
        assert_eq!(room.told(check).len(), 1);
    }
}

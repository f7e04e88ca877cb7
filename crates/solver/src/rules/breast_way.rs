//! A cable in a chimney breast may lie at a flue, and heat ends it (chosen: have the flue found first).

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = all(job, wall, plan);
    let is_in_breast = |of: &&Cabled<'_>| {
        let middle = of.hung.at.outline.centre();
        of.in_wall().is_some() && plan.survey.breast_at(middle.x, Some(middle.y)).is_some()
    };
    let in_breast = all.iter().filter(is_in_breast);
    in_breast.map(|of| told(of, Level::Caution, Mend::OnSite, CableWhat::BreastWay)).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::job::feature::FeatureKind;
    #[test]
    fn a_way_in_a_breast_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.feature("breast-1", FeatureKind::ChimneyBreast, (1200.0, 2800.0), (0.0, 2400.0), 300.0);
        assert_eq!(
            room.told(check),
            [(Level::Caution, "display-1".to_owned(), What::Cable(CableWhat::BreastWay))]
        );
    }
}

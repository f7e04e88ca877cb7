//! Something stands in the straight drop: the plan goes another way, or through it (a fire block), and says so, since
//! whoever opens the wall will meet it.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::cable::Crosses;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().filter_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Option<Finding> {
    let by = of.cable.in_the_way.clone()?;
    let way = of.in_wall()?;
    let passed = way.crosses.iter().any(|crosses| matches!(crosses, Crosses::Hidden(id, ..) if *id == by));
    Some(told(of, Level::Note, Mend::OnSite, CableWhat::BayBlocked { by, passed }))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::geometry::Point;
    use crate::job::hidden::HiddenKind;
    use crate::subject::Id;
    #[test]
    fn what_stands_in_the_way_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        let by = Id::new("block-1");
        cable.in_the_way = Some(by.clone());
        assert_eq!(
            room.told(check),
            [(
                Level::Note,
                "display-1".to_owned(),
                What::Cable(CableWhat::BayBlocked { by: by.clone(), passed: false })
            )]
        );
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        cable.way.as_mut().unwrap().crosses.push(Crosses::Hidden(
            by.clone(),
            HiddenKind::FireBlock,
            Point::default(),
        ));
        assert_eq!(
            room.told(check),
            [(
                Level::Note,
                "display-1".to_owned(),
                What::Cable(CableWhat::BayBlocked { by: by.clone(), passed: true })
            )]
        );
    }
}

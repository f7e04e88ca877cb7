//! Cables that pass a steel stud's factory opening lie in a bushing or grommet there (common practice, no source; NEC
//! 300.4(B)(1), from memory, says so of power cables).

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::plan::cable::Crosses;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().flat_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Vec<Finding> {
    let crosses = of.in_wall().map(|way| way.crosses.as_slice()).unwrap_or_default();
    let openings = crosses.iter().filter_map(|crosses| match crosses {
        Crosses::Hidden(id, HiddenKind::StudOpening, _) => Some(id.clone()),
        _ => None,
    });
    openings.map(|opening| told(of, Level::Caution, Mend::OnSite, CableWhat::Bushing { opening })).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::geometry::Point;
    use crate::subject::Id;

    #[test]
    fn an_opening_that_is_passed_has_a_bushing() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        let opening = Id::new("opening-1");
        let passed = Crosses::Hidden(opening.clone(), HiddenKind::StudOpening, Point::default());
        cable.way.as_mut().unwrap().crosses.push(passed);
        assert_eq!(
            room.told(check),
            [(Level::Caution, "display-1".to_owned(), What::Cable(CableWhat::Bushing { opening }))]
        );
    }
}

//! A way inside the wall that is not known to be allowed: what it is built of, what stands beyond it, what would be
//! bored.

use super::cabled::{all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = all(job, wall, plan);
    let unknown = all.iter().filter(|of| !of.cable.unknown.is_empty());
    unknown
        .map(|of| {
            let why = of.cable.unknown.clone();
            told(of, Level::Caution, Mend::Measure, CableWhat::WayNotKnown { why })
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::plan::cable::Unknown;

    #[test]
    fn what_the_way_hangs_on_is_told() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        let why = vec![Unknown::Flange, Unknown::FireRating];
        room.plan.pieces[0].cable.as_mut().unwrap().unknown.clone_from(&why);
        let what = What::Cable(CableWhat::WayNotKnown { why });
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), what)]);
    }
}

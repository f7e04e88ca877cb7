//! The tool plans and does not certify. Told with every plan, so that no plan is handed on without it: what
//! holds is for the mount's maker, local codes and licensed trades to say (chosen).

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_job: &Job, wall: &Wall, _plan: &Plan) -> Vec<Finding> {
    vec![Finding { level: Level::Note, subject: wall.id.whole(), what: What::PlansOnly, mend: Mend::OnSite }]
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn it_is_told_once_whatever_hangs() {
        let mut room = Sample::good();
        let told = vec![(Level::Note, "wall-1".to_owned(), What::PlansOnly)];
        assert_eq!(room.told(check), told);
        room.plan.pieces.clear();
        assert_eq!(room.told(check), told);
    }
}

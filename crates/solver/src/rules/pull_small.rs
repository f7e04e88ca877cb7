//! A pull set lower than the push that a standing display of the same mass has to withstand (IEC 62368-1:2018 clause
//! 8.6.5) is too little to count with: somebody pulls at what hangs as at what stands.

use super::hung;
use crate::clearances::steady::push;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::piece::PieceKind;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let displays =
        hung::all(job, wall, plan).into_iter().filter(|hung| hung.piece.kind == PieceKind::Display);
    let told = displays.filter_map(|hung| {
        let push = push(hung.piece.mass?);
        (job.settings.pull().n() < push.n()).then(|| Finding {
            level: Level::Caution,
            subject: hung.at.id.whole(),
            what: What::PullSmall { push },
            mend: Mend::Measure,
        })
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::units::{Force, Mass};

    #[test]
    fn a_pull_under_a_fifth_of_the_weight_is_told() {
        let mut room = Sample::good();
        room.job.pieces[0].mass = Some(Mass::kilograms(30.0));
        assert!(room.told(check).is_empty(), "220 N unless set");
        // 30 kg x 9.80665 x 0.2 = 58.84 N.
        room.job.settings.pull = Some(Force::newtons(58.9));
        assert!(room.told(check).is_empty());
        room.job.settings.pull = Some(Force::newtons(58.8));
        assert_eq!(room.told(check).len(), 1);
    }
}

//! An opening in an outside wall, or one with filled bays or a vapour barrier, breaks a seal: close it again round the
//! cable (IRC R702.7 asks for the barrier by climate; read).

use super::cabled::{all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let insulated = wall.insulated == Some(true);
    let barrier = wall.vapour_barrier == Some(true);
    let outside = wall.beyond == Some(crate::job::wall::Beyond::Outside);
    if !(insulated || barrier || outside) {
        return Vec::new();
    }
    let level = if barrier || outside { Level::Caution } else { Level::Note };
    let all = all(job, wall, plan);
    let opened = all.iter().filter(|of| of.in_wall().is_some());
    opened
        .map(|of| told(of, level, Mend::OnSite, CableWhat::SealPierced { insulated, barrier, outside }))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;

    #[test]
    fn what_seals_the_wall_is_closed_again() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.wall_mut().insulated = Some(true);
        assert_eq!(
            room.told(check),
            [(
                Level::Note,
                "display-1".to_owned(),
                What::Cable(CableWhat::SealPierced { insulated: true, barrier: false, outside: false })
            )]
        );
        room.wall_mut().vapour_barrier = Some(true);
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::SealPierced { insulated: true, barrier: true, outside: false })
            )]
        );
        room.plan.pieces[0].cable.as_mut().unwrap().way = None;
        assert!(room.told(check).is_empty(), "nothing is opened");
    }
}

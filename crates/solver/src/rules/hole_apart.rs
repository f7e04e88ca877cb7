//! Drilled holes that are not the plate's own distance apart hold it where they leave the least, and no fastener is
//! forced through a hole of the plate that does not stand over its own: that bends both.

use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(_: &Job, _: &Wall, plan: &Plan) -> Vec<Finding> {
    let graduation = plan.style.length_of(1);
    let held = plan.pieces.iter().filter_map(|piece| piece.mount.as_ref()?.held.as_ref());
    let apart = held.flat_map(|held| &held.misfits).filter(|misfit| misfit.by() > graduation);
    apart
        .map(|misfit| Finding {
            level: Level::Stop,
            subject: misfit.hole.clone(),
            what: What::HoleApart { right: misfit.right, up: misfit.up },
            mend: Mend::OnSite,
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::{Sample, mm};
    use super::*;
    use crate::plan::piece::{Held, HeldBy, Misfit};

    #[test]
    fn a_hole_that_the_plate_does_not_fit_stops_the_job() {
        let mut room = Sample::good();
        let wished = room.plan.pieces[0].frame.origin;
        let hole = room.mounted().holes[0].subject.clone();
        let mut off = |right: f64, up: f64| {
            let misfits = vec![Misfit { hole: hole.clone(), right: mm(right), up: mm(up) }];
            room.mounted().held =
                Some(Held { by: HeldBy::Holes, across: true, upright: true, wished, misfits });
            room.told(check)
        };
        assert!(off(1.1, -1.1).is_empty());
        let what = What::HoleApart { right: mm(1.2), up: mm(-1.2) };
        assert_eq!(off(1.2, -1.2), [(Level::Stop, "display-1.hole-1".to_owned(), what)]);
    }
}

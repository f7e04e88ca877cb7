//! Glass, or a panel with nothing behind it, has nothing that a fastener could hold in, and glass breaks when it is
//! drilled (common practice, no source). Nothing here reckons what such a wall carries, so a piece fixed to it
//! stops the job (chosen, on the safe side).

use super::hung;
use super::plane::framing_at;
use crate::finding::{Finding, Level, Mend, What};
use crate::job::Job;
use crate::job::framing::WallFraming;
use crate::job::wall::Wall;
use crate::plan::Plan;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let on_nothing = hung::mounted(job, wall, plan).filter(|(_, mounted, _)| {
        let framing = framing_at(wall, &plan.survey, mounted.plate.centre());
        matches!(framing, Some(WallFraming::NoFraming))
    });
    let told = on_nothing.map(|(hung, ..)| Finding {
        level: Level::Stop,
        subject: hung.at.id.whole(),
        what: What::NoFraming,
        mend: Mend::Choose,
    });
    told.collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::job::feature::FeatureKind;

    #[test]
    fn a_piece_on_a_wall_without_framing_stops_the_job() {
        let stop = [(Level::Stop, "display-1".to_owned(), What::NoFraming)];
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.wall_mut().framing = Some(WallFraming::NoFraming);
        assert_eq!(room.told(check), stop);

        room.feature("breast-1", FeatureKind::ChimneyBreast, (1200.0, 2800.0), (0.0, 2400.0), 300.0);
        assert_eq!(room.told(check), stop, "a breast is as the wall where nobody says otherwise");
        room.wall_mut().features[0].framing = Some(WallFraming::NotKnown);
        assert!(room.told(check).is_empty(), "the breast is something else");
    }
}

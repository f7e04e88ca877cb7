//! A bored hole whose edge is within 1 1/4 in of the stud's face wants a steel plate (NEC 300.4(A)(1), written for
//! power wiring; for low voltage shown as good practice).

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::handbook::boring::PLATE_IN;
use crate::job::Job;
use crate::job::wall::Wall;
use crate::ledger::{Blank, Given};
use crate::plan::Plan;
use crate::units::Length;
use crate::wiring::bored::{edge_left, wants_plate};

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    all(job, wall, plan).iter().filter_map(of).collect()
}

fn of(of: &Cabled<'_>) -> Option<Finding> {
    let bored = of.in_wall()?.cost.studs_bored > 0;
    let depth = Given::measured(of.wood()?.depth?);
    let left = edge_left(&mut Blank, depth, of.cable.bore).value;
    let thick = Length::inches(PLATE_IN.value);
    (bored && wants_plate(&mut Blank, depth, of.cable.bore))
        .then(|| told(of, Level::Note, Mend::OnSite, CableWhat::NailPlate { left, thick }))
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::job::framing::{WallFraming, WoodStuds};

    #[test]
    fn a_hole_near_the_face_wants_a_plate() {
        let mut room = Sample::good();
        let depth = Some(Length::inches(3.5));
        room.wall_mut().framing = Some(WallFraming::Wood(WoodStuds { depth, ..WoodStuds::default() }));
        let cable = room.plan.pieces[0].cable.as_mut().unwrap();
        cable.bore = Given::measured(Length::inches(1.125));
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().way.as_mut().unwrap().cost.studs_bored = 1;
        // 1 1/8 in in the middle of 3 1/2 in leaves 1 3/16 in.
        let left = (Length::inches(3.5) - Length::inches(1.125)) / 2.0;
        assert_eq!(
            room.told(check),
            [(
                Level::Note,
                "display-1".to_owned(),
                What::Cable(CableWhat::NailPlate { left, thick: Length::inches(0.0625) })
            )]
        );
        room.plan.pieces[0].cable.as_mut().unwrap().bore = Given::measured(Length::inches(1.0));
        assert!(room.told(check).is_empty());
    }
}

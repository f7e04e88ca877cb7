//! A box that is deeper than the wall behind its face does not go in: stud and front together, to the back board.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::wall::Wall;
use crate::ledger::{Blank, Given};
use crate::plan::Plan;
use crate::units::Length;
use crate::wiring::boxed::depth_behind;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let front = wall.front.as_ref().and_then(|front| front.thickness);
    let all = all(job, wall, plan);
    all.iter().filter(|of| of.in_wall().is_some()).flat_map(|one| of(one, front)).collect()
}

fn of(of: &Cabled<'_>, front: Option<Length>) -> Vec<Finding> {
    let Some(depth) = of.depth() else { return Vec::new() };
    // What stands in front and was not measured counts as nothing.
    let front = Given::measured(front.unwrap_or_default());
    let room = depth_behind(&mut Blank, front, Given::measured(depth)).value;
    let boxes = of.cable.box_depths.iter().zip([false, true]);
    let deep = boxes.filter_map(|(deep, exit)| deep.filter(|deep| *deep > room).map(|deep| (deep, exit)));
    deep.map(|(deep, exit)| told(of, Level::Stop, Mend::Choose, CableWhat::BoxDeep { deep, room, exit }))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::job::framing::{Front, WallFraming, WoodStuds};
    use crate::units::Length;
    #[test]
    fn a_box_deeper_than_the_wall_stops() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        // 3 1/2 in of stud and 1/2 in of board: 4 in; a box of 3 5/8 in leaves 3/8 in.
        let depth = Some(Length::inches(3.5));
        room.wall_mut().framing = Some(WallFraming::Wood(WoodStuds { depth, ..WoodStuds::default() }));
        room.wall_mut().front = Some(Front { layers: Vec::new(), thickness: Some(Length::inches(0.5)) });
        room.plan.pieces[0].cable.as_mut().unwrap().box_depths[0] = Some(Length::inches(3.625));
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().box_depths[0] = Some(Length::inches(4.25));
        let (deep, room_there) = (Length::inches(4.25), Length::inches(4.0));
        assert_eq!(
            room.told(check),
            [(
                Level::Stop,
                "display-1".to_owned(),
                What::Cable(CableWhat::BoxDeep { deep, room: room_there, exit: false })
            )]
        );
    }
}

//! A box that is deeper than the wall behind its face does not go in: stud and front together, to the back board. Where
//! one of these was not measured it may not go in: measure first.

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::option::Opening;
use crate::job::wall::Wall;
use crate::ledger::{Blank, Given};
use crate::plan::Plan;
use crate::units::Length;
use crate::wiring::boxed::{depth_behind, to_spare};

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let all = all(job, wall, plan);
    let inside = all.iter().filter(|of| of.in_wall().is_some());
    inside
        .flat_map(|one| {
            // A chimney breast has a front of its own.
            let middle = one.hung.at.outline.centre();
            let breast = plan.survey.breast_at(middle.x, Some(middle.y)).map(|breast| &breast.id);
            of(one, wall.front_on(breast).and_then(|front| front.thickness))
        })
        .collect()
}

fn of(of: &Cabled<'_>, front: Option<Length>) -> Vec<Finding> {
    let way = of.hung.hanging.map(|hanging| &hanging.way);
    let kinds = [way.and_then(|way| way.entry_kind.as_ref()), way.and_then(|way| way.exit_kind.as_ref())];
    let boxes = of.cable.openings.iter().zip(kinds).zip([false, true]);
    let each = boxes.filter_map(|((size, kind), exit)| match size.depth {
        Some(deep) => one(of, front, deep, exit),
        // A box of the kit has a depth, measured or not.
        None => matches!(kind, Some(Opening::Stocked(_)))
            .then(|| told(of, Level::Caution, Mend::Measure, CableWhat::BoxNotMeasured { exit })),
    });
    each.collect()
}

fn one(of: &Cabled<'_>, front: Option<Length>, deep: Length, exit: bool) -> Option<Finding> {
    // What stands in front and was not measured counts as nothing: the box may still go in.
    let in_front = Given::measured(front.unwrap_or_default());
    let room = of.depth().map(|depth| depth_behind(&mut Blank, in_front, Given::measured(depth)));
    let fits = |room| to_spare(&mut Blank, room, Given::measured(deep)).value >= Length::default();
    if room.is_some_and(fits) {
        return None;
    }
    let no_front = front.is_none();
    let what = CableWhat::BoxDeep { deep, room: room.map(|room| room.value), no_front, exit };
    let (level, mend) = match room.is_none() || no_front {
        true => (Level::Caution, Mend::Measure),
        false => (Level::Stop, Mend::Choose),
    };
    Some(told(of, level, mend, what))
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
        room.plan.pieces[0].cable.as_mut().unwrap().openings[0].depth = Some(Length::inches(3.625));
        assert!(room.told(check).is_empty());
        room.plan.pieces[0].cable.as_mut().unwrap().openings[0].depth = Some(Length::inches(4.25));
        let (deep, room_there) = (Length::inches(4.25), Length::inches(4.0));
        assert_eq!(
            room.told(check),
            [(
                Level::Stop,
                "display-1".to_owned(),
                What::Cable(CableWhat::BoxDeep {
                    deep,
                    room: Some(room_there),
                    no_front: false,
                    exit: false
                })
            )]
        );
        room.wall_mut().front = None;
        let told = room.told(check);
        assert_eq!(told[0].0, Level::Caution, "{told:?}");
        room.wall_mut().framing = Some(WallFraming::Wood(WoodStuds::default()));
        let what = CableWhat::BoxDeep { deep, room: None, no_front: true, exit: false };
        assert_eq!(room.told(check), [(Level::Caution, "display-1".to_owned(), What::Cable(what))]);
    }
}

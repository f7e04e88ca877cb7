//! A bay over 10 ft high has a fire block between its plates (IRC R302.11, item 1, read as quoted), and a cable fished
//! through it meets that block. Where fewer were found than a bay has, whoever fishes looks for them first.

use super::cabled::{all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::job::Job;
use crate::job::hidden::HiddenKind;
use crate::job::wall::Wall;
use crate::plan::Plan;
use crate::wiring::blocks::expected;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    let each = expected(plan.survey.outline.height());
    let blocks = || plan.survey.hidden.iter().filter(|hidden| hidden.kind == HiddenKind::FireBlock);
    let all = all(job, wall, plan);
    let waiting = all.iter().filter(|of| {
        of.in_wall().is_some_and(|way| {
            // A block in another bay says nothing of this one.
            let (from, to) = way.run.iter().fold((way.exit.left, way.exit.right), |(from, to), corner| {
                (from.min(corner.x), to.max(corner.x))
            });
            blocks().filter(|block| block.rect.left <= to && from <= block.rect.right).count() < each
        })
    });
    waiting.map(|of| told(of, Level::Note, Mend::OnSite, CableWhat::BlocksExpected { each })).collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;
    use crate::units::Length;

    #[test]
    fn over_ten_feet_a_block_is_expected() {
        let mut room = Sample::good();
        assert!(room.told(check).is_empty());
        room.plan.survey.outline.top = room.plan.survey.outline.bottom + Length::inches(120.0);
        assert!(room.told(check).is_empty(), "10 ft have none");
        room.plan.survey.outline.top = room.plan.survey.outline.bottom + Length::inches(120.1);
        let what = What::Cable(CableWhat::BlocksExpected { each: 1 });
        assert_eq!(room.told(check), [(Level::Note, "display-1".to_owned(), what)]);
        room.hide_behind_first_hole("block-1", HiddenKind::FireBlock);
        // The cables run at 1900 to 2000: a block in another bay says nothing of theirs.
        let run = room.plan.pieces[0].cable.as_ref().unwrap().way.as_ref().unwrap().run.clone();
        let block = room.plan.survey.hidden.last_mut().unwrap();
        (block.rect.left, block.rect.right) = (Length::millimetres(300.0), Length::millimetres(600.0));
        assert_eq!(room.told(check).len(), 1, "{run:?}");
        let block = room.plan.survey.hidden.last_mut().unwrap();
        (block.rect.left, block.rect.right) = (run[0].x, run[0].x);
        assert!(room.told(check).is_empty(), "it was found");
    }
}

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
    let hidden = &plan.survey.hidden;
    let found = hidden.iter().filter(|hidden| hidden.kind == HiddenKind::FireBlock).count();
    let each = expected(plan.survey.outline.height());
    let all = all(job, wall, plan);
    let waiting = all.iter().filter(|of| of.in_wall().is_some() && found < each);
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
        assert!(room.told(check).is_empty(), "it was found");
    }
}

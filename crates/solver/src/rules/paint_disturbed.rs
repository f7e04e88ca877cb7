//! 6 square feet of paint from before 1978 disturbed in one room, or more, is no minor repair (40 CFR 745.83; all work
//! within 30 days counts together). A year not known counts as old. A patch counts as 12 by 12 in (chosen).

use super::cabled::{Cabled, all, told};
use crate::finding::cable::CableWhat;
use crate::finding::{Finding, Level, Mend};
use crate::handbook::old_paint::FROM_YEAR;
use crate::job::Job;
use crate::job::wall::Wall;
use crate::ledger::{Blank, Given};
use crate::plan::Plan;
use crate::units::Length;
use crate::wiring::paint::{disturbed_mm2, is_surely_minor};

/// 12 in: see above.
const PATCH_IN: f64 = 12.0;

pub(super) fn check(job: &Job, wall: &Wall, plan: &Plan) -> Vec<Finding> {
    if job.year_built.is_some_and(|year| year >= FROM_YEAR.value) {
        return Vec::new();
    }
    let all = all(job, wall, plan);
    let mut cuts = Vec::new();
    for of in &all {
        let sizes = of.cable.openings.iter().map(|size| (size.width, size.height));
        let patches = of.in_wall().map_or(0, |way| way.cost.patches);
        cuts.extend(sizes.filter(|_| of.in_wall().is_some()));
        let patch = Given::chosen(Length::inches(PATCH_IN));
        cuts.extend((0..patches).map(|_| (patch, patch)));
    }
    let disturbed = disturbed_mm2(&mut Blank, &cuts);
    if is_surely_minor(disturbed.value) {
        return Vec::new();
    }
    // Square feet in hundredths: a wall has few of them.
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "not negative, and small")]
    let hundredths = (disturbed.value / (304.8 * 304.8) * 100.0).round() as u32;
    let about = !disturbed.label.bears(false);
    let what = || CableWhat::PaintDisturbed { hundredths, about };
    let first: Option<&Cabled<'_>> = all.first();
    first.map(|of| told(of, Level::Caution, Mend::OnSite, what())).into_iter().collect()
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;
    use crate::finding::What;

    #[test]
    fn six_square_feet_of_old_paint_are_told() {
        let mut room = Sample::good();
        room.job.year_built = Some(1930);
        assert!(room.told(check).is_empty());
        // Six patches of a square foot, and two openings of 50 by 76 mm.
        room.plan.pieces[0].cable.as_mut().unwrap().way.as_mut().unwrap().cost.patches = 6;
        assert_eq!(
            room.told(check),
            [(
                Level::Caution,
                "display-1".to_owned(),
                What::Cable(CableWhat::PaintDisturbed { hundredths: 608, about: false })
            )]
        );
        room.job.year_built = Some(1978);
        assert!(room.told(check).is_empty());
    }
}

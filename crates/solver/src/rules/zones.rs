//! Where BS 7671 522.6.202 lets cables run unseen: straight up, down and level from each accessory, within 150 mm of
//! the wall's top (read second-hand) or of an inside corner (from memory).

use crate::geometry::Rect;
use crate::handbook::power_wiring::{ZONE_AT_CORNER_MM, ZONE_AT_TOP_MM};
use crate::job::wall::End;
use crate::plan::Plan;
use crate::units::Length;

/// Whether something is straight above, below or beside an accessory.
pub(super) fn in_line(one: Rect, accessory: Rect) -> bool {
    one.across().overlaps(accessory.across()) || one.upright().overlaps(accessory.upright())
}

/// Whether something is in a band in which cables may run without an accessory to tell of them.
pub(super) fn in_band(plan: &Plan, one: Rect) -> bool {
    let survey = &plan.survey;
    let corner = Length::millimetres(ZONE_AT_CORNER_MM.value);
    let left = survey.left_end == End::InsideCorner && one.left < survey.outline.left + corner;
    let right = survey.right_end == End::InsideCorner && one.right > survey.outline.right - corner;
    left || right || one.top > survey.outline.top - Length::millimetres(ZONE_AT_TOP_MM.value)
}

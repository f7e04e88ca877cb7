//! The boxes that cables in this wall come to: outlets and switches on it, and boxes let in from its other side, whose
//! cables run in the same bays. In a UK job such a box makes zones on this side too where the wall is thin (from
//! memory: told whatever the wall's thickness, as the safer).

use crate::geometry::Rect;
use crate::job::feature::FeatureKind;
use crate::job::hidden::HiddenKind;
use crate::plan::Plan;
use crate::subject::Id;

/// A box and where it is.
pub(super) struct CabledBox<'a> {
    pub(super) id: &'a Id,
    pub(super) rect: Rect,
}

/// All that are on the wall or in it, those of this side first.
pub(super) fn boxes(plan: &Plan) -> impl Iterator<Item = CabledBox<'_>> {
    let own = plan.survey.features.iter();
    let own = own.filter(|one| matches!(one.kind, FeatureKind::Outlet | FeatureKind::Switch));
    let behind = plan.survey.hidden.iter().filter(|one| one.kind == HiddenKind::BoxBehind);
    own.map(|one| CabledBox { id: &one.id, rect: one.rect })
        .chain(behind.map(|one| CabledBox { id: &one.id, rect: one.rect }))
}

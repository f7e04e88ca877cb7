//! Which assumed values the places of marks hang on: those are asked for before anything is struck.

use super::Notes;
use crate::job::feature::FeatureKind;
use crate::job::option::{Hanging, WallOption};
use crate::job::place::{AcrossDatum, AcrossReading, UprightDatum, UprightReading};
use crate::job::rule::{AcrossRule, UprightRule};
use crate::job::wall::Wall;
use crate::plan::{Assumed, AssumedWhat};
use crate::subject::Id;
use std::collections::BTreeSet;

/// Marks each assumption that a placement hangs on, however many readings lie between.
pub(super) fn note_leaning(wall: &Wall, option: &WallOption, notes: &mut Notes) {
    let mut waiting: Vec<Id> = option.hangings.iter().flat_map(|hanging| named_by(wall, hanging)).collect();
    if notes.ground_assumed {
        let read = wall.hits.iter().map(|hit| &hit.x).chain(wall.floor.iter().map(|floor| &floor.at));
        waiting.extend(read.filter_map(|reading| across(wall, &reading.from)));
    }
    let mut leaning = BTreeSet::new();
    while let Some(id) = waiting.pop() {
        let datums = datums(wall, &id);
        if leaning.insert(id) {
            waiting.extend(datums);
        }
    }
    // A soffit or crown that nobody measured up to hangs from the ceiling.
    let from_ceiling = wall.features.iter().any(|feature| {
        let heights = &feature.upright;
        leaning.contains(&feature.id)
            && matches!(feature.kind, FeatureKind::Crown | FeatureKind::Soffit)
            && heights.bottom.is_none()
            && heights.top.is_none()
            && heights.centre.is_none()
    });
    if from_ceiling {
        let height = |assumed: &&mut Assumed| matches!(assumed.what, AssumedWhat::WallHeight(_));
        notes.assumed.iter_mut().filter(height).for_each(|assumed| assumed.moves_marks = true);
    }
    for assumed in notes.assumed.iter_mut().filter(|assumed| leaning.contains(&assumed.subject.id)) {
        assumed.moves_marks |= matches!(
            assumed.what,
            AssumedWhat::WallWidth(_)
                | AssumedWhat::Width(_)
                | AssumedWhat::Height(_)
                | AssumedWhat::PlaceAcross
                | AssumedWhat::PlaceUpright
        );
    }
}

/// What a hanging's rules place it by: the wall where its width counts, features, other pieces.
pub(super) fn named_by(wall: &Wall, hanging: &Hanging) -> Vec<Id> {
    let mut named = match &hanging.across {
        AcrossRule::OnWall => vec![wall.id.clone()],
        AcrossRule::On(id) => vec![id.clone()],
        AcrossRule::Between(a, b) => [a, b].into_iter().filter_map(|from| across(wall, from)).collect(),
        AcrossRule::Beside { from, .. } => across(wall, from).into_iter().collect(),
    };
    match &hanging.upright {
        UprightRule::Height { from, .. } => named.extend(upright(from)),
        UprightRule::Gap { of, .. } => named.push(of.clone()),
        UprightRule::Aligned { with, .. } => named.push(with.id.clone()),
    }
    named
}

/// What a sideways datum hangs on: nothing for the left end, the wall's width for the right.
fn across(wall: &Wall, from: &AcrossDatum) -> Option<Id> {
    match from {
        AcrossDatum::LeftEnd => None,
        AcrossDatum::RightEnd => Some(wall.id.clone()),
        AcrossDatum::Edge(edge) => Some(edge.id.clone()),
    }
}

fn upright(from: &UprightDatum) -> Option<Id> {
    match from {
        UprightDatum::Floor | UprightDatum::ControlLine => None,
        UprightDatum::Edge(edge) => Some(edge.id.clone()),
    }
}

/// What the readings of a feature are taken from.
fn datums(wall: &Wall, id: &Id) -> Vec<Id> {
    let Some(feature) = wall.features.iter().find(|feature| feature.id == *id) else { return Vec::new() };
    let sides = &feature.across;
    let sides: [&Option<AcrossReading>; 3] = [&sides.left, &sides.right, &sides.centre];
    let heights = &feature.upright;
    let heights: [&Option<UprightReading>; 5] =
        [&heights.bottom, &heights.bottom_at_right, &heights.top, &heights.top_at_right, &heights.centre];
    let sides = sides.into_iter().flatten().filter_map(|reading| across(wall, &reading.from));
    sides.chain(heights.into_iter().flatten().filter_map(|reading| upright(&reading.from))).collect()
}

//! A feature that nothing is read from or placed by, and more than 12 ft from every mark, changes no number.

use super::room::{FEATURE_KINDS, Room, Thing, plan, rooms_of_width};
use proptest::prelude::*;
use std::cell::RefCell;
use strikeline_solver::geometry::{Point, Rect};
use strikeline_solver::job::feature::FeatureKind;
use strikeline_solver::plan::mark::ReadingDatum;
use strikeline_solver::plan::piece::Gap;
use strikeline_solver::plan::{Next, Plan};
use strikeline_solver::subject::Id;
use strikeline_solver::units::Length;

/// 12 ft, as far as a pinned tape is read.
const FAR_MM: f64 = 3657.6;

/// What a distance meter's beam passes: a taller thing would be in the way of a reading from the far end.
const BEAM_CLEARS_MM: f64 = 50.0;

/// Rooms on a wide wall whose display hangs near the left end, and one more feature somewhere on the right.
fn rooms() -> impl Strategy<Value = (Room, Thing)> {
    let kind = 0..FEATURE_KINDS.len();
    let far =
        (kind, 0.0..4500.0_f64, 40.0..1500.0_f64, 0.0..2000.0_f64, 30.0..600.0_f64, 0.0..BEAM_CLEARS_MM);
    (rooms_of_width(9000.0..16000.0), far).prop_map(|(mut room, far)| {
        let (kind, x, width, bottom, height, proud) = far;
        // A tape stays on its plane, and so does a beam: a breast before the far end is in its way.
        room.meter &= FEATURE_KINDS[kind] != FeatureKind::ChimneyBreast;
        if room.rules.0 != 3 {
            room.rules.0 = 1;
        }
        // No breast hides a hit near the display from its own plane, so hits stay where the display is.
        for thing in &mut room.things {
            thing.from_right = false;
        }
        (room, Thing { kind, x, from_right: true, width, bottom, height, proud, crooked: 5.0 })
    })
}

fn from_span(value: Length, from: Length, to: Length) -> f64 {
    (from - value).mm().max((value - to).mm()).max(0.0)
}

/// How far a place is from a rectangle.
fn away_mm(place: Point, rect: Rect) -> f64 {
    let (x, y) = (from_span(place.x, rect.left, rect.right), from_span(place.y, rect.bottom, rect.top));
    (x * x + y * y).sqrt()
}

/// Whether all of every mark is farther than 12 ft from a rectangle, and every hit: uprights are told from hits, and
/// others stand beside an opening than in the pattern.
fn far_from_all(plan: &Plan, rect: Rect) -> bool {
    let hits_far = plan.survey.hits.iter().all(|hit| {
        let y = hit.y.unwrap_or(rect.bottom + rect.height() / 2.0);
        away_mm(Point::new(hit.x, y), rect) > FAR_MM
    });
    hits_far
        && plan.marks.iter().all(|mark| {
            let line = mark.line.map(|(a, b)| [a, b]).into_iter().flatten();
            // Lines are level or upright: where both ends are far on one side, all of it is.
            let outline = mark.outline.map(Rect::centre);
            mark.place.into_iter().chain(line).chain(outline).all(|place| away_mm(place, rect) > FAR_MM)
        })
}

/// Whether a reading or its close starts at this feature.
fn reads_from(plan: &Plan, id: &Id) -> bool {
    let names = |from: &ReadingDatum| matches!(from, ReadingDatum::Edge(edge) if edge.id == *id);
    plan.marks
        .iter()
        .flat_map(|mark| &mark.readings)
        .any(|reading| names(&reading.from) || reading.close.as_ref().is_some_and(|close| names(&close.from)))
}

/// The plan without what it says of this feature; a gap that ends at it is read from it.
fn without(mut plan: Plan, id: &Id, other: &Plan) -> Plan {
    let quoted = format!("\"{id}\"");
    let of_it = |told: &dyn std::fmt::Debug| format!("{told:?}").contains(&quoted);
    let mend = match &plan.next {
        Some(Next::Mend(at)) => Some(plan.findings[*at].clone()),
        _ => None,
    };
    plan.survey.features.retain(|feature| feature.id != *id);
    plan.findings.retain(|finding| !of_it(finding));
    plan.assumed.retain(|assumed| !of_it(assumed));
    if let Some(mend) = mend {
        plan.next = plan.findings.iter().position(|finding| *finding == mend).map(Next::Mend);
    }
    let ends_at = |gap: &Option<Gap>| gap.as_ref().is_some_and(|gap| gap.to.id == *id);
    for (piece, other) in plan.pieces.iter_mut().zip(&other.pieces) {
        for (gap, other) in [
            (&mut piece.gaps.left, &other.gaps.left),
            (&mut piece.gaps.right, &other.gaps.right),
            (&mut piece.gaps.below, &other.gaps.below),
        ] {
            if ends_at(gap) {
                gap.clone_from(other);
            }
        }
    }
    plan
}

#[test]
fn a_far_feature_changes_no_number() {
    let seen = RefCell::new([0_usize; FEATURE_KINDS.len()]);
    super::runner()
        .run(&rooms(), |(room, far)| {
            let id = Id::new(&format!("feature-{}", room.things.len()));
            let kind = far.kind;
            let mut with = room.clone();
            with.things.push(far);
            // The display is placed by a mantel where it can be, else never by the last feature.
            let (near, mut far_job) = (room.job(), with.job());
            far_job.walls[0].options.clone_from(&near.walls[0].options);
            let (before, after) = (plan(&near), plan(&far_job));
            let rect = after.survey.features.iter().find(|feature| feature.id == id).unwrap().rect;
            let unread =
                far_from_all(&before, rect) && far_from_all(&after, rect) && !reads_from(&after, &id);
            if unread {
                seen.borrow_mut()[kind] += 1;
                prop_assert_eq!(&without(after, &id, &before), &before);
            }
            Ok(())
        })
        .unwrap();
    let seen = seen.into_inner();
    for (kind, count) in FEATURE_KINDS.iter().zip(seen) {
        assert!(count >= 20, "{kind:?} was far from every mark {count} times only");
    }
}

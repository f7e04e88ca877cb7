//! On steel: metal at two heights far enough apart, and a magnet.

use super::answers::{Entered, answer};
use super::wanted::{Wanted, clear};
use super::{NextProbe, Said, told};
use crate::geometry::Point;
use crate::job::Job;
use crate::job::hit::HitKind;
use crate::plan::Plan;
use crate::plan::framing::Stud;
use crate::plan::survey::PlacedHit;
use crate::tolerance::STEEL_APART_MM;
use crate::units::Length;

/// How much farther apart than the least the two heights are told (chosen: a tape's and a hand's slip).
const MARGIN_MM: f64 = 25.0;

/// What the leftmost stud of steel in use still lacks.
pub(super) fn next(job: &Job, plan: &Plan, wanted: &[Wanted<'_>]) -> Option<NextProbe> {
    wanted.iter().filter(|one| one.steel).find_map(|one| lacks(job, plan, one, one.stud?))
}

fn lacks(job: &Job, plan: &Plan, of: &Wanted<'_>, stud: &Stud) -> Option<NextProbe> {
    let hole = of.nearest_hole(Point::new(stud.centre, of.piece.frame.origin.y))?;
    let own = hole.place.y;
    let in_face = |hit: &&PlacedHit| stud.left <= hit.x && hit.x <= stud.right && stud.hits.contains(&hit.id);
    let hits = |kind: HitKind| plan.survey.hits.iter().filter(in_face).filter(move |hit| hit.kind == kind);
    let metal: Vec<Length> = hits(HitKind::Metal).filter_map(|hit| hit.y).collect();
    let low = metal.iter().copied().reduce(Length::min);
    let high = metal.iter().copied().reduce(Length::max);
    let apart = Length::millimetres(STEEL_APART_MM);
    let at = |y: Length| Point::new(stud.middle_at(y), y);
    let (place, [hoped, other]) = match (low, high) {
        (Some(low), Some(high)) if high - low >= apart => (at(own), [Said::Holds, Said::HoldsNot]),
        (Some(low), Some(high)) => {
            // Above or below what was met, whichever is nearer to the holes, so that the piece hides it.
            let far = apart + Length::millimetres(MARGIN_MM);
            let mut both = [low + far, high - far];
            both.sort_by(|a, b| (*a - own).mm().abs().total_cmp(&(*b - own).mm().abs()));
            (both.into_iter().map(at).find(|place| clear(plan, *place))?, [Said::Metal, Said::Air])
        }
        _ => (at(own), [Said::Metal, Said::Air]),
    };
    // It is there and its face holds the place: what is believed; metal elsewhere in a bay is seldom.
    let half = Length::millimetres(of.half_mm);
    let share = plan.framing.middles(of.on.as_ref(), place.x - half, place.x + half, place.y).clamp(0.0, 1.0);
    let answers = [(hoped, share), (other, 1.0 - share)]
        .map(|(said, probability)| answer(said, probability, of, &Entered::of(job, plan, place, said.hit())));
    told(job, plan, of, place, answers.to_vec())
}

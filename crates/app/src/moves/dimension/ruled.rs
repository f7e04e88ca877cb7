//! Moving a piece by a typed distance: by its rule where the distance starts at the rule's own datum, else by its
//! nudge.

use strikeline_solver::geometry::{Axis, Direction};
use strikeline_solver::job::Job;
use strikeline_solver::job::option::Hanging;
use strikeline_solver::job::place::{AcrossDatum, UpDown, UprightDatum};
use strikeline_solver::job::rule::{AcrossRule, UprightRule};
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::mark::ReadingDatum;
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::solve::hanging_mut;
use strikeline_solver::units::Length;

/// The job with a piece moved by so much in a direction: by its rule where the datum is the rule's own.
pub(super) fn moved(
    job: &Job,
    plan: &Plan,
    piece: &PiecePlan,
    from: &ReadingDatum,
    direction: Direction,
    by: Length,
) -> Job {
    let axis = direction.axis();
    let along = by * direction.sign();
    let mut after = job.clone();
    let Some(hanging) = hanging_mut(&mut after, plan, piece) else { return after };
    let has_changed = match axis {
        Axis::Across => change_across(&mut hanging.across, from, along),
        Axis::Upright => change_upright(&mut hanging.upright, from, along),
    };
    if !has_changed {
        nudge(hanging, axis, along);
    }
    after
}

fn nudge(hanging: &mut Hanging, axis: Axis, along: Length) {
    let offset = match axis {
        Axis::Across => &mut hanging.nudge.right,
        Axis::Upright => &mut hanging.nudge.up,
    };
    let unit = along.unit();
    offset.0 = (offset.length() + along).quantised().with_unit(unit);
}

/// Changes a sideways rule that is measured from this datum; whether it was one, and the distance stays one.
fn change_across(rule: &mut AcrossRule, from: &ReadingDatum, along: Length) -> bool {
    let AcrossRule::Beside { from: own, toward, by } = rule else { return false };
    let is_own = match (&*own, from) {
        (AcrossDatum::LeftEnd, ReadingDatum::LeftEnd) | (AcrossDatum::RightEnd, ReadingDatum::RightEnd) => {
            true
        }
        (AcrossDatum::Edge(edge), ReadingDatum::Edge(other)) => edge == other,
        _ => false,
    };
    is_own && change(by, along * toward.unwrap_or_else(|| own.away()).sign())
}

/// Changes an upright rule that is measured from this datum; whether it was one, and the distance stays one.
fn change_upright(rule: &mut UprightRule, from: &ReadingDatum, along: Length) -> bool {
    match rule {
        UprightRule::Height { from: own, toward, by, .. } => {
            let is_own = match (&*own, from) {
                (UprightDatum::Floor, ReadingDatum::Floor)
                | (UprightDatum::ControlLine, ReadingDatum::ControlLine) => true,
                (UprightDatum::Edge(edge), ReadingDatum::Edge(other)) => edge == other,
                _ => false,
            };
            is_own && change(by, along * toward.unwrap_or_else(|| own.away()).sign())
        }
        UprightRule::Gap { side, of, by, .. } => {
            let (part, away) = if *side == UpDown::Up { ("top", along) } else { ("bottom", -along) };
            *from == ReadingDatum::Edge(of.part(part)) && change(by, away)
        }
        UprightRule::Aligned { .. } => false,
    }
}

/// Changes a distance where it does not become less than nothing.
fn change(by: &mut Length, more: Length) -> bool {
    let after = *by + more;
    let is_one = Length::default() <= after;
    if is_one {
        *by = after.quantised().with_unit(by.unit());
    }
    is_one
}

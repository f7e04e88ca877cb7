//! Moving what was measured: the readings of a thing change by as much as the thing moves.
//!
//! Nothing but the readings' own values is written: what a thing is measured from stays. An edge that stands
//! on its datum (a door on the floor, a baseboard in the corner) holds the thing there along that axis.

use super::{Handle, HandleKind, place};
use strikeline_solver::geometry::Point;
use strikeline_solver::job::Job;
use strikeline_solver::job::place::{AcrossExtent, AcrossReading, UprightExtent, UprightReading};
use strikeline_solver::plan::Plan;
use strikeline_solver::tape::Style;
use strikeline_solver::units::Length;

/// Moves a hit, a feature or a hidden thing.
pub(super) fn move_measured(job: &mut Job, plan: &Plan, handle: &Handle, to: Point) {
    let Some(from) = place(plan, handle, to.y) else { return };
    let (right, up, style) = (to.x - from.x, to.y - from.y, plan.style);
    let Some(wall) = job.walls.iter_mut().find(|wall| wall.id == plan.wall) else { return };
    let id = &handle.id;
    match handle.kind {
        HandleKind::Hit => {
            if let Some(hit) = wall.hits.iter_mut().find(|hit| hit.id == *id) {
                shift(&mut [&mut hit.x], right, style);
                if let Some(y) = &mut hit.y {
                    shift(&mut [y], up, style);
                }
            }
        }
        HandleKind::Feature => {
            if let Some(feature) = wall.features.iter_mut().find(|feature| feature.id == *id) {
                shift(&mut across(&mut feature.across), right, style);
                shift(&mut upright(&mut feature.upright), up, style);
            }
        }
        HandleKind::Hidden => {
            if let Some(hidden) = wall.hidden.iter_mut().find(|hidden| hidden.id == *id) {
                shift(&mut across(&mut hidden.across), right, style);
                shift(&mut upright(&mut hidden.upright), up, style);
            }
        }
        HandleKind::Piece | HandleKind::Edge(_) | HandleKind::Entry | HandleKind::Exit => {}
    }
}

/// The readings of an extent that say where it is, the one it is told by first.
fn across(extent: &mut AcrossExtent) -> Vec<&mut AcrossReading> {
    [&mut extent.left, &mut extent.centre, &mut extent.right].into_iter().flatten().collect()
}

/// The readings of an extent that say where it is, the one it is told by first.
fn upright(extent: &mut UprightExtent) -> Vec<&mut UprightReading> {
    [
        &mut extent.bottom,
        &mut extent.centre,
        &mut extent.top,
        &mut extent.bottom_at_right,
        &mut extent.top_at_right,
    ]
    .into_iter()
    .flatten()
    .collect()
}

/// A reading, alike for both axes.
pub(super) trait Measured {
    /// 1 where its value grows as the place moves right or up, else -1.
    fn sign(&self) -> f64;
    /// Its value.
    fn by(&mut self) -> &mut Length;
    /// The second reading of the same place.
    fn check(&mut self) -> Option<&mut Self>;
}

impl Measured for AcrossReading {
    fn sign(&self) -> f64 {
        self.way().sign()
    }

    fn by(&mut self) -> &mut Length {
        &mut self.by
    }

    fn check(&mut self) -> Option<&mut Self> {
        self.check.as_deref_mut()
    }
}

impl Measured for UprightReading {
    fn sign(&self) -> f64 {
        self.way().sign()
    }

    fn by(&mut self) -> &mut Length {
        &mut self.by
    }

    fn check(&mut self) -> Option<&mut Self> {
        self.check.as_deref_mut()
    }
}

/// Moves readings by so much: the first to whole graduations, the others and their checks by the same, so that
/// the thing keeps its size. No value goes below nothing.
fn shift<M: Measured>(readings: &mut [&mut M], motion: Length, style: Style) {
    let zero = Length::default();
    // The way the whole thing can go until a reading would be nothing.
    let mut motion = motion;
    for reading in readings.iter_mut() {
        let (sign, by) = (reading.sign(), *reading.by());
        if by <= zero {
            return;
        }
        if by + motion * sign < zero {
            motion = by * -sign;
        }
    }
    let Some(first) = readings.first_mut() else { return };
    let (sign, by) = (first.sign(), *first.by());
    let rounded = style.length_of(style.steps(by + motion * sign)).max(zero);
    let whole = (rounded - by) * sign;
    if style.steps(whole) == 0 && style.steps(motion) == 0 {
        return;
    }
    for reading in readings.iter_mut() {
        add(*reading, whole);
    }
}

/// Moves a reading and its checks. Written in the unit it was read in.
pub(super) fn add<M: Measured>(reading: &mut M, motion: Length) {
    let sign = reading.sign();
    let by = reading.by();
    let unit = by.unit();
    *by = (*by + motion * sign).max(Length::default()).quantised().with_unit(unit);
    if let Some(check) = reading.check() {
        add(check, motion);
    }
}

#[cfg(test)]
mod tests {
    use super::super::sample::{handle, job, plan};
    use super::super::{HandleKind, moved, place};
    use strikeline_solver::geometry::Point;
    use strikeline_solver::units::Length;

    fn inches(value: f64) -> Length {
        Length::inches(value).quantised()
    }

    /// The job after moving a thing by inches to the right and up.
    fn after(kind: HandleKind, id: &str, right: f64, up: f64) -> strikeline_solver::job::Job {
        let job = job();
        let plan = plan(&job);
        let handle = handle(kind, id);
        let from = place(&plan, &handle, inches(60.0)).unwrap();
        moved(&job, &plan, &handle, Point::new(from.x + inches(right), from.y + inches(up)))
    }

    #[test]
    fn a_hit_moves_by_its_reading_in_whole_graduations() {
        let moved = after(HandleKind::Hit, "hit-1", 1.03, 0.0);
        assert_eq!(moved.walls[0].hits[0].x.by, inches(31.0));
        // Read from the right end: moving right makes the reading less.
        let other = after(HandleKind::Hit, "hit-2", 1.0, -2.0);
        assert_eq!(other.walls[0].hits[1].x.by, inches(71.0));
        assert_eq!(other.walls[0].hits[1].y.as_ref().unwrap().by, inches(58.0));
    }

    #[test]
    fn a_feature_keeps_its_size_and_what_stands_on_its_datum_stays() {
        let moved = after(HandleKind::Feature, "door-1", -2.0, 5.0);
        let across = &moved.walls[0].features[0].across;
        assert_eq!(across.left.as_ref().unwrap().by, inches(86.0));
        assert_eq!(across.right.as_ref().unwrap().by, inches(4.0));
        assert_eq!(moved.walls[0].features[0].upright, job().walls[0].features[0].upright);
    }

    #[test]
    fn no_reading_goes_below_nothing() {
        let moved = after(HandleKind::Hit, "hit-1", -500.0, 0.0);
        assert_eq!(moved.walls[0].hits[0].x.by, inches(0.0));
        let door = after(HandleKind::Feature, "door-1", 500.0, 0.0);
        assert_eq!(door.walls[0].features[0].across.right.as_ref().unwrap().by, inches(0.0));
        assert_eq!(door.walls[0].features[0].across.left.as_ref().unwrap().by, inches(90.0));
    }

    #[test]
    fn moved_nowhere_nothing_changes() {
        for (kind, id) in [
            (HandleKind::Hit, "hit-1"),
            (HandleKind::Hit, "hit-2"),
            (HandleKind::Feature, "door-1"),
            (HandleKind::Hidden, "pipe-1"),
            (HandleKind::Piece, "display-1"),
            (HandleKind::Feature, "not-there"),
        ] {
            let (job, handle) = (job(), handle(kind, id));
            let plan = plan(&job);
            let at = place(&plan, &handle, inches(60.0)).unwrap_or_default();
            assert_eq!(moved(&job, &plan, &handle, at), job, "{id}");
        }
    }
}

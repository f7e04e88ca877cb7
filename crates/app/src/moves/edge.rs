//! Moving one edge of what was measured, the edge across from it staying where it is.
//!
//! Where the edge was read its reading changes, and a size or middle that was measured too goes along; where only
//! the other edge and a size were read the size changes. What has neither has no edge to move.

use super::extent::{Measured, add};
use super::{Handle, HandleKind};
use strikeline_solver::geometry::{Axis, Point, Rect};
use strikeline_solver::job::Job;
use strikeline_solver::job::place::{AcrossExtent, UprightExtent};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::tape::Style;
use strikeline_solver::units::Length;

/// An edge of a thing on or in the wall.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Side {
    /// Its left edge.
    Left,
    /// Its right edge.
    Right,
    /// Its lower edge.
    Bottom,
    /// Its upper edge.
    Top,
}

impl Side {
    /// All four, in the order in which Tab walks them.
    pub const ALL: [Self; 4] = [Self::Left, Self::Right, Self::Bottom, Self::Top];

    /// Along which axis it moves.
    #[must_use]
    pub fn axis(self) -> Axis {
        match self {
            Self::Left | Self::Right => Axis::Across,
            Self::Bottom | Self::Top => Axis::Upright,
        }
    }

    /// The part of a subject that it is.
    #[must_use]
    pub fn part(self) -> &'static str {
        match self {
            Self::Left => "left",
            Self::Right => "right",
            Self::Bottom => "bottom",
            Self::Top => "top",
        }
    }

    /// Whether it is the one on the left or below.
    fn is_lower(self) -> bool {
        matches!(self, Self::Left | Self::Bottom)
    }

    /// The middle of this edge of a rectangle.
    #[must_use]
    pub fn of(self, rect: Rect) -> Point {
        let middle = rect.centre();
        match self {
            Self::Left => Point::new(rect.left, middle.y),
            Self::Right => Point::new(rect.right, middle.y),
            Self::Bottom => Point::new(middle.x, rect.bottom),
            Self::Top => Point::new(middle.x, rect.top),
        }
    }
}

/// The outline of a feature or a hidden thing.
#[must_use]
pub fn outline(plan: &Plan, id: &Id) -> Option<Rect> {
    let feature = plan.survey.features.iter().find(|one| one.id == *id).map(|one| one.rect);
    feature.or_else(|| plan.survey.hidden.iter().find(|one| one.id == *id).map(|one| one.rect))
}

/// The edges of a thing that a hand can move, the left one first: along each axis both, where their places were
/// measured.
#[must_use]
pub fn movable(job: &Job, plan: &Plan, id: &Id) -> Vec<Handle> {
    let Some((across, upright)) = extents(job, &plan.wall, id) else { return Vec::new() };
    let (left, right) = (across.left.is_some(), across.right.is_some());
    let (bottom, top) = (upright.bottom.is_some(), upright.top.is_some());
    let across = [left, right, across.centre.is_some(), across.width.is_some()];
    let upright = [bottom, top, upright.centre.is_some(), upright.height.is_some()];
    let is_settled = |by: [bool; 4]| by.into_iter().filter(|&is_there| is_there).count() >= 2;
    let sides = Side::ALL.into_iter().filter(|side| match side.axis() {
        Axis::Across => is_settled(across),
        Axis::Upright => is_settled(upright),
    });
    sides.map(|side| Handle { id: id.clone(), kind: HandleKind::Edge(side) }).collect()
}

/// The job with an edge of a feature or hidden thing moved as near to a place as whole graduations allow.
///
/// It comes no nearer to the edge across from it than a graduation, and no reading goes below nothing. A thing that
/// is not there, or whose edges were not measured, leaves the job as it is.
#[must_use]
pub fn edge_moved(job: &Job, plan: &Plan, id: &Id, side: Side, to: Length) -> Job {
    let mut after = job.clone();
    let Some(rect) = outline(plan, id) else { return after };
    if !movable(job, plan, id).iter().any(|edge| edge.kind == HandleKind::Edge(side)) {
        return after;
    }
    let Some(wall) = after.walls.iter_mut().find(|one| one.id == plan.wall) else { return after };
    let features = wall.features.iter_mut().map(|one| (&one.id, &mut one.across, &mut one.upright));
    let hidden = wall.hidden.iter_mut().map(|one| (&one.id, &mut one.across, &mut one.upright));
    let Some((_, across, upright)) = features.chain(hidden).find(|(own, ..)| *own == id) else {
        return after;
    };
    let motion = to - side.of(rect).along(side.axis());
    let length = rect.span(side.axis()).length();
    match side.axis() {
        Axis::Across => {
            let AcrossExtent { left, right, centre, width } = across;
            let own = if side.is_lower() { left } else { right };
            let own = own.as_mut().into_iter().collect();
            Extent { own, centre: centre.as_mut(), size: width.as_mut(), length }
                .shift(side, motion, plan.style);
        }
        Axis::Upright => {
            let UprightExtent { bottom, bottom_at_right, top, top_at_right, centre, height } = upright;
            let own = if side.is_lower() { [bottom, bottom_at_right] } else { [top, top_at_right] };
            let own = own.into_iter().flatten().collect();
            Extent { own, centre: centre.as_mut(), size: height.as_mut(), length }
                .shift(side, motion, plan.style);
        }
    }
    after
}

/// How a feature or a hidden thing was measured.
pub(super) fn extents<'a>(job: &'a Job, wall: &Id, id: &Id) -> Option<(&'a AcrossExtent, &'a UprightExtent)> {
    let wall = job.walls.iter().find(|one| one.id == *wall)?;
    let features = wall.features.iter().map(|one| (&one.id, &one.across, &one.upright));
    let hidden = wall.hidden.iter().map(|one| (&one.id, &one.across, &one.upright));
    features.chain(hidden).find(|(own, ..)| *own == id).map(|(_, across, upright)| (across, upright))
}

/// What was measured along one axis, as far as an edge of it has to do with it.
struct Extent<'a, M> {
    /// The readings of the edge itself, the one it is told by first.
    own: Vec<&'a mut M>,
    /// The reading of the middle.
    centre: Option<&'a mut M>,
    /// The size.
    size: Option<&'a mut Length>,
    /// The size as the plan has it.
    length: Length,
}

impl<M: Measured> Extent<'_, M> {
    /// Moves the edge, the one across from it staying: the first of what tells its place comes out in whole
    /// graduations.
    fn shift(mut self, side: Side, motion: Length, style: Style) {
        let (zero, grain) = (Length::default(), style.length_of(1));
        let outward = if side.is_lower() { -1.0 } else { 1.0 };
        // Not past the edge across from it.
        let inward = (self.length - grain).max(zero);
        let mut motion = (motion * outward).max(-inward) * outward;
        // The middle goes half as far.
        let halves = self.own.iter_mut().map(|reading| (&mut **reading, 1.0));
        let halves = halves.chain(self.centre.iter_mut().map(|reading| (&mut **reading, 0.5)));
        for (reading, share) in halves {
            let (sign, by) = (reading.sign(), *reading.by());
            if by + motion * (sign * share) < zero {
                motion = by * (-sign / share);
            }
        }
        let told = match (self.own.first_mut(), &mut self.centre, &self.size) {
            (Some(own), ..) => Some((*own.by(), own.sign())),
            (None, Some(centre), _) => Some((*centre.by(), centre.sign() * 0.5)),
            (None, None, Some(size)) => Some((**size, outward)),
            (None, None, None) => None,
        };
        let Some((by, share)) = told else { return };
        let rounded = style.length_of(style.steps(by + motion * share)).max(zero);
        let mut whole = (rounded - by) * (1.0 / share);
        // Rounding may have taken the last graduation: what is told comes back by one.
        if self.length + whole * outward < grain - Length::millimetres(1e-6) {
            whole += grain * (outward / share.abs());
        }
        if style.steps(whole) == 0 && style.steps(motion) == 0 {
            return;
        }
        for reading in self.own {
            add(reading, whole);
        }
        if let Some(centre) = self.centre {
            add(centre, whole * 0.5);
        }
        if let Some(size) = self.size {
            *size = (*size + whole * outward).max(zero).quantised().with_unit(size.unit());
        }
    }
}

#[cfg(test)]
mod tests;

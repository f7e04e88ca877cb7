//! Where everything measured is, worked out from how it was read.

use crate::geometry::{Point, Rect};
use crate::job::feature::FeatureKind;
use crate::job::hidden::HiddenKind;
use crate::job::hit::HitKind;
use crate::job::wall::End;
use crate::subject::{Id, Subject};
use crate::units::Length;

/// A wall as measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Survey {
    /// From its left end to its right, floor to ceiling; the floor's lowest place is its bottom.
    pub outline: Rect,
    /// What the left end is.
    pub left_end: End,
    /// What the right end is.
    pub right_end: End,
    /// The floor.
    pub floor: Floor,
    /// How high the control line is, where there is one.
    pub control_line_y: Option<Length>,
    /// What is seen on the wall, in the order of the job.
    pub features: Vec<PlacedFeature>,
    /// What is in the wall, in the order of the job.
    pub hidden: Vec<PlacedHidden>,
    /// The hits, in the order of the job.
    pub hits: Vec<PlacedHit>,
    /// Out-of-flat readings, in the order of the job.
    pub humps: Vec<PlacedHump>,
    /// Where people look from, in the order of the job.
    pub seats: Vec<PlacedSeat>,
    /// Readings of one place that do not agree.
    pub misfits: Vec<Misfit>,
}

impl Survey {
    /// The chimney breast that a place is on: a plane of its own. A place without a height is on it wherever
    /// it stands in the breast's width.
    #[must_use]
    pub fn breast_at(&self, x: Length, y: Option<Length>) -> Option<&PlacedFeature> {
        self.features.iter().find(|feature| {
            feature.kind == FeatureKind::ChimneyBreast
                && feature.rect.across().holds(x)
                && y.is_none_or(|y| feature.rect.upright().holds(y))
        })
    }
}

/// A seat at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedSeat {
    /// Its id.
    pub id: Id,
    /// What it is called; empty where it has no name.
    pub name: String,
    /// Where along the wall its eyes are; `None` where not read, or read from what is not there.
    pub x: Option<Length>,
    /// Whether that hangs on an assumed value.
    pub assumed: bool,
}

/// The floor: straight between neighbouring readings, the end pieces going on beyond the outer two.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Floor {
    /// The readings' places, from left to right. Empty: a level floor at 0.
    pub readings: Vec<Point>,
}

impl Floor {
    /// How high the floor is at a place along the wall. A level floor is at 0.
    #[must_use]
    pub fn y_at(&self, x: Length) -> Length {
        match self.readings.as_slice() {
            [] => Length::default(),
            [only] => only.y,
            readings => {
                // The piece that holds x, or the outer one nearest to it.
                let piece = readings.windows(2).find(|pair| matches!(pair, [_, b] if x <= b.x));
                let piece = piece.or_else(|| readings.windows(2).last());
                match piece {
                    Some([a, b]) if b.x > a.x => a.y + (b.y - a.y) * ((x - a.x).mm() / (b.x - a.x).mm()),
                    Some([a, _]) => a.y,
                    _ => Length::default(),
                }
            }
        }
    }

    /// Whether it was read at all.
    #[must_use]
    pub fn is_read(&self) -> bool {
        !self.readings.is_empty()
    }
}

/// A feature at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedFeature {
    /// Its id.
    pub id: Id,
    /// What it is.
    pub kind: FeatureKind,
    /// What it is called; empty where it has no name.
    pub name: String,
    /// Its outline. An edge out of level counts at its outermost end.
    pub rect: Rect,
    /// Its upper edge's heights at its left and right ends.
    pub top_ends: (Length, Length),
    /// Its lower edge's heights at its left and right ends.
    pub bottom_ends: (Length, Length),
    /// How far it stands proud of its plane; 0 where flush.
    pub proud: Length,
    /// The chimney breast it is on, where it is on one.
    pub on: Option<Id>,
    /// Whether part of its place was assumed.
    pub assumed: bool,
}

impl PlacedFeature {
    /// How high its upper edge is at a place along the wall.
    #[must_use]
    pub fn top_at(&self, x: Length) -> Length {
        along_edge(self.rect, self.top_ends, x)
    }

    /// How high its lower edge is at a place along the wall.
    #[must_use]
    pub fn bottom_at(&self, x: Length) -> Length {
        along_edge(self.rect, self.bottom_ends, x)
    }
}

/// The height of an edge at x, held to its ends beyond them.
fn along_edge(rect: Rect, ends: (Length, Length), x: Length) -> Length {
    let width = rect.width();
    if ends.0 == ends.1 || width <= Length::default() {
        return ends.0;
    }
    let share = ((x - rect.left).mm() / width.mm()).clamp(0.0, 1.0);
    ends.0 + (ends.1 - ends.0) * share
}

/// A hidden thing at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedHidden {
    /// Its id.
    pub id: Id,
    /// What it is.
    pub kind: HiddenKind,
    /// What it is called; empty where it has no name.
    pub name: String,
    /// Its outline.
    pub rect: Rect,
    /// Whether part of its place was assumed, or all of it supposed.
    pub assumed: bool,
}

/// A hit at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedHit {
    /// Its id.
    pub id: Id,
    /// What was read.
    pub kind: HitKind,
    /// Where along the wall.
    pub x: Length,
    /// How high, where noted.
    pub y: Option<Length>,
}

/// An out-of-flat reading at its place.
#[derive(Clone, Debug, PartialEq)]
pub struct PlacedHump {
    /// Its id.
    pub id: Id,
    /// Where along the wall.
    pub x: Length,
    /// How high; `None` for the whole height.
    pub y: Option<Length>,
    /// How far it stands out; negative for a hollow.
    pub proud: Length,
}

/// Readings of one place, or of one length, that do not agree.
#[derive(Clone, Debug, PartialEq)]
pub struct Misfit {
    /// What was read twice: an edge, or a whole thing whose edges and size disagree.
    pub subject: Subject,
    /// What the readings used leave.
    pub used: Length,
    /// What the other reading says.
    pub other: Length,
}

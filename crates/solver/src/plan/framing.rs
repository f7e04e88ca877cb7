//! What the wall is made of, as far as its hits tell, and how sure that is.

use crate::geometry::Span;
use crate::numeric;
use crate::subject::Id;
use crate::tolerance::NINETY;
use crate::units::Length;

/// The uprights found, and what is believed of each plane.
#[derive(Clone, Debug, PartialEq, Default)]
pub struct Framing {
    /// Whether anything is known: a wall without hits is not known, not bare.
    pub known: bool,
    /// The uprights, from left to right.
    pub studs: Vec<Stud>,
    /// The wall beside its breasts, then each chimney breast, as far as they have hits.
    pub planes: Vec<PlaneFraming>,
}

/// One upright.
#[derive(Clone, Debug, PartialEq)]
pub struct Stud {
    /// Its middle. Of a doubled stud each ply is one upright.
    pub centre: Length,
    /// The left edge of its face.
    pub left: Length,
    /// The right edge of its face.
    pub right: Length,
    /// Half of the 90 % interval of its middle, at `at_height`.
    pub doubt: Length,
    /// The height the doubt is told for: that of the holes that use it, else that of its hits.
    pub at_height: Length,
    /// How likely there is an upright here, 0 to 1.
    pub probability: f64,
    /// How it is known.
    pub known: Known,
    /// How it leans: how far its middle moves to the right for each millimetre up. 0 where hits at one height, or none,
    /// tell of it.
    pub lean: f64,
    /// One standard deviation of what is not known of its lean.
    pub lean_doubt: f64,
    /// The hits that tell of it, in the order of the job.
    pub hits: Vec<Id>,
    /// The chimney breast it is in, where it is in one.
    pub on: Option<Id>,
}

impl Stud {
    /// Where its middle is at a height, as far as its lean is known.
    #[must_use]
    pub fn middle_at(&self, height: Length) -> Length {
        self.centre + (height - self.at_height) * self.lean
    }

    /// Where its face may be anywhere between two heights, by 90 % of what is believed of its place and its lean.
    #[must_use]
    pub fn face_within(&self, heights: Span) -> Span {
        let half = (self.right - self.left) / 2.0;
        let ends = [heights.from, heights.to].map(|y| {
            let lean_mm = NINETY * self.lean_doubt * (y - self.at_height).mm();
            let doubt = Length::millimetres(self.doubt.mm().hypot(lean_mm));
            Span::about(self.middle_at(y), (half + doubt) * 2.0)
        });
        let [low, high] = ends;
        Span { from: low.from.min(high.from), to: low.to.max(high.to) }
    }
}

/// How an upright is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Known {
    /// A probe met it, and a fastener in its middle is sure enough to be all in solid wood.
    Met,
    /// Hits tell of it.
    Inferred,
    /// Only the pattern of the others does.
    Expected,
}

/// What is believed of one plane.
#[derive(Clone, Debug, PartialEq)]
pub struct PlaneFraming {
    /// The chimney breast; `None` for the wall beside them.
    pub on: Option<Id>,
    /// Every spacing and no pattern at all, the likeliest first; together 1.
    pub spacings: Vec<Spacing>,
    /// Hits that are of no upright, in the order of the job.
    pub outliers: Vec<Outlier>,
    /// Where uprights are believed to be, from left to right.
    pub beliefs: Vec<Belief>,
}

/// One spacing and how likely it is.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spacing {
    /// From middle to middle; `None`: the uprights follow no pattern.
    pub spacing: Option<Length>,
    /// From 0 to 1.
    pub probability: f64,
}

/// A hit that is of no upright.
#[derive(Clone, Debug, PartialEq)]
pub struct Outlier {
    /// Which.
    pub hit: Id,
    /// How likely it is one, 0 to 1.
    pub probability: f64,
    /// Why it is taken for one.
    pub why: OutlierWhy,
}

/// Why a hit is of no upright.
#[derive(Clone, Debug, PartialEq)]
pub enum OutlierWhy {
    /// The others follow a pattern, and no upright of it stands here: the nearest is so far off.
    OffPattern(Length),
    /// A probe beside it, this one, says otherwise.
    AgainstProbe(Id),
    /// The other hits here put the upright so far off.
    AgainstOthers(Length),
    /// Nothing else tells of an upright here.
    Alone,
}

/// Where uprights are believed to be within a short stretch of the wall, on an even grid.
#[derive(Clone, Debug, PartialEq)]
pub struct Belief {
    /// The left end of the first cell.
    pub from: Length,
    /// The width of a cell.
    pub step: Length,
    /// Up to each cell's left end, how many middles of uprights are expected: never falls; one more than cells.
    pub uprights: Vec<f64>,
    /// The height it holds for.
    pub height: Length,
    /// Half of an upright's face.
    pub half_face: Length,
    /// How these uprights lean: how far a middle moves to the right for each millimetre up.
    pub lean: f64,
    /// One standard deviation of what is not known of their lean.
    pub lean_doubt: f64,
}

impl Belief {
    /// How many middles are expected left of a place.
    fn before(&self, x_mm: f64) -> f64 {
        let last = self.uprights.len().saturating_sub(1);
        let at = (x_mm - self.from.mm()) / self.step.mm();
        if at.is_nan() || at <= 0.0 {
            return 0.0;
        }
        // Held below the last cell, so that the cast is exact.
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "from 0 to a few hundred"
        )]
        let cell = at.min(1e9) as usize;
        match (self.uprights.get(cell), self.uprights.get(cell + 1)) {
            (Some(a), Some(b)) => a + (b - a) * (at - at.floor()),
            _ => self.uprights.get(last).copied().unwrap_or_default(),
        }
    }

    /// How many middles are expected between two places at a height: a lean moves them.
    #[must_use]
    pub fn between(&self, from_mm: f64, to_mm: f64, height: Length) -> f64 {
        let up_mm = (height - self.height).mm();
        let (from_mm, to_mm) = (from_mm - self.lean * up_mm, to_mm - self.lean * up_mm);
        let lean_mm = self.lean_doubt * up_mm.abs();
        if lean_mm < 0.25 {
            return self.before(to_mm) - self.before(from_mm);
        }
        numeric::normal_quadrature()
            .iter()
            .map(|(off, weight)| {
                weight * (self.before(to_mm + off * lean_mm) - self.before(from_mm + off * lean_mm))
            })
            .sum()
    }
}

impl Framing {
    /// How many middles of uprights of a plane are expected between two places at a height; may be over 1.
    #[must_use]
    pub fn middles(&self, on: Option<&Id>, from: Length, to: Length, height: Length) -> f64 {
        let planes = self.planes.iter().filter(|plane| plane.on.as_ref() == on);
        planes.flat_map(|plane| &plane.beliefs).map(|belief| belief.between(from.mm(), to.mm(), height)).sum()
    }

    /// The chance that a fastener at a place has all of its edge need in one upright, 0 to 1; the plies of a
    /// doubled stud count each by itself, since a fastener in their seam splits them (the safer reading).
    #[must_use]
    pub fn chance(&self, on: Option<&Id>, x: Length, height: Length, edge_need: Length) -> f64 {
        let planes = self.planes.iter().filter(|plane| plane.on.as_ref() == on);
        let sum: f64 = planes
            .flat_map(|plane| &plane.beliefs)
            .map(|belief| {
                let room_mm = (belief.half_face - edge_need).mm();
                if room_mm <= 0.0 {
                    return 0.0;
                }
                belief.between(x.mm() - room_mm, x.mm() + room_mm, height)
            })
            .sum();
        sum.clamp(0.0, 1.0)
    }
}

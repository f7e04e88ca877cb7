//! In which a window and a sheet differ: scale, the part that shows, text height, what is lit.

use strikeline_solver::geometry::{Point, Rect};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Subject;

/// How a plan is looked at.
#[derive(Clone, Debug, PartialEq)]
pub struct Look {
    /// Paper millimetres to a wall millimetre: 0.05 for 1:20. What is not usable becomes the nearest that is.
    pub paper_mm_per_wall_mm: f64,
    /// The part of the wall that shows.
    pub shown: Rect,
    /// Kept free around the part that shows, for dimensions.
    pub margin: Margin,
    /// The em size of figures and names, in paper millimetres; capitals are 0.66 of it.
    pub text_height_mm: f64,
    /// What is selected.
    pub selected: Option<Subject>,
    /// What is held by a hand just now.
    pub held: Option<Subject>,
    /// Where to probe next, where that is to be shown.
    pub next_probe: Option<Point>,
}

/// Capitals of 2.5 mm, the smallest usual on drawings (ISO 3098, from memory).
pub const TEXT_HEIGHT_MM: f64 = 3.8;

/// Room for three rows of dimensions (chosen).
pub const MARGIN_MM: f64 = 27.0;

/// What is kept free on each side of the part that shows, in paper millimetres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Margin {
    /// On its left.
    pub left_mm: f64,
    /// Above it.
    pub top_mm: f64,
    /// On its right.
    pub right_mm: f64,
    /// Below it.
    pub bottom_mm: f64,
}

impl Margin {
    /// As much on every side.
    #[must_use]
    pub fn even(mm: f64) -> Self {
        Self { left_mm: mm, top_mm: mm, right_mm: mm, bottom_mm: mm }
    }
}

impl Look {
    /// The whole wall at a scale, nothing lit.
    #[must_use]
    pub fn whole_wall(plan: &Plan, paper_mm_per_wall_mm: f64) -> Self {
        Self {
            paper_mm_per_wall_mm,
            shown: plan.survey.outline,
            margin: Margin::even(MARGIN_MM),
            text_height_mm: TEXT_HEIGHT_MM,
            selected: None,
            held: None,
            next_probe: None,
        }
    }

    /// The text height, held between 1 mm and 50 mm; the usual one where it is not a number.
    #[must_use]
    pub fn sound_text_height_mm(&self) -> f64 {
        if self.text_height_mm.is_nan() { TEXT_HEIGHT_MM } else { self.text_height_mm.clamp(1.0, 50.0) }
    }
}

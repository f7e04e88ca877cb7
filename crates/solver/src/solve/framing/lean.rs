//! How the uprights of a stretch lean. Hits at one height say nothing of it: then it is only doubted. Hits at heights
//! far enough apart are weighed together with every lean there may be, so that they tell it as far as they can.

use super::model::Model;
use super::pattern::Posterior;
use super::stretch::Stretch;
use super::uprights::{Gathered, Middles};
use crate::numeric::normal;
use crate::plan::framing::Belief;
use crate::tolerance::LEAN_SLOPE;

/// Hits whose heights a usual lean moves by less than this tell no lean, in millimetres (chosen: a graduation).
const TOLD_FROM_MM: f64 = 0.5;

/// How far two leans that are tried part over the hits' heights, in millimetres (chosen: a cell).
const APART_MM: f64 = 1.5;

/// The steepest lean tried, in standard deviations.
const STEEPEST: f64 = 3.0;

/// The leans that are tried in a stretch.
#[derive(Clone)]
pub(super) struct Leans {
    /// Each lean, run over rise, and how likely it is beforehand; together 1.
    pub(super) tried: Vec<(f64, f64)>,
    /// One standard deviation of what each leaves in doubt.
    pub(super) rest: f64,
}

impl Leans {
    /// For hits over so much height.
    pub(super) fn over(spread_mm: f64) -> Self {
        // Under the first, and for a spread that is no number, nothing is told.
        let told = LEAN_SLOPE * spread_mm >= TOLD_FROM_MM;
        if !told || !spread_mm.is_finite() {
            return Self { tried: vec![(0.0, 1.0)], rest: LEAN_SLOPE };
        }
        let wide = 2.0 * STEEPEST * LEAN_SLOPE;
        let half = (wide * spread_mm / APART_MM / 2.0).ceil().clamp(2.0, 12.0);
        let step = wide / (2.0 * half + 1.0);
        #[expect(clippy::cast_possible_truncation, reason = "from 2 to 12")]
        let half = half as i32;
        let weights =
            (-half..=half).map(|at| f64::from(at) * step).map(|lean| (lean, normal(lean, LEAN_SLOPE)));
        let sum: f64 = weights.clone().map(|(_, weight)| weight).sum();
        let tried = weights.map(|(lean, weight)| (lean, weight / sum)).collect();
        // Even within a step: its standard deviation is the step over the root of 12.
        Self { tried, rest: step / 12.0_f64.sqrt() }
    }
}

/// Where a stretch's middles are believed to be, lean by lean, at one height.
pub(super) struct Layers {
    pub(super) height_mm: f64,
    layers: Vec<(f64, Middles)>,
    rest: f64,
}

impl Layers {
    /// What is believed once all is weighed, at the height where the place of the middle and the lean do not hang on
    /// each other: there the middle is known best.
    pub(super) fn of(stretch: &Stretch<'_>, posterior: &Posterior, model: &Model) -> Self {
        let of_lean = |cells| Middles::of_plies(stretch.first_mm, stretch.cell_mm, cells, model);
        let leans = stretch.leans.tried.iter().map(|(lean, _)| *lean);
        let layers: Vec<_> = leans.zip(posterior.cells.chunks(stretch.cells).map(of_lean)).collect();
        let mut all = Self { height_mm: stretch.height_mm, layers, rest: stretch.leans.rest };
        let up_mm = all.best_known_up_mm(stretch.lowest_up_mm, stretch.highest_up_mm);
        for (lean, middles) in &mut all.layers {
            middles.first_mm += *lean * up_mm;
        }
        all.height_mm += up_mm;
        all
    }

    /// How far up from here the middle is known best, held between the hits.
    fn best_known_up_mm(&self, lowest: f64, highest: f64) -> f64 {
        if self.layers.len() < 2 {
            return 0.0;
        }
        let moments = self.moments(&|_| true);
        let up_mm = -moments.with / moments.lean_squares;
        if up_mm.is_finite() { up_mm.clamp(lowest.min(0.0), highest.max(0.0)) } else { 0.0 }
    }

    /// The middles of all leans together.
    pub(super) fn middles(&self) -> Option<Middles> {
        // About the upright one, so that a wall and its mirror have the same grid.
        let (_, plumb) = self.layers.get(self.layers.len() / 2)?;
        let cell_mm = plumb.cell_mm;
        let offs = self.layers.iter().map(|(_, layer)| (layer.first_mm - plumb.first_mm).abs());
        let more = (offs.fold(0.0, f64::max) / cell_mm).ceil().clamp(0.0, 500.0);
        let from = plumb.first_mm - more * cell_mm;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred")]
        let mut cells = vec![0.0; plumb.cells.len() + 2 * more as usize];
        for (_, layer) in &self.layers {
            let off = ((layer.first_mm - from) / cell_mm).max(0.0);
            #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred")]
            let whole = off.clamp(0.0, 1000.0) as usize;
            let part = off - off.floor();
            for (at, mass) in layer.cells.iter().enumerate() {
                for (cell, share) in [(at + whole, 1.0 - part), (at + whole + 1, part)] {
                    if let Some(cell) = cells.get_mut(cell) {
                        *cell += mass * share;
                    }
                }
            }
        }
        Some(Middles { first_mm: from, cell_mm, cells })
    }

    /// How the upright gathered there leans: its mean, and one standard deviation of what is not known of it.
    pub(super) fn lean_of(&self, one: &Gathered, model: &Model) -> (f64, f64) {
        if self.layers.len() < 2 {
            return (0.0, self.rest);
        }
        let reach = model.face_mm * 0.75;
        let moments = self.moments(&|middle| (middle - one.centre_mm).abs() <= reach);
        let doubt = (moments.lean_squares + self.rest * self.rest).sqrt();
        if moments.lean.is_finite() && doubt.is_finite() { (moments.lean, doubt) } else { (0.0, LEAN_SLOPE) }
    }

    /// The same as the plan keeps it, for chances.
    pub(super) fn beliefs(&self, model: &Model) -> impl Iterator<Item = Belief> {
        self.layers.iter().map(|(lean, middles)| Belief {
            lean: *lean,
            lean_doubt: self.rest,
            ..middles.belief(self.height_mm, model)
        })
    }

    fn moments(&self, counts: &dyn Fn(f64) -> bool) -> Moments {
        let masses = || {
            self.layers.iter().flat_map(|(lean, layer)| {
                layer.places().zip(&layer.cells).map(|(middle, mass)| (*lean, middle, *mass))
            })
        };
        let counted = || masses().filter(|(_, middle, _)| counts(*middle));
        let (sum, lean, middle) = counted().fold((0.0, 0.0, 0.0), |(sum, a, b), (lean, middle, mass)| {
            (sum + mass, a + mass * lean, b + mass * middle)
        });
        let (lean, middle) = (lean / sum, middle / sum);
        let (lean_squares, with) = counted().fold((0.0, 0.0), |(squares, with), (one, at, mass)| {
            let off = one - lean;
            (squares + mass * off * off, with + mass * off * (at - middle))
        });
        Moments { lean, lean_squares: lean_squares / sum, with: with / sum }
    }
}

/// The lean's mean and variance, and its covariance with the middle.
struct Moments {
    lean: f64,
    lean_squares: f64,
    with: f64,
}

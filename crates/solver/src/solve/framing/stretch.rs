//! Hits near enough to be of one upright, and how well each place of an upright explains all of them together.

use super::extra::Extras;
use super::lean::Leans;
use super::model::{CHOSEN_BY_CHANCE, DOUBLED, MEAN_SPACING_MM, MISSING, Model};
use super::reading::{PLIES, Reading};
use crate::numeric::{exp, ln, normal};
use crate::tolerance::LAYOUT_SD_MM;

/// Hits farther apart than this are never of one upright: a doubled one's two edges and their doubts (derived).
const LINKED_MM: f64 = 90.0;

/// The widest a stretch's hits may lie, so that it holds one place of any pattern at most (chosen: with what an
/// upright may be off its hits it stays under the narrowest spacing).
const WIDEST_MM: f64 = 200.0;

/// Hits of one stretch of the wall, on a grid of places for an upright's middle.
pub(super) struct Stretch<'a> {
    pub(super) readings: Vec<Reading<'a>>,
    /// The middle of the first cell.
    pub(super) first_mm: f64,
    pub(super) cell_mm: f64,
    pub(super) cells: usize,
    /// The height its hits were mostly taken at.
    pub(super) height_mm: f64,
    /// From there to its lowest and its highest hit.
    pub(super) lowest_up_mm: f64,
    pub(super) highest_up_mm: f64,
    /// The leans that are tried.
    pub(super) leans: Leans,
    /// Each reading's fit, lean by lean, in each cell by cell.
    pub(super) fits: Vec<Vec<[f64; PLIES]>>,
    /// Uprights that are not of the pattern, expected in each cell.
    pub(super) extras: Vec<[f64; PLIES]>,
}

/// How well a stretch's hits are explained where uprights stand a spacing apart. All scaled alike.
pub(super) struct Table {
    /// By an upright in a cell, with its plies' own chance, lean by lean.
    pub(super) cells: Vec<[f64; PLIES]>,
    /// How wide the stretch is, in cells.
    wide: usize,
    /// By an upright whose place in the pattern is in a cell.
    pub(super) in_pattern: Vec<f64>,
    /// By none.
    pub(super) none: f64,
    /// By one that is not of the pattern.
    pub(super) extra: f64,
    /// The logarithm of what all were scaled by.
    pub(super) log_scale: f64,
}

/// Parts readings, sorted from left to right, into stretches: at every wide gap, and a run that is too wide at its
/// widest gap.
pub(super) fn stretches<'a>(
    readings: &[Reading<'a>],
    height_mm: f64,
    model: &Model,
    extras: &Extras,
) -> Vec<Stretch<'a>> {
    let mut runs: Vec<&[Reading<'a>]> = Vec::new();
    let mut waiting: Vec<&[Reading<'a>]> =
        readings.chunk_by(|a, b| b.x_mm() - a.x_mm() <= LINKED_MM).rev().collect();
    while let Some(run) = waiting.pop() {
        let (Some(first), Some(last)) = (run.first(), run.last()) else { continue };
        let gaps = run.windows(2).map(|pair| match pair {
            [a, b] => b.x_mm() - a.x_mm(),
            _ => 0.0,
        });
        let widest = gaps.enumerate().max_by(|(_, a), (_, b)| a.total_cmp(b));
        match widest {
            Some((at, _)) if last.x_mm() - first.x_mm() > WIDEST_MM => {
                let (left, right) = run.split_at(at + 1);
                waiting.extend([right, left]);
            }
            _ => runs.push(run),
        }
    }
    runs.into_iter().map(|run| Stretch::of(run, height_mm, model, extras)).collect()
}

impl<'a> Stretch<'a> {
    fn of(run: &[Reading<'a>], usual_height_mm: f64, model: &Model, extras: &Extras) -> Self {
        let left = run.first().map_or(0.0, Reading::x_mm);
        let right = run.last().map_or(0.0, Reading::x_mm);
        let cell_mm = model.cell_mm();
        // An upright's middle is at most three halves of a face and the reading's doubt away. An odd number of
        // cells about the middle of the hits, so that a wall and its mirror have the same grid.
        let reach = (right - left) / 2.0 + 1.5 * model.face_mm + 4.0 * model.sensed_sd_mm;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred")]
        let half = (reach / cell_mm).ceil().min(2000.0) as usize;
        let cells = 2 * half + 1;
        #[expect(clippy::cast_precision_loss, reason = "a few hundred")]
        let first_mm = (left + right) / 2.0 - half as f64 * cell_mm;
        let heights = run.iter().filter_map(|reading| reading.hit.y).map(crate::units::Length::mm);
        let (sum, count) = heights.fold((0.0, 0.0), |(sum, count), y| (sum + y, count + 1.0));
        let height_mm = if count > 0.0 { sum / count } else { usual_height_mm };
        let places = || places(first_mm, cell_mm, cells);
        let ups = || run.iter().map(|reading| reading.up_mm(height_mm));
        let (lowest_up_mm, highest_up_mm) = (ups().fold(0.0, f64::min), ups().fold(0.0, f64::max));
        let leans = Leans::over(highest_up_mm - lowest_up_mm);
        let fits = run
            .iter()
            .map(|reading| {
                let up_mm = reading.up_mm(height_mm);
                let rest_mm = (leans.rest * up_mm).abs();
                let of_lean = |(lean, _): &(f64, f64)| {
                    let off_mm = lean * up_mm;
                    places().map(move |centre| reading.fits(centre + off_mm, rest_mm, model))
                };
                leans.tried.iter().flat_map(of_lean).collect()
            })
            .collect();
        let extras = places().map(|centre| extras.at(centre).map(|one| one * cell_mm)).collect();
        Self {
            readings: run.to_vec(),
            first_mm,
            cell_mm,
            cells,
            height_mm,
            lowest_up_mm,
            highest_up_mm,
            leans,
            fits,
            extras,
        }
    }

    /// The middle of its hits.
    pub(super) fn middle_mm(&self) -> f64 {
        self.first_mm + self.half_mm()
    }

    fn half_mm(&self) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "a few hundred")]
        let half = (self.cells / 2) as f64 * self.cell_mm;
        half
    }

    /// Whether a place is within the grid.
    pub(super) fn holds(&self, x_mm: f64) -> bool {
        (x_mm - self.middle_mm()).abs() <= self.half_mm()
    }

    /// The cell at or left of a place, and how far it is on the way to the next, from 0 to 1; `None` outside.
    pub(super) fn cell_at(&self, x_mm: f64) -> Option<(usize, f64)> {
        let at = (x_mm - self.first_mm) / self.cell_mm;
        #[expect(clippy::cast_precision_loss, reason = "a few hundred")]
        let inside = at >= 0.0 && at < (self.cells - 1) as f64;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within the grid")]
        let cell = if inside { at as usize } else { 0 };
        inside.then(|| (cell, at - at.floor()))
    }

    /// The spacing its hits are weighed by. A sensor that is swept along tells of any upright alike; but many hits of
    /// one were looked for there, and tell no more of how many others there are.
    pub(super) fn weighed_by(&self, spacing_mm: f64) -> f64 {
        let sensed = self.readings.iter().filter(|reading| reading.sensed()).count();
        let sensed = f64::from(u32::try_from(sensed).unwrap_or(u32::MAX));
        if sensed <= CHOSEN_BY_CHANCE {
            return spacing_mm;
        }
        MEAN_SPACING_MM * exp(ln(spacing_mm / MEAN_SPACING_MM) * CHOSEN_BY_CHANCE / sensed)
    }

    /// How well its hits are explained where uprights are `spacing_mm` apart.
    pub(super) fn table(&self, spacing_mm: f64, layout: &[f64]) -> Table {
        let plies = [1.0 - 2.0 * DOUBLED, DOUBLED, DOUBLED];
        let of_lean = |(_, weight): &(f64, f64)| vec![plies.map(|one| one * weight); self.cells];
        let mut cells: Vec<[f64; PLIES]> = self.leans.tried.iter().flat_map(of_lean).collect();
        let (mut none, mut log_scale) = (1.0, 0.0);
        let spacing_mm = self.weighed_by(spacing_mm);
        for (reading, fits) in self.readings.iter().zip(&self.fits) {
            let weights = reading.weights(spacing_mm);
            let mut most: f64 = weights.miss * none;
            for (cell, fit) in cells.iter_mut().zip(fits) {
                for (one, fit) in cell.iter_mut().zip(fit) {
                    *one *= weights.gain * fit + weights.miss;
                    most = most.max(*one);
                }
            }
            none *= weights.miss;
            if !(1e-100..=1e100).contains(&most) {
                log_scale += ln(most);
                none /= most;
                cells.iter_mut().flatten().for_each(|one| *one /= most);
            }
        }
        let mut whole = vec![0.0; self.cells];
        for of_lean in cells.chunks(self.cells) {
            for (whole, cell) in whole.iter_mut().zip(of_lean) {
                *whole += cell.iter().sum::<f64>();
            }
        }
        let each = cells.iter().flatten().zip(self.extras.iter().cycle().flatten());
        let extra = each.map(|(one, extra)| one * extra).sum();
        let in_pattern = blurred(&whole, layout, none);
        Table { cells, wide: self.cells, in_pattern, none, extra, log_scale }
    }
}

impl Table {
    /// How well the hits are explained with the nearest place of the pattern there.
    pub(super) fn explained(&self, cell: Option<(usize, f64)>) -> f64 {
        let there = cell.and_then(|(cell, on)| {
            Some(self.in_pattern.get(cell)? * (1.0 - on) + self.in_pattern.get(cell + 1)? * on)
        });
        match there {
            Some(there) => (1.0 - MISSING) * there + MISSING * self.none + self.extra,
            None => self.none + self.extra,
        }
    }

    /// The same with uprights at no regular places, so many to a cell.
    pub(super) fn explained_anywhere(&self, in_cell: f64) -> f64 {
        let anywhere: f64 = self.cells.iter().flatten().sum::<f64>() * in_cell;
        anywhere + self.empty_share(in_cell) * self.none + self.extra
    }

    /// How likely no upright is in the stretch where so many are in a cell.
    pub(super) fn empty_share(&self, in_cell: f64) -> f64 {
        #[expect(clippy::cast_precision_loss, reason = "a few hundred")]
        let expected = self.wide as f64 * in_cell;
        (1.0 - expected).max(0.05)
    }
}

/// The middles of a grid's cells.
pub(super) fn places(first_mm: f64, cell_mm: f64, cells: usize) -> impl Iterator<Item = f64> {
    (0..cells).map(move |cell| {
        #[expect(clippy::cast_precision_loss, reason = "a few hundred")]
        let at = cell as f64;
        first_mm + at * cell_mm
    })
}

/// How far an upright is off its place in the pattern, cell by cell to either side; together 1.
pub(super) fn layout(cell_mm: f64) -> Vec<f64> {
    let reach = (3.5 * LAYOUT_SD_MM / cell_mm).ceil();
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "about eight")]
    let cells = reach as usize;
    let weights: Vec<f64> =
        places(-reach * cell_mm, cell_mm, 2 * cells + 1).map(|off| normal(off, LAYOUT_SD_MM)).collect();
    let sum: f64 = weights.iter().sum();
    weights.into_iter().map(|one| one / sum).collect()
}

/// Each cell's mean over its neighbours by their weights, an odd number of them; beyond the ends it is `beyond`.
pub(super) fn blurred(cells: &[f64], weights: &[f64], beyond: f64) -> Vec<f64> {
    let reach = weights.len() / 2;
    let mut padded = vec![beyond; reach];
    padded.extend_from_slice(cells);
    padded.extend(std::iter::repeat_n(beyond, reach));
    let mean = |window: &[f64]| window.iter().zip(weights).map(|(one, weight)| one * weight).sum();
    padded.windows(weights.len()).map(mean).collect()
}

//! Every spacing from every start, and no pattern at all, weighed by how well each explains all hits.

use super::model::{MEAN_SPACING_MM, MISSING, NO_PATTERN, SPACINGS_MM, START_STEP_MM};
use super::stretch::{Stretch, Table, blurred};
use crate::numeric::{exp, ln};

/// A start whose share of the whole is below this is let go.
const NEGLIGIBLE: f64 = 1e-8;

/// One spacing from one start.
#[derive(Clone, Copy)]
pub(super) struct Pattern {
    pub(super) spacing_mm: f64,
    /// One of its places.
    pub(super) start_mm: f64,
    pub(super) probability: f64,
}

impl Pattern {
    /// Its place nearest to x.
    pub(super) fn nearest(&self, x_mm: f64) -> f64 {
        self.start_mm + ((x_mm - self.start_mm) / self.spacing_mm).round() * self.spacing_mm
    }
}

/// All that is weighed of one plane.
pub(super) struct Weighed {
    /// The patterns that matter.
    pub(super) patterns: Vec<Pattern>,
    /// Each spacing's probability, in the order of `SPACINGS_MM`.
    pub(super) spacings: Vec<f64>,
    pub(super) no_pattern: f64,
    /// The tables of each spacing, stretch by stretch, in the order of `SPACINGS_MM`; last those of no pattern.
    pub(super) tables: Vec<Vec<Table>>,
}

/// Weighs every spacing from every start.
pub(super) fn weigh(stretches: &[Stretch<'_>], layout: &[f64]) -> Weighed {
    let tables_of = |spacing: f64| stretches.iter().map(|one| one.table(spacing, layout)).collect();
    let mut tables: Vec<Vec<Table>> = SPACINGS_MM.iter().map(|spacing| tables_of(*spacing)).collect();
    tables.push(tables_of(MEAN_SPACING_MM));

    let middles = stretches.iter().map(Stretch::middle_mm);
    let (least, most) = middles.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), x| (a.min(x), b.max(x)));
    let middle = if least <= most { f64::midpoint(least, most) } else { 0.0 };
    let mut logs: Vec<Pattern> = Vec::new();
    for (spacing, tables) in SPACINGS_MM.iter().zip(&tables) {
        let scale: f64 = tables.iter().map(|table| table.log_scale).sum();
        let starts = (spacing / START_STEP_MM).ceil();
        let step = spacing / starts;
        #[expect(clippy::cast_precision_loss, reason = "a few")]
        let prior = ln((1.0 - NO_PATTERN) / SPACINGS_MM.len() as f64 / starts) + scale;
        #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "a few hundred")]
        let starts = starts as u32;
        for start in 0..starts {
            let start_mm = middle + (f64::from(start) + 0.5) * step - spacing / 2.0;
            let mut one = Pattern { spacing_mm: *spacing, start_mm, probability: 0.0 };
            let explained = stretches.iter().zip(tables).map(|(stretch, table)| {
                let node = one.nearest(stretch.middle_mm());
                table.explained(stretch.cell_at(node))
            });
            one.probability = prior + log_product(explained);
            logs.push(one);
        }
    }
    let in_cell = |stretch: &Stretch<'_>| stretch.cell_mm / MEAN_SPACING_MM;
    let without = tables.last().map(Vec::as_slice).unwrap_or_default();
    let scale: f64 = without.iter().map(|table| table.log_scale).sum();
    let explained =
        stretches.iter().zip(without).map(|(stretch, table)| table.explained_anywhere(in_cell(stretch)));
    let none = ln(NO_PATTERN) + scale + log_product(explained);

    let most = logs.iter().map(|one| one.probability).fold(none, f64::max);
    let whole: f64 = exp(none - most) + logs.iter().map(|one| exp(one.probability - most)).sum::<f64>();
    for one in &mut logs {
        one.probability = exp(one.probability - most) / whole;
    }
    let of = |spacing: &f64| {
        logs.iter().filter(|one| one.spacing_mm == *spacing).map(|one| one.probability).sum::<f64>()
    };
    let spacings = SPACINGS_MM.iter().map(of).collect();
    logs.retain(|one| one.probability > NEGLIGIBLE);
    Weighed { patterns: logs, spacings, no_pattern: exp(none - most) / whole, tables }
}

/// The logarithm of a product of numbers that may be very small.
fn log_product(numbers: impl Iterator<Item = f64>) -> f64 {
    let (mut product, mut log) = (1.0, 0.0);
    for number in numbers {
        product *= number.max(1e-300);
        if !(1e-100..=1e100).contains(&product) {
            log += ln(product);
            product = 1.0;
        }
    }
    log + ln(product)
}

/// What is believed of one stretch once all is weighed.
pub(super) struct Posterior {
    /// How likely an upright stands in a cell, with its plies, lean by lean, in each cell by cell.
    pub(super) cells: Vec<[f64; 3]>,
    /// How likely each of its readings is of no upright.
    pub(super) wrong: Vec<f64>,
}

impl Weighed {
    /// What is believed of one stretch, the `index`th.
    pub(super) fn posterior(&self, stretch: &Stretch<'_>, index: usize, layout: &[f64]) -> Posterior {
        let mut cells = vec![[0.0; 3]; stretch.cells * stretch.leans.tried.len()];
        let mut wrong = vec![0.0; stretch.readings.len()];
        let shares = self.spacings.iter().copied().chain([self.no_pattern]);
        for ((share, tables), at) in shares.zip(&self.tables).zip(0..) {
            if share < NEGLIGIBLE {
                continue;
            }
            let Some(table) = tables.get(index) else { continue };
            let spacing: Option<&f64> = SPACINGS_MM.get(at);
            let (places, extra, none) = match spacing {
                Some(spacing) => self.in_pattern(stretch, table, *spacing, layout),
                None => {
                    let in_cell = stretch.cell_mm / MEAN_SPACING_MM;
                    let each = self.no_pattern / table.explained_anywhere(in_cell);
                    (
                        vec![each * in_cell; stretch.cells],
                        each,
                        each * table.empty_share(in_cell) * table.none,
                    )
                }
            };
            let weighed_by = stretch.weighed_by(spacing.copied().unwrap_or(MEAN_SPACING_MM));
            let weights: Vec<_> =
                stretch.readings.iter().map(|reading| reading.weights(weighed_by)).collect();
            let masses: Vec<[f64; 3]> = table
                .cells
                .iter()
                .zip(places.iter().zip(&stretch.extras).cycle())
                .map(|(cell, (place, beside))| {
                    let mut mass = *cell;
                    for (one, beside) in mass.iter_mut().zip(beside) {
                        *one *= place + extra * beside;
                    }
                    mass
                })
                .collect();
            for (((wrong, reading), fits), weights) in
                wrong.iter_mut().zip(&stretch.readings).zip(&stretch.fits).zip(&weights)
            {
                *wrong += none * reading.wrong_without();
                for (mass, fit) in masses.iter().zip(fits) {
                    if mass.iter().sum::<f64>() > 1e-9 {
                        let each = mass.iter().zip(fit);
                        *wrong += each.map(|(mass, fit)| mass * reading.wrong(*fit, *weights)).sum::<f64>();
                    }
                }
            }
            for (cell, mass) in cells.iter_mut().zip(&masses) {
                for (cell, mass) in cell.iter_mut().zip(mass) {
                    *cell += mass;
                }
            }
        }
        Posterior { cells, wrong }
    }

    /// Of one spacing's patterns: what an upright of the pattern in each cell is to be weighed by, what one beside it
    /// is, and how likely there is none.
    fn in_pattern(
        &self,
        stretch: &Stretch<'_>,
        table: &Table,
        spacing_mm: f64,
        layout: &[f64],
    ) -> (Vec<f64>, f64, f64) {
        let mut places = vec![0.0; stretch.cells];
        let (mut extra, mut none) = (0.0, 0.0);
        for one in self.patterns.iter().filter(|one| one.spacing_mm == spacing_mm) {
            let cell = stretch.cell_at(one.nearest(stretch.middle_mm()));
            let each = one.probability / table.explained(cell);
            extra += each;
            match cell {
                Some((cell, on)) => {
                    none += each * MISSING * table.none;
                    for (cell, share) in [(cell, 1.0 - on), (cell + 1, on)] {
                        if let Some(place) = places.get_mut(cell) {
                            *place += each * (1.0 - MISSING) * share;
                        }
                    }
                }
                None => none += each * table.none,
            }
        }
        // What the layout carries beyond the grid is lost there: no reading tells of it.
        (blurred(&places, layout, 0.0), extra, none)
    }
}

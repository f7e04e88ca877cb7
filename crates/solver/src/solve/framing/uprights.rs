//! From what is believed of a stretch to its uprights: where the middles gather, and how widely.

use super::model::Model;
use super::reading::{Reading, Says};
use super::stretch::places;
use crate::plan::framing::Belief;
use crate::tolerance::LEAN_SLOPE;
use crate::units::Length;

/// An upright is told of from this probability on: likelier than not (chosen).
pub(super) const TOLD: f64 = 0.5;

/// How many middles of uprights are expected, cell by cell.
pub(super) struct Middles {
    pub(super) first_mm: f64,
    pub(super) cell_mm: f64,
    pub(super) cells: Vec<f64>,
}

/// Where the middles gather.
#[derive(Clone, Copy, Debug)]
pub(super) struct Gathered {
    pub(super) centre_mm: f64,
    /// Within so much to either side it is in nine cases of ten.
    pub(super) doubt_mm: f64,
    pub(super) probability: f64,
}

impl Middles {
    /// The middles of all plies of the uprights believed to be there.
    pub(super) fn of_plies(first_mm: f64, cell_mm: f64, cells: &[[f64; 3]], model: &Model) -> Self {
        let face = model.cells_of_face();
        let mut middles = vec![0.0; cells.len() + 2 * face];
        let mut add = |cell: usize, mass: f64| {
            if let Some(middle) = middles.get_mut(cell) {
                *middle += mass;
            }
        };
        for (cell, [alone, with_right, with_left]) in cells.iter().enumerate() {
            add(cell + face, alone + with_right + with_left);
            add(cell + 2 * face, *with_right);
            add(cell, *with_left);
        }
        Self { first_mm: first_mm - model.face_mm, cell_mm, cells: middles }
    }

    /// The middles of its cells.
    pub(super) fn places(&self) -> impl Iterator<Item = f64> {
        places(self.first_mm, self.cell_mm, self.cells.len())
    }

    /// The uprights, the likeliest first: each takes the cells within three quarters of a face of where most gather.
    pub(super) fn gather(&self, model: &Model, least: f64) -> Vec<Gathered> {
        let face = model.cells_of_face();
        // Narrower than a face, so that it never holds the middles of two plies.
        let (window, reach) = ((face - face / 8) / 2, face - face / 4);
        let mut left: Vec<f64> = self.cells.clone();
        let mut found = Vec::new();
        // A handful at most stand in a stretch.
        for _ in 0..8 {
            let sums = left.windows(2 * window + 1).map(|cells| cells.iter().sum::<f64>());
            let most = sums.clone().fold(0.0, f64::max);
            if most < least * 0.8 {
                break;
            }
            // Of windows that hold as much, the middle one: a wall and its mirror gather alike.
            let same = sums.enumerate().filter(|(_, sum)| *sum >= most * (1.0 - 1e-9)).map(|(at, _)| at);
            let (first, last) = same.fold((usize::MAX, 0), |(first, last), at| (first.min(at), last.max(at)));
            let middle = usize::midpoint(first, last) + window;
            let odd = (first + last) % 2;
            let cells = middle.saturating_sub(reach)..(middle + odd + reach + 1).min(left.len());
            let Some(part) = left.get_mut(cells.clone()) else { break };
            let mass: f64 = part.iter().sum();
            if mass >= least {
                #[expect(clippy::cast_precision_loss, reason = "a few hundred")]
                let first_mm = self.first_mm + cells.start as f64 * self.cell_mm;
                let centre_mm = mean(part, first_mm, self.cell_mm, mass);
                found.push(Gathered {
                    centre_mm,
                    doubt_mm: doubt(part, self.cell_mm, mass, centre_mm - first_mm),
                    probability: mass.min(1.0),
                });
            }
            part.fill(0.0);
        }
        found
    }

    /// The same as the plan keeps it, for chances.
    pub(super) fn belief(&self, height_mm: f64, model: &Model) -> Belief {
        let mut sum = 0.0;
        let mut uprights = vec![0.0];
        uprights.extend(self.cells.iter().map(|cell| {
            sum += cell;
            sum
        }));
        Belief {
            from: Length::millimetres(self.first_mm - self.cell_mm / 2.0),
            step: Length::millimetres(self.cell_mm),
            uprights,
            height: Length::millimetres(height_mm),
            half_face: Length::millimetres(model.face_mm / 2.0),
            lean: 0.0,
            lean_doubt: LEAN_SLOPE,
        }
    }
}

/// The mean place of cells.
fn mean(cells: &[f64], first_mm: f64, cell_mm: f64, mass: f64) -> f64 {
    places(0.0, cell_mm, cells.len()).zip(cells).map(|(at, one)| at * one).sum::<f64>() / mass + first_mm
}

/// How far to either side of the mean nine tenths lie, each cell even in itself: where a second ply pulls to one side
/// it is more than half of the way from the 5th to the 95th hundredth. `mean_mm` is from the first cell's middle.
fn doubt(cells: &[f64], cell_mm: f64, mass: f64, mean_mm: f64) -> f64 {
    let within = |reach: f64| {
        let share = |at: f64| {
            let (from, to) = (at - cell_mm / 2.0, at + cell_mm / 2.0);
            ((to.min(mean_mm + reach) - from.max(mean_mm - reach)) / cell_mm).clamp(0.0, 1.0)
        };
        places(0.0, cell_mm, cells.len()).zip(cells).map(|(at, one)| one * share(at)).sum::<f64>()
    };
    #[expect(clippy::cast_precision_loss, reason = "a few hundred")]
    let (mut least, mut most) = (0.0, cells.len() as f64 * cell_mm);
    // Halved to a few millionths of a millimetre.
    for _ in 0..24 {
        let half = f64::midpoint(least, most);
        if within(half) < 0.9 * mass { least = half } else { most = half }
    }
    most
}

/// Whether a reading that is not wrong tells of the upright at a place.
pub(super) fn tells_of(reading: &Reading<'_>, centre_mm: f64, model: &Model) -> bool {
    let (off, half) = (reading.x_mm() - centre_mm, model.face_mm / 2.0);
    let away = match reading.says {
        Says::Empty => return false,
        Says::Left => off + half,
        Says::Right => off - half,
        // A finder of centres tells the middle of a doubled stud as well.
        Says::Centre | Says::Magnet | Says::Solid | Says::Metal => (off.abs() - half).max(0.0),
    };
    away.abs() <= 4.0 * model.sensed_sd_mm
}

//! How well what is told of walls agrees with what they are.

use super::made::{Band, FACE_MM, HEIGHT_MM, Made, MadeHit, Noise};
use crate::chance::Chance;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::framing::{PlaneFraming, Spacing, Stud};
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::tolerance::{EDGE_NEED_MM, SPOKEN_OF};
use strikeline_solver::units::Length;

/// Statements of a probability, and whether each came true.
#[derive(Default)]
pub(crate) struct Calibration {
    stated: Vec<(f64, bool)>,
}

impl Calibration {
    pub(crate) fn add(&mut self, probability: f64, came: bool) {
        self.stated.push((probability, came));
    }

    /// How far what was stated is from what came, as a mean over tenths weighed by their counts; tenths with fewer
    /// than 300 statements are joined with the next.
    pub(crate) fn off(&self) -> f64 {
        let mut stated = self.stated.clone();
        stated.sort_by(|a, b| a.0.total_cmp(&b.0));
        let tenth = |probability: f64| (probability * 10.0).floor().min(9.0);
        let (mut sum, mut group) = (0.0, Vec::new());
        let mut groups: Vec<Vec<(f64, bool)>> = Vec::new();
        for pair in stated.chunk_by(|a, b| tenth(a.0) == tenth(b.0)) {
            group.extend_from_slice(pair);
            if group.len() >= 300 {
                groups.push(std::mem::take(&mut group));
            }
        }
        match groups.last_mut() {
            Some(last) => last.extend(group),
            None => groups.push(group),
        }
        for group in &groups {
            let told: f64 = group.iter().map(|one| one.0).sum();
            let came: f64 = group.iter().map(|one| f64::from(u8::from(one.1))).sum();
            sum += (told - came).abs();
        }
        sum / count(self.stated.len()).max(1.0)
    }
}

/// What was counted over many walls.
#[derive(Default)]
pub(crate) struct Tally {
    pub(crate) spacing_right: Share,
    pub(crate) few: Calibration,
    pub(crate) many: Calibration,
    errors: Vec<f64>,
    /// Of uprights that are not of the pattern: nothing helps the one reading there.
    extra_errors: Vec<f64>,
    pub(crate) within: Share,
    pub(crate) solid: Calibration,
    pub(crate) wrong_found: Share,
    pub(crate) good_called_wrong: Share,
    pub(crate) no_pattern: Share,
}

/// So many of so many.
#[derive(Clone, Copy, Default)]
pub(crate) struct Share {
    pub(crate) of: usize,
    pub(crate) all: usize,
}

impl Share {
    pub(crate) fn add(&mut self, counts: bool) {
        self.all += 1;
        self.of += usize::from(counts);
    }

    pub(crate) fn share(self) -> f64 {
        count(self.of) / count(self.all).max(1.0)
    }
}

/// A count as a number to reckon with.
pub(crate) fn count(count: usize) -> f64 {
    f64::from(u32::try_from(count).unwrap_or(u32::MAX))
}

impl Tally {
    /// So many walls of a seed, each with 3 to 10 hits, and as many on uprights that follow no pattern.
    pub(crate) fn of(walls: usize, seed: u64, noise: &Noise) -> Self {
        let mut tally = Self::default();
        let mut chance = Chance::of(seed);
        for wall in 0..walls {
            let made = Made::of(&mut chance, noise, 3 + wall % 8, true);
            tally.wall(&made, &mut chance);
            let made = Made::of(&mut chance, noise, 6 + wall % 5, false);
            let plan = plan(&made);
            let likeliest = plane(&plan).and_then(|plane| plane.spacings.first()).copied();
            let given = |one: Spacing| one.spacing.is_some() && one.probability >= SPOKEN_OF;
            tally.no_pattern.add(!likeliest.is_some_and(given));
        }
        tally
    }

    /// The root of the mean square of how far regular studs met by good hits are off, in millimetres.
    pub(crate) fn error_mm(&self) -> f64 {
        root_mean_square(&self.errors)
    }

    /// The same of uprights beside openings.
    pub(crate) fn extra_error_mm(&self) -> f64 {
        root_mean_square(&self.extra_errors)
    }

    fn wall(&mut self, made: &Made, chance: &mut Chance) {
        let plan = plan(made);
        let Some(plane) = plane(&plan) else { return };
        if let Some(first) = plane.spacings.first() {
            let told = first.spacing.map(Length::mm);
            let right = told.zip(made.spacing_mm).is_some_and(|(told, truth)| (told - truth).abs() < 0.01);
            let tells = if made.hits.len() < 5 { &mut self.few } else { &mut self.many };
            tells.add(first.probability, right);
            if made.hits.len() >= 5 && spans_four_bays(made) {
                self.spacing_right.add(right);
            }
        }
        for stud in &plan.framing.studs {
            let x = stud.centre.mm() + chance.between(-30.0, 30.0);
            let (at, height) = (Length::millimetres(x), Length::millimetres(HEIGHT_MM));
            let stated = plan.framing.chance(None, at, height, Length::millimetres(EDGE_NEED_MM));
            self.solid.add(stated, made.solid(x, HEIGHT_MM, EDGE_NEED_MM));
        }
        for (at, band) in made.bands.iter().enumerate() {
            self.band(made, at, band, &plan.framing.studs);
        }
        if made.hits.len() < 6 {
            return;
        }
        for (index, hit) in made.hits.iter().enumerate() {
            let id = Id::new(&format!("hit-{}", index + 1));
            let called = plane.outliers.iter().any(|outlier| outlier.hit == id);
            if hit.wrong {
                // One that lands on an upright by chance cannot be told.
                let on = |doubt: f64| {
                    let near = |band: &Band| {
                        band.left_mm() - doubt <= hit.x_mm && hit.x_mm <= band.right_mm() + doubt
                    };
                    made.bands.iter().any(near)
                };
                if !on(6.35) {
                    self.wrong_found.add(called);
                }
            } else {
                self.good_called_wrong.add(called);
            }
        }
    }

    /// How far the studs told by the good hits of one band are off its nearest ply, or off the middle of a doubled
    /// one, which is what a finder of centres tells. The nearest counts as the band's error; a second ply told where
    /// there is none is counted among the intervals and the chances.
    fn band(&mut self, made: &Made, at: usize, band: &Band, studs: &[Stud]) {
        let told_by = |stud: &&Stud| {
            let good = |(index, hit): (usize, &MadeHit)| {
                hit.of == Some(at)
                    && !hit.wrong
                    && stud.hits.contains(&Id::new(&format!("hit-{}", index + 1)))
            };
            made.hits.iter().enumerate().any(good)
        };
        let middle = f64::midpoint(band.left_mm(), band.right_mm());
        let mut nearest: Option<f64> = None;
        for stud in studs.iter().filter(told_by) {
            let lean = band.lean * (stud.at_height.mm() - HEIGHT_MM);
            let off = band.middles().chain([middle]).map(|middle| (stud.centre.mm() - middle - lean).abs());
            let error = off.fold(f64::INFINITY, f64::min);
            self.within.add(error <= stud.doubt.mm());
            nearest = Some(nearest.map_or(error, |least| least.min(error)));
        }
        let errors = if band.regular { &mut self.errors } else { &mut self.extra_errors };
        errors.extend(nearest);
    }
}

fn root_mean_square(errors: &[f64]) -> f64 {
    let squares: f64 = errors.iter().map(|error| error * error).sum();
    (squares / count(errors.len()).max(1.0)).sqrt()
}

/// Whether its good hits span four bays or more and meet four regular studs or more.
fn spans_four_bays(made: &Made) -> bool {
    let mut met: Vec<usize> = made
        .hits
        .iter()
        .filter_map(|hit| hit.of)
        .filter(|of| made.bands.get(*of).is_some_and(|band| band.regular))
        .collect();
    met.sort_unstable();
    met.dedup();
    let ends = met.first().zip(met.last()).and_then(|(a, b)| made.bands.get(*a).zip(made.bands.get(*b)));
    let spacing = made.spacing_mm.unwrap_or(f64::INFINITY);
    // A doubled upright and the layout leave the span a little short.
    met.len() >= 4 && ends.is_some_and(|(a, b)| b.first_mm - a.first_mm > 4.0 * spacing - FACE_MM - 20.0)
}

pub(crate) fn plan(made: &Made) -> Plan {
    solve(&made.job(made.hits.len()), &Id::new("wall-1"), None)
}

fn plane(plan: &Plan) -> Option<&PlaneFraming> {
    plan.framing.planes.iter().find(|plane| plane.on.is_none())
}

//! The same wall reckoned by brute force: every spacing, every start by the half millimetre, every place of every
//! upright by the quarter millimetre, with nothing kept from one to the next. Hits stand far apart, and away from
//! openings and ends, so that each is of an upright of its own. The numbers taken of walls are set here again by hand.

use strikeline_solver::job::hit::HitKind;

const SPACINGS_MM: [f64; 6] = [406.4, 609.6, 487.68, 400.0, 450.0, 600.0];
const HALF_MM: f64 = 19.05;
const SENSED_MM: f64 = 6.35 / 1.645;
const LAYOUT_MM: f64 = 3.175;
const FINE_MM: f64 = 0.25;
const REACH_MM: f64 = 110.0;

fn bell(off: f64, deviation: f64) -> f64 {
    (-0.5 * (off / deviation).powi(2)).exp() / (deviation * std::f64::consts::TAU.sqrt())
}

fn solid(off: f64, half: f64) -> f64 {
    (0.5 + (half - off.abs())).clamp(0.0, 1.0)
}

/// How likely a hit is with an upright's middle at `centre`, of three ways it may stand.
fn with(hit: (HitKind, f64), centre: f64, spacing: f64) -> [f64; 3] {
    let off = hit.1 - centre;
    let sensed = |middle: f64| 0.9 * spacing * bell(off - middle, SENSED_MM) + 0.1;
    let probed = |middle: f64, half: f64| {
        let share = solid(off - middle, half);
        0.995 * share + 0.002 * (1.0 - share)
    };
    match hit.0 {
        HitKind::Centre => [sensed(0.0), sensed(HALF_MM), sensed(-HALF_MM)],
        HitKind::LeftEdge => [sensed(-HALF_MM), sensed(-HALF_MM), sensed(-3.0 * HALF_MM)],
        HitKind::RightEdge => [sensed(HALF_MM), sensed(3.0 * HALF_MM), sensed(HALF_MM)],
        HitKind::Wood => {
            let pair = 2.0 * HALF_MM;
            [probed(0.0, HALF_MM), probed(HALF_MM, pair), probed(-HALF_MM, pair)]
        }
        _ => panic!("not reckoned here"),
    }
}

fn without(hit: (HitKind, f64)) -> f64 {
    if hit.0 == HitKind::Wood { 0.002 } else { 0.1 }
}

/// The places an upright's middle is tried at about a hit.
fn places(hit: (HitKind, f64)) -> impl Iterator<Item = f64> {
    let steps = (REACH_MM / FINE_MM) as i32;
    (-steps..=steps).map(move |step| hit.1 + f64::from(step) * FINE_MM)
}

const WAYS: [f64; 3] = [0.972, 0.014, 0.014];

/// What is believed, as shares that come to 1: the spacing, and middles of plies with their mass.
pub(crate) struct Dense {
    shares: Vec<(Option<f64>, f64)>,
    middles: Vec<(f64, f64)>,
}

impl Dense {
    pub(crate) fn of(hits: &[(HitKind, f64)]) -> Self {
        let (mut shares, mut middles) = (Vec::new(), Vec::new());
        for spacing in SPACINGS_MM {
            let starts = (spacing / 0.5) as u32;
            let mut sum = 0.0;
            for start in 0..starts {
                let start_mm = f64::from(start) * spacing / f64::from(starts);
                let prior = 0.85 / 6.0 / f64::from(starts);
                let node = |x: f64| start_mm + ((x - start_mm) / spacing).round() * spacing;
                let near = |hit: (HitKind, f64)| (node(hit.1) - hit.1).abs() < 90.0;
                let each: Vec<f64> = hits
                    .iter()
                    .map(|hit| {
                        let rare = 3.7e-5 * FINE_MM;
                        let alone = if near(*hit) { 0.02 } else { 1.0 };
                        let of_place = |at: f64| {
                            let tell: f64 =
                                with(*hit, at, spacing).iter().zip(WAYS).map(|(one, way)| one * way).sum();
                            let pattern = if near(*hit) {
                                0.98 * FINE_MM * bell(at - node(hit.1), LAYOUT_MM)
                            } else {
                                0.0
                            };
                            tell * (pattern + rare)
                        };
                        places(*hit).map(of_place).sum::<f64>() + alone * without(*hit)
                    })
                    .collect();
                let all = prior * each.iter().product::<f64>();
                sum += all;
                if all < 1e-9 {
                    continue;
                }
                for (hit, own) in hits.iter().zip(&each) {
                    for at in places(*hit) {
                        let pattern =
                            if near(*hit) { 0.98 * FINE_MM * bell(at - node(hit.1), LAYOUT_MM) } else { 0.0 };
                        let weight = all / own * (pattern + 3.7e-5 * FINE_MM);
                        plies(&mut middles, at, with(*hit, at, spacing), weight);
                    }
                }
            }
            shares.push((Some(spacing), sum));
        }
        let cell = FINE_MM / 450.0;
        let each: Vec<f64> = hits
            .iter()
            .map(|hit| {
                let tell =
                    |at: f64| with(*hit, at, 450.0).iter().zip(WAYS).map(|(one, way)| one * way).sum::<f64>();
                let told: f64 = places(*hit).map(tell).sum();
                let wide = 2.0 * (1.5 * 38.1 + 4.0 * SENSED_MM) / 450.0;
                told * (cell + 3.7e-5 * FINE_MM) + (1.0 - wide).max(0.05) * without(*hit)
            })
            .collect();
        let none = 0.15 * each.iter().product::<f64>();
        for (hit, own) in hits.iter().zip(&each) {
            for at in places(*hit) {
                plies(&mut middles, at, with(*hit, at, 450.0), none / own * (cell + 3.7e-5 * FINE_MM));
            }
        }
        shares.push((None, none));
        let whole: f64 = shares.iter().map(|(_, share)| share).sum();
        for (_, share) in &mut shares {
            *share /= whole;
        }
        for (_, mass) in &mut middles {
            *mass /= whole;
        }
        middles.sort_by(|a, b| a.0.total_cmp(&b.0));
        Self { shares, middles }
    }

    pub(crate) fn share(&self, spacing: Option<f64>) -> f64 {
        let same = |other: Option<f64>| match (spacing, other) {
            (Some(a), Some(b)) => (a - b).abs() < 1e-6,
            (None, None) => true,
            _ => false,
        };
        self.shares.iter().filter(|(other, _)| same(*other)).map(|(_, share)| share).sum()
    }

    /// The mean of the middles within three quarters of a face of a place, and how much of them is within a doubt of
    /// it.
    pub(crate) fn middle_near(&self, x: f64, doubt: f64) -> (f64, f64) {
        let here: Vec<(f64, f64)> =
            self.middles.iter().copied().filter(|(at, _)| (at - x).abs() < 1.5 * HALF_MM).collect();
        let mass: f64 = here.iter().map(|(_, mass)| mass).sum();
        let mean = here.iter().map(|(at, one)| at * one).sum::<f64>() / mass;
        let held: f64 = here.iter().filter(|(at, _)| (at - x).abs() <= doubt).map(|(_, one)| one).sum();
        (mean, held / mass)
    }
}

fn plies(middles: &mut Vec<(f64, f64)>, at: f64, tells: [f64; 3], weight: f64) {
    let [alone, right, left] = [0, 1, 2].map(|way| tells[way] * WAYS[way] * weight);
    if alone + right + left < 1e-12 {
        return;
    }
    middles.push((at, alone + right + left));
    middles.push((at + 2.0 * HALF_MM, right));
    middles.push((at - 2.0 * HALF_MM, left));
}

//! The yield modes without a gap, written out as NDS 2018 prints them.

use strikeline_solver::capacity::reduction::Reduction;
use strikeline_solver::capacity::yield_modes::{Joint, yield_loads};

/// The modes of NDS 2018 Table 12.3.1A as printed there, against those with a gap of nothing.
pub(crate) fn without_gap() -> f64 {
    let terms = Reduction { one: 4.0, two: 3.6, three_and_four: 3.2 };
    let mut most: f64 = 0.0;
    for d in [0.113, 0.196, 0.227, 0.371] {
        for (f_em, f_es) in [(2550.0, 61_850.0), (4050.0, 61_850.0), (5600.0, 5600.0), (8000.0, 2500.0)] {
            for (l_m, l_s) in [(1.0, 0.036), (2.4, 0.075), (3.0, 0.25), (1.5, 1.5)] {
                for f_yb in [45_000.0, 100_000.0] {
                    let joint = Joint {
                        diameter_in: d,
                        bending_psi: f_yb,
                        main_psi: f_em,
                        main_in: l_m,
                        side_psi: f_es,
                        side_in: l_s,
                        gap_in: 0.0,
                    };
                    let printed = as_printed(d, f_em, f_es, l_m, l_s, f_yb, &terms);
                    for (ours, printed) in yield_loads(&joint, &terms).into_iter().zip(printed) {
                        most = most.max((ours / printed - 1.0).abs());
                    }
                }
            }
        }
    }
    most
}

fn as_printed(d: f64, f_em: f64, f_es: f64, l_m: f64, l_s: f64, f_yb: f64, terms: &Reduction) -> [f64; 6] {
    let (re, rt) = (f_em / f_es, l_m / l_s);
    let k1 = ((re + 2.0 * re * re * (1.0 + rt + rt * rt) + rt * rt * re.powi(3)).sqrt() - re * (1.0 + rt))
        / (1.0 + re);
    let k2 =
        -1.0 + (2.0 * (1.0 + re) + 2.0 * f_yb * (1.0 + 2.0 * re) * d * d / (3.0 * f_em * l_m * l_m)).sqrt();
    let k3 =
        -1.0 + (2.0 * (1.0 + re) / re + 2.0 * f_yb * (2.0 + re) * d * d / (3.0 * f_em * l_s * l_s)).sqrt();
    [
        d * l_m * f_em / terms.one,
        d * l_s * f_es / terms.one,
        k1 * d * l_s * f_es / terms.two,
        k2 * d * l_m * f_em / ((1.0 + 2.0 * re) * terms.three_and_four),
        k3 * d * l_s * f_em / ((2.0 + re) * terms.three_and_four),
        d * d / terms.three_and_four * (2.0 * f_em * f_yb / (3.0 * (1.0 + re))).sqrt(),
    ]
}

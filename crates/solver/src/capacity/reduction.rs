//! What the yield loads are divided by (NDS 2018 Table 12.3.1B).

use super::dowel_bearing::Grain;
use super::screw::is_large;
use super::why::{Input, Known, Why};
use crate::handbook::reduction as book;
use crate::ledger::{Amount, Given, Ledger, Put, Step};
use crate::units::Length;

/// R_d of the modes I, of mode II, and of the modes III and IV.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Reduction {
    /// Modes I.
    pub one: f64,
    /// Mode II.
    pub two: f64,
    /// Modes III and IV.
    pub three_and_four: f64,
}

/// K_D by the yield diameter, which is the root of a threaded fastener; under 1/4 in only.
#[must_use]
pub fn k_d(root_in: f64) -> f64 {
    let (slope, rest) = book::BETWEEN.value;
    if root_in <= book::SMALL_TO_IN { book::SMALL.value } else { slope * root_in + rest }
}

/// The reduction terms of a fastener by its nominal and its root diameter. A nominal 1/4 in or more whose root
/// is less takes K_D with K_theta; under 1/4 in the grain's direction does not count.
///
/// # Errors
/// Not known for a root over 1 in or of no size.
pub fn reduction<L: Ledger>(
    ledger: &mut L,
    nominal: Length,
    root: Given<Length>,
    grain: Grain,
) -> Known<Reduction> {
    let (nominal_in, root_in) = (nominal.in_inches(), root.value.in_inches());
    if !(root_in > 0.0 && root_in <= 1.0 && nominal_in >= root_in && nominal_in <= 1.25) {
        return Err(Why::OutsideTable(Input::Diameter));
    }
    let factor = if grain == Grain::Across { book::ACROSS_GRAIN.value } else { 1.0 };
    if root_in >= book::LARGE_FROM_IN {
        let [one, two, three_and_four] = book::LARGE.value.map(|term| term * factor);
        let terms = [
            ("reduction term of the modes I", "R_d = 4 K_theta", one),
            ("reduction term of mode II", "R_d = 3.6 K_theta", two),
            ("reduction term of the modes III and IV", "R_d = 3.2 K_theta", three_and_four),
        ];
        for (name, formula, term) in terms {
            write(ledger, name, formula, root, factor, term);
        }
        return Ok(Reduction { one, two, three_and_four });
    }
    let factor = if is_large(nominal) { factor } else { 1.0 };
    let k = k_d(root_in) * factor;
    let formula =
        if root_in <= book::SMALL_TO_IN { "R_d = 2.2 K_theta" } else { "R_d = (10 D_r + 0.5) K_theta" };
    write(ledger, "reduction term of all modes", formula, root, factor, k);
    Ok(Reduction { one: k, two: k, three_and_four: k })
}

fn write<L: Ledger>(
    ledger: &mut L,
    name: &'static str,
    formula: &'static str,
    root: Given<Length>,
    factor: f64,
    term: f64,
) {
    ledger.write(|| Step {
        name,
        formula,
        put: vec![
            Put::given("D_r", root),
            Put::new("K_theta", Amount::bare(factor), book::ACROSS_GRAIN.label),
        ],
        result: Amount::bare(term),
        source: book::LARGE.source,
        label: root.label.worked_out(),
    });
}

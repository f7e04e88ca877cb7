//! What wood bears under a dowel's side, rounded to 50 psi as the table prints it (NDS 2018 Table 12.3.3).

use super::screw::{Screw, ScrewKind};
use super::why::Known;
use super::withdrawal::valid_gravity;
use crate::handbook::dowel_bearing as book;
use crate::ledger::{Given, Ledger, Put, Step};
use crate::numeric::{power, root};
use crate::units::{Ratio, Stress};

/// Which way a load runs against the grain of a stud.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Grain {
    /// Up and down a stud.
    Along,
    /// Across a stud.
    Across,
}

/// What the wood bears; by the nominal diameter.
///
/// # Errors
/// Not known where G is outside of its table.
pub fn dowel_bearing<L: Ledger>(
    ledger: &mut L,
    screw: &Screw,
    wood: Given<Ratio>,
    grain: Grain,
) -> Known<Given<Stress>> {
    let g = valid_gravity(wood)?;
    let d_in = screw.diameter.value.in_inches();
    let (c, n) = book::SMALL.value;
    let small =
        (c * power(g, n), "F_em = 50 round(16600 G^1.84 / 50)", book::SMALL.source, book::SMALL.label);
    let (psi, formula, source, own) = match (screw.is_large(), grain) {
        (false, _) => small,
        (true, Grain::Along) => {
            (book::ALONG.value * g, "F_em = 50 round(11200 G / 50)", book::ALONG.source, book::ALONG.label)
        }
        (true, Grain::Across) => {
            let (c, n) = book::ACROSS.value;
            let psi = c * power(g, n) / root(d_in);
            (psi, "F_em = 50 round(6100 G^1.45 / sqrt(D) / 50)", book::ACROSS.source, book::ACROSS.label)
        }
    };
    // A structural screw is thick over its thread and thin in its root: reports take either equation for its bearing,
    // and the lesser is taken here.
    let (psi, formula, source, own) = if screw.kind == ScrewKind::Structural && small.0 < psi {
        small
    } else {
        (psi, formula, source, own)
    };
    let step = book::ROUNDED_TO_PSI.value;
    let bearing = Stress::psi((psi / step).round() * step);
    let label = own.weaker(wood.label).worked_out();
    ledger.write(|| {
        let mut put = vec![Put::given("G", wood)];
        if formula.contains("(D)") {
            put.push(Put::given("D", screw.diameter));
        }
        let name = "what the stud bears under the fastener's side, to 50 psi";
        Step { name, formula, put, result: bearing.into(), source, label }
    });
    Ok(Given::new(bearing, label))
}

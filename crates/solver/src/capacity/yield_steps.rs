//! The yield modes written down, one after the other, as they are worked out by hand.

use super::reduction::Reduction;
use super::yield_modes::Parts;
use crate::ledger::{Amount, Label, Ledger, Put, Shown, Step};

/// Where the equations are from.
pub(super) const SOURCE: &str = "TR12 Table 1-1 (the dowel equations with a gap), NDS 2018 Table 12.3.1";

/// A mode: its name, its equation, which of the quadratics it is, which reduction term it takes.
type Told = (&'static str, &'static str, Option<usize>, fn(&Reduction) -> f64);

const MODES: [Told; 6] = [
    ("mode I_m, the stud is crushed", "Z_Im = q_m l_m / R_d", None, |terms| terms.one),
    ("mode I_s, the plate is crushed", "Z_Is = q_s l_s / R_d", None, |terms| terms.one),
    (
        "mode II, the fastener turns in both",
        "Z_II = 2 C / (B + sqrt(B^2 + 4 A C)) / R_d; A = 1/(4 q_s) + 1/(4 q_m); B = l_s/2 + g + l_m/2; \
         C = q_s l_s^2/4 + q_m l_m^2/4",
        Some(0),
        |terms| terms.two,
    ),
    (
        "mode III_m, the fastener bends in the plate and turns in the stud",
        "Z_IIIm = 2 C / (B + sqrt(B^2 + 4 A C)) / R_d; A = 1/(2 q_s) + 1/(4 q_m); B = g + l_m/2; \
         C = M + q_m l_m^2/4",
        Some(1),
        |terms| terms.three_and_four,
    ),
    (
        "mode III_s, the fastener bends in the stud and turns in the plate",
        "Z_IIIs = 2 C / (B + sqrt(B^2 + 4 A C)) / R_d; A = 1/(4 q_s) + 1/(2 q_m); B = l_s/2 + g; \
         C = q_s l_s^2/4 + M",
        Some(2),
        |terms| terms.three_and_four,
    ),
    (
        "mode IV, the fastener bends in both",
        "Z_IV = 2 C / (B + sqrt(B^2 + 4 A C)) / R_d; A = 1/(2 q_s) + 1/(2 q_m); B = g; C = 2 M",
        Some(3),
        |terms| terms.three_and_four,
    ),
];

/// The loads of the modes, as what comes after takes them.
pub(super) fn put(loads: &[f64; 6], label: Label) -> impl Iterator<Item = Put> {
    let symbols = ["Z_Im", "Z_Is", "Z_II", "Z_IIIm", "Z_IIIs", "Z_IV"];
    symbols
        .into_iter()
        .zip(*loads)
        .map(move |(symbol, lbf)| Put::result(symbol, Amount::new(lbf, Shown::PoundForce), label))
}

/// Writes the modes of a joint down. `given` are the joint's own values, with where they are from.
pub(super) fn write<L: Ledger>(
    ledger: &mut L,
    given: impl Fn() -> Vec<Put>,
    (parts, terms): (&Parts, &Reduction),
    loads: &[f64; 6],
    label: Label,
) {
    let of = |given: &[Put], symbols: &[&str]| -> Vec<Put> {
        given.iter().filter(|put| symbols.contains(&put.symbol)).copied().collect()
    };
    let per_inch = |value: f64| Amount::new(value, Shown::PoundForcePerInch);
    let first = [
        (
            "what the stud bears for each inch of fastener",
            "q_m = F_em D_r",
            ["F_em", "D_r"],
            per_inch(parts.q_m),
        ),
        (
            "what the plate bears for each inch of fastener",
            "q_s = F_es D_r",
            ["F_es", "D_r"],
            per_inch(parts.q_s),
        ),
        (
            "what bends the fastener",
            "M = F_yb D_r^3 / 6",
            ["F_yb", "D_r"],
            Amount::new(parts.m, Shown::PoundForceInch),
        ),
    ];
    for (name, formula, symbols, result) in first {
        ledger.write(|| Step { name, formula, put: of(&given(), &symbols), result, source: SOURCE, label });
    }
    for ((name, formula, quadratic, term), lbf) in MODES.into_iter().zip(*loads) {
        ledger.write(|| {
            let result = |symbol, amount| Put::result(symbol, amount, label);
            let mut all = of(&given(), &["l_m", "l_s", "g"]);
            all.push(result("q_m", per_inch(parts.q_m)));
            all.push(result("q_s", per_inch(parts.q_s)));
            all.push(result("M", Amount::new(parts.m, Shown::PoundForceInch)));
            all.push(result("R_d", Amount::bare(term(terms))));
            if let Some(own) = quadratic.and_then(|own| parts.quadratics.get(own)) {
                all.push(result("A", Amount::new(own.a, Shown::InchPerPoundForce)));
                all.push(result("B", Amount::new(own.b, Shown::Inch)));
                all.push(result("C", Amount::new(own.c, Shown::PoundForceInch)));
            }
            let is_in = |put: &Put| {
                let names = |c: char| !(c.is_alphanumeric() || c == '_');
                formula
                    .split_once("= ")
                    .is_some_and(|(_, told)| told.split(names).any(|one| one == put.symbol))
            };
            all.retain(is_in);
            let result = Amount::new(lbf, Shown::PoundForce);
            Step { name, formula, put: all, result, source: SOURCE, label }
        });
    }
}

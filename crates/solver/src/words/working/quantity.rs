//! A number of a working with its unit: in the unit that its formula is worked in, and beside a result in another.

use super::super::fastening::fine;
use super::super::lines::KEPT;
use crate::ledger::{Amount, Shown};
use crate::units::{Force, Length};

/// So many figures are told: one in the last changes no verdict (chosen).
const FIGURES: i32 = 6;
/// No more decimals than this.
const MOST_DECIMALS: i32 = 9;

/// A number to six figures, without zeros at its end.
pub(super) fn number(value: f64) -> String {
    let mut decimals = FIGURES - 1;
    let mut size = value.abs();
    while size >= 10.0 && decimals > 0 {
        (size, decimals) = (size / 10.0, decimals - 1);
    }
    while size < 1.0 && size > 0.0 && decimals < MOST_DECIMALS {
        (size, decimals) = (size * 10.0, decimals + 1);
    }
    let told = format!("{value:.*}", usize::try_from(decimals).unwrap_or_default());
    let told = if told.contains('.') { told.trim_end_matches('0').trim_end_matches('.') } else { &told };
    if told == "-0" { "0".to_owned() } else { told.to_owned() }
}

fn with(value: f64, unit: &str) -> String {
    if unit.is_empty() { number(value) } else { format!("{}{KEPT}{unit}", number(value)) }
}

/// As it stands in a formula.
pub(super) fn plain(amount: Amount) -> String {
    match amount.unit {
        // Forces are in newtons and levers in millimetres.
        Shown::NewtonMetre => with(amount.value * 1000.0, "N\u{b7}mm"),
        unit => with(amount.value, name(unit)),
    }
}

/// As a result: with another unit where the job or the steps after go by that.
pub(super) fn result(amount: Amount, in_inches: bool) -> String {
    let value = amount.value;
    let newtons = |lbf: f64| Force::pounds_force(lbf).n();
    let other = match (amount.unit, in_inches) {
        (Shown::NewtonMetre, _) => Some(with(value, "N\u{b7}m")),
        (Shown::PoundForce, _) => Some(with(newtons(value), "N")),
        (Shown::Newton, true) => Some(with(Force::newtons(value).lbf(), "lbf")),
        (Shown::Millimetre, true) => Some(with(Length::millimetres(value).in_inches(), "in")),
        (Shown::Inch, true) => is_of_64ths(value).then(|| fine(Length::inches(value))),
        (Shown::Inch, false) => Some(with(Length::inches(value).mm(), "mm")),
        (Shown::Psi, false) => Some(with(newtons(value) / (25.4 * 25.4), "N/mm^2")),
        (Shown::PoundForcePerInch, false) => Some(with(newtons(value) / 25.4, "N/mm")),
        (Shown::PoundForceInch, false) => Some(with(newtons(value) * 25.4, "N\u{b7}mm")),
        _ => None,
    };
    // What is nothing is nothing in any unit.
    match other.filter(|_| value != 0.0) {
        Some(other) => format!("{} ({other})", plain(amount)),
        None => plain(amount),
    }
}

/// Whether inches are a fraction as bits have them, and not whole.
fn is_of_64ths(inches: f64) -> bool {
    let parts = inches * 64.0;
    let is_fraction = (inches - inches.round()).abs() > 1e-9;
    is_fraction && inches > 0.0 && inches < 100.0 && (parts - parts.round()).abs() < 1e-9
}

fn name(unit: Shown) -> &'static str {
    match unit {
        Shown::Bare => "",
        Shown::Inch => "in",
        Shown::Millimetre => "mm",
        Shown::SquareMillimetre => "mm^2",
        Shown::PoundForce => "lbf",
        Shown::Newton => "N",
        Shown::NewtonMetre => "N\u{b7}m",
        Shown::Kilogram => "kg",
        Shown::MetrePerSecondSquared => "m/s^2",
        Shown::Degree => "deg",
        Shown::Psi => "psi",
        Shown::PoundForcePerInch => "lbf/in",
        Shown::PoundForceInch => "lbf\u{b7}in",
        Shown::InchPerPoundForce => "in/lbf",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_have_six_figures_and_no_zeros_at_their_end() {
        let told = [
            (0.0, "0"),
            (-0.0, "0"),
            (1e-14, "0"),
            (0.25, "0.25"),
            (9.80665, "9.80665"),
            (61850.0, "61850"),
            (120.0, "120"),
            (1_234_567.8, "1234568"),
            (-203.2, "-203.2"),
            (0.000_567_123, "0.000567123"),
        ];
        for (value, words) in told {
            assert_eq!(number(value), words);
        }
    }

    #[test]
    fn results_have_the_jobs_unit_beside_their_own() {
        let told = [
            (Amount::new(100.0, Shown::PoundForce), "100 lbf (444.822 N)", "100 lbf (444.822 N)"),
            (Amount::new(100.0, Shown::Newton), "100 N (22.4809 lbf)", "100 N"),
            (Amount::new(50.8, Shown::Millimetre), "50.8 mm (2 in)", "50.8 mm"),
            (Amount::new(0.171_875, Shown::Inch), "0.171875 in (11/64\")", "0.171875 in (4.36562 mm)"),
            (Amount::new(0.36, Shown::Inch), "0.36 in", "0.36 in (9.144 mm)"),
            (Amount::turning(12_500.0), "12500 N\u{b7}mm (12.5 N\u{b7}m)", "12500 N\u{b7}mm (12.5 N\u{b7}m)"),
            (Amount::new(0.0, Shown::Newton), "0 N", "0 N"),
            (Amount::bare(0.43), "0.43", "0.43"),
        ];
        for (amount, inches, metric) in told {
            assert_eq!(result(amount, true).replace(KEPT, " "), inches);
            assert_eq!(result(amount, false).replace(KEPT, " "), metric);
        }
    }
}

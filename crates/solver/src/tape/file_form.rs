//! Quantities as a file holds them: each with its unit, and nothing lost.
//!
//! Read back, a text gives the same quantity and is written the same, byte for byte. What is not finite gives a
//! text that reading refuses.

use super::decimal::decimal_of;
use super::nanometre::{INCH, nanometres};
use crate::units::{
    Angle, AngleUnit, Force, ForcePerLength, ForcePerLengthUnit, ForceUnit, Length, LengthUnit, Mass,
    MassUnit, Ratio, RatioUnit, Stress, StressUnit,
};

/// 1/64 in, the finest fraction written, in nanometres.
const SIXTY_FOURTH: i128 = INCH / 64;

/// The prime in an inch of 127 * 200 000 nm: only its multiples have a decimal in inches that ends.
const INCH_PRIME: i128 = 127;

/// A length in the unit it was given in: inches as a fraction to 1/64 if exact, else as a decimal if exact to
/// the nanometre, else in millimetres.
#[must_use]
pub fn write_length(length: Length) -> String {
    if !length.is_finite() {
        return format!("{} mm", length.mm());
    }
    let nm = nanometres(length);
    match length.unit() {
        LengthUnit::Inch if nm % SIXTY_FOURTH == 0 => format!("{} in", mixed_of(nm / SIXTY_FOURTH)),
        // 127 nm is 0.000 005 in.
        LengthUnit::Inch if nm % INCH_PRIME == 0 => format!("{} in", decimal_of(nm / INCH_PRIME * 5, 6)),
        LengthUnit::Mil if nm % INCH_PRIME == 0 => format!("{} mil", decimal_of(nm / INCH_PRIME * 5, 3)),
        LengthUnit::Millimetre | LengthUnit::Inch | LengthUnit::Mil => format!("{} mm", decimal_of(nm, 6)),
    }
}

/// So many 64ths as a mixed number in lowest terms.
fn mixed_of(sixty_fourths: i128) -> String {
    let sign = if sixty_fourths < 0 { "-" } else { "" };
    let size = sixty_fourths.unsigned_abs();
    let (whole, rest) = (size / 64, num_rational::Ratio::new(size % 64, 64));
    match (whole, *rest.numer()) {
        (_, 0) => format!("{sign}{whole}"),
        (0, _) => format!("{sign}{rest}"),
        _ => format!("{sign}{whole} {rest}"),
    }
}

/// A number to a millionth, without trailing zeros.
fn number(value: f64) -> String {
    if !value.is_finite() {
        return value.to_string();
    }
    decimal_of((value * 1e6).round() as i128, 6)
}

/// A mass in the unit it was given in, to a millionth of it.
#[must_use]
pub fn write_mass(mass: Mass) -> String {
    match mass.unit() {
        MassUnit::Kilogram => format!("{} kg", number(mass.kg())),
        MassUnit::Pound => format!("{} lb", number(mass.lb())),
    }
}

/// A force in the unit it was given in, to a millionth of it.
#[must_use]
pub fn write_force(force: Force) -> String {
    match force.unit() {
        ForceUnit::Newton => format!("{} N", number(force.n())),
        ForceUnit::PoundForce => format!("{} lbf", number(force.lbf())),
    }
}

/// A force per length in the unit it was given in, to a millionth of it.
#[must_use]
pub fn write_force_per_length(per_length: ForcePerLength) -> String {
    match per_length.unit() {
        ForcePerLengthUnit::NewtonPerMillimetre => format!("{} N/mm", number(per_length.n_per_mm())),
        ForcePerLengthUnit::PoundForcePerInch => format!("{} lbf/in", number(per_length.lbf_per_in())),
    }
}

/// A stress in the unit it was given in, to a millionth of it.
#[must_use]
pub fn write_stress(stress: Stress) -> String {
    match stress.unit() {
        StressUnit::Megapascal => format!("{} MPa", number(stress.mpa())),
        StressUnit::Psi => format!("{} psi", number(stress.in_psi())),
    }
}

/// An angle in degrees, to a millionth.
#[must_use]
pub fn write_angle(angle: Angle) -> String {
    match angle.unit() {
        AngleUnit::Degree => format!("{} deg", number(angle.deg())),
    }
}

/// A ratio as it is or in percent, to a millionth (of a hundredth, if in percent).
#[must_use]
pub fn write_ratio(ratio: Ratio) -> String {
    match ratio.unit() {
        RatioUnit::Bare => number(ratio.value()),
        RatioUnit::Percent => format!("{} %", number(ratio.in_percent())),
    }
}

#[cfg(test)]
mod tests {
    use super::super::nanometre::of_nanometres;
    use super::super::{
        read_angle, read_force, read_force_per_length, read_length_in_file, read_mass, read_ratio,
        read_stress,
    };
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn a_length_is_written_as_its_owner_wrote_it() {
        for (read, written) in [
            ("48 1/2 in", "48 1/2 in"),
            ("48.5 in", "48 1/2 in"),
            ("4' 0 1/2\"", "48 1/2 in"),
            ("3/4 in", "3/4 in"),
            ("-3/4 in", "-3/4 in"),
            ("0 in", "0 in"),
            ("1/64 in", "1/64 in"),
            ("48.1 in", "48.1 in"),
            ("-0.00001 in", "-0.00001 in"),
            // 1/3 in has no decimal that ends, so it is held as the nearest nanometre.
            ("1/3 in", "8.466667 mm"),
            ("1231.9 mm", "1231.9 mm"),
            ("123.19 cm", "1231.9 mm"),
            ("18 mil", "18 mil"),
            ("0.5 mil", "0.5 mil"),
            ("1 in + 1 mm", "26.4 mm"),
        ] {
            assert_eq!(write_length(read_length_in_file(read).unwrap()), written, "{read}");
        }
    }

    #[test]
    fn other_quantities_are_written_with_their_unit() {
        assert_eq!(write_mass(read_mass("62 lb", None).unwrap()), "62 lb");
        assert_eq!(write_mass(read_mass("28.25 kg", None).unwrap()), "28.25 kg");
        assert_eq!(write_force(read_force("220 N", None).unwrap()), "220 N");
        assert_eq!(write_force(read_force("50 lbf", None).unwrap()), "50 lbf");
        assert_eq!(write_force_per_length(read_force_per_length("205 lbf/in", None).unwrap()), "205 lbf/in");
        assert_eq!(write_force_per_length(read_force_per_length("35.9 N/mm", None).unwrap()), "35.9 N/mm");
        assert_eq!(write_stress(read_stress("2500 psi", None).unwrap()), "2500 psi");
        assert_eq!(write_stress(read_stress("17.2 MPa", None).unwrap()), "17.2 MPa");
        assert_eq!(write_angle(read_angle("-12 deg", None).unwrap()), "-12 deg");
        assert_eq!(write_ratio(read_ratio("95 %", None).unwrap()), "95 %");
        assert_eq!(write_ratio(read_ratio("0.36", None).unwrap()), "0.36");
    }

    #[test]
    fn what_is_not_finite_is_refused_when_read_back() {
        for mm in [f64::NAN, f64::INFINITY, f64::NEG_INFINITY] {
            assert!(read_length_in_file(&write_length(Length::millimetres(mm))).is_err());
            assert!(read_mass(&write_mass(Mass::pounds(mm)), None).is_err());
            assert!(read_ratio(&write_ratio(Ratio::bare(mm)), None).is_err());
        }
    }

    proptest! {
        #[test]
        fn a_written_length_reads_back_to_the_nanometre(
            nm in -10_000_000_000_000_i64..=10_000_000_000_000, coarse in -600_000_i64..600_000, which in 0..3_usize,
        ) {
            let unit = [LengthUnit::Millimetre, LengthUnit::Inch, LengthUnit::Mil][which];
            // Any nanometre, and the 64ths, thousandths and millionths of an inch among them.
            for nm in [nm, coarse * 396_875, coarse * 25_400, coarse * 127] {
                let length = of_nanometres(i128::from(nm)).with_unit(unit);
                let text = write_length(length);
                let read = read_length_in_file(&text).unwrap();
                prop_assert_eq!(nanometres(read), i128::from(nm), "{}", text);
                prop_assert_eq!(read.mm().to_bits(), length.mm().to_bits(), "{}", text);
                prop_assert_eq!(write_length(read), text);
            }
        }

        #[test]
        fn a_quantity_is_written_as_it_was_read(millionths in -100_000_000_000_000_i64..=100_000_000_000_000) {
            let text = decimal_of(i128::from(millionths), 6);
            macro_rules! same {
                ($read:expr, $write:expr, $unit:literal) => {
                    let text = format!("{text}{}", $unit);
                    let read = $read(&text, None).unwrap();
                    prop_assert_eq!($write(read), text);
                };
            }
            same!(read_mass, write_mass, " kg");
            same!(read_mass, write_mass, " lb");
            same!(read_force, write_force, " N");
            same!(read_force, write_force, " lbf");
            same!(read_force_per_length, write_force_per_length, " N/mm");
            same!(read_force_per_length, write_force_per_length, " lbf/in");
            same!(read_stress, write_stress, " MPa");
            same!(read_stress, write_stress, " psi");
            same!(read_angle, write_angle, " deg");
            same!(read_ratio, write_ratio, " %");
            same!(read_ratio, write_ratio, "");
        }
    }
}

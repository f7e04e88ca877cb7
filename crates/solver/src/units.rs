//! Quantities with their units, on a millimetre base. Not for reading or printing: that is `tape`.
//!
//! The only file that names `uom`. Each quantity remembers the unit it was given in, so that a job file
//! is written back as its owner wrote it; arithmetic and comparison look at the quantity alone.

mod base {
    //! uom's quantities on a millimetre base: 13.6 % of tenth-millimetre values do not survive a metre base.
    #![allow(missing_docs, unreachable_pub, reason = "the macro's own items")]
    ISQ!(uom::si, f64, (millimeter, kilogram, second, ampere, kelvin, mole, candela));
}

/// Units by the pound-force as it is defined, 0.453 592 37 kg by 9.806 65 m/s^2 (NIST SP 811, Appendix B.8): uom
/// rounds it up to seven digits, which is more than a second working of the same formula is off.
mod pound_force {
    #![allow(missing_docs, unreachable_pub, reason = "the macro's own items")]
    uom::unit! {
        system: uom::si;
        quantity: uom::si::force;
        @exact: 4.448_221_615_260_5; "lbf", "pound-force", "pounds-force";
    }
    pub mod by_inch {
        uom::unit! {
            system: uom::si;
            quantity: uom::si::surface_tension;
            @exact: 4.448_221_615_260_5 / 2.54_E-2; "lbf/in", "pound-force per inch", "pounds-force per inch";
        }
    }
    pub mod by_square_inch {
        uom::unit! {
            system: uom::si;
            quantity: uom::si::pressure;
            @exact: 4.448_221_615_260_5 / 6.4516_E-4; "lbf/in^2", "pound-force per square inch",
                "pounds-force per square inch";
        }
    }
}

use std::cmp::Ordering;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};
use uom::si as u;

macro_rules! quantity {
    (
        $(#[$doc:meta])* $name:ident($inner:ty), $(#[$unit_doc:meta])* $unit:ident {
            $( $(#[$v_doc:meta])* $variant:ident: $new:ident, $get:ident, $uom:path; )+
        }
    ) => {
        $(#[$unit_doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq)]
        pub enum $unit { $( $(#[$v_doc])* $variant, )+ }

        impl Default for $unit {
            /// The metric one, the first.
            fn default() -> Self {
                let [first, ..] = [$( Self::$variant, )+];
                first
            }
        }

        $(#[$doc])*
        #[derive(Clone, Copy, Debug)]
        pub struct $name { value: $inner, unit: $unit }

        impl Default for $name {
            fn default() -> Self { Self { value: <$inner>::default(), unit: $unit::default() } }
        }

        impl $name {
            $(
                $(#[$v_doc])*
                #[must_use]
                pub fn $new(value: f64) -> Self { Self { value: <$inner>::new::<$uom>(value), unit: $unit::$variant } }
                $(#[$v_doc])*
                #[must_use]
                pub fn $get(self) -> f64 { self.value.get::<$uom>() }
            )+
            /// The unit it was given in.
            #[must_use]
            pub fn unit(self) -> $unit { self.unit }
            /// The same quantity, to be written in another unit.
            #[must_use]
            pub fn with_unit(self, unit: $unit) -> Self { Self { unit, ..self } }
            /// The same quantity without its sign.
            #[must_use]
            pub fn abs(self) -> Self { Self { value: self.value.abs(), unit: self.unit } }
            /// False for what is not a number or infinite.
            #[must_use]
            pub fn is_finite(self) -> bool { self.value.is_finite() }
        }

        impl PartialEq for $name { fn eq(&self, other: &Self) -> bool { self.value == other.value } }
        impl PartialOrd for $name {
            fn partial_cmp(&self, other: &Self) -> Option<Ordering> { self.value.partial_cmp(&other.value) }
        }
        impl Add for $name { type Output = Self; fn add(self, other: Self) -> Self { Self { value: self.value + other.value, unit: self.unit } } }
        impl Sub for $name { type Output = Self; fn sub(self, other: Self) -> Self { Self { value: self.value - other.value, unit: self.unit } } }
        impl AddAssign for $name { fn add_assign(&mut self, other: Self) { *self = *self + other; } }
        impl SubAssign for $name { fn sub_assign(&mut self, other: Self) { *self = *self - other; } }
        impl Neg for $name { type Output = Self; fn neg(self) -> Self { Self { value: -self.value, unit: self.unit } } }
        impl Mul<f64> for $name { type Output = Self; fn mul(self, by: f64) -> Self { Self { value: self.value * by, unit: self.unit } } }
        impl Div<f64> for $name { type Output = Self; fn div(self, by: f64) -> Self { Self { value: self.value / by, unit: self.unit } } }
        impl std::iter::Sum for $name { fn sum<I: Iterator<Item = Self>>(all: I) -> Self { all.fold(Self::default(), Add::add) } }
    };
}

quantity! {
    /// A length, or a place along an axis of the wall. Signed.
    Length(base::Length),
    /// How a length is written: feet count as inches, centimetres and metres as millimetres.
    LengthUnit {
        /// Millimetres.
        Millimetre: millimetres, mm, u::length::millimeter;
        /// Inches of exactly 25.4 mm.
        Inch: inches, in_inches, u::length::inch;
        /// Thousandths of an inch, as steel is named by.
        Mil: mils, in_mils, u::length::mil;
    }
}

quantity! {
    /// A mass.
    Mass(base::Mass),
    /// How a mass is written.
    MassUnit {
        /// Kilograms.
        Kilogram: kilograms, kg, u::mass::kilogram;
        /// Avoirdupois pounds.
        Pound: pounds, lb, u::mass::pound;
    }
}

quantity! {
    /// A force. Signed.
    Force(base::Force),
    /// How a force is written.
    ForceUnit {
        /// Newtons.
        Newton: newtons, n, u::force::newton;
        /// Pounds-force.
        PoundForce: pounds_force, lbf, pound_force::exact;
    }
}

quantity! {
    /// A stress or pressure.
    Stress(base::Pressure),
    /// How a stress is written.
    StressUnit {
        /// Megapascals, newtons per square millimetre.
        Megapascal: megapascals, mpa, u::pressure::megapascal;
        /// Pounds-force per square inch.
        Psi: psi, in_psi, pound_force::by_square_inch::exact;
    }
}

quantity! {
    /// A force along each unit of length: what a fastener's thread holds, a length deep. uom knows it as a
    /// surface tension, which is of the same dimension.
    ForcePerLength(base::SurfaceTension),
    /// How a force per length is written.
    ForcePerLengthUnit {
        /// Newtons per millimetre.
        NewtonPerMillimetre: newtons_per_millimetre, n_per_mm, u::surface_tension::kilonewton_per_meter;
        /// Pounds-force per inch.
        PoundForcePerInch: pounds_force_per_inch, lbf_per_in, pound_force::by_inch::exact;
    }
}

quantity! {
    /// An angle. Signed; for a roll, up on the right is positive.
    Angle(base::Angle),
    /// How an angle is written.
    AngleUnit {
        /// Degrees.
        Degree: degrees, deg, u::angle::degree;
    }
}

quantity! {
    /// A bare number such as a share or a specific gravity.
    Ratio(base::Ratio),
    /// How a ratio is written.
    RatioUnit {
        /// As it is.
        Bare: bare, value, u::ratio::ratio;
        /// In hundredths.
        Percent: percent, in_percent, u::ratio::percent;
    }
}

impl Length {
    /// The same length to the nearest nanometre, so that 48 1/2 in is 1231.9 mm exactly.
    #[must_use]
    pub fn quantised(self) -> Self {
        Self { unit: self.unit, ..Self::millimetres((self.mm() * 1e6).round() / 1e6) }
    }

    /// The smaller of the two; the first where they cannot be compared.
    #[must_use]
    pub fn min(self, other: Self) -> Self {
        if other < self { other } else { self }
    }

    /// The larger of the two; the first where they cannot be compared.
    #[must_use]
    pub fn max(self, other: Self) -> Self {
        if other > self { other } else { self }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inch_is_exactly_25_4_mm() {
        // International inch, NIST Handbook 44, Appendix C.
        assert_eq!(Length::inches(48.5).quantised().mm(), 1231.9);
        assert_eq!(Length::mils(1000.0).quantised().mm(), 25.4);
    }

    #[test]
    fn a_tenth_of_a_millimetre_survives() {
        for tenth in 0..100_000 {
            let mm = f64::from(tenth) / 10.0;
            assert_eq!(Length::millimetres(mm).mm(), mm);
        }
    }

    #[test]
    fn known_conversions_hold() {
        // NIST SP 811, Appendix B.8: pound 0.453 592 37 kg; pound-force 4.448 221 615 260 5 N, exactly.
        let near = |got: f64, want: f64, by: f64| assert!((got / want - 1.0).abs() < by, "{got}, not {want}");
        near(Mass::pounds(1.0).kg(), 0.453_592_37, 1e-7);
        near(Force::pounds_force(1.0).n(), 4.448_221_615_260_5, 1e-15);
        near(Stress::psi(1.0).mpa(), 4.448_221_615_260_5 / 645.16, 1e-15);
        near(ForcePerLength::pounds_force_per_inch(1.0).n_per_mm(), 4.448_221_615_260_5 / 25.4, 1e-15);
    }

    #[test]
    fn the_unit_is_remembered_and_not_compared() {
        assert_eq!(Length::inches(1.0).quantised(), Length::millimetres(25.4));
        assert_eq!((Length::inches(1.0) + Length::millimetres(1.0)).unit(), LengthUnit::Inch);
    }
}

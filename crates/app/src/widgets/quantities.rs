//! How angles, forces, stresses and shares are written in a field.

use super::keypad::keys::Writes;
use super::quantity_field::Quantity;
use strikeline_solver::tape::{self, ReadError};
use strikeline_solver::units::{
    Angle, AngleUnit, Force, ForcePerLength, ForcePerLengthUnit, ForceUnit, LengthUnit, Ratio, RatioUnit,
    Stress, StressUnit,
};

/// Whether bare numbers are metric.
fn is_metric(bare: LengthUnit) -> bool {
    bare == LengthUnit::Millimetre
}

impl Quantity for Angle {
    const WRITES: Writes = Writes::ANGLE;

    fn read(text: &str, _bare: LengthUnit) -> Result<Self, ReadError> {
        tape::read_angle(text, Some(AngleUnit::Degree))
    }

    fn write(self) -> String {
        tape::write_angle(self)
    }

    fn other(self) -> String {
        format!("{:.1} in 100", self.deg().to_radians().tan() * 100.0)
    }

    fn is_negative(self) -> bool {
        self < Self::default()
    }
}

impl Quantity for Force {
    const WRITES: Writes = Writes::FORCE;

    fn read(text: &str, bare: LengthUnit) -> Result<Self, ReadError> {
        let bare = if is_metric(bare) { ForceUnit::Newton } else { ForceUnit::PoundForce };
        tape::read_force(text, Some(bare))
    }

    fn write(self) -> String {
        tape::write_force(self)
    }

    fn other(self) -> String {
        match self.unit() {
            ForceUnit::Newton => format!("{:.1} lbf", self.lbf()),
            ForceUnit::PoundForce => format!("{:.1} N", self.n()),
        }
    }

    fn is_negative(self) -> bool {
        self < Self::default()
    }
}

impl Quantity for ForcePerLength {
    fn read(text: &str, bare: LengthUnit) -> Result<Self, ReadError> {
        let metric = is_metric(bare);
        let unit = if metric {
            ForcePerLengthUnit::NewtonPerMillimetre
        } else {
            ForcePerLengthUnit::PoundForcePerInch
        };
        tape::read_force_per_length(text, Some(unit))
    }

    fn write(self) -> String {
        tape::write_force_per_length(self)
    }

    fn other(self) -> String {
        match self.unit() {
            ForcePerLengthUnit::NewtonPerMillimetre => format!("{:.1} lbf/in", self.lbf_per_in()),
            ForcePerLengthUnit::PoundForcePerInch => format!("{:.1} N/mm", self.n_per_mm()),
        }
    }

    fn is_negative(self) -> bool {
        self < Self::default()
    }
}

impl Quantity for Stress {
    fn read(text: &str, bare: LengthUnit) -> Result<Self, ReadError> {
        let bare = if is_metric(bare) { StressUnit::Megapascal } else { StressUnit::Psi };
        tape::read_stress(text, Some(bare))
    }

    fn write(self) -> String {
        tape::write_stress(self)
    }

    fn other(self) -> String {
        match self.unit() {
            StressUnit::Megapascal => format!("{:.0} psi", self.in_psi()),
            StressUnit::Psi => format!("{:.1} MPa", self.mpa()),
        }
    }

    fn is_negative(self) -> bool {
        self < Self::default()
    }
}

/// A bare number, such as a specific gravity.
impl Quantity for Ratio {
    fn read(text: &str, _bare: LengthUnit) -> Result<Self, ReadError> {
        tape::read_ratio(text, Some(RatioUnit::Bare))
    }

    fn write(self) -> String {
        tape::write_ratio(self)
    }

    fn other(self) -> String {
        match self.unit() {
            RatioUnit::Bare => format!("{:.1} %", self.in_percent()),
            RatioUnit::Percent => format!("{:.3}", self.value()),
        }
    }

    fn is_negative(self) -> bool {
        self < Self::default()
    }
}

/// A ratio that people say in hundredths: a bare number is so many of them.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Share(pub Ratio);

impl Quantity for Share {
    fn read(text: &str, _bare: LengthUnit) -> Result<Self, ReadError> {
        tape::read_ratio(text, Some(RatioUnit::Percent)).map(Self)
    }

    fn write(self) -> String {
        tape::write_ratio(self.0)
    }

    fn other(self) -> String {
        self.0.other()
    }

    fn is_negative(self) -> bool {
        self.0 < Ratio::default()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_bare_number_is_in_the_unit_that_the_job_s_system_uses() {
        let (inch, mm) = (LengthUnit::Inch, LengthUnit::Millimetre);
        assert_eq!(<Force as Quantity>::read("50", inch), Ok(Force::pounds_force(50.0)));
        assert_eq!(<Force as Quantity>::read("220", mm), Ok(Force::newtons(220.0)));
        assert_eq!(<Stress as Quantity>::read("2500", inch), Ok(Stress::psi(2500.0)));
        assert_eq!(<Angle as Quantity>::read("12", mm), Ok(Angle::degrees(12.0)));
        assert_eq!(<Share as Quantity>::read("95", mm).map(Quantity::write), Ok("95 %".to_owned()));
        let read = <ForcePerLength as Quantity>::read("205", inch);
        assert_eq!(read.map(Quantity::write), Ok("205 lbf/in".to_owned()));
    }
}

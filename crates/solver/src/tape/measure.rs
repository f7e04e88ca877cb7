//! Each kind of quantity: its unit words, and its reading from a text.

use super::error::ReadError;
use super::nanometre::{INCH, of_nanometres};
use super::scan::Exact;
use super::sum::{Total, total};
use crate::units::{
    Angle, AngleUnit, Force, ForcePerLength, ForcePerLengthUnit, ForceUnit, Length, LengthUnit, Mass,
    MassUnit, Ratio, RatioUnit, Stress, StressUnit,
};
use num_traits::CheckedMul;

/// No length on a wall is longer: 10 km, in nanometres (chosen, far above any room; every whole nanometre up
/// to it is held exactly).
const LONGEST_NM: i128 = 10_000_000_000_000;

/// A quantity other than a length is held to a millionth of its unit.
const PER_UNIT: i128 = 1_000_000;

/// No other quantity is larger, in its unit: 1e8 (chosen, above the stiffness of steel in psi, 2.9e7; every
/// millionth up to it survives the change of unit).
const LARGEST: i128 = 100_000_000;

/// Whether a word can stand in the feet-and-inches form.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Part {
    Foot,
    Inch,
    Other,
}

/// A unit as people write it.
pub(super) struct Word<U> {
    /// In lower case.
    pub(super) names: &'static [&'static str],
    /// The unit remembered.
    pub(super) unit: U,
    /// How many steps it is, above and below the stroke: nanometres, or millionths of the unit remembered.
    pub(super) steps: (i128, i128),
    pub(super) part: Part,
}

/// A kind of quantity.
pub(super) struct Measure<U: 'static> {
    pub(super) noun: &'static str,
    pub(super) example: &'static str,
    /// The unit remembered of a sum of different ones; `None` if they do not add.
    pub(super) mixed: Option<U>,
    pub(super) words: &'static [Word<U>],
}

impl<U> Measure<U> {
    /// The unit of this name, in lower case.
    pub(super) fn word(&self, name: &str, column: usize) -> Result<&Word<U>, ReadError> {
        self.words.iter().find(|word| word.names.contains(&name)).ok_or_else(|| {
            let known: Vec<&str> = self.words.iter().filter_map(|word| word.names.first().copied()).collect();
            ReadError::new(
                column,
                format!("{name} is not a unit of {}", self.noun),
                format!("{}, as in {}", known.join(", "), self.example),
            )
        })
    }

    /// The total of a text in steps and its unit; a bare number is in `bare`.
    fn read(&self, text: &str, bare: Option<(U, i128)>, largest: i128) -> Result<(i128, U), ReadError>
    where
        U: Copy + PartialEq,
    {
        let Total { value, unit, column } = total(text, self)?;
        let (steps, unit) = match (unit, bare) {
            (Some(unit), _) => (Some(value), unit),
            (None, Some((unit, steps))) => (value.checked_mul(&Exact::from(steps)), unit),
            (None, None) => {
                let right = format!("it with its unit, as in {}", self.example);
                return Err(ReadError::new(column, "the unit is missing", right));
            }
        };
        let steps = steps.and_then(super::scan::held).ok_or_else(|| ReadError::too_many_digits(column))?;
        if steps > Exact::from(largest) || steps < Exact::from(-largest) {
            let right = format!("a {} that fits a wall, as in {}", self.noun, self.example);
            return Err(ReadError::new(column, format!("the {} is too large", self.noun), right));
        }
        Ok((steps.round().to_integer(), unit))
    }
}

const MM: i128 = 1_000_000;

const LENGTH: Measure<LengthUnit> = Measure {
    noun: "length",
    example: "48 1/2 in",
    mixed: Some(LengthUnit::Millimetre),
    words: &[
        Word {
            names: &["in", "\"", "inch", "inches", "ins"],
            unit: LengthUnit::Inch,
            steps: (INCH, 1),
            part: Part::Inch,
        },
        Word {
            names: &["ft", "'", "foot", "feet"],
            unit: LengthUnit::Inch,
            steps: (12 * INCH, 1),
            part: Part::Foot,
        },
        Word {
            names: &["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
            unit: LengthUnit::Millimetre,
            steps: (MM, 1),
            part: Part::Other,
        },
        Word {
            names: &["cm", "centimetre", "centimetres", "centimeter", "centimeters"],
            unit: LengthUnit::Millimetre,
            steps: (10 * MM, 1),
            part: Part::Other,
        },
        Word {
            names: &["m", "metre", "metres", "meter", "meters"],
            unit: LengthUnit::Millimetre,
            steps: (1000 * MM, 1),
            part: Part::Other,
        },
        Word { names: &["mil", "mils"], unit: LengthUnit::Mil, steps: (INCH / 1000, 1), part: Part::Other },
    ],
};

/// A word of a unit that is itself remembered.
const fn own<U: Copy>(names: &'static [&'static str], unit: U) -> Word<U> {
    Word { names, unit, steps: (PER_UNIT, 1), part: Part::Other }
}

const MASS: Measure<MassUnit> = Measure {
    noun: "mass",
    example: "28 kg",
    mixed: None,
    words: &[
        own(&["kg", "kilogram", "kilograms", "kilo", "kilos"], MassUnit::Kilogram),
        own(&["lb", "lbs", "pound", "pounds"], MassUnit::Pound),
        // Grams count as kilograms, as centimetres count as millimetres.
        Word {
            names: &["g", "gram", "grams"],
            unit: MassUnit::Kilogram,
            steps: (PER_UNIT / 1000, 1),
            part: Part::Other,
        },
    ],
};

const FORCE: Measure<ForceUnit> = Measure {
    noun: "force",
    example: "220 N",
    mixed: None,
    words: &[own(&["N", "n", "newton", "newtons"], ForceUnit::Newton), own(&["lbf"], ForceUnit::PoundForce)],
};

const FORCE_PER_LENGTH: Measure<ForcePerLengthUnit> = Measure {
    noun: "force per length",
    example: "205 lbf/in",
    mixed: None,
    words: &[
        own(&["lbf/in", "lbf/inch"], ForcePerLengthUnit::PoundForcePerInch),
        own(&["N/mm", "n/mm"], ForcePerLengthUnit::NewtonPerMillimetre),
    ],
};

const STRESS: Measure<StressUnit> = Measure {
    noun: "stress",
    example: "2500 psi",
    mixed: None,
    words: &[own(&["psi"], StressUnit::Psi), own(&["MPa", "mpa"], StressUnit::Megapascal)],
};

const ANGLE: Measure<AngleUnit> = Measure {
    noun: "angle",
    example: "12 deg",
    mixed: None,
    words: &[own(&["deg", "°", "degree", "degrees"], AngleUnit::Degree)],
};

const RATIO: Measure<RatioUnit> = Measure {
    noun: "ratio",
    example: "0.36 or 95 %",
    mixed: None,
    words: &[own(&["%", "percent"], RatioUnit::Percent)],
};

fn length(text: &str, bare: Option<(LengthUnit, i128)>) -> Result<Length, ReadError> {
    let (nm, unit) = LENGTH.read(text, bare, LONGEST_NM)?;
    Ok(of_nanometres(nm).with_unit(unit))
}

/// Reads a length; a bare number is in `bare`. May be negative: the caller decides.
///
/// Remembers inches, millimetres or mils: feet count as inches, centimetres and metres as millimetres, and a
/// sum of different ones as millimetres. More than 10 km is refused.
pub fn read_length(text: &str, bare: LengthUnit) -> Result<Length, ReadError> {
    let steps = match bare {
        LengthUnit::Millimetre => MM,
        LengthUnit::Inch => INCH,
        LengthUnit::Mil => INCH / 1000,
    };
    length(text, Some((bare, steps)))
}

/// Reads a length that names its unit, as in a file. May be negative: the caller decides.
pub fn read_length_in_file(text: &str) -> Result<Length, ReadError> {
    length(text, None)
}

/// The number of units in so many steps.
fn in_units(steps: i128) -> f64 {
    steps as f64 / PER_UNIT as f64
}

impl<U: Copy + PartialEq> Measure<U> {
    fn number(&self, text: &str, bare: Option<U>) -> Result<(f64, U), ReadError> {
        let bare = bare.map(|unit| (unit, PER_UNIT));
        let (steps, unit) = self.read(text, bare, LARGEST * PER_UNIT)?;
        Ok((in_units(steps), unit))
    }
}

/// Reads a mass to a millionth of its unit; a bare number is in `bare`, or refused. May be negative.
pub fn read_mass(text: &str, bare: Option<MassUnit>) -> Result<Mass, ReadError> {
    let (value, unit) = MASS.number(text, bare)?;
    Ok(match unit {
        MassUnit::Kilogram => Mass::kilograms(value),
        MassUnit::Pound => Mass::pounds(value),
    })
}

/// Reads a force to a millionth of its unit; a bare number is in `bare`, or refused. May be negative.
pub fn read_force(text: &str, bare: Option<ForceUnit>) -> Result<Force, ReadError> {
    let (value, unit) = FORCE.number(text, bare)?;
    Ok(match unit {
        ForceUnit::Newton => Force::newtons(value),
        ForceUnit::PoundForce => Force::pounds_force(value),
    })
}

/// Reads a force per length to a millionth of its unit; a bare number is in `bare`, or refused. May be negative.
pub fn read_force_per_length(
    text: &str,
    bare: Option<ForcePerLengthUnit>,
) -> Result<ForcePerLength, ReadError> {
    let (value, unit) = FORCE_PER_LENGTH.number(text, bare)?;
    Ok(match unit {
        ForcePerLengthUnit::NewtonPerMillimetre => ForcePerLength::newtons_per_millimetre(value),
        ForcePerLengthUnit::PoundForcePerInch => ForcePerLength::pounds_force_per_inch(value),
    })
}

/// Reads a stress to a millionth of its unit; a bare number is in `bare`, or refused. May be negative.
pub fn read_stress(text: &str, bare: Option<StressUnit>) -> Result<Stress, ReadError> {
    let (value, unit) = STRESS.number(text, bare)?;
    Ok(match unit {
        StressUnit::Megapascal => Stress::megapascals(value),
        StressUnit::Psi => Stress::psi(value),
    })
}

/// Reads an angle to a millionth of a degree; a bare number is in `bare`, or refused. May be negative.
pub fn read_angle(text: &str, bare: Option<AngleUnit>) -> Result<Angle, ReadError> {
    let (value, unit) = ANGLE.number(text, bare)?;
    Ok(match unit {
        AngleUnit::Degree => Angle::degrees(value),
    })
}

/// Reads a ratio to a millionth (of a hundredth, if in percent); a bare number is in `bare`, or as it is.
/// May be negative.
pub fn read_ratio(text: &str, bare: Option<RatioUnit>) -> Result<Ratio, ReadError> {
    let (value, unit) = RATIO.number(text, Some(bare.unwrap_or(RatioUnit::Bare)))?;
    Ok(match unit {
        RatioUnit::Bare => Ratio::bare(value),
        RatioUnit::Percent => Ratio::percent(value),
    })
}

//! Quantities in a file: a text with its unit, in quotes.
//!
//! Nothing is written that would not be read back: a quantity that its field does not allow is an error on
//! writing too, so that a good file is never replaced by one that cannot be opened.

use super::error::ReadError;
use super::{
    read_angle, read_force, read_force_per_length, read_length_in_file, read_mass, read_ratio, read_stress,
    write_angle, write_force, write_force_per_length, write_length, write_mass, write_ratio, write_stress,
};
use crate::units::{Angle, Force, ForcePerLength, Length, Mass, Ratio, Stress};
use serde::de::{Deserialize, Deserializer, Error, Unexpected, Visitor};
use serde::ser::{Error as _, Serialize, Serializer};
use std::fmt;
use std::marker::PhantomData;

/// A length that may be negative: a nudge, a gap, a place on a plate from its middle, a parked offset.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Default)]
pub struct Offset(pub Length);

impl Offset {
    /// The signed length.
    #[must_use]
    pub fn length(self) -> Length {
        self.0
    }
}

/// A quantity that a file holds as a text.
trait InFile: Sized + Copy {
    /// What a field of it holds, and how it is written.
    const EXAMPLE: &'static str;
    /// Whether it may be below zero.
    const SIGNED: bool = false;
    fn read(text: &str) -> Result<Self, ReadError>;
    fn write(self) -> String;
    fn is_negative(self) -> bool;
    /// The quantity of a number without quotes, where one is allowed.
    fn bare(_number: f64) -> Option<Self> {
        None
    }
}

/// Reads a quantity and refuses what its field does not allow.
fn allowed<Q: InFile>(text: &str) -> Result<Q, ReadError> {
    let quantity = Q::read(text)?;
    if quantity.is_negative() && !Q::SIGNED {
        let column = text.chars().take_while(|c| c.is_whitespace()).count().saturating_add(1);
        let right = format!("zero or more, as in \"{}\"", Q::EXAMPLE);
        return Err(ReadError::new(column, "a quantity below zero has no place here", right));
    }
    Ok(quantity)
}

struct TextVisitor<Q>(PhantomData<Q>);

impl<Q: InFile> TextVisitor<Q> {
    fn number<E: Error>(number: f64, found: Unexpected<'_>) -> Result<Q, E> {
        match Q::bare(number) {
            Some(quantity) if number.is_finite() && (Q::SIGNED || number >= 0.0) => {
                // By way of its text, so that it is held as it will be written.
                allowed(&quantity.write()).map_err(E::custom)
            }
            _ => Err(E::invalid_type(found, &Self(PhantomData))),
        }
    }
}

impl<Q: InFile> Visitor<'_> for TextVisitor<Q> {
    type Value = Q;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "a quantity; write it with its unit, in quotes, as in \"{}\"", Q::EXAMPLE)
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Q, E> {
        allowed(text).map_err(|why| E::custom(format_args!("{text:?} cannot be read. {why}")))
    }

    fn visit_f64<E: Error>(self, number: f64) -> Result<Q, E> {
        Self::number(number, Unexpected::Float(number))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Q, E> {
        Self::number(number as f64, Unexpected::Unsigned(number))
    }

    fn visit_i64<E: Error>(self, number: i64) -> Result<Q, E> {
        Self::number(number as f64, Unexpected::Signed(number))
    }
}

macro_rules! in_file {
    ($quantity:ty, $example:literal, $signed:literal, $read:expr, $write:expr, $value:expr $(, $bare:expr)?) => {
        impl InFile for $quantity {
            const EXAMPLE: &'static str = $example;
            const SIGNED: bool = $signed;
            fn read(text: &str) -> Result<Self, ReadError> { $read(text) }
            fn write(self) -> String { $write(self) }
            fn is_negative(self) -> bool { $value(self) < 0.0 }
            $( fn bare(number: f64) -> Option<Self> { Some($bare(number)) } )?
        }

        impl Serialize for $quantity {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                let text = InFile::write(*self);
                match allowed::<Self>(&text) {
                    Ok(_) => serializer.serialize_str(&text),
                    Err(why) => Err(S::Error::custom(format_args!("{text:?} is not written. {why}"))),
                }
            }
        }

        impl<'de> Deserialize<'de> for $quantity {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                deserializer.deserialize_any(TextVisitor(PhantomData))
            }
        }
    };
}

in_file!(Length, "48 in", false, read_length_in_file, write_length, Length::mm);
in_file!(
    Offset,
    "-3/4 in",
    true,
    |text| read_length_in_file(text).map(Self),
    |offset: Self| write_length(offset.0),
    |offset: Self| offset.0.mm()
);
in_file!(Mass, "28 kg", false, |text| read_mass(text, None), write_mass, Mass::kg);
in_file!(Force, "220 N", false, |text| read_force(text, None), write_force, Force::n);
in_file!(
    ForcePerLength,
    "205 lbf/in",
    false,
    |text| read_force_per_length(text, None),
    write_force_per_length,
    ForcePerLength::n_per_mm
);
in_file!(Stress, "2500 psi", false, |text| read_stress(text, None), write_stress, Stress::mpa);
in_file!(Angle, "12 deg", true, |text| read_angle(text, None), write_angle, Angle::deg);
in_file!(Ratio, "0.36", false, |text| read_ratio(text, None), write_ratio, Ratio::value, Self::bare);

#[cfg(test)]
mod tests {
    use super::*;
    use serde::Deserialize;

    #[derive(Debug, Default, PartialEq, serde::Serialize, Deserialize)]
    #[serde(default)]
    struct Row {
        width: Length,
        nudge: Offset,
        mass: Mass,
        pull: Force,
        withdrawal: ForcePerLength,
        strength: Stress,
        roll: Angle,
        gravity: Ratio,
        maybe: Option<Length>,
    }

    fn read(text: &str) -> Result<Row, String> {
        ron::from_str(text).map_err(|why| why.to_string())
    }

    #[test]
    fn a_file_holds_quantities_as_text() {
        let text = "(width:\"48 1/2 in\",nudge:\"-3/4 in\",mass:\"62 lb\",pull:\"220 N\",\
                    withdrawal:\"205 lbf/in\",strength:\"2500 psi\",roll:\"-1.5 deg\",gravity:\"0.36\",maybe:Some(\"400 mm\"))";
        let row = read(text).unwrap();
        assert_eq!(row.width, Length::millimetres(1231.9));
        assert_eq!(row.nudge.length(), Length::millimetres(-19.05));
        assert_eq!(ron::to_string(&row).unwrap(), text);
        assert_eq!(read(text).unwrap(), row);
    }

    #[test]
    fn only_a_ratio_may_stand_without_quotes() {
        assert_eq!(read("(gravity: 0.36)").unwrap().gravity, Ratio::bare(0.36));
        assert_eq!(read("(gravity: 1)").unwrap().gravity, Ratio::bare(1.0));
        for bare in ["48", "-48", "48.5", "inf", "NaN"] {
            for field in ["width", "nudge"] {
                let why = read(&format!("({field}: {bare})")).unwrap_err();
                assert!(why.contains("write it with its unit, in quotes, as in \""), "{why}");
            }
        }
        assert!(
            read("(width: 48)").unwrap_err().contains("write it with its unit, in quotes, as in \"48 in\"")
        );
        for bare in ["-0.36", "inf", "-inf", "NaN", "1e300", "-1"] {
            assert!(read(&format!("(gravity: {bare})")).is_err(), "{bare}");
        }
    }

    #[test]
    fn below_zero_is_for_those_that_may() {
        for field in [
            "width: \"-3 in\"",
            "mass: \" -3 kg\"",
            "pull: \"-1 N\"",
            "withdrawal: \"-205 lbf/in\"",
            "strength: \"2 psi - 3 psi\"",
            "gravity: \"-0.1\"",
        ] {
            let why = read(&format!("({field})")).unwrap_err();
            assert!(why.contains("a quantity below zero has no place here"), "{why}");
        }
        assert!(read("(mass: \" -3 kg\")").unwrap_err().contains("At column 2, "));
        assert_eq!(read("(nudge: \"-3 in\", roll: \"-2 deg\")").unwrap().roll, Angle::degrees(-2.0));
        // Nothing is read back as less than nothing.
        assert_eq!(read("(width: \"-0 in\")").unwrap().width.mm().to_bits(), 0.0_f64.to_bits());
    }

    #[test]
    fn an_unreadable_text_says_why() {
        let why = read("(width: \"48 3/2 in\")").unwrap_err();
        assert!(why.contains("At column 4, the fraction 3/2 is not less than one: write 49 1/2."), "{why}");
        for text in ["infinite", "inf mm", "NaN mm", "48", "1e9 in", "20 km"] {
            assert!(read(&format!("(width: \"{text}\")")).unwrap_err().contains("At column "), "{text}");
        }
    }

    #[test]
    fn what_could_not_be_read_back_is_not_written() {
        for mm in [-1.0, f64::INFINITY, f64::NAN, 1e8] {
            let row = Row { width: Length::millimetres(mm), ..Row::default() };
            assert!(ron::to_string(&row).is_err(), "{mm}");
        }
        let row = Row { nudge: Offset(Length::millimetres(-1.0)), ..Row::default() };
        assert!(ron::to_string(&row).is_ok());
    }
}

//! What a tape shows: its graduations, and which of them is nearest.

use super::nanometre::{nanometres, of_nanometres};
use crate::units::{Length, LengthUnit};
use serde::{Deserialize, Serialize};

/// The smallest step lengths are printed in. A file holds its length, in quotes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(into = "&'static str", try_from = "String")]
pub enum Graduation {
    /// 1/8 in.
    Eighth,
    /// 1/16 in.
    Sixteenth,
    /// 1/32 in.
    ThirtySecond,
    /// 1 mm.
    Millimetre,
}

impl From<Graduation> for &'static str {
    fn from(graduation: Graduation) -> Self {
        match graduation {
            Graduation::Eighth => "1/8 in",
            Graduation::Sixteenth => "1/16 in",
            Graduation::ThirtySecond => "1/32 in",
            Graduation::Millimetre => "1 mm",
        }
    }
}

impl TryFrom<String> for Graduation {
    type Error = String;

    fn try_from(text: String) -> Result<Self, String> {
        let named = Self::ALL.into_iter().find(|&graduation| <&str>::from(graduation) == text);
        named.ok_or_else(|| format!("{text:?} is not a graduation: write 1/8 in, 1/16 in, 1/32 in or 1 mm"))
    }
}

impl Graduation {
    /// All of them, inches from coarse to fine, then millimetres.
    pub const ALL: [Self; 4] = [Self::Eighth, Self::Sixteenth, Self::ThirtySecond, Self::Millimetre];

    /// One step, in whole nanometres: each is exact.
    pub(super) fn step_nm(self) -> i128 {
        match self {
            Self::Eighth => 3_175_000,
            Self::Sixteenth => 1_587_500,
            Self::ThirtySecond => 793_750,
            Self::Millimetre => 1_000_000,
        }
    }

    /// Steps to the printed unit: 8, 16 or 32 to the inch, 1 to the millimetre.
    #[must_use]
    pub fn steps_per_unit(self) -> i64 {
        match self {
            Self::Eighth => 8,
            Self::Sixteenth => 16,
            Self::ThirtySecond => 32,
            Self::Millimetre => 1,
        }
    }

    /// The unit it is printed in.
    #[must_use]
    pub fn unit(self) -> LengthUnit {
        match self {
            Self::Millimetre => LengthUnit::Millimetre,
            Self::Eighth | Self::Sixteenth | Self::ThirtySecond => LengthUnit::Inch,
        }
    }
}

/// How lengths are printed.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Style {
    /// The smallest step shown. The unit follows from it.
    pub graduation: Graduation,
    /// Feet and inches from 12 in (as printed) on. Without effect on millimetres.
    pub feet_inches: bool,
}

impl Style {
    /// The nearest whole number of graduations. Signed.
    ///
    /// Half-way goes to the even graduation (NIST Handbook 44, section 10.3). Worked in whole nanometres, so
    /// that a tie is a tie. Saturates; what is not a number is 0.
    #[must_use]
    pub fn steps(self, length: Length) -> i64 {
        let (nm, step) = (nanometres(length), self.graduation.step_nm());
        let (below, rest) = (nm.div_euclid(step), nm.rem_euclid(step));
        let up = rest * 2 > step || (rest * 2 == step && below % 2 != 0);
        let nearest = if up { below + 1 } else { below };
        i64::try_from(nearest).unwrap_or(if nearest < 0 { i64::MIN } else { i64::MAX })
    }

    /// The length of so many graduations, remembered in the printed unit.
    #[must_use]
    pub fn length_of(self, steps: i64) -> Length {
        of_nanometres(i128::from(steps) * self.graduation.step_nm()).with_unit(self.graduation.unit())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn style(graduation: Graduation) -> Style {
        Style { graduation, feet_inches: false }
    }

    /// The brute-force twin: walks the graduations one by one from zero and keeps the nearest, the even of two.
    fn nearest_by_walking(nm: i64, step: i64) -> i64 {
        let away = |k: i64| (nm - k * step).abs();
        let towards = if nm < 0 { -1 } else { 1 };
        let mut best = 0;
        while away(best + towards) < away(best)
            || (away(best + towards) == away(best) && (best + towards) % 2 == 0)
        {
            best += towards;
        }
        best
    }

    #[test]
    fn rounds_to_the_nearest_with_ties_to_even() {
        use Graduation::{Sixteenth, ThirtySecond};
        let steps = |inches: f64, graduation| style(graduation).steps(Length::inches(inches));
        assert_eq!(steps(47.937, Sixteenth), 47 * 16 + 15);
        assert_eq!(steps(26.964, Sixteenth), 26 * 16 + 15);
        assert_eq!(steps(26.964, ThirtySecond), 26 * 32 + 31);
        // NIST Handbook 44, section 10.3: half-way goes to the even graduation.
        assert_eq!(steps(10.0 + 1.0 / 32.0, Sixteenth), 160);
        assert_eq!(steps(10.0 + 3.0 / 32.0, Sixteenth), 162);
        assert_eq!(steps(-10.0 - 1.0 / 32.0, Sixteenth), -160);
        assert_eq!(style(Graduation::Millimetre).steps(Length::millimetres(0.5)), 0);
        assert_eq!(style(Graduation::Millimetre).steps(Length::millimetres(1.5)), 2);
    }

    #[test]
    fn what_is_out_of_all_range_saturates() {
        assert_eq!(style(Graduation::Eighth).steps(Length::millimetres(f64::INFINITY)), i64::MAX);
        assert_eq!(style(Graduation::Millimetre).steps(Length::millimetres(-1e300)), i64::MIN);
        assert_eq!(style(Graduation::Millimetre).steps(Length::millimetres(f64::NAN)), 0);
    }

    #[test]
    fn is_named_by_its_length_in_a_file() {
        for (graduation, text) in Graduation::ALL.into_iter().zip(["1/8 in", "1/16 in", "1/32 in", "1 mm"]) {
            assert_eq!(ron::to_string(&graduation).unwrap(), format!("\"{text}\""));
            assert_eq!(ron::from_str::<Graduation>(&format!("\"{text}\"")).unwrap(), graduation);
            assert_eq!(ron::from_str::<Graduation>("\"1/4 in\"").ok(), None);
            let one = super::super::read_length_in_file(text).unwrap();
            assert_eq!(nanometres(one), graduation.step_nm());
            assert_eq!(style(graduation).length_of(graduation.steps_per_unit()).unit(), graduation.unit());
        }
    }

    proptest! {
        #[test]
        fn agrees_with_walking_the_graduations(nm in -400_000_000_i64..400_000_000, which in 0..4_usize) {
            let graduation = Graduation::ALL[which];
            let step = i64::try_from(graduation.step_nm()).unwrap();
            let length = of_nanometres(i128::from(nm));
            prop_assert_eq!(style(graduation).steps(length), nearest_by_walking(nm, step));
        }

        #[test]
        fn ties_go_to_the_even_graduation(below in -100_000_i64..100_000, which in 0..4_usize) {
            let graduation = Graduation::ALL[which];
            let step = graduation.step_nm();
            let half_way = of_nanometres(i128::from(below) * step + step / 2);
            let even = if below % 2 == 0 { below } else { below + 1 };
            prop_assert_eq!(style(graduation).steps(half_way), even);
        }

        #[test]
        fn the_length_of_steps_has_those_steps(steps in -5_000_000_i64..5_000_000, which in 0..4_usize) {
            let style = style(Graduation::ALL[which]);
            prop_assert_eq!(style.steps(style.length_of(steps)), steps);
        }
    }
}

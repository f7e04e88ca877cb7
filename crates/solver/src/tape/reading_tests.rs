//! What is read and what is refused, form by form.

use super::nanometre::{nanometres, of_nanometres};
use super::*;
use crate::units::{
    Angle, AngleUnit, Force, ForcePerLength, Length, LengthUnit, Mass, MassUnit, Ratio, Stress, StressUnit,
};
use proptest::prelude::*;

/// Text, bare unit, exact nanometres, unit remembered.
type Accepted = (&'static str, LengthUnit, i128, LengthUnit);

const IN: LengthUnit = LengthUnit::Inch;
const MM: LengthUnit = LengthUnit::Millimetre;
const MIL: LengthUnit = LengthUnit::Mil;

#[test]
fn every_form_is_read_to_the_nanometre() {
    // An inch is 25 400 000 nm (NIST Handbook 44, Appendix C); the rest is arithmetic.
    let accepted: &[Accepted] = &[
        ("48 1/2", IN, 1_231_900_000, IN),
        ("48-1/2\"", MM, 1_231_900_000, IN),
        ("48\u{a0}1/2\u{2009}in", MM, 1_231_900_000, IN),
        ("  48 1/2  ", IN, 1_231_900_000, IN),
        ("48 1⁄2", IN, 1_231_900_000, IN),
        ("4' 0 1/2\"", MM, 1_231_900_000, IN),
        ("4'-0 1/2\"", MM, 1_231_900_000, IN),
        ("4'-0-1/2\"", MM, 1_231_900_000, IN),
        ("4' 1/2\"", MM, 1_231_900_000, IN),
        ("4ft 0.5in", MM, 1_231_900_000, IN),
        ("4ft0.5in", MM, 1_231_900_000, IN),
        ("4 ft .5", MM, 1_231_900_000, IN),
        ("4 ft.5", MM, 1_231_900_000, IN),
        ("4 FEET 6 Inches", MM, 1_371_600_000, IN),
        ("4'6", MM, 1_371_600_000, IN),
        ("4'6\"", MM, 1_371_600_000, IN),
        ("4'6''", MM, 1_371_600_000, IN),
        ("4′ 6″", MM, 1_371_600_000, IN),
        ("4’ 6”", MM, 1_371_600_000, IN),
        ("4‘ 6“", MM, 1_371_600_000, IN),
        ("4'-6", MM, 1_371_600_000, IN),
        ("4' - 6\"", MM, 1_066_800_000, IN),
        ("4'", MM, 1_219_200_000, IN),
        ("4.5 ft", MM, 1_371_600_000, IN),
        ("4 1/2 ft", MM, 1_371_600_000, IN),
        ("1231.9mm", IN, 1_231_900_000, MM),
        ("1231.9 MM", IN, 1_231_900_000, MM),
        ("1231.9", MM, 1_231_900_000, MM),
        ("123.19 cm", IN, 1_231_900_000, MM),
        ("1.2319 m", IN, 1_231_900_000, MM),
        ("2 metres", IN, 2_000_000_000, MM),
        ("18 mil", IN, 457_200, MIL),
        ("18", MIL, 457_200, MIL),
        ("¼", IN, 6_350_000, IN),
        ("½\"", MM, 12_700_000, IN),
        ("48½", IN, 1_231_900_000, IN),
        ("48 ¾ in", MM, 1_238_250_000, IN),
        ("48-⅛", IN, 1_222_375_000, IN),
        ("⅓ in", IN, 8_466_667, IN),
        ("⅞ in.", IN, 22_225_000, IN),
        ("3/4", IN, 19_050_000, IN),
        (".5", IN, 12_700_000, IN),
        ("48.", IN, 1_219_200_000, IN),
        ("0", IN, 0, IN),
        ("-0 in", IN, 0, IN),
        ("-3/4 in", IN, -19_050_000, IN),
        ("- 3/4 in", IN, -19_050_000, IN),
        ("−3/4 in", IN, -19_050_000, IN),
        ("+3/4 in", IN, 19_050_000, IN),
        ("-4'-6\"", IN, -1_371_600_000, IN),
        ("-48 1/2", IN, -1_231_900_000, IN),
        ("88/2", IN, 1_117_600_000, IN),
        ("88 / 2", IN, 1_117_600_000, IN),
        ("88÷2", IN, 1_117_600_000, IN),
        ("88/2 in", MM, 1_117_600_000, IN),
        ("88 in/2", MM, 1_117_600_000, IN),
        ("7' 4\" / 2", MM, 1_117_600_000, IN),
        ("88 / (2 1/2)", IN, 894_080_000, IN),
        // Common practice, no source: half of a clear span of 88 3/4.
        ("88 3/4 / 2", IN, 1_127_125_000, IN),
        // Common practice, no source: a plate top 6 3/4 below the top of a display 28 tall.
        ("28 - 6 3/4", IN, 539_750_000, IN),
        ("28 − 6 3/4", IN, 539_750_000, IN),
        ("28 – 6 3/4", IN, 539_750_000, IN),
        ("28 in - 6 3/4 in", MM, 539_750_000, IN),
        ("(28 - 6 3/4) in", MM, 539_750_000, IN),
        // Common practice, no source.
        ("48 1/2 / 2", IN, 615_950_000, IN),
        ("48 1/2 - 19", IN, 749_300_000, IN),
        ("(12 1/2 + 3) * 2", IN, 787_400_000, IN),
        ("(12 1/2 + 3) × 2", IN, 787_400_000, IN),
        ("(12 1/2 in + 3 in) * 2", MM, 787_400_000, IN),
        ("(12 1/2 + 3) in * 2", MM, 787_400_000, IN),
        ("2 * (12 1/2 + 3)", IN, 787_400_000, IN),
        ("1 + 2 * 3", IN, 177_800_000, IN),
        ("10 - 4 / 2", IN, 203_200_000, IN),
        ("10 - 4 - 3", IN, 76_200_000, IN),
        ("12+3", IN, 381_000_000, IN),
        ("(-3 + 5)", IN, 50_800_000, IN),
        ("1 in + 1 ft", MM, 330_200_000, IN),
        ("1 in + 1 mm", IN, 26_400_000, MM),
        ("1 m + 1 cm", IN, 1_010_000_000, MM),
        ("1 in + 1 mil", IN, 25_425_400, MM),
        // Worked out exactly and quantised once: three thirds are a whole.
        ("1/3 + 1/3 + 1/3", IN, 25_400_000, IN),
        ("48.50393700787401 in", IN, 1_232_000_000, IN),
        ("0.123456789012345678901234567 mm", IN, 123_457, MM),
        ("(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)+(1)", IN, 457_200_000, IN),
        ("10000 m", IN, 10_000_000_000_000, MM),
    ];
    for &(text, bare, nm, unit) in accepted {
        let read = read_length(text, bare).unwrap_or_else(|why| panic!("{text}: {why}"));
        assert_eq!(nanometres(read), nm, "{text}");
        assert_eq!(read.mm().to_bits(), of_nanometres(nm).mm().to_bits(), "{text}");
        assert_eq!(read.unit(), unit, "{text}");
    }
}

#[test]
fn every_other_form_is_refused_with_its_column_and_the_right_form() {
    let refused: &[(&str, usize, &str)] = &[
        ("", 1, "48 1/2 in"),
        ("   ", 1, "48 1/2 in"),
        ("48 3/2", 4, "write 49 1/2."),
        ("48 4/2", 4, "write 50."),
        ("48 1/0", 4, "1/2"),
        ("48-3/2", 3, "48 - 3/2"),
        ("28-6 3/4", 3, "28 - 6 3/4"),
        ("28-6", 3, "28 - 6"),
        ("48 -1/2", 4, "48 - 1/2"),
        ("48- 1/2", 3, "48 - 1/2"),
        ("48−1/2", 3, "48 - 1/2"),
        ("3/4-1/2", 4, "3/4 - 1/2"),
        ("48\"-1/2\"", 4, "48\" - 1/2\""),
        ("4' -6\"", 4, "4' - 6\""),
        ("48.5-1/2", 5, "48.5 - 1/2"),
        ("(3)-1", 4, "(3) - 1"),
        ("48,5", 3, "write 48.5."),
        ("1,232", 2, "1232"),
        ("1,232.5", 2, "1232.5"),
        ("1.232,5", 6, "1232.5"),
        ("1,232,000", 2, "write 1232000."),
        ("48,", 3, "write 48."),
        (",5", 1, "48.5"),
        ("1e3", 2, "as in 1000."),
        ("4.85E+1 in", 5, "as in 48.5."),
        ("125e-2", 4, "as in 1.25."),
        ("1e999", 2, "in full"),
        ("1eel", 2, "48 in"),
        ("1.2.3", 4, "48.5"),
        (".", 1, "0.5"),
        ("48 1 / 2", 4, "1/2"),
        ("48 49", 4, "48 1/2"),
        ("48.5 1/2", 6, "48 1/2"),
        ("½ ½", 3, "48 1/2"),
        ("48\" 1/2", 5, "48 1/2 in"),
        ("4' 12\"", 4, "fewer than 12"),
        ("4' 12", 4, "fewer than 12"),
        ("4' 6/2\"", 4, "write 3."),
        ("4.5' 6\"", 1, "4.5 ft"),
        ("4 1/2 ft 6 in", 1, "4' 6\""),
        ("4' 6 mm", 6, "4 ft + 6 mm"),
        ("48 kg", 4, "in, ft, mm, cm, m, mil, as in 48 1/2 in"),
        ("48 in in", 7, "48 1/2 in"),
        ("(3 in) in", 8, "48 1/2 in"),
        ("28 in - 6 3/4", 9, "28 in - 6 3/4 in"),
        ("28 - 6 in", 1, "28 in - 6 3/4 in"),
        ("2 * 48 in", 8, "48 in * 2"),
        ("2 * (48 in)", 5, "48 in * 2"),
        ("88 in/in", 4, "in, ft, mm"),
        ("88 in/ in", 8, "a number is missing"),
        ("88 in / 2 in", 11, "88 in / 2"),
        ("88/2 1/2", 4, "88 / (2 1/2)"),
        ("1/0", 3, "88/2"),
        ("1/(2 - 2)", 3, "88/2"),
        ("3 - -2", 5, "48 1/2"),
        ("3 +", 4, "48 1/2"),
        ("* 3", 1, "48 1/2"),
        ("()", 2, "48 1/2"),
        ("(3", 3, ")"),
        ("3)", 2, "("),
        ("3 (4)", 3, "*"),
        ("in", 1, "48 1/2"),
        ("48 ?", 4, "48 1/2 in"),
        ("infinite", 1, "48 1/2"),
        ("NaN", 1, "48 1/2"),
        ("10001 m", 1, "fits a wall"),
        ("-10001 m", 2, "fits a wall"),
        ("1000000000000000000000000000000000000000000", 1, "fewer digits"),
        // Twice this is the one number of 128 bits that has no positive twin.
        ("(-85070591730234615865843651857942052864) * 2 / (-1)", 3, "fewer digits"),
        ("9999999999999999999 * 9999999999999999999", 21, "fewer digits"),
        ("½½", 2, "48 1/2"),
        ("((((((((((((((((((3))))))))))))))))))", 17, "fewer"),
    ];
    for &(text, column, right) in refused {
        match read_length(text, IN) {
            Ok(read) => panic!("{text:?} was read as {read:?}"),
            Err(why) => {
                assert_eq!(why.column, column, "{text:?}: {why}");
                let told = why.to_string();
                assert!(told.contains(right), "{text:?}: {told} lacks {right}");
                assert!(told.starts_with(&format!("At column {column}, ")), "{told}");
            }
        }
    }
}

#[test]
fn in_a_file_a_length_names_its_unit() {
    assert_eq!(read_length_in_file("48 1/2 in").unwrap(), Length::millimetres(1231.9));
    assert_eq!(read_length_in_file("4' 6").unwrap(), Length::millimetres(1371.6));
    let why = read_length_in_file(" 48 1/2").unwrap_err();
    assert_eq!(why.to_string(), "At column 2, the unit is missing: write it with its unit, as in 48 1/2 in.");
}

#[test]
fn other_quantities_are_read_in_their_units() {
    assert_eq!(read_mass("28 kg", None).unwrap(), Mass::kilograms(28.0));
    assert_eq!(read_mass("62 lb", None).unwrap(), Mass::pounds(62.0));
    assert_eq!(read_mass("61 1/2 LBS", None).unwrap().unit(), MassUnit::Pound);
    assert_eq!(read_mass("500 g", None).unwrap(), Mass::kilograms(0.5));
    assert_eq!(read_mass("20 + 8", Some(MassUnit::Kilogram)).unwrap(), Mass::kilograms(28.0));
    assert_eq!(read_force("220 N", None).unwrap(), Force::newtons(220.0));
    assert_eq!(read_force("50 lbf", None).unwrap(), Force::pounds_force(50.0));
    let per_inch = ForcePerLength::pounds_force_per_inch(205.0);
    for text in ["205 lbf/in", "205lbf/in.", "410/2 lbf/inch", "410 LBF⁄IN / 2", "410 lbf/in/2"] {
        let read = read_force_per_length(text, None).unwrap_or_else(|why| panic!("{text}: {why}"));
        assert_eq!((read, read.unit()), (per_inch, per_inch.unit()), "{text}");
    }
    let per_mm = ForcePerLength::newtons_per_millimetre(35.9);
    assert_eq!(read_force_per_length("35.9 N/mm", None).unwrap(), per_mm);
    assert_eq!(read_force_per_length("35.9", Some(per_mm.unit())).unwrap(), per_mm);
    assert_eq!(read_stress("2500 psi", None).unwrap(), Stress::psi(2500.0));
    assert_eq!(read_stress("17.2 MPa", None).unwrap(), Stress::megapascals(17.2));
    assert_eq!(read_stress("29000000 psi", None).unwrap().unit(), StressUnit::Psi);
    assert_eq!(read_angle("12 deg", None).unwrap(), Angle::degrees(12.0));
    assert_eq!(read_angle("-1.5°", None).unwrap(), Angle::degrees(-1.5));
    assert_eq!(read_angle("3", Some(AngleUnit::Degree)).unwrap(), Angle::degrees(3.0));
    assert_eq!(read_ratio("0.36", None).unwrap(), Ratio::bare(0.36));
    assert_eq!(read_ratio("95 %", None).unwrap(), Ratio::percent(95.0));

    let refused = [
        (read_mass("28", None).unwrap_err(), 1, "28 kg"),
        (read_mass("28 N", None).unwrap_err(), 4, "kg, lb, g"),
        (read_mass("28 kg + 1 lb", None).unwrap_err(), 9, "one unit throughout"),
        (read_force("50 lb", None).unwrap_err(), 4, "N, lbf"),
        (read_force_per_length("205", None).unwrap_err(), 1, "205 lbf/in"),
        (
            read_force_per_length("205 lbf", None).unwrap_err(),
            5,
            "lbf is not a unit of force per length: write lbf/in, N/mm",
        ),
        (read_force_per_length("205 lbf / in", None).unwrap_err(), 5, "write lbf/in, N/mm"),
        (
            read_force_per_length("205 lbf/mm", None).unwrap_err(),
            5,
            "lbf/mm is not a unit of force per length",
        ),
        (read_force_per_length("205 lb/in", None).unwrap_err(), 5, "write lbf/in, N/mm"),
        (read_force("205 lbf/in", None).unwrap_err(), 5, "lbf/in is not a unit of force: write N, lbf"),
        (read_stress("1 mm", None).unwrap_err(), 3, "psi, MPa"),
        (read_angle("12", None).unwrap_err(), 1, "12 deg"),
        (read_ratio("0.36 kg", None).unwrap_err(), 6, "0.36 or 95 %"),
        (read_mass("100000001 kg", None).unwrap_err(), 1, "28 kg"),
    ];
    for (why, column, right) in refused {
        assert_eq!(why.column, column, "{why}");
        assert!(why.to_string().contains(right), "{why}");
    }
}

proptest! {
    #[test]
    fn no_text_is_too_strange_to_be_answered(text in any::<String>()) {
        prop_assert!(read_length(&text, IN).map_or(true, Length::is_finite));
        prop_assert!(read_ratio(&text, None).map_or(true, Ratio::is_finite));
    }

    #[test]
    fn no_text_of_the_right_characters_is_either(
        text in "[0-9½⅓ .,/()*+\\-−'\"infmcel]{0,40}|([0-9(/*+-]|[0-9]{10,40}|1/[0-9]{10,20}| - ){0,20}"
    ) {
        match read_length(&text, IN) {
            Ok(read) => prop_assert!(read.abs() <= Length::millimetres(1e7)),
            Err(why) => prop_assert!(why.column >= 1 && why.column <= text.chars().count() + 1, "{}", why),
        }
    }

    #[test]
    fn fractions_read_as_whole_number_arithmetic_has_them(
        whole in 0_i128..1000, any_above in 0_i128..64, below in 1_i128..=64,
    ) {
        let above = any_above % below;
        let nm = nanometres(read_length(&format!("{whole} {above}/{below}"), IN).unwrap());
        let whole_nm = whole * 25_400_000;
        // Half a nanometre away at most, without any division.
        prop_assert!(((nm - whole_nm) * below - above * 25_400_000).abs() * 2 <= below);
    }
}

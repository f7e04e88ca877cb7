//! The bundled typeface: its bytes for painters, and how wide it sets a text, from its own tables.

mod known_widths;
mod setting;
mod shortened;

pub(crate) use setting::Setter;
pub(crate) use shortened::{shortened, shortened_before};
use std::sync::LazyLock;
use ttf_parser::Face;

/// The regular weight, as a font file. Its figures are all of one width without asking for a feature.
pub const FONT_REGULAR: &[u8] = include_bytes!("../../../assets/font/sheet-regular.ttf");

/// The semibold weight, as a font file.
pub const FONT_SEMIBOLD: &[u8] = include_bytes!("../../../assets/font/sheet-semibold.ttf");

/// The name under which painters know the typeface.
pub const FAMILY: &str = "Strikeline Sheet";

/// The height of capitals and figures, as a share of the em size: the face's own `OS/2` table says 0.66.
pub const CAPITALS: f64 = 0.66;

/// How bold a text is.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Weight {
    /// Text and figures.
    #[default]
    Regular,
    /// Titles.
    Semibold,
}

static REGULAR: LazyLock<Option<Setter>> = LazyLock::new(|| Setter::of(FONT_REGULAR));
static SEMIBOLD: LazyLock<Option<Setter>> = LazyLock::new(|| Setter::of(FONT_SEMIBOLD));

/// What sets texts in a face of the typeface. `None` only for a damaged file, which a test rules out.
pub(crate) fn setter(weight: Weight) -> Option<&'static Setter> {
    match weight {
        Weight::Regular => REGULAR.as_ref(),
        Weight::Semibold => SEMIBOLD.as_ref(),
    }
}

fn face(weight: Weight) -> Option<&'static Face<'static>> {
    setter(weight).map(|setter| &setter.face)
}

/// How wide a text is set on one line, in millimetres, at an em size in millimetres.
///
/// With the face's own ligatures and kerning, so that it is what a shaper makes of it, the window's among them; a
/// test holds the two together. Accents typed apart from their letters are not put together here.
/// A character the face lacks counts as its empty box. 0 for what is not a number.
#[must_use]
pub fn text_width_mm(text: &str, height_mm: f64, weight: Weight) -> f64 {
    let (Some(face), Some(units)) = (face(weight), known_widths::width_units(text, weight)) else {
        return 0.0;
    };
    if !height_mm.is_finite() {
        return 0.0;
    }
    f64::from(units) * height_mm / f64::from(face.units_per_em())
}

/// How far the face reaches above its base line at an em size, in millimetres.
#[must_use]
pub fn ascent_mm(height_mm: f64) -> f64 {
    face(Weight::Regular)
        .map_or(0.0, |face| f64::from(face.ascender()) * height_mm / f64::from(face.units_per_em()))
}

/// How far the face reaches below its base line at an em size, in millimetres; positive.
#[must_use]
pub fn descent_mm(height_mm: f64) -> f64 {
    face(Weight::Regular)
        .map_or(0.0, |face| -f64::from(face.descender()) * height_mm / f64::from(face.units_per_em()))
}

/// Whether the face has a glyph of its own for a character.
#[must_use]
pub fn has_glyph(character: char, weight: Weight) -> bool {
    face(weight).and_then(|face| face.glyph_index(character)).is_some()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_faces_have_what_the_drawings_write() {
        for weight in [Weight::Regular, Weight::Semibold] {
            for character in "¼½¾⅛⅜⅝⅞′″←↑→↓✓×±°≤≥–—−…0123456789-'\"".chars()
            {
                assert!(has_glyph(character, weight), "{character} in {weight:?}");
            }
        }
    }

    #[test]
    fn figures_are_of_one_width() {
        for weight in [Weight::Regular, Weight::Semibold] {
            let one = text_width_mm("1", 10.0, weight);
            assert!(one > 0.0);
            for figure in ["0", "2", "3", "4", "5", "6", "7", "8", "9"] {
                assert_eq!(text_width_mm(figure, 10.0, weight), one);
            }
        }
    }

    #[test]
    fn widths_are_those_of_a_shaper() {
        // By an open-source shaping engine, in thousandths of an em, regular and semibold. The last two have
        // ligatures.
        for (text, regular, semibold) in [
            ("48 1/2\"", 2964.0, 3078.0),
            ("7'-4 3/4\"", 3524.0, 3675.0),
            ("1232 mm", 3846.0, 3938.0),
            ("Mantel shelf", 5059.0, 5228.0),
            ("Type Wall", 4005.0, 4128.0),
            ("Left to right: Tape", 7288.0, 7551.0),
            ("Soffit, off the left", 6929.0, 7208.0),
        ] {
            for (weight, units) in [(Weight::Regular, regular), (Weight::Semibold, semibold)] {
                let width = text_width_mm(text, 1000.0, weight);
                assert!((width - units).abs() < 1e-6, "{text} in {weight:?}: {width}");
            }
        }
    }

    #[test]
    fn capitals_are_as_high_as_said() {
        let face = face(Weight::Regular).unwrap();
        let units = f64::from(face.capital_height().unwrap());
        assert!((units / f64::from(face.units_per_em()) - CAPITALS).abs() < 0.005);
        assert!(ascent_mm(1.0) > CAPITALS && descent_mm(1.0) > 0.0);
    }

    #[test]
    fn no_height_and_no_text_are_no_width() {
        assert_eq!(text_width_mm("1", f64::NAN, Weight::Regular), 0.0);
        assert_eq!(text_width_mm("", 4.0, Weight::Regular), 0.0);
    }
}

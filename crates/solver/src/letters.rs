//! Letters as a typeface has them: an accent that is typed apart is one with its letter. Some keyboards and some
//! systems' file names have the two apart (Unicode Standard Annex 15 holds them for the same).

use unicode_normalization::{IsNormalized, UnicodeNormalization as _, is_nfc_quick};

/// The text with each accent and its letter in one, where there is such a letter.
#[must_use]
pub fn composed(text: &str) -> String {
    match is_nfc_quick(text.chars()) {
        IsNormalized::Yes => text.to_owned(),
        IsNormalized::No | IsNormalized::Maybe => text.nfc().collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_accent_typed_apart_is_one_with_its_letter() {
        assert_eq!(composed("Te\u{301}le\u{301}"), "T\u{e9}l\u{e9}");
        assert_eq!(composed("\u{418}\u{306}"), "\u{419}", "Cyrillic too");
        assert_eq!(composed("T\u{e9}l\u{e9} 48 1/2\""), "T\u{e9}l\u{e9} 48 1/2\"");
        // There is no such letter: it is left for whoever sets it to refuse.
        assert_eq!(composed("x\u{301}"), "x\u{301}");
    }
}

//! Texts that are made to fit one line by leaving letters off, an ellipsis in their place.

use super::{Weight, text_width_mm};

/// A text on one line that fits, its end left off and an ellipsis in its place where it must be.
pub(crate) fn shortened(text: &str, room_mm: f64, height_mm: f64, weight: Weight) -> String {
    let width = |text: &str| text_width_mm(text, height_mm, weight);
    // Past so many letters none would fit any paper.
    let mut kept: String = text.chars().take(400).collect();
    if kept.len() == text.len() && width(text) <= room_mm {
        return kept;
    }
    while !kept.is_empty() && width(&kept) + width("\u{2026}") > room_mm {
        kept.pop();
    }
    kept.truncate(kept.trim_end().len());
    kept.push('\u{2026}');
    kept
}

/// The same of a text that ends in `tail`, which is kept whole: what comes before it gives way. A text that does not
/// end so is shortened at its end.
pub(crate) fn shortened_before(
    text: &str,
    tail: &str,
    room_mm: f64,
    height_mm: f64,
    weight: Weight,
) -> String {
    let width = |text: &str| text_width_mm(text, height_mm, weight);
    match text.strip_suffix(tail) {
        Some(head) if width(text) > room_mm => {
            let room = room_mm - width(" ") - width(tail);
            format!("{} {tail}", shortened(head.trim_end(), room, height_mm, weight))
        }
        _ => shortened(text, room_mm, height_mm, weight),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_long_title_gives_way() {
        let short = shortened(&"Living room ".repeat(90), 80.0, 5.0, Weight::Semibold);
        assert!(short.ends_with('\u{2026}') && text_width_mm(&short, 5.0, Weight::Semibold) <= 80.0);
        assert_eq!(shortened("Den", 80.0, 5.0, Weight::Semibold), "Den");
    }

    #[test]
    fn what_must_be_read_stays_and_the_name_before_it_gives_way() {
        let name = format!("{}'s top left corner:", "A display that somebody was fond of ".repeat(4).trim());
        let short = shortened_before(&name, "top left corner:", 70.0, 3.2, Weight::Regular);
        assert!(short.starts_with("A display") && short.ends_with("\u{2026} top left corner:"), "{short}");
        assert!(text_width_mm(&short, 3.2, Weight::Regular) <= 70.0);
        let whole = "Notices' top left corner:";
        assert_eq!(shortened_before(whole, "top left corner:", 70.0, 3.2, Weight::Regular), whole);
    }
}

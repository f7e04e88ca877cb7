//! How wide texts are that were set before: a drawing asks for the same names and figures in every frame, and setting
//! one takes longer than all that is done with its width.

use super::{Weight, setter};
use std::cell::RefCell;
use std::collections::HashMap;

/// How many texts are remembered, of each weight; past it all are forgotten at once (chosen: some drawings' worth, well
/// under a megabyte).
const MOST: usize = 4096;

thread_local! {
    static KNOWN: RefCell<[HashMap<String, i32>; 2]> = RefCell::default();
}

/// How wide a text is, in font units; `None` only for a damaged face.
pub(super) fn width_units(text: &str, weight: Weight) -> Option<i32> {
    let set = || Some(setter(weight)?.set(text).width_units);
    KNOWN.with(|known| {
        // Nothing that is called below asks for a width: it is never borrowed twice.
        let Ok(mut known) = known.try_borrow_mut() else { return set() };
        let [regular, semibold] = &mut *known;
        let known = match weight {
            Weight::Regular => regular,
            Weight::Semibold => semibold,
        };
        if let Some(width) = known.get(text) {
            return Some(*width);
        }
        let width = set()?;
        if known.len() >= MOST {
            known.clear();
        }
        known.insert(text.to_owned(), width);
        Some(width)
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_text_is_as_wide_when_it_is_asked_for_again_and_once_all_are_forgotten() {
        let set = |text: &str, weight| setter(weight).map(|setter| setter.set(text).width_units);
        for round in 0..2 {
            for index in 0..=MOST {
                let text = format!("office {index}");
                assert_eq!(
                    width_units(&text, Weight::Regular),
                    set(&text, Weight::Regular),
                    "{round} {text}"
                );
            }
            let bold = width_units("office 1", Weight::Semibold);
            assert_eq!(bold, set("office 1", Weight::Semibold));
            assert_ne!(bold, width_units("office 1", Weight::Regular), "each weight has its own");
        }
        KNOWN.with(|known| assert!(known.borrow().iter().all(|of_one| of_one.len() <= MOST)));
    }
}

//! Keys and gestures that are no commands: what the hand does on the drawing and in fields. Each is done where it
//! belongs; here it is only told, for the page of keys.

use crate::moves::one_pull::Seen;

/// Keys of one place, in words.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HandKeys {
    /// Where they work.
    pub place: &'static str,
    /// The keys and what they do.
    pub keys: Vec<(String, &'static str)>,
}

/// All keys that are no commands.
#[must_use]
pub fn hand_keys() -> Vec<HandKeys> {
    let told = |place, keys: &[(&str, &'static str)]| HandKeys {
        place,
        keys: keys.iter().map(|(keys, does)| ((*keys).to_owned(), *does)).collect(),
    };
    vec![
        told(
            "On the drawing",
            &[
                ("Arrow keys", "move what is selected by one graduation"),
                ("Shift and arrow keys", "move it by an inch, or by 10 mm"),
                ("Tab, Shift+Tab", "go to the next or the last thing, handle or field"),
                ("Escape in a drag", "gives back the place it had"),
                ("Alt or a second finger in a drag", "lets go of what it is drawn to"),
                ("A number in a drag", "opens the field of the dimension that leads"),
                ("Tap or Enter on a figure", "opens a field for it"),
                ("Delete", "takes out what is selected"),
                ("Right button, Shift+F10, a finger that rests", "opens the menu"),
                ("Wheel, pinch", "zoom about the pointer"),
                ("Middle or right button, two fingers", "shift the drawing"),
            ],
        ),
        told(
            "In a field",
            &[
                ("Enter", "takes the value; in a new job goes on to the next field"),
                ("Escape", "gives back what was there"),
                ("Tab", "goes to the next field"),
            ],
        ),
        one_pull(),
        told(
            "In my shelf, in the name of what is to be kept",
            &[("Enter", "keeps it, where nothing on the shelf is called so yet")],
        ),
        told(
            "In the list of commands",
            &[("Enter", "does the first that is shown"), ("Escape", "closes it")],
        ),
    ]
}

fn one_pull() -> HandKeys {
    let mut keys: Vec<(String, &'static str)> =
        Seen::ALL.iter().map(|seen| (seen.letter().to_string(), kind(*seen))).collect();
    keys.push(("Enter".to_owned(), "takes number and kind; after the wall's end, it is done"));
    keys.push(("Backspace in the empty field".to_owned(), "takes back the last entry"));
    HandKeys { place: "In one pull, with what the tape shows", keys }
}

fn kind(seen: Seen) -> &'static str {
    match seen {
        Seen::Window => "an edge of a window's trim",
        Seen::Door => "an edge of a door's trim",
        Seen::Outlet => "the middle of an outlet",
        Seen::Switch => "the middle of a switch",
        Seen::StudLeft => "a stud's left edge",
        Seen::StudRight => "a stud's right edge",
        Seen::StudCentre => "a stud's centre",
        Seen::End => "the wall's other end",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_letter_of_one_pull_is_told_once() {
        let keys = one_pull().keys;
        for seen in Seen::ALL {
            let letter = seen.letter().to_string();
            assert_eq!(keys.iter().filter(|(key, _)| *key == letter).count(), 1, "{seen:?}");
        }
    }
}

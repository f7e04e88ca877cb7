//! How large the pixels of each screen are, as a tape laid on it told. Kept in the program's home; a convenience that
//! no work hangs on.

use super::save::replace;
use super::text::{from_ron, read_text, to_ron};
use serde::{Deserialize, Serialize};
use std::path::Path;

/// The format of the list.
const FORMAT: u32 = 1;
/// More screens than anybody has (chosen).
const MOST: usize = 32;
/// The longest list read, in bytes (chosen).
const LIMIT: u64 = 64 * 1024;

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Written {
    format: u32,
    screens: Vec<Screen>,
}

#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct Screen {
    screen: String,
    mm_per_pixel: f32,
}

/// How large a screen's pixels are, in millimetres; `None` where no tape was laid on it, or the list cannot be read.
#[must_use]
pub fn mm_per_pixel(list: &Path, screen: &str) -> Option<f32> {
    let known = read(list).into_iter().find(|known| known.screen == screen)?;
    Some(known.mm_per_pixel).filter(|mm| mm.is_finite() && *mm > 0.0)
}

/// Keeps how large a screen's pixels are, in millimetres.
///
/// # Errors
/// What the system says where the list cannot be written; it is then as it was.
pub fn keep(list: &Path, screen: &str, mm_per_pixel: f32) -> std::io::Result<()> {
    let mut screens = read(list);
    screens.retain(|known| known.screen != screen);
    screens.insert(0, Screen { screen: screen.to_owned(), mm_per_pixel });
    screens.truncate(MOST);
    let text = to_ron(&Written { format: FORMAT, screens }).map_err(std::io::Error::other)?;
    if let Some(folder) = list.parent() {
        std::fs::create_dir_all(folder)?;
    }
    replace(list, text.as_bytes(), None)
}

fn read(list: &Path) -> Vec<Screen> {
    let text = read_text(list, LIMIT).unwrap_or_default();
    from_ron::<Written>(&text, "list", FORMAT).map(|written| written.screens).unwrap_or_default()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn each_screen_keeps_what_was_told_last() {
        let folder = tempfile::tempdir().unwrap();
        let list = folder.path().join("home").join("screens.ron");
        assert_eq!(mm_per_pixel(&list, "a"), None);
        keep(&list, "a", 0.25).unwrap();
        keep(&list, "b", 0.1).unwrap();
        keep(&list, "a", 0.2).unwrap();
        assert_eq!((mm_per_pixel(&list, "a"), mm_per_pixel(&list, "b")), (Some(0.2), Some(0.1)));
        std::fs::write(&list, "(format: 1, screens: [(screen: \"a\", mm_per_pixel: -1.0)])").unwrap();
        assert_eq!(mm_per_pixel(&list, "a"), None, "nonsense counts as not known");
        std::fs::write(&list, "nonsense").unwrap();
        assert_eq!(mm_per_pixel(&list, "a"), None);
    }
}

//! Where the program keeps things of its own. No other file chooses a folder.

use etcetera::app_strategy::{AppStrategy as _, AppStrategyArgs, choose_native_strategy};
use std::ffi::OsString;
use std::path::{Path, PathBuf};

/// The environment variable that names one folder for all of it: for tests, and for a program carried on a
/// stick.
pub const VARIABLE: &str = "STRIKELINE_HOME";

/// Where the program keeps things of its own. Nothing in it is made before something is kept there.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Home {
    /// What its owner would miss.
    data: PathBuf,
    /// What helps from one start to the next.
    state: PathBuf,
}

impl Home {
    /// The home of whoever runs the program: the folder that `STRIKELINE_HOME` names, else by the platform's
    /// convention for each user. `None` where the system knows no folder of theirs.
    #[must_use]
    pub fn of_user() -> Option<Self> {
        if let Some(named) = Self::named(std::env::var_os(VARIABLE)) {
            return Some(named);
        }
        let name = AppStrategyArgs {
            top_level_domain: String::new(),
            author: String::new(),
            app_name: "Strikeline".to_owned(),
        };
        let folders = choose_native_strategy(name).ok()?;
        let data = folders.data_dir();
        // Where the platform has no place for state: not the cache, which may be emptied at any time.
        let state = folders.state_dir().unwrap_or_else(|| data.clone());
        Some(Self { data, state })
    }

    /// The home that the variable names. An empty one names none.
    fn named(variable: Option<OsString>) -> Option<Self> {
        let folder = variable.filter(|name| !name.is_empty())?;
        // Relative to where the program was started, also where it goes on from elsewhere.
        std::path::absolute(folder).ok().map(|folder| Self::at(&folder))
    }

    /// A home in one folder.
    #[must_use]
    pub fn at(folder: &Path) -> Self {
        Self { data: folder.to_owned(), state: folder.to_owned() }
    }

    /// The folder of the user's own things, a file each.
    #[must_use]
    pub fn shelf(&self) -> PathBuf {
        self.data.join("shelf")
    }

    /// The folder of unsaved work.
    #[must_use]
    pub fn journal(&self) -> PathBuf {
        self.state.join("journal")
    }

    /// How large the pixels of each screen are.
    #[must_use]
    pub fn screens(&self) -> PathBuf {
        self.state.join("screens.ron")
    }

    /// The list of recent jobs.
    #[must_use]
    pub fn recent(&self) -> PathBuf {
        self.state.join("recent.ron")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_folder_holds_all_of_it_and_nothing_is_made_before_its_time() {
        let folder = tempfile::tempdir().unwrap();
        let home = Home::at(folder.path());
        for place in [home.shelf(), home.journal(), home.recent(), home.screens()] {
            assert!(place.starts_with(folder.path()) && !place.exists(), "{}", place.display());
        }
    }

    #[test]
    fn a_named_folder_is_found_from_anywhere_and_an_empty_name_is_none() {
        let here = std::env::current_dir().unwrap();
        assert_eq!(Home::named(Some("stick".into())), Some(Home::at(&here.join("stick"))));
        assert_eq!(Home::named(Some(OsString::new())), None);
        assert_eq!(Home::named(None), None);
    }
}

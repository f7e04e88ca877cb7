//! The system's own viewer of a file. The program prints nothing itself: no way to a printer is the same on every
//! system, and a viewer has the printer's own questions.

use std::path::Path;
use std::process::{Command, Stdio};

/// Shows a file in a viewer.
pub type Viewer = fn(&Path) -> std::io::Result<()>;

/// What opens a file as a double click does.
const OPENER: &str = if cfg!(windows) {
    "explorer"
} else if cfg!(target_os = "macos") {
    "open"
} else {
    "xdg-open"
};

/// Opens a file in what the user opens such files with. That it shows nothing may come too late to be told.
///
/// # Errors
/// What the system says where there is no such program.
pub fn open(path: &Path) -> std::io::Result<()> {
    // By its whole path: one that begins with a hyphen would be taken for an option.
    let path = std::path::absolute(path)?;
    let mut command = Command::new(OPENER);
    command.arg(path).stdin(Stdio::null()).stdout(Stdio::null()).stderr(Stdio::null());
    let mut child = command.spawn()?;
    // Some openers stay as long as the viewer: they are waited for beside the window.
    std::thread::spawn(move || child.wait());
    Ok(())
}

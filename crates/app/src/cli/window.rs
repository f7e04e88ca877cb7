//! Opens the window, or says how to go on without one.

use std::path::{Path, PathBuf};

/// Opens the window on a job, or on one in which nothing is measured yet; comes back when it is closed.
pub(super) fn open(job: Option<PathBuf>) -> Result<(), String> {
    let shows = |name: &str| std::env::var_os(name).is_some_and(|value| !value.is_empty());
    if cfg!(target_os = "linux") && !shows("DISPLAY") && !shows("WAYLAND_DISPLAY") {
        return Err(no_display(job.as_deref(), "neither DISPLAY nor WAYLAND_DISPLAY is set"));
    }
    let named = job.clone();
    crate::app::run(job).map_err(|why| no_display(named.as_deref(), &why))
}

/// What to do without a window.
fn no_display(job: Option<&Path>, why: &str) -> String {
    let job = job.unwrap_or(Path::new("JOB.ron")).display();
    format!(
        "no display, so the window cannot open.\n\
         Get the plan with: strikeline plan {job}\n\
         and the sheet with: strikeline sheet {job} --out FILE.pdf\n\
         ({why})"
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_a_display_the_other_two_ways_are_named() {
        for (job, named) in [(None, "JOB.ron"), (Some(Path::new("rooms/den.ron")), "rooms/den.ron")] {
            let said = no_display(job, "why not");
            assert!(said.starts_with("no display"), "{said}");
            assert!(said.contains(&format!("strikeline plan {named}\n")), "{said}");
            assert!(said.contains(&format!("strikeline sheet {named} --out FILE.pdf\n")), "{said}");
            assert!(said.ends_with("(why not)"), "{said}");
        }
    }
}

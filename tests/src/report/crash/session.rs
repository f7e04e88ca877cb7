//! The child: a session and its journal without a window, edited until it is killed.

use crate::chance::Chance;
use std::io::Write as _;
use std::path::Path;
use std::time::{Duration, SystemTime, UNIX_EPOCH};
use strikeline::files::home::Home;
use strikeline::files::journal::Journal;
use strikeline::files::save::save_job;
use strikeline::session::Session;
use strikeline_solver::job::Job;
use strikeline_solver::units::Length;

/// What goes on while it is killed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum While {
    /// Values are typed, with pauses.
    Typing,
    /// A long drag, an edit every few milliseconds, without a pause.
    Drag,
    /// Edits as in a drag, saved to the file every few of them.
    Saving,
}

impl While {
    /// Each.
    pub(crate) const ALL: [Self; 3] = [Self::Typing, Self::Drag, Self::Saving];

    /// Its name.
    pub(crate) fn name(self) -> &'static str {
        match self {
            Self::Typing => "typing",
            Self::Drag => "drag",
            Self::Saving => "saving",
        }
    }
}

/// The job after so many edits: all of it is known, so that one byte amiss is seen.
pub(crate) fn edited(base: &Job, edit: u64) -> Job {
    let mut job = base.clone();
    job.notes = Some(edit.to_string());
    if let Some(wall) = job.walls.first_mut() {
        wall.width = Some(Length::inches(100.0 + (edit % 640) as f64 / 16.0).quantised());
    }
    job
}

/// How many edits a job has seen.
pub(crate) fn edits_of(job: &Job) -> Option<u64> {
    job.notes.as_ref()?.parse().ok()
}

/// Now, in microseconds: the same clock in parent and child.
pub(crate) fn now_us() -> u128 {
    SystemTime::now().duration_since(UNIX_EPOCH).unwrap_or_default().as_micros()
}

/// Edits until it is killed, or until nobody listens; prints the number and the time of each edit.
pub(crate) fn run(base: &Job, home: &Home, file: &Path, while_: While, seed: u64) -> Result<(), String> {
    let mut chance = Chance::of(seed);
    let mut as_read = save_job(&edited(base, 0), file, None).map_err(|why| why.to_string())?;
    let mut session = Session::new(edited(base, 0), Some(file.to_owned()));
    let mut journal = Journal::begin(home.journal(), || ());
    let mut out = std::io::stdout();
    for edit in 1_u64.. {
        let pause_ms = match while_ {
            While::Typing if chance.below(5) == 0 => chance.below(900),
            While::Typing => 20 + chance.below(80),
            While::Drag | While::Saving => chance.below(8),
        };
        std::thread::sleep(Duration::from_millis(pause_ms));
        let at_us = now_us();
        session.job = edited(base, edit);
        session.plan();
        session.note(while_ == While::Typing);
        if while_ == While::Saving && chance.below(10) == 0 {
            as_read = save_job(&session.job, file, Some(&as_read)).map_err(|why| why.to_string())?;
            session.was_saved(file.to_owned());
        }
        // As the window does at the end of a frame.
        if session.is_changed() {
            journal.keep(&session.job, session.path.as_deref(), Some(&as_read));
        } else {
            journal.clear();
        }
        if let Some(trouble) = journal.trouble() {
            return Err(trouble);
        }
        if writeln!(out, "{edit} {at_us}").and_then(|()| out.flush()).is_err() {
            return Ok(());
        }
    }
    Ok(())
}

//! Undo and redo: snapshots of the whole job, taken when nobody is touching anything. Knows no window.
//!
//! Limitations: it keeps every step of a session, since a job is a few kilobytes; it does not outlive the
//! session.

use strikeline_solver::job::Job;

/// The steps of a session.
#[derive(Clone, Debug)]
pub struct History {
    /// Earlier jobs, the latest last.
    past: Vec<Job>,
    /// The job as it was last seen at rest.
    present: Job,
    /// Jobs that were undone, the next one last.
    future: Vec<Job>,
}

impl History {
    /// A history that begins with a job.
    #[must_use]
    pub fn new(job: Job) -> Self {
        Self { past: Vec::new(), present: job, future: Vec::new() }
    }

    /// Notes the job as it is. It becomes a step of its own where it changed and nobody is touching anything,
    /// so that a whole drag is one step.
    pub fn note(&mut self, job: &Job, is_quiet: bool) {
        if is_quiet && *job != self.present {
            let before = std::mem::replace(&mut self.present, job.clone());
            self.past.push(before);
            self.future.clear();
        }
    }

    /// One step back from a job; `None` at the beginning. What was not yet a step becomes one first.
    pub fn undo(&mut self, job: &Job) -> Option<Job> {
        self.note(job, true);
        let before = self.past.pop()?;
        let after = std::mem::replace(&mut self.present, before);
        self.future.push(after);
        Some(self.present.clone())
    }

    /// One step forward again; `None` where nothing was undone, or something was changed since.
    pub fn redo(&mut self, job: &Job) -> Option<Job> {
        self.note(job, true);
        let after = self.future.pop()?;
        let before = std::mem::replace(&mut self.present, after);
        self.past.push(before);
        Some(self.present.clone())
    }

    /// Whether there is a step back from a job.
    #[must_use]
    pub fn can_undo(&self, job: &Job) -> bool {
        !self.past.is_empty() || *job != self.present
    }

    /// Whether there is a step forward from a job.
    #[must_use]
    pub fn can_redo(&self, job: &Job) -> bool {
        !self.future.is_empty() && *job == self.present
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn job(title: &str) -> Job {
        Job { title: title.to_owned(), ..Job::new() }
    }

    #[test]
    fn a_whole_gesture_is_one_step() {
        let mut history = History::new(job("a"));
        for title in ["b", "c", "d"] {
            history.note(&job(title), false);
        }
        history.note(&job("d"), true);
        assert_eq!(history.undo(&job("d")), Some(job("a")));
        assert_eq!(history.undo(&job("a")), None);
        assert_eq!(history.redo(&job("a")), Some(job("d")));
        assert_eq!(history.redo(&job("d")), None);
    }

    #[test]
    fn nothing_changed_is_no_step() {
        let mut history = History::new(job("a"));
        history.note(&job("a"), true);
        assert!(!history.can_undo(&job("a")));
        assert_eq!(history.undo(&job("a")), None);
    }

    #[test]
    fn undo_in_the_middle_of_a_change_takes_the_change_back() {
        let mut history = History::new(job("a"));
        history.note(&job("b"), false);
        assert!(history.can_undo(&job("b")));
        assert_eq!(history.undo(&job("b")), Some(job("a")));
        assert_eq!(history.redo(&job("a")), Some(job("b")));
    }

    #[test]
    fn a_new_change_forgets_what_was_undone() {
        let mut history = History::new(job("a"));
        history.note(&job("b"), true);
        history.undo(&job("b"));
        assert!(history.can_redo(&job("a")));
        history.note(&job("c"), true);
        assert!(!history.can_redo(&job("c")));
        assert_eq!(history.redo(&job("c")), None);
    }
}

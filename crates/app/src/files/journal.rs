//! The crash journal: unsaved work, written beside whatever else goes on, and found again at the next start.
//!
//! The session hands over its job whenever it differs; one thread writes the latest. The first edit is written
//! at once and a long drag twice a second, so that a crash loses no more than that and the time of one write.

mod entry;
mod slot;

use super::job_file::read_job;
pub use entry::Unsaved;
use slot::Slot;
use std::path::{Path, PathBuf};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::JoinHandle;
use std::time::{Duration, Instant, SystemTime};
use strikeline_solver::job::Job;

/// From one write to the next at least: a disk is not kept busy by a drag, and a quarter of the two seconds
/// that a crash may cost (chosen).
const BETWEEN_WRITES: Duration = Duration::from_millis(500);
/// From a write that failed to the next try: a disk may have room again (chosen).
const BETWEEN_TRIES: Duration = Duration::from_secs(5);

/// A session's journal.
#[derive(Debug)]
pub struct Journal {
    shared: Arc<Shared>,
    writer: Option<JoinHandle<()>>,
    /// The job that was handed over last, where one is unsaved.
    last: Option<Job>,
}

/// Unsaved work that a crash left, held by this program for as long as this lives.
#[derive(Debug)]
pub struct LeftOver {
    slot: Slot,
    /// What it is.
    pub unsaved: Unsaved,
}

/// What crashes left.
#[derive(Debug, Default)]
pub struct LeftOvers {
    /// What can be taken up again, the latest first.
    pub unsaved: Vec<LeftOver>,
    /// What cannot, and why, in words.
    pub troubles: Vec<String>,
}

/// Looks for unsaved work that a crash left in a journal's folder. What cannot be read is kept aside; what its
/// file holds by now was saved, and is removed.
#[must_use]
pub fn left_overs(folder: &Path) -> LeftOvers {
    let found = slot::look_through(folder);
    let mut left = LeftOvers { unsaved: Vec::new(), troubles: found.troubles };
    for (slot, unsaved) in found.unsaved {
        let file = unsaved.path.as_deref().and_then(|path| read_job(path).ok());
        if file.is_some_and(|file| file.job == unsaved.job) {
            // Where it cannot be removed it is looked at again next time.
            let _ = slot.remove();
        } else {
            left.unsaved.push(LeftOver { slot, unsaved });
        }
    }
    left
}

impl LeftOver {
    /// Its name: no two have the same.
    #[must_use]
    pub fn name(&self) -> String {
        self.slot.entry().file_stem().unwrap_or_default().to_string_lossy().into_owned()
    }

    /// Removes it.
    ///
    /// # Errors
    /// Why it is still there, in words.
    pub fn throw_away(self) -> Result<(), String> {
        let entry = self.slot.entry().display().to_string();
        self.slot.remove().map_err(|why| format!("It could not be thrown away ({why}): {entry}"))
    }
}

#[derive(Debug, Default)]
struct Shared {
    state: Mutex<State>,
    changed: Condvar,
}

#[derive(Debug, Default)]
struct State {
    /// What is to be done next; a later wish takes the place of an earlier one.
    wish: Option<Wish>,
    /// A journal to go on with in place of the session's own.
    adopted: Option<Slot>,
    /// What went wrong and was not told yet.
    trouble: Option<String>,
    is_over: bool,
}

#[derive(Debug)]
enum Wish {
    Keep(Box<Unsaved>),
    Clear,
}

impl Shared {
    /// A thread that panicked leaves a state that is whole: no step of it is half done under the lock.
    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Journal {
    /// A journal that keeps its files in a folder, which is made with the first of them. `wake` is called, on
    /// another thread, when there is a trouble to tell.
    #[must_use]
    pub fn begin(folder: PathBuf, wake: impl Fn() + Send + 'static) -> Self {
        let shared = Arc::<Shared>::default();
        let writer = Writer { shared: Arc::clone(&shared), folder, slot: None, told: false };
        let name = "journal".to_owned();
        let writer = std::thread::Builder::new().name(name).spawn(move || writer.run(&wake));
        if let Err(why) = &writer {
            shared.state().trouble = Some(told(&why.to_string()));
        }
        Self { shared, writer: writer.ok(), last: None }
    }

    /// Hands over an unsaved job: its file, where it has one, and that file's text as it was read. May be
    /// called in every frame: it does nothing where the job is the one handed over last.
    pub fn keep(&mut self, job: &Job, path: Option<&Path>, as_read: Option<&str>) {
        if self.last.as_ref() == Some(job) {
            return;
        }
        self.last = Some(job.clone());
        let path = path.map(|path| std::path::absolute(path).unwrap_or_else(|_| path.to_owned()));
        let as_read = as_read.map(ToOwned::to_owned);
        let unsaved = Unsaved { job: job.clone(), path, as_read, when: SystemTime::now() };
        self.wish(Wish::Keep(Box::new(unsaved)));
    }

    /// Nothing is unsaved now: it was saved, undone or let go.
    pub fn clear(&mut self) {
        if self.last.take().is_some() {
            self.wish(Wish::Clear);
        }
    }

    /// Goes on with what a crash left: it stays where it is until it is written anew or cleared.
    pub fn take_up(&mut self, left_over: LeftOver) {
        self.last = Some(left_over.unsaved.job);
        let mut state = self.shared.state();
        state.wish = None;
        state.adopted = Some(left_over.slot);
        self.shared.changed.notify_one();
    }

    /// What went wrong and was not told yet, in words.
    pub fn trouble(&mut self) -> Option<String> {
        self.shared.state().trouble.take()
    }

    fn wish(&self, wish: Wish) {
        self.shared.state().wish = Some(wish);
        self.shared.changed.notify_one();
    }
}

impl Drop for Journal {
    /// Does what is still to be done. What is unsaved then stays: the session may end by a panic.
    fn drop(&mut self) {
        self.shared.state().is_over = true;
        self.shared.changed.notify_one();
        if let Some(writer) = self.writer.take() {
            // A writer that panicked has nothing more to say.
            let _ = writer.join();
        }
    }
}

/// What goes wrong with the journal, in words.
fn told(why: &str) -> String {
    format!(
        "Unsaved work cannot be kept for the case of a crash ({why}). Nothing is lost; the session goes on. \
         Save from time to time."
    )
}

struct Writer {
    shared: Arc<Shared>,
    folder: PathBuf,
    slot: Option<Slot>,
    /// Whether a trouble was told: a disk that stays full is told of once.
    told: bool,
}

impl Writer {
    fn run(mut self, wake: &dyn Fn()) {
        // A write may have to wait since there was one just now; anything, since it failed just now.
        let mut write_from = Instant::now();
        let mut try_from = Instant::now();
        while let Some((wish, adopted)) = self.next(write_from, try_from) {
            if let Some(adopted) = adopted
                && let Some(own) = self.slot.replace(adopted)
                && let Err(why) = own.remove()
            {
                self.tell(&why.to_string(), wake);
            }
            let Some(wish) = wish else { continue };
            write_from = Instant::now() + BETWEEN_WRITES;
            let Err(why) = self.fulfil(&wish) else { continue };
            try_from = Instant::now() + BETWEEN_TRIES;
            self.tell(&why, wake);
            // To be tried again, unless there is something newer or nobody waits any more.
            let mut state = self.shared.state();
            // What was taken up since is another job: an older wish must not be written over it.
            if !state.is_over && state.adopted.is_none() {
                state.wish.get_or_insert(wish);
            }
        }
        // Without an entry the lock stands for nothing.
        if let Some(slot) = self.slot
            && !slot.entry().exists()
        {
            let _ = slot.remove();
        }
    }

    /// Waits for what is to be done, but not longer once the session is over; `None` when all is done.
    fn next(&self, write_from: Instant, try_from: Instant) -> Option<(Option<Wish>, Option<Slot>)> {
        let mut state = self.shared.state();
        loop {
            let from = match &state.wish {
                Some(Wish::Keep(_)) => write_from.max(try_from),
                Some(Wish::Clear) | None => try_from,
            };
            let wait = from.saturating_duration_since(Instant::now());
            let is_due = state.is_over || wait.is_zero();
            if state.adopted.is_some() || (state.wish.is_some() && is_due) {
                return Some((state.wish.take(), state.adopted.take()));
            }
            if state.is_over {
                return None;
            }
            let changed = &self.shared.changed;
            state = if state.wish.is_some() {
                changed.wait_timeout(state, wait).unwrap_or_else(PoisonError::into_inner).0
            } else {
                changed.wait(state).unwrap_or_else(PoisonError::into_inner)
            };
        }
    }

    fn fulfil(&mut self, wish: &Wish) -> Result<(), String> {
        match wish {
            Wish::Keep(unsaved) => {
                let text = unsaved.text()?;
                let slot = match self.slot.take() {
                    Some(slot) => slot,
                    None => Slot::make(&self.folder).map_err(|why| self.in_folder(&why))?,
                };
                let written = slot.write(&text);
                self.slot = Some(slot);
                written.map_err(|why| self.in_folder(&why))
            }
            Wish::Clear => {
                let cleared = self.slot.as_ref().map_or(Ok(()), Slot::clear);
                cleared.map_err(|why| self.in_folder(&why))
            }
        }
    }

    fn in_folder(&self, why: &std::io::Error) -> String {
        format!("{why}: {}", self.folder.display())
    }

    fn tell(&mut self, why: &str, wake: &dyn Fn()) {
        if !std::mem::replace(&mut self.told, true) {
            self.shared.state().trouble = Some(told(why));
            wake();
        }
    }
}

#[cfg(test)]
mod tests;

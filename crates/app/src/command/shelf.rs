//! What can be asked of my shelf. A thing of it is named by its file's name.

use strikeline_solver::subject::Id;

/// To put a thing of the shelf into the job.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct FromShelf {
    /// The thing.
    pub file: String,
    /// What of the job it goes in the place of; `None` to go beside what is there. A kit and defaults always go
    /// in the place of the job's own.
    pub over: Option<Id>,
}

/// To keep something of the job on the shelf.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ToShelf {
    /// What.
    pub what: Kept,
    /// What it is called there.
    pub name: String,
    /// The thing of the shelf that it goes in the place of.
    pub over: Option<String>,
}

/// What of a job can be kept.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Kept {
    /// A display or another piece, a mount or a wall.
    Thing(Id),
    /// The kit.
    Kit,
    /// Units and settings.
    Defaults,
}

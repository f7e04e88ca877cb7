//! What is open: a job, its wall and option, what is selected, its steps and its plan. Knows no window and no
//! disk.

use crate::history::History;
use crate::solved::{Mends, Solved};
use std::path::PathBuf;
use std::rc::Rc;
use strikeline_solver::carry::CarryLine;
use strikeline_solver::choosing::BetterHoles;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::job::option::WallOption;
use strikeline_solver::job::piece::Piece;
use strikeline_solver::job::wall::Wall;
use strikeline_solver::limits::Limits;
use strikeline_solver::plan::Plan;
use strikeline_solver::plan::piece::PiecePlan;
use strikeline_solver::probing::NextProbe;
use strikeline_solver::solve::chosen_option;
use strikeline_solver::subject::{Id, Subject};
use strikeline_solver::which_of_mine::OfMine;

/// An open job.
#[derive(Clone, Debug)]
pub struct Session {
    /// The job. Fields and moves write it; everything else follows.
    pub job: Job,
    /// The wall that is looked at.
    pub wall: Id,
    /// The option that is looked at; `None` for the chosen one, else the first.
    pub option: Option<Id>,
    /// What is selected: a thing of the job or a mark.
    pub selected: Option<Subject>,
    /// The file it was read from or last saved to.
    pub path: Option<PathBuf>,
    /// Whether only what a new job needs is asked for.
    pub short_form: bool,
    /// The job as that file has it.
    saved: Job,
    history: History,
    solved: Solved,
}

impl Session {
    /// A job that was read from a file, or one without a file.
    #[must_use]
    pub fn new(job: Job, path: Option<PathBuf>) -> Self {
        let wall = job.walls.first().map(|wall| wall.id.clone()).unwrap_or_default();
        Self {
            wall,
            option: None,
            selected: None,
            path,
            short_form: false,
            saved: job.clone(),
            history: History::new(job.clone()),
            solved: Solved::default(),
            job,
        }
    }

    /// A job in which nothing is measured yet: one wall, one display, one mount.
    #[must_use]
    pub fn fresh() -> Self {
        Self::begun(fresh_job())
    }

    /// The same with what else is known at the beginning, such as a kit. Nothing of it counts as changed.
    #[must_use]
    pub fn begun(job: Job) -> Self {
        Self { short_form: true, ..Self::new(job, None) }
    }

    /// What follows from the job as it is now.
    pub fn plan(&mut self) -> Rc<Plan> {
        // A wall that is no more (it was added, and that undone) gives way to the first, an option to the chosen one.
        if self.job.wall(&self.wall).is_none() {
            self.wall = self.job.walls.first().map(|wall| wall.id.clone()).unwrap_or_default();
        }
        let option = self.option.as_ref().filter(|id| self.shown_wall_has(id));
        self.solved.plan(&self.job, &self.wall, option)
    }

    /// The job with something moved in it, whose plan is known: it is not made again.
    pub fn moved(&mut self, job: Job, plan: Plan) {
        let option = self.option.as_ref().filter(|id| self.shown_wall_has(id));
        self.solved.know(&job, &self.wall, option, plan);
        self.job = job;
    }

    /// Where to probe next, as it was when last asked for: not while a hand is on something.
    pub fn next_probe(&mut self, is_asked: bool) -> Option<Rc<NextProbe>> {
        let plan = self.plan();
        self.solved.next_probe(&self.job, &plan, is_asked)
    }

    /// How far the fasteners of each piece reach; nothing that has to be worked out while a hand is on something.
    pub fn limits(&mut self, is_asked: bool) -> Rc<Vec<(Id, Limits)>> {
        let plan = self.plan();
        self.solved.limits(&self.job, &plan, is_asked)
    }

    /// What would clear each finding, one finding more each time it is asked for; not while a hand is on something.
    pub fn mends(&mut self, is_asked: bool) -> Mends {
        let plan = self.plan();
        self.solved.mends(&self.job, &plan, is_asked)
    }

    /// Which of some mounts suit a piece where it is; nothing that has to be worked out while a hand is on something.
    pub fn which_of_mine(&mut self, piece: &Id, mounts: &[Mount], is_asked: bool) -> Option<Rc<OfMine>> {
        let plan = self.plan();
        self.solved.which_of_mine(&self.job, &plan, piece, mounts, is_asked)
    }

    /// What to bring for the whole job, with the plan that is looked at; not worked out while a hand is on something.
    pub fn carry(&mut self, is_asked: bool) -> Rc<Vec<CarryLine>> {
        let plan = self.plan();
        self.solved.carry(&self.job, &plan, is_asked)
    }

    /// Better choices of holes than the plan's, where there are any; not while a hand is on something.
    pub fn better_holes(&mut self, is_asked: bool) -> Rc<Vec<BetterHoles>> {
        let plan = self.plan();
        self.solved.better_holes(&self.job, &plan, is_asked)
    }

    fn shown_wall_has(&self, option: &Id) -> bool {
        self.job.wall(&self.wall).is_some_and(|wall| wall.options.iter().any(|one| one.id == *option))
    }

    /// The option that is looked at, where the wall has one.
    #[must_use]
    pub fn shown_option(&self) -> Option<&WallOption> {
        let wall = self.job.wall(&self.wall)?;
        let named = self.option.as_ref().and_then(|id| wall.options.iter().find(|one| one.id == *id));
        named.or_else(|| chosen_option(wall))
    }

    /// The piece that is meant where only one can be: the selected one, else the first of the shown option.
    #[must_use]
    pub fn meant_piece<'a>(&self, plan: &'a Plan) -> Option<&'a PiecePlan> {
        let selected = self.selected.as_ref();
        let selected = selected.and_then(|subject| plan.pieces.iter().find(|piece| piece.id == subject.id));
        selected.or_else(|| plan.pieces.first())
    }

    /// Whether the job differs from its file.
    #[must_use]
    pub fn is_changed(&self) -> bool {
        self.job != self.saved
    }

    /// The job was written to a file.
    pub fn was_saved(&mut self, path: PathBuf) {
        self.saved = self.job.clone();
        self.path = Some(path);
        self.short_form = false;
    }

    /// Notes a step for undo where nobody is touching anything.
    pub fn note(&mut self, is_quiet: bool) {
        self.history.note(&self.job, is_quiet);
    }

    /// One step back.
    pub fn undo(&mut self) {
        if let Some(job) = self.history.undo(&self.job) {
            self.job = job;
        }
    }

    /// One step forward again.
    pub fn redo(&mut self) {
        if let Some(job) = self.history.redo(&self.job) {
            self.job = job;
        }
    }

    /// Whether there is a step back.
    #[must_use]
    pub fn can_undo(&self) -> bool {
        self.history.can_undo(&self.job)
    }

    /// Whether there is a step forward.
    #[must_use]
    pub fn can_redo(&self) -> bool {
        self.history.can_redo(&self.job)
    }
}

/// A wall, a display and a mount of which nothing is known.
#[must_use]
pub fn fresh_job() -> Job {
    let mut job = Job::new();
    let piece = job.give_id("display");
    job.pieces.push(Piece { id: piece, ..Piece::default() });
    let mount = job.give_id("mount");
    job.mounts.push(Mount { id: mount, ..Mount::default() });
    let wall = job.give_id("wall");
    job.walls.push(Wall { id: wall, ..Wall::default() });
    job
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::units::Length;

    #[test]
    fn a_fresh_job_has_a_plan_with_a_display() {
        let mut session = Session::fresh();
        let plan = session.plan();
        assert_eq!(plan.pieces.len(), 1);
        assert!(!plan.assumed.is_empty());
        assert!(!session.is_changed(), "asking for a plan changes nothing");
    }

    #[test]
    fn undone_to_its_file_a_job_is_unchanged() {
        let mut session = Session::fresh();
        session.job.walls[0].width = Some(Length::inches(140.0));
        session.note(true);
        assert!(session.is_changed() && session.can_undo());
        session.undo();
        assert!(!session.is_changed() && session.can_redo());
    }

    #[test]
    fn a_wall_that_is_no_more_gives_way_to_the_first() {
        let mut session = Session::fresh();
        let first = session.wall.clone();
        session.wall = Id::new("gone");
        assert_eq!(session.plan().wall, first);
        assert_eq!(session.wall, first);
    }

    #[test]
    fn an_option_that_is_no_more_gives_way() {
        let mut session = Session::fresh();
        session.option = Some(Id::new("gone"));
        assert!(session.plan().findings.iter().all(|finding| finding.subject != session.wall.whole()
            || !matches!(finding.what, strikeline_solver::finding::What::NotThere { .. })));
    }
}

//! The plan of the job as it is: kept with the job it was made from, and made again when that differs. The next probe
//! is kept with its plan, and so is what else is told beside it.

mod beside;

pub use beside::Mends;

use beside::Beside;
use std::rc::Rc;
use strikeline_solver::carry::{self, CarryLine};
use strikeline_solver::choosing::BetterHoles;
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::limits::Limits;
use strikeline_solver::plan::Plan;
use strikeline_solver::probing::{self, NextProbe};
use strikeline_solver::solve::solve;
use strikeline_solver::subject::Id;
use strikeline_solver::which_of_mine::OfMine;

/// The last plan, with what it was made from.
#[derive(Clone, Debug, Default)]
pub struct Solved {
    last: Option<Last>,
    probe: Option<(Rc<Plan>, Option<Rc<NextProbe>>)>,
    carry: Option<(Rc<Plan>, Rc<Vec<CarryLine>>)>,
    beside: Option<Beside>,
}

#[derive(Clone, Debug)]
struct Last {
    job: Job,
    wall: Id,
    option: Option<Id>,
    plan: Rc<Plan>,
}

impl Solved {
    /// The plan of a wall and an option of a job. Solves only where one of the three differs from the last
    /// time, so that it may be asked as often as a frame likes.
    pub fn plan(&mut self, job: &Job, wall: &Id, option: Option<&Id>) -> Rc<Plan> {
        if let Some(last) = &self.last
            && last.wall == *wall
            && last.option.as_ref() == option
            && last.job == *job
        {
            return Rc::clone(&last.plan);
        }
        let plan = Rc::new(solve(job, wall, option));
        self.keep(job, wall, option, &plan);
        plan
    }

    /// Keeps a plan that was made elsewhere: that which a solve of the three gives.
    pub(crate) fn know(&mut self, job: &Job, wall: &Id, option: Option<&Id>, plan: Plan) {
        self.keep(job, wall, option, &Rc::new(plan));
    }

    fn keep(&mut self, job: &Job, wall: &Id, option: Option<&Id>, plan: &Rc<Plan>) {
        self.last = Some(Last {
            job: job.clone(),
            wall: wall.clone(),
            option: option.cloned(),
            plan: Rc::clone(plan),
        });
    }

    /// The next probe of a job's plan, which takes longer than a frame of a drag has; where it is not asked for, that
    /// of the plan it was last worked out for.
    pub fn next_probe(&mut self, job: &Job, plan: &Rc<Plan>, is_asked: bool) -> Option<Rc<NextProbe>> {
        let is_known = self.probe.as_ref().is_some_and(|(of, _)| Rc::ptr_eq(of, plan));
        if is_asked && !is_known {
            self.probe = Some((Rc::clone(plan), probing::next_probe(job, plan).map(Rc::new)));
        }
        self.probe.as_ref().and_then(|(_, probe)| probe.clone())
    }

    /// What to bring for a job with this plan of one of its walls; where it is not asked for, that of the plan it was
    /// last worked out for.
    pub fn carry(&mut self, job: &Job, plan: &Rc<Plan>, is_asked: bool) -> Rc<Vec<CarryLine>> {
        let is_known = self.carry.as_ref().is_some_and(|(of, _)| Rc::ptr_eq(of, plan));
        if is_asked && !is_known {
            self.carry = Some((Rc::clone(plan), Rc::new(carry::carry(job, &[plan]))));
        }
        self.carry.as_ref().map(|(_, lines)| Rc::clone(lines)).unwrap_or_default()
    }

    /// What is told beside a plan, as far as it was asked for; what was told of another plan is let go.
    fn beside(&mut self, plan: &Rc<Plan>) -> &mut Beside {
        let is_known = self.beside.as_ref().is_some_and(|beside| beside.is_of(plan));
        if !is_known {
            self.beside = None;
        }
        self.beside.get_or_insert_with(|| Beside::of(plan))
    }

    /// How far the fasteners of each piece reach; where it is not asked for and not known, nothing.
    pub fn limits(&mut self, job: &Job, plan: &Rc<Plan>, is_asked: bool) -> Rc<Vec<(Id, Limits)>> {
        self.beside(plan).limits(job, is_asked)
    }

    /// What would clear each finding of a plan, in its order, as far as it is known: asked for, one finding more that
    /// takes solves is answered.
    pub fn mends(&mut self, job: &Job, plan: &Rc<Plan>, is_asked: bool) -> Mends {
        self.beside(plan).mends(job, is_asked)
    }

    /// Which of some mounts suit a piece where it is; where it is not asked for and not known, nothing.
    pub fn which_of_mine(
        &mut self,
        job: &Job,
        plan: &Rc<Plan>,
        piece: &Id,
        mounts: &[Mount],
        is_asked: bool,
    ) -> Option<Rc<OfMine>> {
        self.beside(plan).which_of_mine(job, piece, mounts, is_asked)
    }

    /// Better choices of holes than those of a job's plan, a piece each, which takes longer than a frame of a drag has;
    /// where it is not asked for, none but those of this very plan.
    pub fn better_holes(&mut self, job: &Job, plan: &Rc<Plan>, is_asked: bool) -> Rc<Vec<BetterHoles>> {
        self.beside(plan).better_holes(job, is_asked)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use strikeline_solver::job::wall::Wall;
    use strikeline_solver::units::Length;

    #[test]
    fn an_unchanged_job_is_not_solved_again_and_a_changed_one_is() {
        let wall = Id::new("wall-1");
        let mut job = Job::new();
        job.walls.push(Wall { id: wall.clone(), width: Some(Length::inches(120.0)), ..Wall::default() });
        let mut solved = Solved::default();
        let first = solved.plan(&job, &wall, None);
        assert!(Rc::ptr_eq(&first, &solved.plan(&job, &wall, None)));
        job.walls[0].width = Some(Length::inches(121.0));
        let second = solved.plan(&job, &wall, None);
        assert!(!Rc::ptr_eq(&first, &second));
        assert_eq!(second.survey.outline.width(), Length::inches(121.0));
    }

    #[test]
    fn what_to_bring_is_worked_out_once_a_plan_and_not_under_a_hand() {
        let mut job = crate::session::fresh_job();
        let wall = job.walls[0].id.clone();
        let mut solved = Solved::default();
        let plan = solved.plan(&job, &wall, None);
        assert!(solved.carry(&job, &plan, false).is_empty(), "a hand is on it");
        let first = solved.carry(&job, &plan, true);
        assert!(!first.is_empty() && Rc::ptr_eq(&first, &solved.carry(&job, &plan, true)));
        job.walls[0].width = Some(Length::inches(121.0));
        let plan = solved.plan(&job, &wall, None);
        assert!(Rc::ptr_eq(&first, &solved.carry(&job, &plan, false)), "it stays while a hand moves things");
        assert!(!Rc::ptr_eq(&first, &solved.carry(&job, &plan, true)));
    }

    #[test]
    fn what_is_told_beside_a_plan_waits_to_be_asked_for_and_goes_with_its_plan() {
        let mut job = crate::session::fresh_job();
        let wall = job.walls[0].id.clone();
        let mut solved = Solved::default();
        let plan = solved.plan(&job, &wall, None);
        assert!(!plan.findings.is_empty());
        assert!(solved.mends(&job, &plan, false).of.is_empty(), "a hand is on it");
        let mut frames = 0;
        while !solved.mends(&job, &plan, true).is_all {
            frames += 1;
            assert!(frames <= plan.findings.len(), "one finding a frame");
        }
        assert_eq!(solved.mends(&job, &plan, false).of.len(), plan.findings.len());
        let piece = job.pieces[0].id.clone();
        let mine = job.mounts.clone();
        assert_eq!(solved.which_of_mine(&job, &plan, &piece, &mine, false), None);
        let first = solved.which_of_mine(&job, &plan, &piece, &mine, true).unwrap();
        assert_eq!(first.suits.len(), 1);
        let again = solved.which_of_mine(&job, &plan, &piece, &mine, true).unwrap();
        assert!(Rc::ptr_eq(&first, &again), "not solved again");
        assert_eq!(solved.which_of_mine(&job, &plan, &piece, &[], true).unwrap().suits.len(), 0);
        job.walls[0].width = Some(Length::inches(121.0));
        let plan = solved.plan(&job, &wall, None);
        assert!(solved.mends(&job, &plan, false).of.is_empty(), "that of another plan is told no more");
        assert_eq!(solved.which_of_mine(&job, &plan, &piece, &mine, false), None);
    }
}

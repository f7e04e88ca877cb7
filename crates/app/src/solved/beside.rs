//! What is told beside a plan and takes more solves than a frame of a drag has: limits, better choices of holes, mends,
//! which mounts suit. Kept with its plan, and worked out when it is asked for.

use std::rc::Rc;
use strikeline_solver::choosing::{BetterHoles, better_holes};
use strikeline_solver::job::Job;
use strikeline_solver::job::mount::Mount;
use strikeline_solver::limits::{Limits, limits};
use strikeline_solver::mend::{MendPlan, answers, of_next};
use strikeline_solver::plan::Plan;
use strikeline_solver::subject::Id;
use strikeline_solver::which_of_mine::{OfMine, which_of_mine};

/// What would clear the findings of a plan.
#[derive(Clone, Debug, Default)]
pub struct Mends {
    /// Of each finding in the order of the plan, as far as they are worked out.
    pub of: Vec<Rc<Vec<MendPlan>>>,
    /// Whether all are.
    pub is_all: bool,
}

/// What is told beside a plan, as far as it was asked for.
#[derive(Clone, Debug)]
pub(super) struct Beside {
    plan: Rc<Plan>,
    limits: Option<Rc<Vec<(Id, Limits)>>>,
    better: Option<Rc<Vec<BetterHoles>>>,
    mends: Vec<Rc<Vec<MendPlan>>>,
    mine: Option<Mine>,
}

/// Which mounts suit a piece.
#[derive(Clone, Debug)]
struct Mine {
    piece: Id,
    mounts: Vec<Mount>,
    of: Rc<OfMine>,
}

impl Beside {
    pub(super) fn of(plan: &Rc<Plan>) -> Self {
        Self { plan: Rc::clone(plan), limits: None, better: None, mends: Vec::new(), mine: None }
    }

    pub(super) fn is_of(&self, plan: &Rc<Plan>) -> bool {
        Rc::ptr_eq(&self.plan, plan)
    }

    pub(super) fn limits(&mut self, job: &Job, is_asked: bool) -> Rc<Vec<(Id, Limits)>> {
        if is_asked && self.limits.is_none() {
            let pieces = self.plan.pieces.iter().map(|piece| &piece.id);
            let each = pieces.filter_map(|piece| Some((piece.clone(), limits(job, &self.plan, piece)?)));
            self.limits = Some(Rc::new(each.collect()));
        }
        self.limits.clone().unwrap_or_default()
    }

    pub(super) fn better_holes(&mut self, job: &Job, is_asked: bool) -> Rc<Vec<BetterHoles>> {
        if is_asked && self.better.is_none() {
            let pieces = self.plan.pieces.iter().map(|piece| &piece.id);
            let each = pieces.filter_map(|piece| better_holes(job, &self.plan, piece));
            self.better = Some(Rc::new(each.collect()));
        }
        self.better.clone().unwrap_or_default()
    }

    pub(super) fn mends(&mut self, job: &Job, is_asked: bool) -> Mends {
        let plan = &self.plan;
        let mut may_solve = is_asked;
        while let Some(finding) = plan.findings.get(self.mends.len()).filter(|_| is_asked) {
            let takes_solves = answers(&finding.what);
            if takes_solves && !may_solve {
                break;
            }
            may_solve &= !takes_solves;
            let earlier: Vec<&[MendPlan]> = self.mends.iter().map(|mends| mends.as_slice()).collect();
            let mends = of_next(job, plan, &earlier);
            self.mends.extend(mends.map(Rc::new));
        }
        Mends { of: self.mends.clone(), is_all: self.mends.len() == plan.findings.len() }
    }

    pub(super) fn which_of_mine(
        &mut self,
        job: &Job,
        piece: &Id,
        mounts: &[Mount],
        is_asked: bool,
    ) -> Option<Rc<OfMine>> {
        let is_known = self.mine.as_ref().is_some_and(|mine| mine.piece == *piece && mine.mounts == mounts);
        if is_asked && !is_known {
            let of = which_of_mine(job, &self.plan.wall, self.plan.option.as_ref(), piece, mounts);
            self.mine = Some(Mine { piece: piece.clone(), mounts: mounts.to_vec(), of: Rc::new(of) });
        }
        let known = self.mine.as_ref().filter(|mine| mine.piece == *piece && mine.mounts == mounts);
        known.map(|mine| Rc::clone(&mine.of))
    }
}
